#include "core/shape/stuffing_search.h"

#include <cmath>
#include <gtest/gtest.h>
#include <string>

#include "core/shape/cold_start.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

/// Small pieces in which the fabric's misfit alone stretches about as much as so little stuffing is asked to.
struct SmallPiece {
    std::string name;
    std::vector<int> counts;
    MeridianEnd first = MeridianEnd::pole;
    MeridianEnd last = MeridianEnd::open;
};
const std::vector<SmallPiece> small_pieces{
    {"seven stitches in a ring", {7}},
    {"two rounds", {6, 12}},
    {"one round of a tube", {29}, MeridianEnd::open, MeridianEnd::drawn_closed},
    {"two rounds of a tube", {28, 25}, MeridianEnd::open, MeridianEnd::drawn_closed},
    {"a cone", {6, 12, 18, 24}},
    {"a ball", ball_counts(3), MeridianEnd::pole, MeridianEnd::drawn_closed}};

ShapeProblem problem_of(const SmallPiece& piece, double stretch) {
    ShapeProblem problem = piece_of(piece.counts, stretch, piece.last);
    problem.first = piece.first;
    if (piece.first == MeridianEnd::open) problem.rest_loop_mm.front() = piece.counts.front() * width_mm;
    return problem;
}

// Light stuffing stretches by 1 %; a calibrated piece, or a file, may say any less.
TEST(StuffingSearch, AnyLittleStuffingHasAShape) {
    for (const SmallPiece& piece : small_pieces) {
        for (double stretch = 1e-6; stretch < 0.02; stretch *= 1.5) {
            const Shape shape = solve_shape(problem_of(piece, stretch));
            EXPECT_EQ(shape.termination, Termination::converged) << piece.name << ", " << stretch;
            EXPECT_GE(shape.area_stretch, stretch * (1 - 1e-7)) << piece.name << ", " << stretch;
            EXPECT_GT(shape.volume_mm3, 0) << piece.name << ", " << stretch;
        }
    }
}

// Where the bordered step settles too, both find the same piece.
TEST(StuffingSearch, FindsWhatTheBorderedStepFinds) {
    for (const SmallPiece& piece : small_pieces) {
        const ShapeProblem problem = problem_of(piece, 0.04);
        const Shape shape = solve_shape(problem);
        ASSERT_EQ(shape.termination, Termination::converged) << piece.name;
        const Meridian meridian = meridian_of(problem);
        const Membrane membrane(meridian, {});
        MinimiseWorkspace<Membrane> workspace;
        Equilibrium start;
        start.x = start_from_counts(meridian);
        start.least_stuffing = shape.pressure * shape.volume_mm3 / 10;
        const Equilibrium found = search_stuffing(membrane, 0.04, {}, workspace, start);
        ASSERT_EQ(found.termination, Termination::converged) << piece.name;
        EXPECT_NEAR(found.stuffing, shape.pressure * shape.volume_mm3, 1e-6 * found.stuffing) << piece.name;
        EXPECT_NEAR(membrane.volume(found.x), shape.volume_mm3, 1e-6 * shape.volume_mm3) << piece.name;
    }
}

}  // namespace
}  // namespace roundwright::test
