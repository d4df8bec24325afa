#include "core/shape/highest_wave.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

RoundLie round(Lie lie, double wave_height_mm) {
    RoundLie made;
    made.lie = lie;
    made.wave_height_mm = wave_height_mm;
    return made;
}

TEST(HighestWave, OfTheRoundsThatRuffle) {
    const std::vector<RoundLie> lies{round(Lie::ruffles, 3), round(Lie::cups, 9), round(Lie::ruffles, 4),
                                     round(Lie::ruffles, 0.5)};
    EXPECT_EQ(highest_wave_mm(lies), 4);
    EXPECT_EQ(highest_wave_mm(std::span(lies).subspan(1, 1)), 0);
    EXPECT_EQ(highest_wave_mm(std::span(lies).last(1)), 0.5);
    EXPECT_EQ(highest_wave_mm({}), 0);
}

}  // namespace
}  // namespace roundwright
