#include "core/study/next_measurement.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "core/gauge/combined_gauge.h"
#include "core/gauge/gauge_belief.h"
#include "core/gauge/offered_circle.h"
#include "core/gauge/source_belief.h"
#include "core/shape/scaled_problem.h"
#include "core/shape/size_range.h"
#include "core/shape/solve_shape.h"

namespace roundwright {

namespace {

constexpr double step = 0.01;
constexpr double nine_in_ten = 1.645;
constexpr std::size_t measures = 3;
constexpr std::array<MeasuredOf, measures> measured_of{MeasuredOf::width, MeasuredOf::height,
                                                       MeasuredOf::circumference};

using Sizes = std::array<double, measures>;  // in the order of `measured_of`, mm

Sizes sizes_of(const PieceMeasures& piece) {
    double longest = 0;
    for (const LoopMeasures& loop : piece.loops) longest = std::max(longest, loop.length_mm());
    return {piece.width_mm, piece.height_mm, longest};
}

/// One length of a piece and how its logarithm moves with those of stitch width, round height and stretch.
struct Length {
    double mm = 0;
    Eigen::Vector2d by_gauge = Eigen::Vector2d::Zero();
    double by_stretch = 0;
};
using Lengths = std::array<Length, measures>;

std::optional<Sizes> sizes_at(const ShapeProblem& problem, const Shape& from) {
    const Shape shape = solve_shape(problem, {}, &from);
    if (shape.termination != Termination::converged) return std::nullopt;
    return sizes_of(measures_of(problem, shape));
}

std::optional<Lengths> lengths_of(const PieceStudy& study) {
    const Shape& shape = study.round_solved();
    if (!shape.usable() || shape.termination != Termination::converged) return std::nullopt;
    ShapeProblem fuller = study.problem();
    fuller.area_stretch *= 1 + step;
    const auto wider = sizes_at(scaled_problem(study.problem(), 1 + step, 1), shape);
    const auto taller = sizes_at(scaled_problem(study.problem(), 1, 1 + step), shape);
    const auto stuffed =
        fuller.area_stretch > 0 ? sizes_at(fuller, shape) : sizes_of(measures_of(study.problem(), shape));
    if (!wider || !taller || !stuffed) return std::nullopt;
    const Sizes now = sizes_of(measures_of(study.problem(), shape));
    const auto slope = [&](const Sizes& then, std::size_t i) {
        return now[i] > 0 && then[i] > 0 ? std::log(then[i] / now[i]) / std::log1p(step) : 0;
    };
    Lengths lengths;
    for (std::size_t i = 0; i < measures; ++i)
        lengths[i] = {now[i], {slope(*wider, i), slope(*taller, i)}, slope(*stuffed, i)};
    return lengths;
}

/// Widths and heights of all pieces; a height that is next to nothing (a disc) is none.
double error_of_sizes(const std::vector<std::optional<Lengths>>& pieces, const GaugeBelief& belief) {
    double variance = 0;
    int counted = 0;
    for (const auto& lengths : pieces) {
        for (std::size_t i = 0; lengths && i < 2; ++i) {
            if (!((*lengths)[i].mm > 0)) continue;
            variance += std::pow(deviation_along(belief, (*lengths)[i].by_gauge), 2);
            ++counted;
        }
    }
    return counted == 0 ? 0 : nine_in_ten * std::sqrt(variance / counted);
}

GaugeEvidence on_another_day(GaugeEvidence evidence) {
    evidence.deviation = std::hypot(evidence.deviation, evidence.direction.sum() * day_to_day_spread);
    return evidence;
}

bool has_flat_circle(const GaugeSource& source) {
    return std::ranges::any_of(measurements_of(source), [](const GaugeMeasurement& measurement) {
        const auto* circle = std::get_if<CircleGauge>(&measurement.what);
        return measurement.counts && circle != nullptr && circle->lie == CircleLie::flat;
    });
}

GaugeFindings another_circle(const Gauge& gauge, bool is_first) {
    CircleGauge circle = offered_circle;
    circle.across_mm = 2 * circle.rounds * gauge.round_height_mm;
    GaugeFindings findings = findings_of(circle, 0).value_or(GaugeFindings{});
    if (!is_first) findings.bounds.reset();  // limits seen twice are no narrower
    return findings;
}

GaugeFindings another_swatch(const Gauge& gauge) {
    constexpr double counted = 20;
    const SwatchGauge swatch{.stitches = counted,
                             .width_mm = counted * gauge.stitch_width_mm,
                             .rounds = counted,
                             .height_mm = counted * gauge.round_height_mm};
    return findings_of(swatch, 0).value_or(GaugeFindings{});
}

/// The stuffing is as far out as in the range of sizes.
GaugeFindings measured_on(const Length& length, const GaugeBelief& belief) {
    const double tape = Measured{}.error_mm / deviations_in_half_width / length.mm;
    const double stuffing = length.by_stretch * stuffing_error_share / deviations_in_half_width;
    return {{{length.by_gauge, length.by_gauge.dot(belief.mean), std::hypot(tape, stuffing)}}, {}};
}

/// The candidates, each with what is left of the sizes' error.
class Candidates {
  public:
    Candidates(const Toy& toy, std::span<const PieceStudy> studies)
        : toy_(toy), gauge_(studies.front().gauge), belief_(belief_of(gauge_)) {
        for (const PieceStudy& study : studies) pieces_.push_back(lengths_of(study));
        before_ = error_of_sizes(pieces_, belief_);
    }

    [[nodiscard]] std::vector<NextMeasurement> best_first() {
        if (!(before_ > 0)) return {};
        add({NextMeasurementKind::circle}, another_circle(gauge_, !has_flat_circle(toy_.gauge)));
        for (std::size_t piece = 0; piece < pieces_.size(); ++piece) add_measures_of(piece);
        add({NextMeasurementKind::swatch_in_rounds}, another_swatch(gauge_));
        std::ranges::stable_sort(all_, {}, &NextMeasurement::error_after);
        return all_;
    }

  private:
    void add_measures_of(std::size_t piece) {
        for (std::size_t i = 0; pieces_[piece] && i < measures; ++i) {
            const Length& length = (*pieces_[piece])[i];
            if (!(length.mm > 0)) continue;
            add({NextMeasurementKind::finished_piece, piece, measured_of[i], is_finished(toy_.pieces[piece])},
                measured_on(length, belief_));
        }
    }

    void add(NextMeasurement next, GaugeFindings findings) {
        for (GaugeEvidence& evidence : findings.evidence) evidence = on_another_day(evidence);
        next.error_before = before_;
        next.error_after = error_of_sizes(pieces_, narrowed(belief_, findings));
        all_.push_back(next);
    }

    const Toy& toy_;
    Gauge gauge_;
    GaugeBelief belief_;
    std::vector<std::optional<Lengths>> pieces_;
    double before_ = 0;
    std::vector<NextMeasurement> all_;
};

}  // namespace

bool is_finished(const Piece& piece) {
    return !piece.rounds.empty() && piece.worked.rounds >= static_cast<int>(piece.rounds.size());
}

std::vector<NextMeasurement> next_measurements(const Toy& toy, std::span<const PieceStudy> studies) {
    if (studies.empty()) return {};
    return Candidates(toy, studies).best_first();
}

}  // namespace roundwright
