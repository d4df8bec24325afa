#include "app/shape/scale_bar.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "app/kit/spoken_roles.h"
#include "app/kit/theme.h"
#include "core/base/units.h"
#include "render/wording/length_text.h"

namespace roundwright::app {
namespace {

constexpr int bar_room = 90;  // pixels, logical

}  // namespace

double scale_bar_length_mm(double most_mm, LengthUnit units) {
    if (!(most_mm > 0) || !std::isfinite(most_mm)) return 0;
    if (units == LengthUnit::inches) {
        const double most_inches = std::max(most_mm / mm_per_inch, 0.125);
        return mm_per_inch * std::exp2(std::floor(std::log2(most_inches)));
    }
    const double decade = std::pow(10.0, std::floor(std::log10(std::max(most_mm, 1.0))));
    const double in_decade = std::max(most_mm, 1.0) / decade;
    return decade * (in_decade >= 5 ? 5 : in_decade >= 2 ? 2 : 1);
}

ScaleBar::ScaleBar(Preferences& preferences, QWidget* parent) : QWidget(parent), preferences_(preferences) {
    speak_as(*this, QAccessible::Graphic);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(&preferences_, &Preferences::units_changed, this, [this] {
        name_it();
        update();
    });
}

void ScaleBar::set_pixels_per_mm(double pixels_per_mm) {
    if (pixels_per_mm == pixels_per_mm_) return;
    pixels_per_mm_ = pixels_per_mm;
    name_it();
    update();
}

void ScaleBar::name_it() {
    if (pixels_per_mm_ <= 0) return;
    const double length = scale_bar_length_mm(bar_room / pixels_per_mm_, preferences_.units());
    setAccessibleName(tr("Scale: the bar is %1 long").arg(length_text(length, preferences_.units())));
}

QSize ScaleBar::sizeHint() const {
    return {bar_room + 12 + fontMetrics().horizontalAdvance(QStringLiteral("8888 mm")),
            fontMetrics().height() + 6};
}

void ScaleBar::paintEvent(QPaintEvent*) {
    if (pixels_per_mm_ <= 0) return;
    const double length_mm = scale_bar_length_mm(bar_room / pixels_per_mm_, preferences_.units());
    const double bar = length_mm * pixels_per_mm_;
    const double y = height() / 2.0;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette().color(QPalette::WindowText), 1.5));
    painter.drawLine(QPointF(2, y), QPointF(2 + bar, y));
    for (const double x : {2.0, 2 + bar}) painter.drawLine(QPointF(x, y - 4), QPointF(x, y + 4));
    painter.setPen(Theme::colours().quiet_text);
    painter.drawText(QRectF(bar + 10, 0, width() - bar - 10, height()), Qt::AlignLeft | Qt::AlignVCenter,
                     length_text(length_mm, preferences_.units()));
}

}  // namespace roundwright::app
