#include "render/wording/colour_words.h"

#include <gtest/gtest.h>

namespace roundwright {
namespace {

TEST(ColourWords, NameWhatAnEyeWouldCallIt) {
    const auto name = [](Colour colour) { return colour_name(colour).toStdString(); };
    EXPECT_EQ(name({255, 255, 255}), "white");
    EXPECT_EQ(name({0, 0, 0}), "black");
    EXPECT_EQ(name({255, 0, 0}), "red");
    EXPECT_EQ(name({0, 128, 0}), "green");
    EXPECT_EQ(name({0x6F, 0x8F, 0x9E}), "grey blue");
    EXPECT_EQ(name({0xE9, 0xE1, 0xD2}), "cream");
    EXPECT_EQ(name({200, 206, 210}), "light grey");
}

TEST(ColourWords, GiveTheExactValueBesideTheName) {
    EXPECT_EQ(colour_words({0x6F, 0x8F, 0x9E}).toStdString(), "grey blue, #6F8F9E");
    EXPECT_EQ(colour_words({0, 0, 15}).toStdString(), "black, #00000F");
}

}  // namespace
}  // namespace roundwright
