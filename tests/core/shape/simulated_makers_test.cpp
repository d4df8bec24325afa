#include "tests/support/simulated_makers.h"

#include <cmath>
#include <gtest/gtest.h>
#include <string>

#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using roundwright::testing::KindOfKnowledge;
using roundwright::testing::kinds_of_knowledge;
using roundwright::testing::RangesHeld;

class SimulatedMakers : public ::testing::TestWithParam<KindOfKnowledge> {};

/// Fewer makers hold by chance more or less often: three standard deviations of their number.
double allowance(int drawn) { return drawn < 9000 ? 3 * std::sqrt(0.09 / drawn) : 0; }

// Ranges are said to hold nine pieces in ten; so they do, whatever the gauge is known from.
TEST_P(SimulatedMakers, FindTheirPiecesWithinTheRangesShown) {
    const RangesHeld held = ranges_held(GetParam().kind, roundwright::testing::random_cases(10'000), 1);
    ASSERT_GT(held.pieces, 0);
    EXPECT_GE(held.share_of_widths(), 0.85 - allowance(held.pieces));
    EXPECT_LE(held.share_of_widths(), 0.95 + allowance(held.pieces));
    EXPECT_GE(held.share_of_heights(), 0.85 - allowance(held.heights));
    EXPECT_LE(held.share_of_heights(), 0.95 + allowance(held.heights));
}

std::string name_of(const ::testing::TestParamInfo<KindOfKnowledge>& info) {
    std::string name;
    bool starts_word = true;
    for (const char letter : info.param.name) {
        const bool is_letter = std::isalnum(static_cast<unsigned char>(letter)) != 0;
        if (is_letter) name += starts_word ? static_cast<char>(std::toupper(letter)) : letter;
        starts_word = !is_letter;
    }
    return name;
}

INSTANTIATE_TEST_SUITE_P(KnowingOfTheirGauge, SimulatedMakers,
                         ::testing::ValuesIn(kinds_of_knowledge().begin(), kinds_of_knowledge().end()),
                         name_of);

}  // namespace
}  // namespace roundwright::test
