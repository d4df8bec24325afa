#include "render/wording/amounts.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/gauge/hook.h"

namespace roundwright {
namespace {

constexpr double mm_per_metre = 1000;
constexpr double metres_per_yard = mm_per_yard / mm_per_metre;
constexpr double grams_per_ounce = 28.349523125;  // exact: international yard and pound agreement, 1959

struct AmountsText {
    Q_DECLARE_TR_FUNCTIONS(Amounts)
};

QString whole_or_tenth(double value) { return QLocale().toString(value, 'f', value < 9.95 ? 1 : 0); }

/// A whole number stays what it is, though it was computed a little too large.
double whole_upwards(double value) { return std::ceil(value - 1e-6); }

double half_gram(double grams) { return grams < 10 ? std::round(grams * 2) / 2 : std::round(grams); }
QString grams_number(double grams) { return number_words(half_gram(grams)); }
QString most_grams_number(double grams) { return number_words(std::max(0.5, half_gram(grams))); }
QString ounces_number(double grams) { return QString::number(grams / grams_per_ounce, 'f', 1); }

/// "2 to 3 g"; of what rounds to one number, or begins at nothing, that alone.
QString weight_range(const QString& low, const QString& high, const QString& unit) {
    if (low == high) return AmountsText::tr("%1 %2").arg(high, unit);
    if (low.toDouble() == 0) return AmountsText::tr("up to %1 %2").arg(high, unit);
    return AmountsText::tr("%1 to %2 %3").arg(low, high, unit);
}

}  // namespace

QString yarn_length_words(double mm, LengthUnit units) {
    if (units == LengthUnit::inches) return AmountsText::tr("%1 yd").arg(whole_or_tenth(mm / mm_per_yard));
    return AmountsText::tr("%1 m").arg(whole_or_tenth(mm / mm_per_metre));
}

QString yarn_to_buy_number(double metres, LengthUnit units) {
    return QString::number(
        whole_upwards(units == LengthUnit::millimetres ? metres : metres / metres_per_yard));
}

QString yarn_to_buy_words(double metres, LengthUnit units) {
    const QString number = yarn_to_buy_number(metres, units);
    return units == LengthUnit::millimetres ? AmountsText::tr("%1 m").arg(number)
                                            : AmountsText::tr("%1 yd").arg(number);
}

double printed_yarn_metres(double metres, LengthUnit units) {
    const double unit = units == LengthUnit::millimetres ? 1 : metres_per_yard;
    return whole_upwards(metres / unit) * unit;
}

double grams_upwards(double grams) {
    return grams > 9.5 ? whole_upwards(grams) : whole_upwards(2 * grams) / 2;
}

QString weight_words(const Estimate& grams, LengthUnit units) {
    const QString metric =
        weight_range(grams_number(grams.low), most_grams_number(grams.high), AmountsText::tr("g"));
    const QString most_ounces = ounces_number(grams.high);
    if (units == LengthUnit::millimetres || most_ounces.toDouble() == 0) return metric;
    return AmountsText::tr("%1 (%2)").arg(
        weight_range(ounces_number(grams.low), most_ounces, AmountsText::tr("oz")),
        QString(metric).replace(QLatin1Char(' '), QChar::Nbsp));
}

QString grams_text(double grams) {
    return AmountsText::tr("%1 g").arg(QLocale().toString(grams, 'f', grams < 10 ? 1 : 0));
}

QString hook_names(double hook_mm) {
    const Hook* hook = find_hook(hook_mm);
    if (hook == nullptr) return {};
    const auto view = [](std::string_view s) {
        return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
    };
    QStringList names;
    if (!hook->us.empty()) names += AmountsText::tr("US %1").arg(view(hook->us));
    if (!hook->uk.empty()) names += AmountsText::tr("UK %1").arg(view(hook->uk));
    return names.join(QStringLiteral(", "));
}

QString hook_with_names(double hook_mm) {
    const QString size = AmountsText::tr("%1 mm").arg(QString::number(hook_mm, 'g', 4));
    const QString names = hook_names(hook_mm);
    return names.isEmpty() ? size : QStringLiteral("%1 (%2)").arg(size, names);
}

QString time_words(double minutes) {
    const long step = minutes < 60 ? 1 : 5;
    const long rounded = std::max(1L, std::lround(minutes / static_cast<double>(step))) * step;
    if (rounded < 60) return AmountsText::tr("%1 min").arg(rounded);
    if (rounded % 60 == 0) return AmountsText::tr("%1 h").arg(rounded / 60);
    return AmountsText::tr("%1 h %2 min").arg(rounded / 60).arg(rounded % 60);
}

double stitches_in_swatch(double stitch_mm, LengthUnit units) {
    return (units == LengthUnit::millimetres ? 100.0 : 4 * mm_per_inch) / stitch_mm;
}

QString swatch_words(LengthUnit units) {
    return units == LengthUnit::millimetres ? AmountsText::tr("10 cm") : AmountsText::tr("4 in");
}

QString number_words(double value) {
    const double rounded = std::round(value * 10) / 10;
    return QString::number(rounded, 'f', rounded == std::round(rounded) ? 0 : 1);
}

}  // namespace roundwright
