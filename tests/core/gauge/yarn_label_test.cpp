#include "core/gauge/yarn_label.h"

#include <gtest/gtest.h>
#include <random>
#include <string>

namespace roundwright {
namespace {

YarnLabel read(std::string_view text) {
    const auto label = read_yarn_label(text);
    EXPECT_TRUE(label) << text;
    return label.value_or(YarnLabel{});
}

double metres(std::string_view text) { return read(text).metres_per_100_g.value_or(0); }

TEST(YarnLabel, ReadsLengthAndWeightAsTheyArePrinted) {
    for (const char* text : {"50 g = 125 m", "125 m / 50 g", "125m/50g", "50g, 125 metres", "125 m per 50 g",
                             "50 GR = 125 MTR", "ball: 50 g (125 m)", "125 meters in 50 grams"}) {
        EXPECT_NEAR(metres(text), 250, 1e-9) << text;
        EXPECT_EQ(read(text).ball_grams, 50) << text;
    }
    // 1.75 oz is 49.61 g, 137 yd is 125.27 m.
    EXPECT_NEAR(metres("137 yds per 1.75 oz"), 252.51, 0.01);
    EXPECT_NEAR(metres("1,75 oz - 137 yd"), 252.51, 0.01);
    EXPECT_NEAR(metres("1,200 yd/lb"), metres("1200 yards per pound"), 1e-9);
    EXPECT_EQ(read("1200 yd/lb").ball_grams, std::nullopt) << "no ball weighs a pound";
}

/// ISO 1144: tex is grams in a kilometre. Metres in 100 g are 100,000 over tex, and 0.2015907 for each yard
/// in a pound.
TEST(YarnLabel, ConvertsByTheTexSystem) {
    EXPECT_NEAR(metres("400 tex"), 250, 1e-9);
    EXPECT_NEAR(metres("4000 dtex"), 250, 1e-9);
    EXPECT_NEAR(metres("3600 denier"), 250, 1e-9);
    EXPECT_NEAR(metres("1000 yd/lb"), 201.5907, 1e-4);
    EXPECT_NEAR(100'000 / metres("1000 yd/lb"), 496.05465, 1e-5);
}

/// By their definitions: Nm is metres in a gram; Ne hanks of 840 yd in a pound, 590.541 over tex.
TEST(YarnLabel, KnowsSpinnersNumbers) {
    EXPECT_NEAR(metres("Nm 5"), 500, 1e-9);
    EXPECT_NEAR(metres("Nm 10/2"), 500, 1e-9) << "two strands of number ten";
    EXPECT_NEAR(tex_of_cotton_number(1), 590.541, 1e-3);
    EXPECT_NEAR(metres("Ne 8/4"), 100'000 / (590.541 / 2), 0.001);
}

/// Each weight's own wraps, from the middle of the published range (Craft Yarn Council).
TEST(YarnLabel, FindsTheWeightOfWrapsPliesAndNames) {
    for (const YarnStandard& standard : yarn_standards()) {
        if (standard.weight == YarnWeight::super_fine) continue;  // its range holds the fine one's whole
        const std::string text = std::to_string(standard.wraps_per_inch.middle()) + " wpi";
        EXPECT_EQ(read(text).weight, standard.weight) << text;
    }
    EXPECT_EQ(read("20 wraps per inch").weight, YarnWeight::super_fine);
    EXPECT_EQ(read("8 ply").weight, YarnWeight::light);
    EXPECT_EQ(read("10-ply").weight, YarnWeight::medium);
    EXPECT_EQ(read("DK weight").weight, YarnWeight::light);
    EXPECT_EQ(read("aran, 50 g = 80 m"), (YarnLabel{160, 50, YarnWeight::medium}));
}

TEST(YarnLabel, DoesNotGuess) {
    for (const char* text : {"",
                             "  ",
                             "soft",
                             "50 g",
                             "125 m",
                             "50",
                             "50 g = 125",
                             "50 g 125 m 20 g",
                             "8 ply dk",
                             "400 tex, 50 g = 125 m",
                             "0 tex",
                             "Nm",
                             "Nm /2",
                             "/",
                             "3 wpi 11 wpi",
                             "7 ply",
                             "200 wpi",
                             "50 g = 125 m €",
                             "1.2.3 tex",
                             "50 g = 0 m"})
        EXPECT_EQ(read_yarn_label(text), std::nullopt) << text;
}

TEST(YarnLabel, EndsOnAnyText) {
    std::mt19937 random(1144);
    const std::string_view letters = "0123456789 ./,=gmydoztexwplyNne()-\xC3\xA9";
    for (int k = 0; k < 20'000; ++k) {
        std::string text(random() % 24, ' ');
        for (char& letter : text) letter = letters[random() % letters.size()];
        const auto label = read_yarn_label(text);
        if (label) {
            EXPECT_GT(label->metres_per_100_g.value_or(1), 0) << text;
        }
    }
}

}  // namespace
}  // namespace roundwright
