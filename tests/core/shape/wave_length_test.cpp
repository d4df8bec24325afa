#include "core/shape/wave_length.h"

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <numbers>

namespace roundwright::test {
namespace {

using std::numbers::pi;

// Length of a sine of amplitude A over 2 pi (DLMF ch. 19, computed).
TEST(WaveLength, SineOverTwoPi) {
    const std::pair<double, double> table[] = {
        {0.1, 6.298863940068}, {0.5, 6.659167221565}, {1, 7.640395578055}, {2, 10.540734326383}};
    for (const auto& [amplitude, length] : table)
        EXPECT_NEAR(2 * pi * wave_length_ratio(amplitude / (2 * pi)), length, 1e-11);
    EXPECT_NEAR(wave_length_ratio(0), 1, 1e-15);
}

// Amplitude per wavelength for spare length (computed from the same).
TEST(WaveLength, AmplitudeForSpareLength) {
    const std::pair<double, double> table[] = {
        {1.05, 0.07248824}, {1.1, 0.10431079}, {1.25, 0.17299494}, {1.5, 0.26202041}, {2, 0.41389531}};
    for (const auto& [ratio, amplitude] : table) EXPECT_NEAR(wave_amplitude(ratio), amplitude, 5e-9);
}

TEST(WaveLength, InverseGivesTheRatioBack) {
    for (double ratio = 1.0001; ratio < 1000; ratio *= 1.7)
        EXPECT_NEAR(wave_length_ratio(wave_amplitude(ratio)) / ratio, 1, 1e-11);
}

TEST(WaveLength, NoSpareLengthNoWave) {
    EXPECT_EQ(wave_amplitude(1), 0);
    EXPECT_EQ(wave_amplitude(0.5), 0);
    EXPECT_EQ(wave_amplitude(std::nan("")), 0);
    EXPECT_EQ(wave_amplitude(std::numeric_limits<double>::infinity()), 0);
}

}  // namespace
}  // namespace roundwright::test
