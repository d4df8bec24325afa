#include <algorithm>
#include <gtest/gtest.h>
#include <map>

#include "core/language/pattern/read_pattern.h"
#include "render/pages/pattern_pages.h"
#include "render/pages/pattern_study.h"
#include "render/pages/text_export.h"
#include "render/pages/toy_figure.h"
#include "render/wording/pattern/assembly_words.h"
#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball_counts;
using testing::PdfReader;
using testing::piece_of;

/// An invented harbour cat: a head set on a body, a pair of ears, a tail at the back.
Toy harbour_cat() {
    Toy toy = testing::puffin();
    toy.text.assembly.clear();
    toy.text.finishing.clear();
    Piece body = piece_of("Body", {6, 12, 18, 24, 30, 30, 30, 30, 30, 30, 24, 24, 18}, End::left_open);
    Piece head = piece_of("Head", ball_counts(6));
    Piece ear = piece_of("Ear", {4, 6, 8, 10}, End::sewn_straight);
    ear.make = 2;
    ear.area_stretch = unstuffed_stretch;
    Piece tail = piece_of("Tail", {6, 6, 6, 6, 6, 6, 6, 6}, End::left_open);
    toy.pieces = PieceList{body, head, ear, tail};
    const auto copy = [&](std::size_t piece) { return PieceCopy{toy.pieces.id(piece), 0}; };
    toy.joins = {{.piece = copy(1),
                  .onto = copy(0),
                  .end = JoinedEnd::start,
                  .seam = Seam::closed,
                  .at = {.round = 12, .around = true}},
                 {.piece = copy(2),
                  .onto = copy(1),
                  .pair = true,
                  .seam = Seam::straight,
                  .at = {.round = 11, .stitches_right = 6}},
                 {.piece = copy(3), .onto = copy(0), .at = {.round = 3, .stitches_right = 12}}};
    return toy;
}

PatternStudy study_of(const Toy& toy) { return *study_pattern(toy, {}); }

TEST(AssemblySection, TheStudyHoldsTheToyPutTogether) {
    const PatternStudy study = study_of(harbour_cat());
    EXPECT_EQ(study.together->placed.pieces.size(), 5u);
    EXPECT_TRUE(study.together->placed.problems.empty());
    EXPECT_TRUE(shows_whole_toy(study));
    ASSERT_EQ(study.sewing.size(), 3u);
    EXPECT_GT(study.measures.height_mm.likely, 0);
    EXPECT_FALSE(shows_whole_toy(study_of(testing::puffin())));
}

TEST(AssemblySection, EveryJoinIsMarkedInAViewThatShowsIt) {
    const PatternStudy study = study_of(harbour_cat());
    std::map<std::size_t, int> marks;
    for (const ToyView view : {ToyView::front, ToyView::side, ToyView::back})
        for (const SeenJoin& seen : seen_joins(study, view)) ++marks[seen.join];
    for (std::size_t join = 0; join < 3; ++join) EXPECT_GT(marks[join], 0) << join;
    const auto front = seen_joins(study, ToyView::front);
    EXPECT_TRUE(std::ranges::none_of(front, [](const SeenJoin& seen) { return seen.join == 2; }));
    // The two ears mirror each other about the middle.
    std::vector<double> ears;
    for (const SeenJoin& seen : front)
        if (seen.join == 1) ears.push_back(seen.place_mm.x());
    ASSERT_EQ(ears.size(), 2u);
    EXPECT_NEAR(ears[0], -ears[1], 1e-6);
}

TEST(AssemblySection, TheWholeToyIsHigherThanItsBody) {
    const PatternStudy study = study_of(harbour_cat());
    const QRectF seen = ToyModel(study).seen_mm(ToyView::front);
    EXPECT_GT(seen.height(),
              study.pieces[0].measures().height_mm + 0.6 * study.pieces[1].measures().height_mm);
    EXPECT_NEAR(seen.bottom(), 0, 3);
}

TEST(AssemblySection, IsPrintedWithItsStepsViewsAndDrawings) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        PatternOptions options;
        options.paper = paper;
        const PdfReader pdf(harbour_cat(), options);
        const QString text = pdf.text().simplified();
        for (const char* words : {"Assembly", "from the front", "from the side", "from the back", "Ear (2)",
                                  "Head, from the front", "Body, from the back", "rounds 4 | 5",
                                  "12 stitches", "Weave in all ends."})
            EXPECT_TRUE(text.contains(QLatin1String(words))) << words;
    }
}

TEST(AssemblySection, WordsAreReadBackAsAssemblyAndNothingIsLost) {
    for (const Terms terms : {Terms::us, Terms::uk}) {
        PatternOptions options;
        options.terms = terms;
        const Toy toy = harbour_cat();
        const QString text = pattern_text(toy, options, TextForm::plain);
        const ReadPattern read = read_pattern(text.toStdString());
        for (const ReadDiagnostic& found : read.diagnostics)
            EXPECT_EQ(found.severity, Severity::note) << found.where.line;
        EXPECT_EQ(read.pieces.size(), toy.pieces.size()) << text.toStdString();
        const QStringList steps = assembly_words(toy, study_of(toy).sewing, terms);
        EXPECT_EQ(QString::fromStdString(read.assembly).simplified(), steps.join(QLatin1Char(' ')));
    }
}

TEST(AssemblySection, ABodyWorkedOnLegsIsReadBackAsSuch) {
    Toy toy = harbour_cat();
    Piece leg = piece_of("Leg", {6, 12, 12, 12}, End::left_open);
    leg.make = 2;
    Piece body = piece_of("Body", {30, 30, 30, 24, 18, 12, 6});
    body.start = WorkedOn{.stitches = 30, .chains_between = 3};
    toy.pieces = PieceList{body, leg};
    toy.joins = {{.piece = {toy.pieces.id(1), 0},
                  .onto = {toy.pieces.id(0), 0},
                  .pair = true,
                  .seam = Seam::worked_on,
                  .at = {.round = -1, .stitches_right = 7.5}}};
    const QString text = pattern_text(toy, {}, TextForm::plain);
    const ReadPattern read = read_pattern(text.toStdString());
    for (const ReadDiagnostic& found : read.diagnostics)
        EXPECT_EQ(found.severity, Severity::note) << found.where.line << "\n" << text.toStdString();
    ASSERT_EQ(read.pieces.size(), 2u) << text.toStdString();
    EXPECT_EQ(read.pieces[0].name, "Leg");
    EXPECT_EQ(read.pieces[1].start, Start(WorkedOn{.stitches = 30, .chains_between = 3}));
    EXPECT_TRUE(text.contains(QStringLiteral("Work the pieces in this order: Leg, Body.")));
    EXPECT_TRUE(text.simplified().contains(QStringLiteral(
        "Fasten off, but not the last one that you make: Body goes on from there around all the edges.")));
}

TEST(AssemblySection, PelletsAndStuffedRoundsAreSaidWithTheirCaution) {
    Toy toy = harbour_cat();
    toy.pieces[0].weight_grams = 40;
    toy.pieces[3].stuffed_rounds = RoundSpan{0, 3};
    for (Piece& piece : toy.pieces) piece.features.clear();
    toy.text.notions.clear();
    toy.text.introduction.clear();
    const QString text = pattern_text(toy, {}, TextForm::plain).simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("Stuff rounds 1 to 4 only")));
    EXPECT_TRUE(text.contains(QStringLiteral("40\u00A0g of plastic pellets")) ||
                text.contains(QStringLiteral("40 g of plastic pellets")));
    EXPECT_TRUE(text.contains(QStringLiteral("Pellets are small parts too.")));
    EXPECT_TRUE(text.contains(QStringLiteral("choking hazard")));
}

TEST(AssemblySection, TheMakersOwnStepsStandWithLetteredJoins) {
    Toy toy = harbour_cat();
    toy.text.assembly = "Set the head on the body.\nSew on ears and tail.";
    const PdfReader pdf(toy);
    const QString text = pdf.text().simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("Sew on ears and tail.")));
    EXPECT_FALSE(text.contains(QStringLiteral("Weave in all ends.")));
    EXPECT_TRUE(text.contains(QStringLiteral("C Ear (2)")) || text.contains(QStringLiteral("A Ear (2)")))
        << text.toStdString();
}

}  // namespace
}  // namespace roundwright::render
