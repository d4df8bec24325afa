#include "app/reshape/form_icon.h"

#include <algorithm>

#include <QPainter>
#include <QPalette>

#include "app/reshape/outline_placement.h"

namespace roundwright::app {
namespace {

QPixmap picture_of(const Silhouette& outline, bool at_top, const QColor& colour) {
    QPixmap pixmap(2 * form_icon_size, 2 * form_icon_size);
    pixmap.setDevicePixelRatio(2);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    OutlinePlacement here;
    here.pixels_per_mm = (form_icon_size - 4) / std::max(width_mm(outline), height_mm(outline));
    here.upwards = at_top ? 1 : -1;
    const double down = here.upwards * height_mm(outline) / 2 * here.pixels_per_mm;
    here.axis = QPointF(form_icon_size / 2.0, form_icon_size / 2.0 - down);
    painter.setPen(QPen(colour, 1.6));
    painter.drawPath(here.both_sides(outline));
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
