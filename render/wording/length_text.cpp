#include "render/wording/length_text.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "core/base/units.h"

namespace roundwright {
namespace {

struct LengthText {
    Q_DECLARE_TR_FUNCTIONS(Length)
};

QString whole_number(long long number, NumberStyle style) {
    return style == NumberStyle::local ? QLocale().toString(number) : QString::number(number);
}

QString eighths_text(long long eighths, NumberStyle style) {
    const auto whole = eighths / 8;
    const auto rest = static_cast<std::size_t>(eighths % 8);
    QString text = whole > 0 || rest == 0 ? whole_number(whole, style) : QString();
    if (rest > 0) text += QChar(signs_of_eighths[rest]);
    return text;
}

QString fine_number(double mm, LengthUnit units) {
    return units == LengthUnit::inches ? QLocale().toString(mm / mm_per_inch, 'f', 2)
                                       : QLocale().toString(mm, 'f', 1);
}

}  // namespace

QString length_number(double mm, LengthUnit units, NumberStyle style) {
    if (!std::isfinite(mm)) return QStringLiteral("–");
    if (units == LengthUnit::millimetres) return whole_number(std::llround(mm), style);
    const auto eighths = std::llround(std::abs(mm) / mm_per_inch * 8);
    return (mm < 0 && eighths > 0 ? QStringLiteral("\u2212") : QString()) + eighths_text(eighths, style);
}

QString unit_name(LengthUnit units) {
    return units == LengthUnit::inches ? LengthText::tr("in") : LengthText::tr("mm");
}

QString length_text(double mm, LengthUnit units) {
    return QStringLiteral("%1\u00A0%2").arg(length_number(mm, units), unit_name(units));
}

QString fine_length_text(double mm, LengthUnit units) {
    if (!std::isfinite(mm)) return QStringLiteral("–");
    return QStringLiteral("%1\u00A0%2").arg(fine_number(mm, units), unit_name(units));
}

QString fine_length_with_range(double mm, double error_mm, LengthUnit units) {
    const QString low = fine_number(std::max(0.0, mm - error_mm), units);
    const QString high = fine_number(mm + error_mm, units);
    const QString text = fine_length_text(mm, units);
    return low == high ? text : QStringLiteral("%1 (%2\u2013%3)").arg(text, low, high);
}

QString length_range_text(double low_mm, double high_mm, LengthUnit units) {
    const QString low = length_number(low_mm, units);
    const QString high = length_number(high_mm, units);
    return low == high ? low : QStringLiteral("%1\u2013%2").arg(low, high);
}

}  // namespace roundwright
