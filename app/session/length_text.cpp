#include "app/session/length_text.h"

#include <array>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

namespace roundwright::app {
namespace {

constexpr double mm_per_inch = 25.4;  // exact: international yard and pound agreement, 1959

QString eighths_text(long long eighths) {
    static constexpr std::array<char16_t, 8> fractions{u' ',      u'\u215B', u'\u00BC', u'\u215C',
                                                       u'\u00BD', u'\u215D', u'\u00BE', u'\u215E'};
    const auto whole = eighths / 8;
    const auto rest = static_cast<std::size_t>(eighths % 8);
    QString text = whole > 0 || rest == 0 ? QLocale().toString(whole) : QString();
    if (rest > 0) text += QChar(fractions[rest]);
    return text;
}

}  // namespace

QString length_number(double mm, LengthUnit units) {
    if (!std::isfinite(mm)) return QStringLiteral("–");
    if (units == LengthUnit::millimetres) return QLocale().toString(std::llround(mm));
    const auto eighths = std::llround(std::abs(mm) / mm_per_inch * 8);
    return (mm < 0 && eighths > 0 ? QStringLiteral("\u2212") : QString()) + eighths_text(eighths);
}

QString unit_name(LengthUnit units) {
    return units == LengthUnit::inches ? QCoreApplication::translate("Length", "in")
                                       : QCoreApplication::translate("Length", "mm");
}

QString length_text(double mm, LengthUnit units) {
    return QStringLiteral("%1\u00A0%2").arg(length_number(mm, units), unit_name(units));
}

QString length_range_text(double low_mm, double high_mm, LengthUnit units) {
    const QString low = length_number(low_mm, units);
    const QString high = length_number(high_mm, units);
    return low == high ? low : QStringLiteral("%1\u2013%2").arg(low, high);
}

}  // namespace roundwright::app
