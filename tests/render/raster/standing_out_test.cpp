#include "render/raster/standing_out.h"

#include <algorithm>
#include <gtest/gtest.h>

#include "render/drawing/contrast.h"
#include "render/raster/software_picture.h"
#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

const QColor light_ground(0xec, 0xea, 0xe5);
const QColor dark_ground(0x2a, 0x2f, 0x34);

/// Of the picture as it is drawn on the ground: which nine tenths of the outline have, by its own pixels.
double seen_contrast(const StitchSurface& surface, ViewDirection view, const QColor& ground) {
    const QSize size(240, 240);
    const QImage mask = picture_of(surface, {}, view, size, Qt::transparent);
    const QImage drawn = picture_of(surface, {}, view, size, ground);
    std::vector<double> contrasts;
    for (int y = 0; y < size.height(); ++y) {
        for (int x = 2; x < size.width() - 2; ++x) {
            if (qAlpha(mask.pixel(x, y)) < 255) continue;
            if (qAlpha(mask.pixel(x - 2, y)) == 0 || qAlpha(mask.pixel(x + 2, y)) == 0)
                contrasts.push_back(contrast_ratio(drawn.pixelColor(x, y), ground));
        }
    }
    if (contrasts.empty()) return 0;
    std::ranges::sort(contrasts);
    return contrasts[contrasts.size() / 10];
}

struct Yarns {
    const char* name;
    std::vector<Colour> colours;
};

class StandingOut : public ::testing::TestWithParam<Yarns> {};

// WCAG 2.2, 1.4.11.
TEST_P(StandingOut, FromTheGroundInBothThemes) {
    const StitchSurface ball = test::striped_ball_surface(8, GetParam().colours, 40'000);
    const auto outline = outline_luminances(ball);
    ASSERT_FALSE(outline.empty());
    for (const QColor& usual : {light_ground, dark_ground}) {
        const QColor ground = standing_ground(outline, usual);
        for (const auto view : {ViewDirection::front, ViewDirection::top, ViewDirection::three_quarter}) {
            const double contrast = seen_contrast(ball, view, ground);
            EXPECT_GE(contrast, least_outline_contrast)
                << GetParam().name << " on " << ground.name().toStdString() << " from "
                << static_cast<int>(view) << "; on the usual ground " << seen_contrast(ball, view, usual);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(OfEachYarn, StandingOut,
                         ::testing::Values(Yarns{"black", {{12, 12, 14}}}, Yarns{"white", {{250, 248, 242}}},
                                           Yarns{"mid-grey", {{128, 128, 128}}},
                                           Yarns{"navy", {{24, 30, 70}}}, Yarns{"cream", {{240, 228, 200}}},
                                           Yarns{"fog", {{200, 206, 210}}}),
                         [](const auto& yarns) {
                             std::string name = yarns.param.name;
                             std::ranges::replace_if(
                                 name, [](char c) { return c == ' ' || c == '-'; }, '_');
                             return name;
                         });

// Between black and white nothing stands at 3 : 1 from all shades of both: as far as can be from the nearer.
TEST(StandingGround, OfDarkAndLightYarnTogetherIsBetweenThem) {
    const QColor ground = standing_ground({0.01, 0.01, 0.7, 0.7}, light_ground);
    EXPECT_GE(outline_contrast({0.01, 0.01, 0.7, 0.7}, ground), 2.9);
}

TEST(StandingGround, IsTheUsualOneWhereTheOutlineStandsOut) {
    EXPECT_EQ(standing_ground({0.01, 0.02}, light_ground), light_ground);
    EXPECT_EQ(standing_ground({0.9}, dark_ground), dark_ground);
    EXPECT_EQ(standing_ground({}, dark_ground), dark_ground);
}

TEST(StandingGround, StepsAsideNoFurtherThanIsNeeded) {
    const QColor ground = standing_ground({0.8}, light_ground);
    EXPECT_GE(outline_contrast({0.8}, ground), least_outline_contrast);
    EXPECT_LT(outline_contrast({0.8}, ground), least_outline_contrast + 1);
}

}  // namespace
}  // namespace roundwright::render
