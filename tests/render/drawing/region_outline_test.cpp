#include "render/drawing/region_outline.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <gtest/gtest.h>
#include <numbers>

#include "render/drawing/item_buffer.h"
#include "tests/render/drawing/drawing_pieces.h"

namespace roundwright::render {
namespace {

CellRegion disc(int size, double outer, double inner) {
    CellRegion region(size, size);
    for (int row = 0; row < size; ++row)
        for (int column = 0; column < size; ++column) {
            const double r = std::hypot(column + 0.5 - size / 2.0, row + 0.5 - size / 2.0);
            if (r <= outer && r >= inner) region.add(column, row);
        }
    return region;
}

TEST(RegionOutline, GoesAroundADiscAndItsHole) {
    const auto boundaries = region_boundaries(disc(200, 90, 40), 0.5, 1);
    ASSERT_EQ(boundaries.size(), 2U);
    const double outer = std::max(signed_area(boundaries[0]), signed_area(boundaries[1]));
    const double hole = std::min(signed_area(boundaries[0]), signed_area(boundaries[1]));
    EXPECT_NEAR(outer / (std::numbers::pi * 90 * 90), 1, 0.01);
    EXPECT_NEAR(-hole / (std::numbers::pi * 40 * 40), 1, 0.01);
    for (const auto& boundary : boundaries) EXPECT_LT(boundary.size(), 130);
}

TEST(RegionOutline, CellsThatTouchAtACornerStayApart) {
    CellRegion region(4, 4);
    region.add(1, 1);
    region.add(2, 2);
    EXPECT_EQ(region_boundaries(region, 0, 0).size(), 2U);
}

TEST(RegionOutline, LeavesOutSpecksAndEmptyRegions) {
    CellRegion region(10, 10);
    EXPECT_TRUE(region_boundaries(region, 0.5, 1).empty());
    region.add(9, 9);
    EXPECT_EQ(region_boundaries(region, 0, 0).size(), 1U);
    EXPECT_TRUE(region_boundaries(region, 0, 4).empty());
}

TEST(ItemBuffer, SeesTheNearerOfTwoBallsAndTheirTrueSize) {
    const Mesh near = test::ball_mesh(Vec3(0, 0, 10), 4, {}), far = test::ball_mesh(Vec3(0, 0, -10), 6, {});
    const Projection front({0, 0});
    ItemBuffer seen(projected_bounds(far, front), 0.02);
    seen.draw(far, front, 0);
    const auto first = static_cast<std::uint32_t>(far.triangle_count());
    seen.draw(near, front, first);
    std::size_t of_near = 0, of_far = 0;
    for (int row = 0; row < seen.height(); ++row)
        for (int column = 0; column < seen.width(); ++column) {
            const auto item = seen.at(column, row);
            of_near += item != ItemBuffer::nothing && item >= first ? 1 : 0;
            of_far += item < first ? 1 : 0;
        }
    const double cell = seen.cell_mm() * seen.cell_mm();
    EXPECT_NEAR(static_cast<double>(of_near) * cell / (std::numbers::pi * 16), 1, 0.02);
    EXPECT_NEAR(static_cast<double>(of_far) * cell / (std::numbers::pi * (36 - 16)), 1, 0.02);
    EXPECT_GE(seen.item_at({0, 0}), first);
    EXPECT_LT(seen.item_at({5, 0}), first);
    EXPECT_EQ(seen.item_at({50, 0}), ItemBuffer::nothing);
}

}  // namespace
}  // namespace roundwright::render
