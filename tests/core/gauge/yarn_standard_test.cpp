#include "core/gauge/yarn_standard.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

TEST(YarnStandards, NumberedInOrderOfWeight) {
    int number = 0;
    for (const YarnStandard& standard : yarn_standards()) {
        EXPECT_EQ(standard.number, number);
        EXPECT_EQ(&yarn_standard(standard.weight), &standard);
        ++number;
    }
}

// Craft Yarn Council's www.YarnStandards.com; metres per 100 g from its yards per pound (1 yd/lb = 0.2015907
// m).
TEST(YarnStandards, PublishedRanges) {
    EXPECT_FALSE(yarn_standard(YarnWeight::lace).single_crochets_per_4_inches);
    EXPECT_EQ(yarn_standard(YarnWeight::super_fine).single_crochets_per_4_inches, (Range{21, 32}));
    EXPECT_EQ(yarn_standard(YarnWeight::fine).hook_mm, (Range{3.5, 4.5}));
    EXPECT_EQ(yarn_standard(YarnWeight::light).metres_per_100_g, (Range{182, 242}));
    EXPECT_EQ(yarn_standard(YarnWeight::medium).wraps_per_inch, (Range{9, 12}));
    EXPECT_EQ(yarn_standard(YarnWeight::bulky).hook_mm, (Range{6.5, 9}));
    EXPECT_EQ(yarn_standard(YarnWeight::super_bulky).single_crochets_per_4_inches, (Range{6, 9}));
    EXPECT_EQ(yarn_standard(YarnWeight::jumbo).single_crochets_per_4_inches, (Range{0, 5}));
    EXPECT_EQ(yarn_standard(YarnWeight::lace).metres_per_100_g, (Range{484, 0}));
}

}  // namespace
}  // namespace roundwright
