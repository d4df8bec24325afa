#include "render/chart/round_chart_view.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>

namespace roundwright::render {
namespace {

constexpr double least_zoom = 0.5, most_zoom = 24, key_zoom = 1.25, margin = 8;

QColor mixed(const QColor& a, const QColor& b, double share) {
    const auto channel = [&](int x, int y) { return static_cast<int>(std::lround(x + share * (y - x))); };
    return {channel(a.red(), b.red()), channel(a.green(), b.green()), channel(a.blue(), b.blue())};
}

}  // namespace

RoundChartView::RoundChartView(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setBackgroundRole(QPalette::Base);
    setAutoFillBackground(true);
}

void RoundChartView::set_chart(ChartLayout layout, ChartOptions options) {
    layout_ = std::move(layout);
    options.lit_rounds = options_.lit_rounds;
    options_ = std::move(options);
    hovered_.reset();
    update();
}

void RoundChartView::set_lit_rounds(const std::vector<int>& rounds) {
    options_.lit_rounds = rounds;
    update();
}

void RoundChartView::fit() {
    zoom_ = 1;
    moved_ = {};
    update();
}

void RoundChartView::zoom(double factor) { zoom_about(QRectF(rect()).center(), factor); }

ChartOptions RoundChartView::options_now() const {
    ChartOptions options = options_;
    const QPalette& colours = palette();
    options.sector = {};
    options.paper = colours.color(QPalette::Base);
    options.text = colours.color(QPalette::Text);
    options.band = mixed(options.paper, options.text, 0.05);
    options.lit = mixed(options.paper, colours.color(QPalette::Highlight), 0.3);
    options.target = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    options.units_per_stitch = 0;
    options.units_per_stitch = place_chart(layout_, options).units_per_stitch * zoom_;
    options.target.translate(moved_);
    return options;
}

void RoundChartView::paintEvent(QPaintEvent* /*event*/) {
    if (layout_.stitches.empty()) return;
    QPainter painter(this);
    draw_chart(painter, layout_, options_now());
    if (!hasFocus()) return;
    painter.setPen(QPen(palette().color(QPalette::Highlight), 1));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

std::optional<std::size_t> RoundChartView::stitch_under(const QPointF& place) const {
    if (layout_.stitches.empty()) return {};
    return stitch_at(layout_, place_chart(layout_, options_now()), place);
}

/// What lies under the pointer stays there.
void RoundChartView::zoom_about(const QPointF& place, double factor) {
    const double next = std::clamp(zoom_ * factor, least_zoom, most_zoom);
    const QPointF from_middle = place - QRectF(rect()).center();
    moved_ = from_middle - (from_middle - moved_) * (next / zoom_);
    zoom_ = next;
    update();
}

void RoundChartView::hover(std::optional<std::size_t> stitch) {
    if (stitch == hovered_) return;
    hovered_ = stitch;
    if (stitch)
        Q_EMIT hovered(layout_.stitches[*stitch].round, layout_.stitches[*stitch].stitch);
    else
        Q_EMIT hovered(-1, -1);
}

void RoundChartView::wheelEvent(QWheelEvent* event) {
    zoom_about(event->position(), std::pow(0.999, -event->angleDelta().y()));
    event->accept();
}

void RoundChartView::mousePressEvent(QMouseEvent* event) {
    pressed_ = last_ = event->position();
    dragging_ = false;
}

void RoundChartView::mouseMoveEvent(QMouseEvent* event) {
    if (!(event->buttons() & Qt::LeftButton)) return hover(stitch_under(event->position()));
    if ((event->position() - pressed_).manhattanLength() > 4) dragging_ = true;
    if (dragging_) {
        moved_ += event->position() - last_;
        update();
    }
    last_ = event->position();
}

void RoundChartView::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || dragging_) return;
    const auto stitch = stitch_under(event->position());
    if (stitch)
        Q_EMIT clicked(layout_.stitches[*stitch].round, layout_.stitches[*stitch].stitch);
    else
        Q_EMIT clicked(-1, -1);
}

void RoundChartView::mouseDoubleClickEvent(QMouseEvent* /*event*/) { fit(); }

void RoundChartView::keyPressEvent(QKeyEvent* event) {
    const double step = 40;
    switch (event->key()) {
        case Qt::Key_Plus:
        case Qt::Key_Equal:
            zoom(key_zoom);
            return;
        case Qt::Key_Minus:
            zoom(1 / key_zoom);
            return;
        case Qt::Key_0:
            fit();
            return;
        case Qt::Key_Left:
            moved_ += QPointF(step, 0);
            break;
        case Qt::Key_Right:
            moved_ -= QPointF(step, 0);
            break;
        case Qt::Key_Up:
            moved_ += QPointF(0, step);
            break;
        case Qt::Key_Down:
            moved_ -= QPointF(0, step);
            break;
        default:
            QWidget::keyPressEvent(event);
            return;
    }
    update();
}

void RoundChartView::leaveEvent(QEvent* /*event*/) { hover({}); }

}  // namespace roundwright::render
