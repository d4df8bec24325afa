#include "render/raster/software_picture.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <set>
#include <vector>

#include <QDir>

#include "render/raster/lit_rounds.h"
#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

Camera front_camera(const Mesh& mesh, QSize size) {
    Camera camera;
    camera.set_viewport(size.width(), size.height());
    camera.look_from(ViewDirection::front);
    camera.fit({mesh.positions});
    return camera;
}

QImage draw(const Mesh& mesh, QSize size, int samples, const QColor& background) {
    SoftwareScene scene;
    scene.meshes = {{&mesh, nullptr, Finish::yarn}};
    scene.background = background;
    return draw_software_picture(scene, front_camera(mesh, size), size, samples);
}

void save(const QImage& image, const QString& name) {
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_PICTURES));
    EXPECT_TRUE(image.save(QStringLiteral(ROUNDWRIGHT_PICTURES "/") + name));
}

// A fitted sphere fills 1 / margin of the viewport's height: a disc, to a pixel.
TEST(SoftwarePicture, SphereCoversItsDisc) {
    const Mesh mesh = test::sphere_mesh(Vec3::Zero(), 30, 128, {180, 120, 90});
    const QImage image = draw(mesh, {300, 300}, 1, Qt::transparent);
    const double radius = 150 / Camera::fit_margin;
    int wrong = 0;
    for (int y = 0; y < 300; ++y) {
        for (int x = 0; x < 300; ++x) {
            const double r = std::hypot(x + 0.5 - 150, y + 0.5 - 150);
            const bool drawn = qAlpha(image.pixel(x, y)) > 0;
            if (std::abs(r - radius) > 1.2 && drawn != (r < radius)) ++wrong;
        }
    }
    EXPECT_EQ(wrong, 0);
}

TEST(SoftwarePicture, NearerSurfaceHidesTheFartherWhateverTheOrder) {
    const Mesh near = test::sphere_mesh(Vec3(0, 0, 40), 10, 64, {220, 40, 40});
    const Mesh far = test::sphere_mesh(Vec3(0, 0, -40), 30, 64, {40, 40, 220});
    SoftwareScene scene;
    scene.background = Qt::white;
    Camera camera;
    camera.set_viewport(200, 200);
    camera.look_from(ViewDirection::front);
    camera.fit({near.positions, far.positions});
    for (const bool swapped : {false, true}) {
        scene.meshes = {{swapped ? &far : &near, nullptr, Finish::felt},
                        {swapped ? &near : &far, nullptr, Finish::felt}};
        const QImage image = draw_software_picture(scene, camera, {200, 200}, 1);
        const QColor middle = image.pixelColor(100, 100);
        EXPECT_GT(middle.red(), 2 * middle.blue());
    }
}

TEST(SoftwarePicture, PaleYarnDoesNotClipAndBlackYarnKeepsItsForm) {
    for (const Colour colour : {Colour{255, 255, 255}, Colour{0, 0, 0}}) {
        const QImage image =
            draw(test::sphere_mesh(Vec3::Zero(), 30, 128, colour), {200, 200}, 2, QColor(128, 128, 128));
        int brightest = 0, darkest = 255;
        for (int y = 30; y < 170; ++y) {
            for (int x = 60; x < 140; ++x) {
                brightest = std::max(brightest, qGreen(image.pixel(x, y)));
                darkest = std::min(darkest, qGreen(image.pixel(x, y)));
            }
        }
        EXPECT_LT(brightest, 255);
        EXPECT_GT(brightest - darkest, 20) << "the form still reads";
        EXPECT_GT(darkest, 5);
    }
}

TEST(SoftwarePicture, LitRoundIsBrighterAndOutlined) {
    const StitchSurface ball = test::ball_surface(6);
    const auto lit = lit_vertices(ball, ball.mesh, {8});
    SoftwareScene scene;
    scene.background = Qt::white;
    scene.meshes = {{&ball.mesh, &lit, Finish::yarn}};
    const Camera camera = front_camera(ball.mesh, {300, 300});
    const QImage plain = draw_software_picture(scene, camera, {300, 300}, 2);
    scene.any_lit = true;
    const QImage shown = draw_software_picture(scene, camera, {300, 300}, 2);
    int pale = 0, dark = 0, dimmed = 0;
    for (int y = 0; y < 300; ++y) {
        const int before = qGreen(plain.pixel(150, y)), after = qGreen(shown.pixel(150, y));
        pale += after > before + 12;
        dark += after < 60 && after < before - 40;
        dimmed += after < before - 10;
    }
    EXPECT_GT(pale, 6);
    EXPECT_GE(dark, 2) << "an outline that does not depend on hue";
    EXPECT_GT(dimmed, 50);
}

double mean_grey(const QImage& image, const QRect& part) {
    double sum = 0;
    for (int y = part.top(); y <= part.bottom(); ++y)
        for (int x = part.left(); x <= part.right(); ++x) sum += qGray(image.pixel(x, y));
    return sum / (part.width() * part.height());
}

/// Standard deviation over the mean.
double contrast(const QImage& image, const QRect& part) {
    const double mean = mean_grey(image, part);
    double square = 0;
    for (int y = part.top(); y <= part.bottom(); ++y)
        for (int x = part.left(); x <= part.right(); ++x)
            square += std::pow(qGray(image.pixel(x, y)) - mean, 2);
    return std::sqrt(square / (part.width() * part.height())) / mean;
}

// White came out at 200 of 255, the grey of cement.
TEST(SoftwarePicture, WhiteYarnReadsAsWhite) {
    const auto ball = test::striped_ball_surface(7, {{255, 255, 255}}, 60'000);
    const QImage image = picture_of(ball, {}, ViewDirection::front, {400, 400}, QColor(128, 128, 128));
    EXPECT_GT(mean_grey(image, {140, 120, 100, 100}), 222);
    EXPECT_GT(contrast(image, {140, 120, 100, 100}), 0.04) << "its stitches can be seen";
}

TEST(SoftwarePicture, ADarkRoundThatIsLitKeepsItsStitches) {
    const StitchSurface ball = test::striped_ball_surface(6, {{24, 24, 28}}, 60'000);
    const auto lit = lit_vertices(ball, ball.mesh, {8, 9});
    SoftwareScene scene;
    scene.background = Qt::white;
    scene.meshes = {{&ball.mesh, &lit, Finish::yarn}};
    scene.stitch_mm = 5;
    const Camera camera = front_camera(ball.mesh, {400, 400});
    const QRect round(140, 188, 120, 18);
    const QImage plain = draw_software_picture(scene, camera, {400, 400}, 2);
    scene.any_lit = true;
    const QImage shown = draw_software_picture(scene, camera, {400, 400}, 2);
    EXPECT_GT(mean_grey(shown, round), mean_grey(plain, round) + 4);
    EXPECT_GT(contrast(shown, round), 0.6 * contrast(plain, round));
    EXPECT_LT(mean_grey(shown, round), 85);
}

// Coverage of a pixel by sixteen points: with four the edge had three steps between piece and background.
TEST(SoftwarePicture, OutlinesAreSmooth) {
    const auto ball = test::striped_ball_surface(7, {{40, 40, 160}}, 60'000);
    const QImage image = picture_of(ball, {}, ViewDirection::front, {300, 300}, Qt::transparent);
    std::set<int> opacities;
    for (int y = 0; y < 300; ++y)
        for (int x = 0; x < 300; ++x) opacities.insert(qAlpha(image.pixel(x, y)));
    EXPECT_GE(opacities.size(), 12U);
}

/// Mean over a part of a picture along one axis, and how much it varies across the other.
double variation(const QImage& image, const QRect& part, bool down) {
    std::vector<double> means;
    for (int a = 0; a < (down ? part.height() : part.width()); ++a)
        means.push_back(mean_grey(image, down ? QRect(part.left(), part.top() + a, part.width(), 1)
                                              : QRect(part.left() + a, part.top(), 1, part.height())));
    // The form's own shading is slow: only what turns within a few pixels counts.
    double sum = 0;
    for (std::size_t k = 3; k + 3 < means.size(); ++k)
        sum += std::abs(means[k] - (means[k - 3] + means[k + 3]) / 2);
    return sum / static_cast<double>(means.size());
}

// Single crochet shows rounds, one above the other; stocking stitch and its like show ribs.
TEST(SoftwarePicture, FabricShowsRoundsRatherThanRibs) {
    for (const bool inside : {false, true}) {
        const StitchSurface tube = test::tube_surface(40, 16);
        SoftwareScene scene;
        scene.background = Qt::white;
        scene.meshes = {{&tube.mesh, nullptr, Finish::yarn}};
        scene.stitch_mm = 5;
        Camera camera = front_camera(tube.mesh, {600, 600});
        if (inside) camera.zoom(3.2);
        const QImage image = draw_software_picture(scene, camera, {600, 600}, 2);
        const QRect part(220, 220, 160, 160);
        EXPECT_GT(variation(image, part, true), 1.6 * variation(image, part, false)) << inside;
        save(image, inside ? QStringLiteral("tube_near.png") : QStringLiteral("tube.png"));
    }
}

TEST(SoftwarePicture, BrushedYarnIsFluffyBeyondItsOutline) {
    const auto covered = [](const QImage& image) {
        int pixels = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) pixels += qAlpha(image.pixel(x, y)) > 0;
        return pixels;
    };
    StitchSurface ball = test::brushed_ball_surface(7, {176, 138, 90});
    const QImage brushed = picture_of(ball, {}, ViewDirection::front, {400, 400}, Qt::transparent);
    for (auto& patch : ball.stitches) patch.brushed = false;
    const QImage bald = picture_of(ball, {}, ViewDirection::front, {400, 400}, Qt::transparent);
    EXPECT_GT(covered(brushed), covered(bald) + 1'500);
    EXPECT_EQ(brushed, picture_of(test::brushed_ball_surface(7, {176, 138, 90}), {}, ViewDirection::front,
                                  {400, 400}, Qt::transparent));
    save(brushed, QStringLiteral("brushed.png"));
}

TEST(SoftwarePicture, GhostShowsRoundTheSmallerPiece) {
    const StitchSurface ball = test::ball_surface(5);
    Mesh bigger = test::ball_surface(7, false).mesh;
    SoftwareScene scene;
    scene.background = Qt::white;
    scene.meshes = {{&ball.mesh, nullptr, Finish::yarn}};
    const Camera camera = front_camera(bigger, {300, 300});
    const QImage plain = draw_software_picture(scene, camera, {300, 300}, 1);
    scene.ghost = &bigger;
    const QImage shown = draw_software_picture(scene, camera, {300, 300}, 1);
    EXPECT_EQ(plain.pixel(150, 25), qRgb(255, 255, 255));
    EXPECT_NE(shown.pixel(150, 25), qRgb(255, 255, 255));
    EXPECT_NE(shown.pixel(150, 150), plain.pixel(150, 150));
}

// A camera inside the piece: what lies before the near plane is cut, what lies behind shows its inner side.
TEST(SoftwarePicture, InsideOfThePieceFillsTheView) {
    const Mesh mesh = test::sphere_mesh(Vec3::Zero(), 30, 64, {180, 120, 90});
    Camera camera = front_camera(mesh, {100, 100});
    camera.zoom(1e9);
    SoftwareScene scene;
    scene.background = Qt::transparent;
    scene.meshes = {{&mesh, nullptr, Finish::yarn}};
    const QImage image = draw_software_picture(scene, camera, {100, 100}, 1);
    for (int y = 0; y < 100; ++y) {
        for (int x = 0; x < 100; ++x) EXPECT_EQ(qAlpha(image.pixel(x, y)), 255) << x << ' ' << y;
    }
}

/// How far two pictures differ: mean over the pixels of the sum over the channels, and at most.
std::pair<double, int> difference(const QImage& one, const QImage& other) {
    double sum = 0;
    int most = 0;
    for (int y = 0; y < one.height(); ++y) {
        for (int x = 0; x < one.width(); ++x) {
            const QRgb a = one.pixel(x, y), b = other.pixel(x, y);
            const int here = std::max({std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)),
                                       std::abs(qBlue(a) - qBlue(b)), std::abs(qAlpha(a) - qAlpha(b))});
            sum += here;
            most = std::max(most, here);
        }
    }
    return {sum / (one.width() * one.height()), most};
}

/// What is shown while keys come must not be seen to change when the full picture takes its place.
TEST(SoftwarePicture, EveryOtherPixelLooksLikeAllOfThem) {
    const auto surface = test::striped_ball_surface(8, {{240, 240, 240}, {40, 60, 110}, {200, 90, 60}});
    const QSize size(420, 420);
    const auto lit = lit_vertices(surface, surface.mesh, {10});
    SoftwareScene scene;
    scene.background = Qt::white;
    scene.any_lit = true;
    scene.meshes = {{&surface.mesh, &lit, Finish::yarn}};
    const Camera camera = front_camera(surface.mesh, size);
    DrawingRun quickly;
    quickly.every_other_pixel = true;
    const QImage full = draw_software_picture(scene, camera, size, 1);
    const QImage quick = draw_software_picture(scene, camera, size, 1, quickly);
    save(full, QStringLiteral("every_pixel.png"));
    save(quick, QStringLiteral("every_other_pixel.png"));
    const auto [mean, most] = difference(full, quick);
    EXPECT_GT(mean, 0) << "nothing was saved";
    EXPECT_LT(mean, 3);
    for (int y = 0; y < size.height(); ++y)
        for (int x = 0; x < size.width(); ++x)
            ASSERT_EQ(full.pixel(x, y) == qRgb(255, 255, 255), quick.pixel(x, y) == qRgb(255, 255, 255))
                << "the outline at " << x << ", " << y;
    EXPECT_EQ(difference(draw_software_picture(scene, camera, size, fine_samples),
                         draw_software_picture(scene, camera, size, fine_samples, quickly))
                  .second,
              0)
        << "a fine picture has every pixel";
}

TEST(SoftwarePicture, OnceAskedToStopThereIsNone) {
    const Mesh mesh = test::sphere_mesh(Vec3::Zero(), 30, 64, {180, 120, 90});
    SoftwareScene scene;
    scene.meshes = {{&mesh, nullptr, Finish::yarn}};
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(draw_software_picture(scene, front_camera(mesh, {200, 200}), {200, 200}, 1,
                                      {Lane::longer, stop.get_token()})
                    .isNull());
}

TEST(SoftwarePicture, SameInputGivesTheSamePicture) {
    const StitchSurface ball = test::ball_surface(5);
    EXPECT_EQ(picture_of(ball, {}, ViewDirection::three_quarter, {160, 120}, Qt::white),
              picture_of(ball, {}, ViewDirection::three_quarter, {160, 120}, Qt::white));
}

TEST(SoftwarePicture, EmptySizesAndScenesAreEmptyPictures) {
    EXPECT_TRUE(picture_of({}, {}, ViewDirection::front, {0, 10}, Qt::white).isNull());
    const QImage blank = picture_of({}, {}, ViewDirection::front, {20, 10}, Qt::white);
    EXPECT_EQ(blank.pixel(5, 5), qRgb(255, 255, 255));
}

TEST(SoftwarePicture, GalleryForTheEye) {
    const std::vector<Colour> sets[] = {
        {{214, 196, 160}}, {{20, 20, 24}}, {{250, 248, 242}}, {{150, 60, 70}, {235, 225, 210}}};
    int i = 0;
    for (const auto& colours : sets) {
        const auto ball = test::striped_ball_surface(7, colours, 60'000);
        const QColor background = i % 2 ? QColor(38, 40, 44) : QColor(246, 245, 242);
        save(picture_of(ball, {}, ViewDirection::three_quarter, {360, 330}, background),
             QStringLiteral("ball_%1.png").arg(i++));
    }
}

}  // namespace
}  // namespace roundwright::render
