#include "render/illustration/piece_drawing.h"

#include <algorithm>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QSet>
#include <QSvgRenderer>

#include "render/illustration/image_export.h"
#include "render/illustration/visible_stitches.h"
#include "render/illustration/yarn_tone.h"
#include "tests/render/drawing/drawing_pieces.h"

namespace roundwright::render {
namespace {

std::vector<VisibleStitch> seen_from(const StitchSurface& surface, const DrawingView& view) {
    const Projection projection(view);
    ItemBuffer seen(projected_bounds(surface.mesh, projection), 0.2);
    seen.draw(surface.mesh, projection, 0);
    return visible_stitches(surface, seen, sides_of_triangles(surface), projection);
}

int covered_pixels(const QImage& image) {
    int covered = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) covered += qAlpha(image.pixel(x, y)) > 127 ? 1 : 0;
    return covered;
}

TEST(VisibleStitches, AClosedBallShowsItsNearHalfInOneLayer) {
    const auto ball = test::drawing_ball();
    const auto visible = seen_from(ball.surface, {0, 0});
    EXPECT_GT(visible.size(), ball.surface.stitches.size() * 2 / 5);
    EXPECT_LT(visible.size(), ball.surface.stitches.size() * 3 / 5);
    for (const auto& stitch : visible) {
        EXPECT_FALSE(stitch.inside);
        EXPECT_EQ(stitch.layer, 0);
        EXPECT_GT(ball.surface.stitches[stitch.stitch].normal.z(), 0);
    }
}

TEST(VisibleStitches, ABowlShowsItsInsideFromAboveBehindItsNearWall) {
    const auto bowl = test::drawing_bowl();
    const auto visible = seen_from(bowl.surface, {0, 35});
    std::size_t inside = 0;
    for (const auto& stitch : visible) inside += stitch.inside ? 1 : 0;
    EXPECT_GT(inside, 10U);
    EXPECT_LT(inside, visible.size());
    const auto below = seen_from(bowl.surface, {0, -35});
    for (const auto& stitch : below) EXPECT_FALSE(stitch.inside);
}

TEST(PieceDrawing, IsCentredAtTheScaleAskedFor) {
    const auto ball = test::drawing_ball();
    DrawOptions options;
    options.target = QRectF(100, 50, 800, 600);
    options.units_per_mm = 3;
    const auto placed = place_piece(ball.surface, options);
    // The relief stands out of the mean surface by less than a sixth of a stitch.
    EXPECT_NEAR(placed.bounds.width() / 3, ball.shape.width_mm, 2.0);
    EXPECT_NEAR(placed.bounds.center().x(), 500, 1e-6);
    EXPECT_NEAR(placed.bounds.center().y(), 350, 1e-6);
    const QPointF top = placed.at(Vec3(0, ball.shape.height_mm, 0)), bottom = placed.at(Vec3(0, 0, 0));
    EXPECT_NEAR(bottom.y() - top.y(), 3 * ball.shape.height_mm, 1e-6);
    options.units_per_mm = 0;
    const auto fitted = place_piece(ball.surface, options);
    EXPECT_NEAR(std::max(fitted.bounds.width() / 800, fitted.bounds.height() / 600), 1, 1e-6);
}

TEST(PieceDrawing, CoversThePieceAndNothingElse) {
    const auto ball = test::drawing_ball();
    ImageOptions options;
    options.pixels = {400, 400};
    const QImage image = piece_image(ball.surface, {}, options);
    EXPECT_EQ(qAlpha(image.pixel(3, 3)), 0);
    EXPECT_EQ(qAlpha(image.pixel(200, 200)), 255);
    // A ball fills its bounds by about pi / 4, as an ellipse does.
    const QRectF bounds = place_piece(ball.surface, {{}, QRectF(16, 16, 368, 368), 0, {}, {}}).bounds;
    EXPECT_NEAR(covered_pixels(image) / (bounds.width() * bounds.height()), 0.785, 0.06);
}

TEST(PieceDrawing, ShowsTheYarnInLightAndShade) {
    const auto ball = test::drawing_ball();
    ImageOptions options;
    options.pixels = {400, 400};
    const QImage image = piece_image(ball.surface, {}, options);
    int darkest = 255, lightest = 0;
    for (int k = 120; k < 280; ++k) {
        for (int row = 120; row < 280; row += 4) {
            darkest = std::min(darkest, qGray(image.pixel(k, row)));
            lightest = std::max(lightest, qGray(image.pixel(k, row)));
        }
    }
    EXPECT_LT(darkest, 115);
    EXPECT_GT(lightest, 170);
}

TEST(PieceDrawing, PalesTheRoundsThatAreNotLit) {
    const auto ball = test::drawing_ball();
    DrawOptions lit;
    lit.lit_rounds = {4, 5};
    ImageOptions options;
    options.pixels = {300, 300};
    const QImage plain = piece_image(ball.surface, {}, options),
                 shown = piece_image(ball.surface, lit, options);
    const auto mean = [](const QImage& image, int from, int to) {
        int sum = 0;
        for (int y = from; y < to; ++y)
            for (int x = 130; x < 170; ++x) sum += qGray(image.pixel(x, y));
        return sum / (40 * (to - from));
    };
    EXPECT_NEAR(mean(shown, 145, 165), mean(plain, 145, 165), 6);
    EXPECT_GT(mean(shown, 60, 80), mean(plain, 60, 80) + 25);
}

TEST(PieceDrawing, BrushedPileStandsOffTheOutlineTheSameEveryTime) {
    auto ball = test::drawing_ball();
    ImageOptions options;
    options.pixels = {300, 300};
    const QImage plain = piece_image(ball.surface, {}, options);
    for (auto& patch : ball.surface.stitches) patch.brushed = true;
    const QImage brushed = piece_image(ball.surface, {}, options);
    EXPECT_GT(covered_pixels(brushed), covered_pixels(plain));
    EXPECT_EQ(brushed, piece_image(ball.surface, {}, options));
}

/// Level edges a stitch wide or wider: a step of tone of one sign along twelve pixels.
int level_edges(const QImage& image, const QRect& part) {
    int edges = 0;
    for (int y = part.top(); y < part.bottom(); ++y) {
        int along = 0, last = 0;
        for (int x = part.left(); x < part.right(); ++x) {
            const int step = qGray(image.pixel(x, y + 1)) - qGray(image.pixel(x, y));
            const int sign = step >= 3 ? 1 : step <= -3 ? -1 : 0;
            along = sign == 0 ? 0 : sign == last ? along + 1 : 1;
            last = sign;
            edges += along == 12;
        }
    }
    return edges;
}

// Each stitch had one of fourteen tones, so that fur stood in blocks: 32 such edges.
TEST(PieceDrawing, BrushedPileShadesWithoutBlocks) {
    std::vector<int> counts;
    for (int i = 1; i < 24; ++i) counts.push_back(6 * std::min({i, 8, 24 - i}));
    auto ball = test::drawing_piece(counts, MagicRing{}, End::drawn_closed, 0.04);
    for (auto& patch : ball.surface.stitches) {
        patch.brushed = true;
        patch.colour = {176, 138, 90};
    }
    ImageOptions options;
    options.pixels = {900, 900};
    options.background = Qt::white;
    EXPECT_LT(level_edges(piece_image(ball.surface, {}, options), {270, 270, 360, 360}), 10);
}

TEST(PieceDrawing, HidesPartsBehindThePiece) {
    const auto ball = test::drawing_ball();
    const double middle = ball.shape.height_mm / 2, out = ball.shape.width_mm / 2;
    const Colour black{20, 20, 22};
    ImageOptions options;
    options.pixels = {300, 300};
    const auto dark_pixels = [&](double z) {
        DrawOptions drawing;
        drawing.parts.push_back({test::ball_mesh(Vec3(0, middle, z), 4, black), true});
        const QImage image = piece_image(ball.surface, drawing, options);
        int dark = 0;
        for (int y = 0; y < 300; ++y)
            for (int x = 0; x < 300; ++x)
                dark += qGray(image.pixel(x, y)) < 40 && qAlpha(image.pixel(x, y)) > 200 ? 1 : 0;
        return dark;
    };
    EXPECT_GT(dark_pixels(out), 500);
    EXPECT_EQ(dark_pixels(-out + 3), 0);
}

TEST(PieceDrawing, IsASmallOpaquePdf) {
    const auto ball = test::drawing_ball();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(1200);
    QPainter painter(&writer);
    DrawOptions options;
    options.target = QRectF(500, 500, 4000, 4000);
    draw_piece(painter, ball.surface, options);
    painter.end();
    EXPECT_GT(bytes.size(), 10'000);
    EXPECT_LT(bytes.size(), 200'000);
    EXPECT_EQ(bytes.count("/SMask"), bytes.count("/SMask /None"));
    for (const auto& alpha : {"/ca 0", "/CA 0"}) EXPECT_FALSE(bytes.contains(alpha)) << alpha;
}

TEST(PieceDrawing, NothingIsDrawnOfNothing) {
    QImage image(50, 50, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    draw_piece(painter, {}, {});
    painter.end();
    EXPECT_EQ(covered_pixels(image), 0);
}

TEST(ImageExport, PngAndSvgHoldTheWholePieceAtItsSize) {
    const auto ball = test::drawing_ball();
    ImageOptions options;
    options.pixels = {320, 240};
    options.title = QStringLiteral("Seal <pup> & \"friend\"");
    QImage png;
    ASSERT_TRUE(png.loadFromData(piece_png(ball.surface, {}, options), "PNG"));
    EXPECT_EQ(png.size(), QSize(320, 240));
    EXPECT_EQ(png.text(QStringLiteral("Title")), options.title);
    const QByteArray svg = piece_svg(ball.surface, {}, options);
    QSvgRenderer renderer(svg);
    ASSERT_TRUE(renderer.isValid());
    // Full size: a hundredth of a millimetre a unit.
    EXPECT_GT(renderer.viewBoxF().width() / 100, ball.shape.width_mm);
    EXPECT_LT(renderer.viewBoxF().width() / 100, ball.shape.width_mm * 1.12 + 2);
    EXPECT_TRUE(svg.contains("mm\""));
    EXPECT_LT(svg.size(), 400'000);
}

TEST(YarnTone, KeepsWhiteBelowPaperInShadeAndBlackAboveNothing) {
    EXPECT_EQ(yarn_tone({120, 60, 30}, 1), QColor(120, 60, 30));
    EXPECT_LT(qGray(yarn_tone({255, 255, 255}, 0.5).rgb()), 180);
    EXPECT_GT(qGray(yarn_tone({0, 0, 0}, 1.3).rgb()), 40);
    EXPECT_EQ(stepped_light(0.7), stepped_light(0.71));
}

}  // namespace
}  // namespace roundwright::render
