#include "render/raster/scene_frame.h"

#include <QPainter>
#include <QVBoxLayout>

#include "render/drawing/contrast.h"

namespace roundwright::render {

namespace {

constexpr int ring_px = 2;
constexpr double least_contrast = 3;  // WCAG 2.2, 2.4.13

/// The accent; on a ground that has stepped aside too near to it, black or white.
QColor ring_on(const QColor& ground, const QColor& accent) {
    if (contrast_ratio(ground, accent) >= least_contrast) return accent;
    return contrast_ratio(ground, Qt::white) > contrast_ratio(ground, Qt::black) ? Qt::white : Qt::black;
}

}  // namespace

SceneFrame::SceneFrame(QWidget* inner, QWidget* parent) : QWidget(parent) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(ring_px, ring_px, ring_px, ring_px);
    layout->addWidget(inner);
    setFocusPolicy(Qt::StrongFocus);
    setFocusProxy(inner);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void SceneFrame::set_ring(bool shown) {
    if (ring_ == shown) return;
    ring_ = shown;
    update();
}

void SceneFrame::set_fill(const QColor& colour) {
    fill_ = colour;
    update();
}

void SceneFrame::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const QColor ground = fill_.isValid() ? fill_ : palette().color(QPalette::Window);
    painter.fillRect(rect(), ground);
    if (!ring_) return;
    painter.setPen(QPen(ring_on(ground, palette().color(QPalette::Highlight)), ring_px));
    constexpr double half = ring_px / 2.0;
    painter.drawRect(QRectF(rect()).adjusted(half, half, -half, -half));
}

}  // namespace roundwright::render
