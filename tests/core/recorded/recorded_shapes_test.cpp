#include <array>
#include <cmath>
#include <gtest/gtest.h>

#include "core/shape/fabric_signs.h"
#include "core/shape/loop_section.h"
#include "core/shape/oval_plan.h"
#include "core/shape/size_range.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

const char* word(Lie lie) {
    constexpr const char* words[] = {"flat", "cups", "even", "closes", "gathers", "ruffles"};
    return words[static_cast<std::size_t>(lie)];
}

const char* word(Termination termination) {
    constexpr const char* words[] = {"converged", "iteration_limit", "line_search_failed", "cancelled",
                                     "unusable_problem"};
    return words[static_cast<std::size_t>(termination)];
}

const char* word(FabricSignKind kind) {
    constexpr const char* words[] = {"gaps", "ridge", "crease", "widening_neck"};
    return words[static_cast<std::size_t>(kind)];
}

void tell_problem(RecordedText& text, const ShapeProblem& problem) {
    text.line("loops").each(problem.rest_loop_mm);
    text.line("heights").each(problem.rest_height_mm);
    text.line("ends") << static_cast<int>(problem.first) << static_cast<int>(problem.last)
                      << problem.fan_height_mm << problem.first_fan_height_mm << problem.equivalent_round
                      << problem.sewn_straight << problem.limp << problem.on_its_face;
}

void tell_size(RecordedText& text, const VariedStudy& study) {
    const Shape& shape = study.shape;
    text.line("shape") << word(shape.termination) << shape.width_mm << shape.height_mm << shape.depth_mm
                       << shape.volume_mm3 << shape.surface_mm2 << shape.area_stretch << shape.energy
                       << shape.pressure << shape.first_pole_z_mm << shape.last_pole_z_mm;
    text.line("between") << study.size.width_mm.low << study.size.width_mm.high << study.size.height_mm.low
                         << study.size.height_mm.high << study.size.volume_mm3.low
                         << study.size.volume_mm3.high;
    if (const auto plan = oval_plan(study.problem, study.study.measures()))
        text.line("oval") << plan->length_mm << plan->width_mm;
}

void tell_sections(RecordedText& text, const Shape& shape) {
    for (const LoopSection& section : shape.sections) {
        text.line("section") << section.half_width_mm << section.half_depth_mm << section.bend
                             << section.length_mm() << section.area_mm2() << section.reach_mm()
                             << section.highest_mm() << section.lowest_mm();
        for (const double angle : {0.4, 1.3, 2.2, -0.9}) {
            const SectionPoint point = point_on(section, angle, 0.7, 1.1);
            text << point.place.x() << point.place.y() << point.place.z() << point.normal.x()
                 << point.normal.y() << nearest_angle(section, point.place);
        }
    }
}

void tell_rounds(RecordedText& text, const VariedStudy& study) {
    text.line("radius").each(study.shape.radius_mm);
    text.line("z").each(study.shape.z_mm);
    text.line("course").each(study.shape.course_stretch);
    text.line("wale").each(study.shape.wale_stretch);
    for (const RoundLie& lie : study.lies)
        text.line("lie") << word(lie.lie) << lie.growth << lie.rise_mm << lie.spare_length_mm << lie.waves
                         << lie.wave_height_mm << lie.flat_increase;
    for (const FabricSign& sign : fabric_signs(study.problem, study.shape))
        text.line("sign") << word(sign.kind) << sign.round << sign.stretch << sign.turn_degrees
                          << sign.growth_change << sign.width_mm << sign.relaxed_width_mm;
}

TEST(RecordedShapes, ComeOutAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const VariedStudy& study = varied_studies()[i];
        text.heading(varied_pieces()[i].name);
        text.line("gauge") << study.gauge.stitch_width_mm << study.gauge.round_height_mm << study.gauge_known;
        tell_problem(text, study.problem);
        tell_size(text, study);
        tell_rounds(text, study);
        tell_sections(text, study.shape);
    }
    testing::expect_as_recorded("shapes.txt", text);
}

/// What a solve costs. A change that only makes it slower or faster shows here and nowhere else.
TEST(RecordedShapes, TakeAsManySteps) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const VariedStudy& study = varied_studies()[i];
        ShapeProblem firmer = study.problem;
        firmer.area_stretch *= 1.25;
        const Shape warm = solve_shape(firmer, {}, &study.shape);
        text.line(varied_pieces()[i].name + ":") << study.shape.iterations << warm.iterations;
    }
    testing::expect_as_recorded("steps.txt", text, {0, 1});
}

/// From the shape of another piece: what is found does not depend on it, but the way there does.
TEST(RecordedShapes, StartFromOtherShapesAsBefore) {
    RecordedText text;
    const std::size_t pieces = varied_pieces().size();
    for (std::size_t i = 0; i < pieces; ++i) {
        text.line(varied_pieces()[i].name + ":");
        Shape upside_down = varied_studies()[i].shape;
        for (double& z : upside_down.z_mm) z = upside_down.height_mm - z;
        for (const Shape* warm :
             {&varied_studies()[(i + 1) % pieces].shape, &varied_studies()[(i + 5) % pieces].shape,
              &static_cast<const Shape&>(upside_down)}) {
            const Shape shape = solve_shape(varied_studies()[i].problem, {}, warm);
            text << shape.iterations << shape.width_mm << shape.height_mm << shape.volume_mm3;
        }
    }
    testing::expect_as_recorded("other_starts.txt", text, {1e-5, 1e-3});
}

/// Errors of every size, those that are no error among them.
TEST(RecordedShapes, SizesAreAsUncertainAsBefore) {
    RecordedText text;
    const double no_number = std::nan("");
    for (const std::size_t piece : {0U, 7U, 10U, 15U})
        for (const auto& [width, height, common] : std::vector<std::array<double, 3>>{{0, 0, 0},
                                                                                      {0.5, 0, 0},
                                                                                      {0, 0.5, 0},
                                                                                      {0.5, 0.4, 1},
                                                                                      {0.5, 0.4, -1},
                                                                                      {0.5, 0.4, 0.6},
                                                                                      {0.5, 0.4, 7},
                                                                                      {4.9, 4.9, 0},
                                                                                      {80, 0.1, 0},
                                                                                      {-0.5, 0.4, 0},
                                                                                      {no_number, 0.4, 0},
                                                                                      {HUGE_VAL, 0, 1}})
            for (const double stretch : {0.0, 0.01, 3.0}) {
                const VariedStudy& study = varied_studies()[piece];
                const SizeRange size =
                    size_range(study.problem, study.shape, {5, 5, width, height, common}, stretch);
                text.line("between") << size.width_mm.low << size.width_mm.high << size.height_mm.low
                                     << size.height_mm.high << size.volume_mm3.low << size.volume_mm3.high;
            }
    testing::expect_as_recorded("size_ranges.txt", text, {1e-5, 1e-4});
}

ShapeProblem long_tube(int rounds) {
    ShapeProblem problem;
    problem.stitch_width_mm = 5;
    problem.fan_height_mm = 2.5;
    problem.area_stretch = medium_stuffing_stretch;
    problem.last = MeridianEnd::drawn_closed;
    problem.rest_loop_mm.push_back(0);
    for (int i = 1; i <= rounds; ++i) {
        const int from_end = std::min({i, rounds + 1 - i, 9});
        problem.rest_loop_mm.push_back(5.0 * (6 * from_end + (i % 40 < 20 ? 0 : 6)));
        problem.rest_height_mm.push_back(i % 7 == 0 ? 7.5 : 5);
    }
    return problem;
}

/// A piece long enough to be solved coarsely first.
TEST(RecordedShapes, LongPiecesComeOutAsBefore) {
    RecordedText text;
    for (const int rounds : {120, 250, 601}) {
        const Shape shape = solve_shape(long_tube(rounds));
        text.heading(std::to_string(rounds) + " rounds");
        text.line("shape") << word(shape.termination) << shape.iterations << shape.width_mm << shape.height_mm
                           << shape.volume_mm3 << shape.surface_mm2 << shape.area_stretch << shape.pressure;
        text.line("radius");
        for (std::size_t i = 0; i < shape.radius_mm.size(); i += 13) text << shape.radius_mm[i];
    }
    testing::expect_as_recorded("long_shapes.txt", text);
}

/// Other constants of the model than the usual ones.
TEST(RecordedShapes, FollowTheModelsConstants) {
    RecordedText text;
    const ShapeProblem& pear = varied_studies()[5].problem;
    const auto tell = [&](const char* name, const ShapeOptions& options) {
        const Shape shape = solve_shape(pear, options);
        text.line(name) << word(shape.termination) << shape.width_mm << shape.height_mm << shape.volume_mm3
                        << shape.energy << shape.pressure << shape.area_stretch;
    };
    ShapeOptions options;
    tell("usual", options);
    options.course_stiffness = 3;
    tell("course", options);
    options = {};
    options.wale_stiffness = 2;
    tell("wale", options);
    options = {};
    options.compression_factor = 0.3;
    tell("compression", options);
    options = {};
    options.bending_stiffness = 0.3;
    tell("bending", options);
    options = {};
    options.max_iterations = 3;
    tell("three_steps", options);
    testing::expect_as_recorded("model_constants.txt", text);
}

/// Every step of the way: the shape that a solve has when it is stopped after so many.
TEST(RecordedShapes, EachStepLeadsWhereItDid) {
    RecordedText text;
    for (const char* name : {"pear", "bowl", "tall stitches", "leg from a chain", "oval that narrows", "gaps",
                             "ruffled rim", "necks one above the other"}) {
        const auto piece = static_cast<std::size_t>(&varied_piece(name) - varied_pieces().data());
        text.heading(name);
        ShapeOptions options;
        for (options.max_iterations = 0; options.max_iterations <= 8; ++options.max_iterations) {
            const Shape shape = solve_shape(varied_studies()[piece].problem, options);
            text.line("after") << options.max_iterations << word(shape.termination) << shape.iterations
                               << shape.residual << shape.energy << shape.pressure << shape.width_mm
                               << shape.height_mm << shape.volume_mm3
                               << shape.radius_mm[shape.radius_mm.size() / 2];
        }
    }
    testing::expect_as_recorded("each_step.txt", text, {1e-5, 1e-6});
}

bool is_all_single_crochet(const StitchGraph& graph) {
    for (const GraphRound& round : graph.rounds)
        for (const GraphStitch& made : round.stitches)
            if (made.stitch.kind != StitchKind::single_crochet) return false;
    return true;
}

/// Whatever a piece starts with and however it is worked: an edge of single crochet is as long as its
/// stitches.
TEST(VariedPieces, EveryEdgeIsAsLongAsItsStitches) {
    int pieces = 0;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i) {
        const VariedStudy& study = varied_studies()[i];
        if (!is_all_single_crochet(study.graph.graph)) continue;
        ++pieces;
        for (std::size_t round = 0; round < study.graph.graph.rounds.size(); ++round)
            EXPECT_NEAR(study.problem.rest_loop_mm[round + 1],
                        std::max(1, study.graph.graph.rounds[round].loops_left) * study.gauge.stitch_width_mm,
                        1e-9)
                << varied_pieces()[i].name << ", round " << round + 1;
    }
    EXPECT_GT(pieces, 60);
}

}  // namespace
}  // namespace roundwright::test
