#include "render/raster/scene_frame.h"

#include <QPainter>
#include <QVBoxLayout>

namespace roundwright::render {

namespace {

constexpr int ring_px = 2;

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
    painter.fillRect(rect(), fill_.isValid() ? fill_ : palette().color(QPalette::Window));
    if (!ring_) return;
    painter.setPen(QPen(palette().color(QPalette::Highlight), ring_px));
    constexpr double half = ring_px / 2.0;
    painter.drawRect(QRectF(rect()).adjusted(half, half, -half, -half));
}

}  // namespace roundwright::render
