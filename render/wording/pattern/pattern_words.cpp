#include "render/wording/pattern/pattern_words.h"

#include <algorithm>
#include <cmath>

#include <QStringList>

#include "core/base/units.h"
#include "core/gauge/hook.h"
#include "core/gauge/yarn_standard.h"
#include "render/wording/length_text.h"

namespace roundwright::render {
namespace {

constexpr double metres_per_yard = 0.9144;
constexpr double grams_per_ounce = 28.349523125;

/// A length without its unit. Inches are to the eighth, and never none: what is in a pattern has a size.
QString bare_length(double mm, LengthUnit units) {
    const double shown = units == LengthUnit::inches ? std::max(mm, mm_per_inch / 8) : mm;
    return length_number(shown, units, NumberStyle::printed);
}

/// A whole number stays what it is, though it was computed a little too large.
double whole_upwards(double value) { return std::ceil(value - 1e-6); }

double half_gram(double grams) { return grams < 10 ? std::round(grams * 2) / 2 : std::round(grams); }
QString grams_number(double grams) { return number_words(half_gram(grams)); }
QString most_grams_number(double grams) { return number_words(std::max(0.5, half_gram(grams))); }
QString ounces_number(double grams) { return QString::number(grams / grams_per_ounce, 'f', 1); }

/// "2 to 3 g"; of what rounds to one number, or begins at nothing, that alone.
QString weight_range(const QString& low, const QString& high, const QString& unit) {
    if (low == high) return Pattern::tr("%1 %2").arg(high, unit);
    if (low.toDouble() == 0) return Pattern::tr("up to %1 %2").arg(high, unit);
    return Pattern::tr("%1 to %2 %3").arg(low, high, unit);
}

/// What a ball of this weight is called over the counter. Source of the US names: Craft Yarn Council,
/// Standard Yarn Weight System, "type of yarns in category"; of the UK names: common practice.
QString yarn_weight_name(YarnWeight weight, Terms terms) {
    switch (weight) {
        case YarnWeight::lace:
            return words(terms, Pattern::tr("Lace"), Pattern::tr("Lace, 2-ply"));
        case YarnWeight::super_fine:
            return words(terms, Pattern::tr("Fingering"), Pattern::tr("4-ply"));
        case YarnWeight::fine:
            return words(terms, Pattern::tr("Sport"), Pattern::tr("Sport, 5-ply"));
        case YarnWeight::light:
            return Pattern::tr("DK");
        case YarnWeight::medium:
            return words(terms, Pattern::tr("Worsted"), Pattern::tr("Aran"));
        case YarnWeight::bulky:
            return words(terms, Pattern::tr("Bulky"), Pattern::tr("Chunky"));
        case YarnWeight::super_bulky:
            return words(terms, Pattern::tr("Super bulky"), Pattern::tr("Super chunky"));
        case YarnWeight::jumbo:
            return Pattern::tr("Jumbo");
    }
    return {};
}

}  // namespace

QString words(Terms terms, const QString& us, const QString& uk) { return terms == Terms::us ? us : uk; }

QString length_words(double mm, LengthUnit units) {
    return QStringLiteral("%1 %2").arg(bare_length(mm, units), unit_name(units));
}

QString length_words(const Estimate& mm, LengthUnit units) {
    const QString low = bare_length(mm.low, units);
    const QString high = bare_length(mm.high, units);
    if (low == high) return length_words(mm.likely, units);
    return Pattern::tr("%1 (%2 to %3)").arg(length_words(mm.likely, units), low, high);
}

QString size_words(double width_mm, double height_mm, LengthUnit units) {
    return Pattern::tr("%1 × %2 %3")
        .arg(bare_length(width_mm, units), bare_length(height_mm, units), unit_name(units));
}

QString yarn_to_buy_number(double metres, LengthUnit units) {
    return QString::number(
        whole_upwards(units == LengthUnit::millimetres ? metres : metres / metres_per_yard));
}

QString yarn_to_buy_words(double metres, LengthUnit units) {
    const QString number = yarn_to_buy_number(metres, units);
    return units == LengthUnit::millimetres ? Pattern::tr("%1 m").arg(number)
                                            : Pattern::tr("%1 yd").arg(number);
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
        weight_range(grams_number(grams.low), most_grams_number(grams.high), Pattern::tr("g"));
    const QString most_ounces = ounces_number(grams.high);
    if (units == LengthUnit::millimetres || most_ounces.toDouble() == 0) return metric;
    return Pattern::tr("%1 (%2)").arg(weight_range(ounces_number(grams.low), most_ounces, Pattern::tr("oz")),
                                      QString(metric).replace(QLatin1Char(' '), QChar::Nbsp));
}

QString hook_words(double hook_mm) {
    QString text = Pattern::tr("%1 mm").arg(QString::number(hook_mm, 'g', 4));
    const Hook* hook = find_hook(hook_mm);
    if (hook == nullptr) return text;
    QStringList names;
    const auto view = [](std::string_view s) {
        return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
    };
    if (!hook->us.empty()) names += Pattern::tr("US %1").arg(view(hook->us));
    if (!hook->uk.empty()) names += Pattern::tr("UK %1").arg(view(hook->uk));
    if (!names.isEmpty()) text += QStringLiteral(" (%1)").arg(names.join(QStringLiteral(", ")));
    return text;
}

QString yarn_weight_words(YarnWeight weight, Terms terms) {
    return Pattern::tr("%1 (%2)").arg(yarn_weight_name(weight, terms)).arg(yarn_standard(weight).number);
}

QString time_words(double minutes) {
    const long step = minutes < 60 ? 1 : 5;
    const long rounded = std::max(1L, std::lround(minutes / static_cast<double>(step))) * step;
    if (rounded < 60) return Pattern::tr("%1 min").arg(rounded);
    if (rounded % 60 == 0) return Pattern::tr("%1 h").arg(rounded / 60);
    return Pattern::tr("%1 h %2 min").arg(rounded / 60).arg(rounded % 60);
}

QString level_words(Level level) {
    switch (level) {
        case Level::basic:
            return Pattern::tr("Basic");
        case Level::easy:
            return Pattern::tr("Easy");
        case Level::intermediate:
            return Pattern::tr("Intermediate");
        case Level::complex:
            return Pattern::tr("Complex");
    }
    return {};
}

double stitches_in_swatch(double stitch_mm, LengthUnit units) {
    return (units == LengthUnit::millimetres ? 100.0 : 4 * mm_per_inch) / stitch_mm;
}

QString swatch_words(LengthUnit units) {
    return units == LengthUnit::millimetres ? Pattern::tr("10 cm") : Pattern::tr("4 in");
}

QString number_words(double value) {
    const double rounded = std::round(value * 10) / 10;
    return QString::number(rounded, 'f', rounded == std::round(rounded) ? 0 : 1);
}

}  // namespace roundwright::render
