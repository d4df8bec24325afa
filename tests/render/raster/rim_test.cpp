#include "render/raster/rim.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>

#include <QDir>

#include "render/drawing/contrast.h"
#include "render/raster/software_picture.h"
#include "render/raster/standing_out.h"
#include "tests/render/scene/example_surfaces.h"
#include "tests/render/scene/silhouette_contrast.h"

namespace roundwright::render {
namespace {

const QColor light_ground(0xec, 0xea, 0xe5);
const QColor dark_ground(0x2a, 0x2f, 0x34);
const Colour black{12, 12, 14}, white{250, 248, 242}, tide_blue{60, 90, 140}, coral{222, 116, 96};

struct Yarns {
    const char* name;
    std::vector<Colour> colours;
    bool rim;
};

class Rim : public ::testing::TestWithParam<Yarns> {};

// WCAG 2.2, 1.4.11, at every place of the outline.
TEST_P(Rim, TellsTheShapeFromItsGroundInBothThemes) {
    const Yarns& yarns = GetParam();
    const StitchSurface ball = test::striped_ball_surface(8, yarns.colours, 40'000);
    const auto outline = outline_luminances(ball);
    for (const QColor& usual : {light_ground, dark_ground}) {
        const Standing standing = standing_of(outline, usual);
        EXPECT_EQ(standing.rim.has_value(), yarns.rim) << yarns.name << " on " << usual.name().toStdString();
        double least_without = 21;
        for (const auto view : {ViewDirection::front, ViewDirection::top, ViewDirection::three_quarter}) {
            const QImage clear = picture_of(ball, {}, view, {300, 300}, Qt::transparent);
            const QImage plain = with_rim(clear, standing.ground, rim_width_px, standing.ground);
            const QImage seen =
                standing.rim ? with_rim(clear, *standing.rim, rim_width_px, standing.ground) : plain;
            EXPECT_GE(test::least_contrast_along(clear, seen, standing.ground), least_outline_contrast)
                << yarns.name << " on " << standing.ground.name().toStdString();
            least_without =
                std::min(least_without, test::least_contrast_along(clear, plain, standing.ground));
            if (const QString folder = qEnvironmentVariable("ROUNDWRIGHT_RIM_PICTURES"); !folder.isEmpty()) {
                QDir().mkpath(folder);
                seen.save(QStringLiteral("%1/%2-%3-%4.png")
                              .arg(folder, QLatin1String(yarns.name), usual.name().mid(1))
                              .arg(static_cast<int>(view)));
            }
        }
        EXPECT_EQ(least_without < least_outline_contrast, yarns.rim) << yarns.name << " without a rim";
    }
}

INSTANTIATE_TEST_SUITE_P(OfEachYarn, Rim,
                         ::testing::Values(Yarns{"black", {black}, false}, Yarns{"white", {white}, false},
                                           Yarns{"black_and_white", {black, white}, true},
                                           Yarns{"tide_blue", {tide_blue}, false},
                                           Yarns{"coral", {coral}, false}),
                         [](const auto& yarns) { return std::string(yarns.param.name); });

TEST(RimOn, IsDarkOnLightAndLightOnDark) {
    for (const QColor& ground : {light_ground, dark_ground, QColor(Qt::white), QColor(Qt::black)}) {
        const QColor rim = rim_on(ground);
        EXPECT_GE(contrast_ratio(rim, ground), 4.5) << ground.name().toStdString();
        EXPECT_LE(contrast_ratio(rim, ground), 6) << ground.name().toStdString();
    }
}

/// A square of 20 on a clear ground of 40.
QImage square(const QColor& colour) {
    QImage image(40, 40, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    for (int y = 10; y < 30; ++y)
        for (int x = 10; x < 30; ++x) image.setPixelColor(x, y, colour);
    return image;
}

TEST(WithRim, IsOutsideOfWhatIsSolidAndAsWideAsAsked) {
    const QImage drawn = with_rim(square(Qt::red), Qt::black, 2, Qt::white);
    EXPECT_EQ(drawn.pixelColor(10, 20), QColor(Qt::red));
    EXPECT_EQ(drawn.pixelColor(9, 20), QColor(Qt::black));
    EXPECT_EQ(drawn.pixelColor(8, 20), QColor(Qt::black));
    EXPECT_EQ(drawn.pixelColor(7, 20), QColor(Qt::white));
    const QImage half = with_rim(square(Qt::red), Qt::black, 1.5, Qt::white);
    EXPECT_NEAR(half.pixelColor(8, 20).red(), 128, 2);
}

TEST(WithRim, IsAroundNothingTranslucentAndLeavesAClearGroundClear) {
    QColor veil(Qt::blue);
    veil.setAlpha(190);
    const QImage veiled = with_rim(square(veil), Qt::black, 2, Qt::white);
    EXPECT_EQ(veiled.pixelColor(9, 20), QColor(Qt::white));
    const QImage clear = with_rim(square(Qt::red), Qt::black, 2, Qt::transparent);
    EXPECT_EQ(qAlpha(clear.pixel(9, 20)), 255);
    EXPECT_EQ(qAlpha(clear.pixel(4, 20)), 0);
}

TEST(WithRim, EndsAtThePicturesEdge) {
    QImage full(6, 6, QImage::Format_ARGB32_Premultiplied);
    full.fill(Qt::red);
    EXPECT_EQ(with_rim(full, Qt::black, 2, Qt::white), full);
}

}  // namespace
}  // namespace roundwright::render
