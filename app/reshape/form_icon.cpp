#include "app/reshape/form_icon.h"

#include <algorithm>

#include <QPainter>
#include <QPalette>

namespace roundwright::app {
namespace {

QPixmap picture_of(const Silhouette& outline, bool at_top, const QColor& colour) {
    QPixmap pixmap(2 * form_icon_size, 2 * form_icon_size);
    pixmap.setDevicePixelRatio(2);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    const double scale = (form_icon_size - 4) / std::max(width_mm(outline), height_mm(outline));
    painter.translate(form_icon_size / 2.0, form_icon_size / 2.0);
    painter.scale(scale, at_top ? scale : -scale);
    painter.translate(0, -height_mm(outline) / 2);
    QPolygonF polygon;
    for (const Vec2& p : outline.points) polygon << QPointF(p.x(), p.y());
    for (auto p = outline.points.rbegin(); p != outline.points.rend(); ++p)
        polygon << QPointF(-p->x(), p->y());
    painter.setPen(QPen(colour, 1.6 / scale));
    painter.drawPolygon(polygon);
    return pixmap;
}

}  // namespace

QIcon form_icon(FormKind kind, const QPalette& palette) {
    const Silhouette outline = silhouette_of(usual_form(kind, 60));
    QIcon icon(picture_of(outline, starts_at_top(kind), palette.color(QPalette::Text)));
    icon.addPixmap(picture_of(outline, starts_at_top(kind), palette.color(QPalette::HighlightedText)),
                   QIcon::Selected);
    return icon;
}

}  // namespace roundwright::app
