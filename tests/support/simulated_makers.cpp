#include "tests/support/simulated_makers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include "core/gauge/flat_limits.h"
#include "core/gauge/gauge_source.h"
#include "core/gauge/usual_gauge.h"
#include "core/reshape/finished_piece.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/calibrate.h"
#include "core/shape/size_range.h"
#include "core/shape/solve_shape.h"
#include "core/toy/toy.h"
#include "tests/core/shape/random_toy.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::testing {

namespace {

using std::numbers::pi;

constexpr double hook_mm = 4;
constexpr double intended_stretch = medium_stuffing_stretch;
constexpr double stuffing_deviation = 0.25;
constexpr double tape_mm = 1;

struct Random {
    std::mt19937 bits;

    double normal(double mean, double deviation) {
        return mean + deviation * std::normal_distribution<double>()(bits);
    }
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(bits);
    }
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(bits); }
};

/// A tape is read to the millimetre, and does not lie quite straight.
double measured_mm(double true_mm, Random& random) {
    return std::max(1.0, std::round(random.normal(true_mm, 0.4 * tape_mm)));
}

Gauge stitch_of(double size_mm, double ratio) {
    return {size_mm / std::sqrt(ratio), size_mm * std::sqrt(ratio)};
}

double ratio_of_a_hand(Random& random) { return std::exp(random.normal(std::log(0.98), 0.12)); }

/// Worsted with a hook of 4 mm. The eight pieces say how wide a stitch is, whose ratio is not known: at 1.
Gauge worsted_hand(Random& random) {
    const double median = 5.9 / 1.025 * hook_mm / 3.94;
    return stitch_of(median * std::exp(random.normal(0, 0.11)), ratio_of_a_hand(random));
}

/// Any weight that toys are worked in with 3.5 mm: what the label says, worked by some hand.
Gauge hand_with_any_yarn(Random& random) {
    const std::array<std::pair<double, double>, 3> labels{
        {{101.6 / 18, 4}, {101.6 / 14.3, 5}, {101.6 / 12.4, 6}}};
    const auto& [stitch_mm, label_hook_mm] = labels[static_cast<std::size_t>(random.whole(0, 2))];
    return stitch_of(stitch_mm * 3.5 / label_hook_mm * std::exp(random.normal(0, 0.13)),
                     ratio_of_a_hand(random));
}

/// A worked circle: pressed flat or as its edge stands where it cups, each as likely, and all between.
CircleGauge circle_of(const Gauge& stitch, int rounds, Random& random) {
    CircleGauge circle;
    circle.rounds = rounds;
    circle.measuring_error_mm = tape_mm;
    const double ratio = stitch.round_height_mm / stitch.stitch_width_mm;
    const FlatRatios flat = flat_ratios(circle.increases);
    circle.lie = ratio < flat.least  ? CircleLie::ruffles
                 : ratio > flat.most ? CircleLie::cups
                                     : CircleLie::flat;
    double across = 2 * (rounds + random.normal(0, 0.1)) * stitch.round_height_mm;
    if (circle.lie == CircleLie::cups) across *= random.between(flat.most / ratio, 1);
    circle.across_mm = measured_mm(across, random);
    return circle;
}

/// Stitches counted over a length from the edge of the first: the last is taken whole or left out.
double counted_over(double length_mm, double stitch_mm) {
    return std::max(1.0, std::round(length_mm / stitch_mm));
}

SwatchGauge swatch_of(const Gauge& stitch, double over_mm, Random& random) {
    SwatchGauge swatch;
    swatch.measuring_error_mm = tape_mm;
    const double width = random.normal(over_mm, 0.4 * tape_mm);
    const double height = random.normal(over_mm, 0.4 * tape_mm);
    swatch.stitches = counted_over(width, stitch.stitch_width_mm);
    swatch.rounds = counted_over(height, stitch.round_height_mm);
    swatch.width_mm = swatch.height_mm = over_mm;
    return swatch;
}

/// Rows of a hand whose rounds are known: 0.92 to 0.96 of their ratio, as published, more or less.
Gauge in_rows(const Gauge& rounds, Random& random) {
    const double size = std::sqrt(rounds.stitch_width_mm * rounds.round_height_mm);
    const double ratio = rounds.round_height_mm / rounds.stitch_width_mm;
    return stitch_of(size * std::exp(random.normal(0, 0.02)), ratio * std::exp(random.normal(-0.08, 0.06)));
}

Piece worked(const std::vector<int>& counts) {
    Piece piece;
    for (const int count : counts) piece.rounds.emplace_back().working = WorkedEvenly{count};
    piece.end = End::drawn_closed;
    piece.area_stretch = intended_stretch;
    return piece;
}

double stuffed_so(Random& random) {
    return intended_stretch * std::exp(random.normal(0, stuffing_deviation));
}

Shape made_of(Piece piece, const Gauge& stitch, Random& random) {
    if (piece.area_stretch > 0) piece.area_stretch = stuffed_so(random);
    return solve_shape(shape_problem(piece, piece_graph(piece).graph, stitch));
}

Gauge found_on_a_piece(const Gauge& stitch, Random& random) {
    const Piece piece = worked(roundwright::test::random_toy_counts(random.bits));
    const Shape shape = made_of(piece, stitch, random);
    const std::vector<Measured> measured{{MeasuredOf::width, measured_mm(shape.width_mm, random), tape_mm},
                                         {MeasuredOf::height, measured_mm(shape.height_mm, random), tape_mm}};
    KnownBefore known;
    known.gauge = gauge_from(EstimatedGauge{YarnWeight::medium}, hook_mm);
    return calibrate_piece(piece, measured, known).gauge;
}

struct Maker {
    Gauge stitch;                ///< in truth
    std::optional<Gauge> known;  ///< as believed
};

Maker drawn(KnownOfGauge kind, Random& random) {
    if (kind == KnownOfGauge::hook_alone) return {hand_with_any_yarn(random), usual_gauge(3.5)};
    const Gauge stitch = worsted_hand(random);
    const auto from = [&](const GaugeSource& source) { return Maker{stitch, gauge_from(source, hook_mm)}; };
    switch (kind) {
        case KnownOfGauge::hook_alone:
        case KnownOfGauge::weight_and_hook:
            return from(EstimatedGauge{YarnWeight::medium});
        case KnownOfGauge::large_circle:
            return from(circle_of(stitch, 8, random));
        case KnownOfGauge::circle:
            return from(circle_of(stitch, 5, random));
        case KnownOfGauge::circle_other_hook: {
            const double change = std::exp(std::log(3.5 / hook_mm) * random.normal(1, 0.25));
            CircleGauge circle =
                circle_of({stitch.stitch_width_mm * change, stitch.round_height_mm * change}, 5, random);
            circle.hook_mm = 3.5;
            return from(circle);
        }
        case KnownOfGauge::swatch_in_rounds:
            return from(swatch_of(stitch, 100, random));
        case KnownOfGauge::small_swatch:
            return from(swatch_of(stitch, 50.8, random));
        case KnownOfGauge::swatch_in_rows: {
            SwatchGauge swatch = swatch_of(in_rows(stitch, random), 100, random);
            swatch.worked_in_rows = true;
            return from(swatch);
        }
        case KnownOfGauge::finished_piece:
            return {stitch, found_on_a_piece(stitch, random)};
        case KnownOfGauge::stated:
            break;
    }
    Gauge stated{stitch.stitch_width_mm + random.normal(0, 0.1),
                 stitch.round_height_mm + random.normal(0, 0.15), 0.2, 0.3};
    return from(GivenGauge{stated});
}

/// What makers make: mostly stuffed heads and bodies.
Piece drawn_piece(Random& random) {
    using namespace roundwright::test;
    Piece piece = worked(random_toy_counts(random.bits));
    const int chance = random.whole(0, 9);
    if (chance < 4) piece = worked(ball_counts(random.whole(4, 8)));
    if (chance < 8) return piece;
    piece.area_stretch = unstuffed_stretch;
    piece.end = End::left_open;
    std::vector<int> counts = disc_counts(6, random.whole(4, 8));
    if (chance == 8) counts.insert(counts.end(), counts.size() / 2 + 1, counts.back());  // a cup
    piece.rounds = worked(counts).rounds;
    return piece;
}

bool within(const Range& range, double value) { return range.low <= value && value <= range.high; }

void count(RangesHeld& held, const Maker& maker, const Piece& piece, Random& random) {
    const ShapeProblem problem = shape_problem(piece, piece_graph(piece).graph, *maker.known);
    const Shape shape = solve_shape(problem);
    const Shape made = made_of(piece, maker.stitch, random);
    if (shape.termination != Termination::converged || made.termination != Termination::converged) return;
    const SizeRange range =
        size_range(problem, shape, *maker.known, stuffing_error_share * piece.area_stretch);
    ++held.pieces;
    held.widths_within += within(range.width_mm, made.width_mm);
    held.mean_half_width += (range.width_mm.high - range.width_mm.low) / 2 / shape.width_mm;
    if (piece.area_stretch == 0) return;
    ++held.heights;
    held.heights_within += within(range.height_mm, made.height_mm);
    held.mean_half_height += (range.height_mm.high - range.height_mm.low) / 2 / shape.height_mm;
}

constexpr std::array<KindOfKnowledge, 10> kinds{{
    {KnownOfGauge::hook_alone, "the hook alone"},
    {KnownOfGauge::weight_and_hook, "weight of yarn and hook"},
    {KnownOfGauge::circle_other_hook, "circle of 5 rounds, another hook"},
    {KnownOfGauge::circle, "circle of 5 rounds"},
    {KnownOfGauge::large_circle, "circle of 8 rounds"},
    {KnownOfGauge::swatch_in_rows, "swatch in rows, 100 mm"},
    {KnownOfGauge::small_swatch, "swatch in rounds, 2 in"},
    {KnownOfGauge::swatch_in_rounds, "swatch in rounds, 100 mm"},
    {KnownOfGauge::finished_piece, "a finished piece"},
    {KnownOfGauge::stated, "stated with its error"},
}};

}  // namespace

std::span<const KindOfKnowledge> kinds_of_knowledge() { return kinds; }

RangesHeld ranges_held(KnownOfGauge kind, int makers, unsigned seed) {
    Random random{std::mt19937(seed)};
    RangesHeld held;
    for (int i = 0; i < makers; ++i) {
        const Maker maker = drawn(kind, random);
        if (maker.known) count(held, maker, drawn_piece(random), random);
    }
    held.mean_half_width /= std::max(1, held.pieces);
    held.mean_half_height /= std::max(1, held.heights);
    return held;
}

}  // namespace roundwright::testing
