#include "render/scene/painter_scene_view.h"

#include <QElapsedTimer>
#include <QFocusEvent>
#include <QPainter>

#include "render/raster/rim.h"
#include "render/raster/scene_frame.h"

namespace roundwright::render {

namespace {

constexpr int rest_after_ms = 150;
/// An edit lights its round at once, and its shape follows within this time: one frame shows both.
constexpr int lit_after_ms = 12;
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
    void show_picture(QImage picture) {
        picture_ = std::move(picture);
        update();
    }
    [[nodiscard]] QSize pixels() const { return (QSizeF(size()) * devicePixelRatioF()).toSize(); }
    void leave(bool forward) { focusNextPrevChild(forward); }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        if (picture_.isNull()) picture_ = view_.draw_coarsely(pixels());
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
    connect(&rest_, &QTimer::timeout, this, &PainterSceneView::start_drawing_finely);
    lit_later_.setSingleShot(true);
    lit_later_.setInterval(lit_after_ms);
    connect(&lit_later_, &QTimer::timeout, this, &PainterSceneView::stale);
    set_background(frame_->palette().color(QPalette::Window));
}

PainterSceneView::~PainterSceneView() { delete frame_; }

QWidget* PainterSceneView::widget() { return frame_; }

void PainterSceneView::stale() {
    stop_drawing_finely();
    lit_later_.stop();
    rest_.start();
    if (canvas_) canvas_->stale();
}

void PainterSceneView::show_surface() { stale(); }
void PainterSceneView::show_lit() {
    stop_drawing_finely();
    lit_later_.start();
}
void PainterSceneView::show_parts() { stale(); }
void PainterSceneView::show_ghost() { stale(); }
void PainterSceneView::show_camera() { stale(); }
void PainterSceneView::show_background() {
    if (frame_) frame_->set_fill(background());
    stale();
}

/// With its rim, for a picture with so many pixels to one of the screen's logical ones.
SoftwareScene PainterSceneView::opaque_scene(double pixel_ratio) const {
    QColor opaque = background();
    opaque.setAlpha(255);
    SoftwareScene scene = software_scene(opaque);
    scene.rim = rim();
    scene.rim_px = rim_width_px * pixel_ratio;
    return scene;
}

QImage PainterSceneView::draw_coarsely(QSize pixels) {
    const int share = moving_ms_ > slow_ms ? 2 : 1;
    DrawingRun quickly;
    quickly.every_other_pixel = true;
    QElapsedTimer timer;
    timer.start();
    QImage image = draw_software_picture(opaque_scene(canvas_->devicePixelRatioF() / share), camera(),
                                         pixels / share, 1, quickly);
    moving_ms_ = static_cast<double>(timer.nsecsElapsed()) / 1e6 * share * share;
    return image;
}

void PainterSceneView::start_drawing_finely() {
    if (!canvas_ || !canvas_->isVisible()) return;
    is_fine_ = false;
    fine_.start_latest(Lane::longer,
                       [this, scene = opaque_scene(canvas_->devicePixelRatioF()), camera = camera(),
                        pixels = canvas_->pixels()](const TaskRun& run) -> Delivery {
                           QImage image = draw_software_picture(scene, camera, pixels, fine_samples,
                                                                {Lane::longer, run.stop});
                           return [this, image = std::move(image)] {
                               if (!canvas_) return;
                               is_fine_ = true;
                               canvas_->show_picture(image);
                           };
                       });
}

void PainterSceneView::stop_drawing_finely() {
    is_fine_ = false;
    fine_.cancel();
}

}  // namespace roundwright::render
