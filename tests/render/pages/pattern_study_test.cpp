#include "render/pages/pattern_study.h"

#include <gtest/gtest.h>

#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;

TEST(PatternStudy, PrintsTheSizesAndRangesThatTheEditorShows) {
    Toy toy = ball(6);
    toy.gauge = GivenGauge{{5, 5, 0.3, 0.2}};
    const auto pattern = study_pattern(toy, {});
    ASSERT_TRUE(pattern);
    const PieceStudy shown = study_piece(toy, 0);
    const auto& printed = pattern->sizes.at(0);
    ASSERT_TRUE(printed);
    EXPECT_DOUBLE_EQ(printed->width_mm.likely, shown.measures().width_mm);
    EXPECT_DOUBLE_EQ(printed->width_mm.low, shown.size().width_mm.low);
    EXPECT_DOUBLE_EQ(printed->height_mm.high, shown.size().height_mm.high);
    EXPECT_LT(printed->width_mm.low, printed->width_mm.likely);
}

TEST(PatternStudy, TheTablesOwnRowIsThePiecesSize) {
    const auto pattern = study_pattern(ball(6), {});
    ASSERT_TRUE(pattern);
    bool seen = false;
    for (const SizeAtGauge& row : pattern->at_gauges) {
        if (!row.own) continue;
        seen = true;
        EXPECT_NEAR(row.pieces.at(0)->width_mm.likely, pattern->sizes.at(0)->width_mm.likely, 1e-6);
    }
    EXPECT_TRUE(seen);
}

}  // namespace
}  // namespace roundwright::render
