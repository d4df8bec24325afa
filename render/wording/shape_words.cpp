#include "render/wording/shape_words.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "core/shape/covered_ball.h"
#include "core/shape/highest_wave.h"
#include "core/shape/oval_plan.h"
#include "core/shape/own_depth.h"
#include "core/shape/reads_as_flat.h"
#include "core/study/coil_stage.h"
#include "core/study/corners.h"
#include "render/wording/length_text.h"
#include "render/wording/measure_words.h"

namespace roundwright {
namespace {

struct ShapeWords {
    Q_DECLARE_TR_FUNCTIONS(ShapeWords)
};

QString layers_words(const PieceMeasures& shape, LengthUnit units) {
    return ShapeWords::tr("flat, two layers of fabric, %1 thick").arg(length_text(shape.depth_mm, units));
}

QString proportion_words(const ShapeProblem& problem, const PieceMeasures& shape) {
    if (reads_as_flat(problem, shape.width_mm, shape.height_mm)) return ShapeWords::tr("flat");
    const double height_over_width = shape.height_mm / shape.width_mm;
    if (height_over_width < 0.5) return ShapeWords::tr("a low bowl, much wider than tall");
    if (height_over_width < 0.9) return ShapeWords::tr("wider than tall");
    if (height_over_width <= 1.1) return ShapeWords::tr("about as tall as wide");
    if (height_over_width <= 2) return ShapeWords::tr("taller than wide");
    return ShapeWords::tr("long and slim");
}

QString end_words(const ShapeProblem& problem) {
    const bool starts_closed = problem.first != MeridianEnd::open;
    const bool ends_closed = problem.last != MeridianEnd::open;
    if (problem.sewn_straight)
        return starts_closed ? ShapeWords::tr("sewn straight at the last round")
                             : ShapeWords::tr("open at the start, sewn straight at the last round");
    if (starts_closed && ends_closed) return ShapeWords::tr("closed at both ends");
    if (starts_closed) return ShapeWords::tr("open at the last round");
    return ends_closed ? ShapeWords::tr("open at the start") : ShapeWords::tr("open at both ends");
}

/// Of a strip that curls: how often it goes around, to the half.
QString coil_words(const PieceStudy& study) {
    const LoopMeasures& inner = study.measures().loops.front();
    const double turns = std::round(2 * inner.radius_mm / (inner.width_mm / 2)) / 2;
    return ShapeWords::tr("a strip that curls into a coil of %1 turns")
        .arg(QLocale().toString(turns, 'f', turns == std::floor(turns) ? 0 : 1));
}

}  // namespace

QString size_words(const PieceStudy& study, LengthUnit units) {
    const QString wide = width_words(study.measures().width_mm, study.size().width_mm, units);
    const QString tall = height_words(study.measures().height_mm, study.size().height_mm, units);
    const double waves = highest_wave_mm(study.lies());
    const auto deep = own_depth_mm(study.measures());
    const QString across =
        deep ? QStringLiteral("%1, %2").arg(
                   wide, depth_words(*deep, depth_range(study.measures(), study.size().width_mm), units))
             : wide;
    const QString size =
        waves > 0 ? ShapeWords::tr("%1, %2, edge waves %3").arg(across, tall, length_text(waves, units))
                  : QStringLiteral("%1, %2").arg(across, tall);
    return study.measures().fidelity == Fidelity::equivalent_round
               ? ShapeWords::tr("as a round piece %1").arg(size)
               : size;
}

QString equivalent_round_words(const PieceStudy& study, LengthUnit units) {
    if (study.measures().fidelity != Fidelity::equivalent_round) return {};
    if (!starts_oval(study.problem()))
        return ShapeWords::tr("Worked in rows: shown and measured as the round piece with the same stitches");
    const QString shown =
        ShapeWords::tr("An oval, shown and measured as the round piece with the same stitches");
    const auto plan = oval_plan(study.problem(), study.measures());
    if (!plan) return shown;
    return ShapeWords::tr("%1; as an oval about %2 long and %3 wide")
        .arg(shown, length_text(plan->length_mm, units), length_text(plan->width_mm, units));
}

QString fabric_words(const PieceStudy& study, LengthUnit units) {
    const PieceMeasures& shape = study.measures();
    if (!shape.usable() || !(study.fabric.mm > 0)) return {};
    const QString thick = fine_length_text(study.fabric.mm, units);
    const auto inside =
        is_coil(study) ? std::nullopt : inside_width_mm(study.problem(), shape, study.fabric.mm);
    if (!inside) return ShapeWords::tr("fabric about %1 thick").arg(thick);
    const QString wide = length_text(*inside, units);
    const auto ball = study.problem().area_stretch > 0
                          ? std::nullopt
                          : largest_covered_ball_mm(study.problem(), study.fabric.mm);
    if (!ball) return ShapeWords::tr("fabric about %1 thick, %2 wide inside").arg(thick, wide);
    return ShapeWords::tr("fabric about %1 thick, %2 wide inside, fits over a ball of up to %3")
        .arg(thick, wide, length_text(*ball, units));
}

QString shape_words(const PieceStudy& study, LengthUnit units) {
    const PieceMeasures& shape = study.measures();
    if (!shape.usable() || shape.width_mm <= 0) return {};
    if (is_coil(study)) return coil_words(study);
    QString words =
        ShapeWords::tr("%1, widest at round %2, %3")
            .arg(study.problem().limp ? layers_words(shape, units) : proportion_words(study.problem(), shape))
            .arg(std::max<std::size_t>(widest_loop(shape), 1))
            .arg(end_words(study.problem()));
    const double waves = highest_wave_mm(study.lies());
    if (waves > 0) words = ShapeWords::tr("%1, with waves %2 high").arg(words, length_text(waves, units));
    if (const auto corners = highest_corners(study))
        words = ShapeWords::tr("%1, %Ln corner(s) standing out by up to %2", nullptr, corners->corners)
                    .arg(words, length_text(corners->out_mm, units));
    const QString instead = equivalent_round_words(study, units);
    return instead.isEmpty() ? words : QStringLiteral("%1; %2").arg(instead, words);
}

}  // namespace roundwright
