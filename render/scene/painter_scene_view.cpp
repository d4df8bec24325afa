#include "render/scene/painter_scene_view.h"

#include <QElapsedTimer>
#include <QFocusEvent>
#include <QPainter>

#include "render/scene/scene_frame.h"

namespace roundwright::render {

namespace {

constexpr int rest_after_ms = 150;
constexpr double slow_ms = 50;  ///< above, half as many pixels each way are drawn while the view moves

}  // namespace

class PainterCanvas : public QWidget {
  public:
    explicit PainterCanvas(PainterSceneView& view) : view_(view) {
        setFocusPolicy(Qt::StrongFocus);
        setMouseTracking(true);
        setAttribute(Qt::WA_OpaquePaintEvent);
    }

    void stale() {
        picture_ = {};
        update();
    }
    void leave(bool forward) { focusNextPrevChild(forward); }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        if (picture_.isNull()) picture_ = view_.draw(size(), devicePixelRatioF());
        QPainter painter(this);
        painter.setRenderHint(QPainter::SmoothPixmapTransform);
        painter.drawImage(QRectF(rect()), picture_);
    }
    void resizeEvent(QResizeEvent* /*event*/) override { view_.set_viewport(width(), height()); }
    void focusInEvent(QFocusEvent* event) override {
        QWidget::focusInEvent(event);
        view_.frame_->set_ring(true);
    }
    void focusOutEvent(QFocusEvent* event) override {
        QWidget::focusOutEvent(event);
        view_.frame_->set_ring(false);
    }

  private:
    PainterSceneView& view_;
    QImage picture_;
};

PainterSceneView::PainterSceneView(QWidget* parent) : CameraSceneView(parent) {
    canvas_ = new PainterCanvas(*this);
    frame_ = new SceneFrame(canvas_, parent);
    canvas_->installEventFilter(&input());
    canvas_->setAccessibleName(view_name());
    canvas_->setAccessibleDescription(view_description());
    rest_.setSingleShot(true);
    rest_.setInterval(rest_after_ms);
    connect(&input(), &ViewInput::tab_pressed, this, [this](bool forward) { canvas_->leave(forward); });
    connect(&rest_, &QTimer::timeout, this, [this] {
        resting_ = true;
        if (canvas_) canvas_->stale();
    });
    set_background(frame_->palette().color(QPalette::Window));
}

PainterSceneView::~PainterSceneView() { delete frame_; }

QWidget* PainterSceneView::widget() { return frame_; }

void PainterSceneView::stale() {
    resting_ = false;
    rest_.start();
    if (canvas_) canvas_->stale();
}

void PainterSceneView::show_surface() { stale(); }
void PainterSceneView::show_lit() { stale(); }
void PainterSceneView::show_parts() { stale(); }
void PainterSceneView::show_ghost() { stale(); }
void PainterSceneView::show_camera() { stale(); }
void PainterSceneView::show_background() {
    if (frame_) frame_->set_fill(background());
    stale();
}

QImage PainterSceneView::draw(QSize logical, double pixel_ratio) {
    QSize pixels = (QSizeF(logical) * pixel_ratio).toSize();
    QColor opaque = background();
    opaque.setAlpha(255);
    if (resting_) return draw_software_picture(software_scene(opaque), camera(), pixels, 2);
    const int share = moving_ms_ > slow_ms ? 2 : 1;
    QElapsedTimer timer;
    timer.start();
    QImage image = draw_software_picture(software_scene(opaque), camera(), pixels / share, 1);
    moving_ms_ = static_cast<double>(timer.nsecsElapsed()) / 1e6 * share * share;
    return image;
}

}  // namespace roundwright::render
