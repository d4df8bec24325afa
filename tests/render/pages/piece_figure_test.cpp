#include "render/pages/piece_figure.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "core/study/piece_study.h"
#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

Toy looking_aside() {
    Toy toy;
    toy.gauge = GivenGauge{{5.0, 5.0, 0.2, 0.2}};
    toy.yarns = {testing::yarn_of("Foam", {244, 241, 232})};
    toy.pieces = {testing::piece_of("Head", testing::ball_counts(6))};
    toy.pieces[0].face_degrees = 130;
    Feature eyes;
    eyes.round = 9;
    toy.pieces[0].features = {eyes};
    return toy;
}

int dark_pixels(const QImage& image, int left, int right) {
    int dark = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = left; x < right; ++x) dark += qGray(image.pixel(x, y)) < 70;
    return dark;
}

// The face looked wherever it stood on the piece, on the cover mostly away.
TEST(PieceFigure, ShowsAFaceToTheReader) {
    const Toy toy = looking_aside();
    const PieceStudy study = study_piece(toy, 0);
    const PieceModel model(toy, 0, study);
    const double scale = 300 / study.measures().width_mm;
    for (const FigureView view : {FigureView::front, FigureView::above}) {
        QImage image(400, 400, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        PieceFigure(model, scale, view).paint(painter, {200, 380});
        painter.end();
        const int left = dark_pixels(image, 0, 200), right = dark_pixels(image, 200, 400);
        EXPECT_GT(left, 300);
        EXPECT_NEAR(1.0 * left / right, 1, 0.15);
    }
}

}  // namespace
}  // namespace roundwright::render
