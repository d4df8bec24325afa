#include "app/plot/round_strips.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/base/units.h"
#include "core/shape/fabric_limits.h"
#include "render/wording/length_text.h"

namespace roundwright::app {

namespace {

constexpr double percent = 100;

struct RoundsPlotText {
    Q_DECLARE_TR_FUNCTIONS(RoundsPlot)
};

RoundStrip width_strip(const PieceStudy& study, LengthUnit units) {
    const bool inches = units == LengthUnit::inches;
    RoundStrip strip{RoundsPlotText::tr("Width"), {}, {}, 0, 0, inches ? 1 : 0, unit_name(units)};
    for (std::size_t k = 0; k < study.lies().size(); ++k)
        strip.values.push_back(study.measures().round(k).width_mm / (inches ? mm_per_inch : 1));
    return strip;
}

RoundStrip growth_strip(const PieceStudy& study) {
    const std::vector<StripLimit> limits{{1, RoundsPlotText::tr("lies flat")},
                                         {0, RoundsPlotText::tr("even")},
                                         {gathers_below_growth, RoundsPlotText::tr("gathers below")}};
    RoundStrip strip{RoundsPlotText::tr("Growth"), {}, limits, -1, 1.2, 2, {}};
    for (const RoundLie& lie : study.lies()) strip.values.push_back(lie.growth);
    return strip;
}

RoundStrip stretch_strip(const PieceStudy& study) {
    constexpr double most = percent * gaps_above_stretch;
    RoundStrip strip{RoundsPlotText::tr("Stretch around"),
                     {},
                     {{0, {}}, {most, RoundsPlotText::tr("gaps above")}},
                     -5,
                     1.1 * most,
                     0,
                     RoundsPlotText::tr("%")};
    for (std::size_t k = 0; k < study.lies().size(); ++k)
        strip.values.push_back(percent * study.measures().round(k).course_stretch);
    return strip;
}

}  // namespace

std::vector<RoundStrip> round_strips(const PieceStudy& study, LengthUnit units) {
    return {width_strip(study, units), growth_strip(study), stretch_strip(study)};
}

QString round_words(const std::vector<RoundStrip>& strips, int round) {
    QStringList words{RoundsPlotText::tr("Round %1").arg(round + 1)};
    for (const RoundStrip& strip : strips) {
        if (static_cast<std::size_t>(round) >= strip.values.size()) continue;
        const double value = strip.values[static_cast<std::size_t>(round)];
        words << RoundsPlotText::tr("%1: %2 %3")
                     .arg(strip.title, QLocale().toString(value, 'f', strip.decimals), strip.unit)
                     .trimmed();
    }
    return words.join(QLatin1Char('\n'));
}

}  // namespace roundwright::app
