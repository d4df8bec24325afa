#include <gtest/gtest.h>

#include "core/study/piece_study.h"
#include "render/pages/layout/page_style.h"
#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/outline_reader.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::ink_bounds;
using testing::mm_per_dot;
using testing::outline_pages;
using testing::outline_width_mm;
using testing::OutlinePage;
using testing::pdf_bytes;
using testing::PdfReader;

PatternOptions outlines_only(Paper paper = Paper::a4) {
    PatternOptions options;
    options.paper = paper;
    options.contents = {};
    options.contents.cover = options.contents.materials = options.contents.abbreviations = false;
    options.contents.rounds = options.contents.face = options.contents.making = options.contents.notes =
        false;
    return options;
}

TEST(Silhouette, IsAsLargeAsTheSolvedPiece) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        const Toy toy = ball(6);
        const Shape shape = study_piece(toy, 0).revolved();
        const PdfReader pdf(pdf_bytes(toy, outlines_only(paper)));
        const auto pages = outline_pages(pdf, QStringLiteral("Ball,"));
        ASSERT_EQ(pages.size(), 1u);
        const double top = pages[0].label.bottom() + 1;
        const double bottom = pages[0].bar_words.top() - 6;
        const QRectF bounds = ink_bounds(pdf, pages[0].page, QRectF(30, top, 500, bottom - top));
        EXPECT_NEAR(bounds.width() - outline_width_mm, shape.width_mm, 0.2);
        EXPECT_NEAR(bounds.height() - outline_width_mm, shape.height_mm, 0.2);
    }
}

TEST(Silhouette, TheCalibrationBarIsFiftyMillimetres) {
    const PdfReader pdf(pdf_bytes(ball(6), outlines_only()));
    const auto pages = outline_pages(pdf, QStringLiteral("Ball,"));
    ASSERT_EQ(pages.size(), 1u);
    const QRectF words = pages[0].bar_words;
    const QRectF bounds =
        ink_bounds(pdf, pages[0].page, QRectF(40, words.top() - 3, words.left() - 42, words.height() + 6));
    // Between the middles of the end ticks, which are 0.8 points wide.
    EXPECT_NEAR(bounds.width() - 0.8 * 25.4 / 72, 50, 1.5 * mm_per_dot);
}

TEST(Silhouette, AFlatPieceIsDrawnFromAbove) {
    Toy toy = ball(1);
    toy.pieces[0] = testing::piece_of("Base", {6, 12, 19, 25, 31, 38, 44, 50}, End::left_open);
    toy.pieces[0].area_stretch = 0;
    const Shape shape = study_piece(toy, 0).revolved();
    ASSERT_LT(shape.height_mm, shape.width_mm / 10);
    const PdfReader pdf(pdf_bytes(toy, outlines_only()));
    const auto pages = outline_pages(pdf, QStringLiteral("Base,"));
    ASSERT_EQ(pages.size(), 1u);
    EXPECT_TRUE(pdf.flowing_text().contains(QStringLiteral("across")));
    const double top = pages[0].label.bottom() + 1;
    const QRectF bounds =
        ink_bounds(pdf, pages[0].page, QRectF(30, top, 500, pages[0].bar_words.top() - 6 - top));
    EXPECT_NEAR(bounds.width() - outline_width_mm, shape.width_mm, 0.2);
    EXPECT_NEAR(bounds.height() - outline_width_mm, shape.width_mm, 0.2);
}

Toy ear(double area_stretch) {
    Toy toy = ball(1);
    toy.pieces[0] = testing::piece_of("Ear", {6, 12, 18, 24, 24, 24, 24, 24}, End::sewn_straight);
    toy.pieces[0].area_stretch = area_stretch;
    return toy;
}

// A flat ear is held against its outline as it lies, from the front.
TEST(Silhouette, OfAFlatEarIsItsLayer) {
    for (const bool at_top : {false, true}) {
        Toy toy = ear(unstuffed_stretch);
        toy.pieces[0].starts_at_top = at_top;
        const Shape shape = study_piece(toy, 0).revolved();
        ASSERT_TRUE(shape.flattened());
        const PdfReader pdf(pdf_bytes(toy, outlines_only()));
        const auto pages = outline_pages(pdf, QStringLiteral("Ear,"));
        ASSERT_EQ(pages.size(), 1u);
        const double top = pages[0].label.bottom() + 1;
        const QRectF bounds =
            ink_bounds(pdf, pages[0].page, QRectF(30, top, 500, pages[0].bar_words.top() - 6 - top));
        EXPECT_NEAR(bounds.width() - outline_width_mm, shape.width_mm, 0.3);
        EXPECT_NEAR(bounds.height() - outline_width_mm, shape.height_mm, 0.3);
    }
}

TEST(Silhouette, SmallPiecesShareOneSheetOfPaper) {
    Toy toy = ball(4);
    for (const int n : {5, 6, 7, 8}) toy.pieces.push_back(ball(n).pieces[0]);
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) toy.pieces[i].name = "Ball, " + std::to_string(i);
    PatternOptions options = outlines_only();
    options.contents.notes = true;
    options.contents.round_chart = false;
    // Wherever the section begins.
    for (int notes = 0; notes < 30; notes += 3) {
        toy.notes = QStringLiteral("A line.\n").repeated(notes).toStdString();
        const PdfReader pdf(pdf_bytes(toy, options));
        EXPECT_EQ(outline_pages(pdf, QStringLiteral("Ball,")).size(), 1u) << notes;
    }
}

TEST(Silhouette, ALargePieceIsTiledAtFullSize) {
    const Toy toy = ball(24, 6);  // about 275 mm across: wider than the paper
    const Shape shape = study_piece(toy, 0).revolved();
    const PdfReader pdf(pdf_bytes(toy, outlines_only()));
    const auto pages = outline_pages(pdf, QStringLiteral("Ball,"));
    ASSERT_EQ(pages.size(), 4u);
    for (const OutlinePage& page : pages) {
        EXPECT_TRUE(pdf.text(page.page).contains(QStringLiteral("of 4: row")));
    }
    // Leftmost on the first sheet to the right edge of the dashed line, then on from there: the outline's
    // left half and its right half together, less the overlap of 10 mm.
    EXPECT_GT(shape.width_mm, 210 - 2 * 22);
}

TEST(Silhouette, TheHeadingStaysWithTheFirstSheet) {
    for (const int n : {12, 18, 21, 24}) {
        const PdfReader pdf(pdf_bytes(ball(n, 6), outlines_only()));
        bool found = false;
        for (int i = 0; i < pdf.pages(); ++i) {
            const QString said = pdf.text(i);
            if (!said.contains(QStringLiteral("hold the work against them"))) continue;
            found = true;
            EXPECT_TRUE(said.contains(QStringLiteral("Ball, "))) << n;
        }
        EXPECT_TRUE(found) << n;
    }
}

TEST(Silhouette, AHugePieceIsDrawnSmallerAndSaysSo) {
    const PdfReader pdf(pdf_bytes(ball(60, 12), outlines_only()));
    EXPECT_TRUE(pdf.flowing_text().contains(QStringLiteral("the piece is drawn at 1 to")));
    EXPECT_LT(pdf.pages(), 20);
}

}  // namespace
}  // namespace roundwright::render
