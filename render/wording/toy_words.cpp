#include "render/wording/toy_words.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/amounts.h"
#include "render/wording/length_text.h"
#include "render/wording/measure_words.h"

namespace roundwright {
namespace {

struct ToyWords {
    Q_DECLARE_TR_FUNCTIONS(ToyWords)
};

/// A slope that is hardly one.
constexpr double almost_level_degrees = 1;
/// No table is so steep.
constexpr double steepest_degrees = 45;

QString slope_text(double degrees) { return QLocale().toString(std::floor(degrees), 'f', 0); }

QString depth_words(const SizeEstimate& depth, LengthUnit units) {
    const QString deep = ToyWords::tr("%1 deep").arg(length_text(depth.likely, units));
    const QString between = length_range_text(depth.low, depth.high, units);
    return between == length_number(depth.likely, units) ? deep
                                                         : QStringLiteral("%1 (%2)").arg(deep, between);
}

QString rests_words(Stance stance) {
    switch (stance) {
        case Stance::standing:
            return ToyWords::tr("stands");
        case Stance::sitting:
            return ToyWords::tr("sits");
        case Stance::lying:
            return ToyWords::tr("lies on its back");
    }
    return {};
}

QString weight_to_hold_words(const ToyMeasures& measures) {
    if (!measures.weight_to_hold_g) return ToyWords::tr("no weight in its base would hold it");
    return ToyWords::tr("about %1 of pellets in its base would hold it")
        .arg(grams_text(grams_upwards(*measures.weight_to_hold_g)));
}

}  // namespace

QString toy_size_words(const ToyMeasures& measures, LengthUnit units) {
    const auto range = [](const SizeEstimate& size) { return Range{size.low, size.high}; };
    return ToyWords::tr("%1, %2, %3, %4")
        .arg(width_words(measures.width_mm.likely, range(measures.width_mm), units),
             height_words(measures.height_mm.likely, range(measures.height_mm), units),
             depth_words(measures.depth_mm, units), weight_words(measures.mass_g, units));
}

QString toy_standing_words(const ToyMeasures& measures, Stance stance) {
    const double slope = measures.stable_degrees.likely;
    if (slope <= 0) return ToyWords::tr("tips over by itself; %1").arg(weight_to_hold_words(measures));
    if (slope >= steepest_degrees) return ToyWords::tr("%1 firmly").arg(rests_words(stance));
    const QString tips =
        slope < almost_level_degrees
            ? ToyWords::tr("%1, but tips over at a touch").arg(rests_words(stance))
            : ToyWords::tr("%1, and tips over on a slope of %2°").arg(rests_words(stance), slope_text(slope));
    if (slope >= well_stable_degrees) return tips;
    return ToyWords::tr("%1; %2").arg(tips, weight_to_hold_words(measures));
}

}  // namespace roundwright
