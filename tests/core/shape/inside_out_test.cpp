#include <algorithm>
#include <gtest/gtest.h>

#include "core/shape/solve_shape.h"
#include "tests/core/shape/shape_tables.h"

namespace roundwright::test {
namespace {

struct Table {
    int chain;  ///< of an oval start; 0: a magic ring
    std::vector<int> counts;
};

/// Open pieces without stuffing whose rim turned down below their start: bowls inside out.
const std::vector<Table> turned_down{
    {5, {12,  24,  36,  48,  60,  72,  84,  96,  108, 120, 132, 144, 156,
         168, 180, 192, 204, 216, 228, 228, 216, 204, 192, 180, 192}},
    {8, {18, 36, 54, 72, 90, 108, 126, 144, 162, 180, 198, 216, 234, 252, 270, 288, 270, 252, 234, 216, 198}},
    {0, {7,   5,   21,  28,  35,  42,  49,  56,  63,  70,  77,  84,  91,  98,  105, 112,
         119, 126, 133, 140, 147, 154, 161, 168, 175, 182, 189, 196, 203, 210, 217, 224}}};

ShapeProblem problem_of(const Table& table) {
    ShapeProblem problem = piece_of(table.counts, 0, MeridianEnd::open);
    if (table.chain > 0) {
        problem.first = MeridianEnd::drawn_closed;
        problem.rest_loop_mm.front() = 2 * table.chain * width_mm;
        problem.first_fan_height_mm = problem.rest_loop_mm.front() / 6.283;
    }
    return problem;
}

// Without stuffing a piece and its mirror image are one to the fabric; the one that holds something is meant.
TEST(InsideOut, NoPieceHoldsLessThanNothing) {
    for (const Table& table : turned_down) {
        for (const double h : {3.5, 4.4, 5.0}) {
            ShapeProblem problem = problem_of(table);
            std::ranges::fill(problem.rest_height_mm, h);
            const Shape shape = solve_shape(problem);
            EXPECT_EQ(shape.termination, Termination::converged);
            EXPECT_GE(shape.volume_mm3, 0) << table.counts.size() << " rounds, " << h;
            EXPECT_GE(*std::ranges::min_element(shape.z_mm), 0);
            EXPECT_EQ(std::min(shape.first_pole_z_mm, *std::ranges::min_element(shape.z_mm)), 0);
        }
    }
}

}  // namespace
}  // namespace roundwright::test
