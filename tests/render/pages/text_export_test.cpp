#include "render/pages/text_export.h"

#include <gtest/gtest.h>

#include <QTextDocument>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "core/materials/yarn_use.h"
#include "core/rounds/piece_graph.h"
#include "render/pages/text_writer.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"
#include "tests/render/pages/demo_toys.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::puffin;

TEST(TextExport, PlainTextTellsEveryRound) {
    const QString text = pattern_text(ball(6), {}, TextForm::plain);
    // Words and counts as the trade writes them: the count in parentheses at the line's end (Craft Yarn
    // Council).
    EXPECT_TRUE(text.contains(QStringLiteral("Rnd 1: 6 sc in magic ring (6)\n"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Rnds 7-12: sc in each st around (36)\n")));
    EXPECT_TRUE(text.contains(QStringLiteral("Rnd 17: dec around (6)\n")));
}

TEST(TextExport, PlainTextIsReadBackToTheSameCounts) {
    for (const Terms terms : {Terms::us, Terms::uk}) {
        PatternOptions options;
        options.terms = terms;
        options.contents = {};
        options.contents.materials = options.contents.abbreviations = false;
        const Toy toy = ball(6);
        const std::string text = pattern_text(toy, options, TextForm::plain).toStdString();
        const Toy read = toy_of(read_pattern(text));
        ASSERT_EQ(read.pieces.size(), 1u) << text;
        EXPECT_EQ(stitch_counts(piece_graph(read.pieces[0]).graph),
                  stitch_counts(piece_graph(toy.pieces[0]).graph));
    }
}

TEST(TextExport, TellsHowAFlatEarEndsAndIsReadBack) {
    Toy toy = ball(1);
    toy.pieces[0] = testing::piece_of("Ear", {6, 12, 18, 24, 24, 24, 24}, End::sewn_straight);
    toy.pieces[0].area_stretch = unstuffed_stretch;
    PatternOptions options;
    options.contents.materials = options.contents.abbreviations = false;
    const QString text = pattern_text(toy, options, TextForm::plain);
    EXPECT_TRUE(text.simplified().contains(
        QStringLiteral("Press the piece flat and sew straight across the last round, through both layers.")))
        << text.toStdString();
    EXPECT_TRUE(text.simplified().contains(QStringLiteral("laid flat")));
    EXPECT_TRUE(text.contains(QStringLiteral("Do not stuff.")));
    const Toy read = toy_of(read_pattern(text.toStdString()));
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].end, End::sewn_straight);
    toy.pieces[0].area_stretch = medium_stuffing_stretch;
    const QString stuffed = pattern_text(toy, options, TextForm::plain);
    EXPECT_TRUE(stuffed.simplified().contains(
        QStringLiteral("Stuff, press the last round flat and sew straight across it, through both layers.")));
    EXPECT_FALSE(stuffed.simplified().contains(QStringLiteral("laid flat")));
    EXPECT_EQ(toy_of(read_pattern(stuffed.toStdString())).pieces[0].end, End::sewn_straight);
}

Toy toy_of_starts() {
    Toy toy = ball(1);
    const std::pair<const char*, Start> starts[] = {
        {"Sole", OvalChain{7}}, {"Leg", OpenTube{18}}, {"Ring", ChainRing{6}}, {"Ball", MagicRing{}}};
    toy.pieces.clear();
    for (const auto& [name, start] : starts) {
        toy.pieces.push_back(testing::piece_of(name, {18, 18, 24, 24}, End::left_open));
        toy.pieces.back().start = start;
    }
    toy.pieces.push_back(testing::piece_of("Scarf", {18, 18, 18}, End::left_open));
    toy.pieces.back().start = OpenTube{18};
    toy.pieces.back().joining = Joining::rows;
    return toy;
}

TEST(TextExport, TellsHowEveryPieceIsStarted) {
    const QString text = pattern_text(toy_of_starts(), {}, TextForm::plain).simplified();
    // Common practice: one chain more than is worked into, where the first is skipped.
    EXPECT_TRUE(text.contains(QStringLiteral("Ch 8. Start in 2nd ch from hook and work around both sides")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("Ch 18, sl st in first ch to join.")));
    EXPECT_TRUE(text.contains(QStringLiteral("Ch 6, sl st in first ch to form a ring.")));
    EXPECT_TRUE(text.contains(QStringLiteral("Ch 19. Start in 2nd ch from hook.")));
    EXPECT_TRUE(text.contains(QStringLiteral("Rows 2-3: sc in each st across (18)")));
}

TEST(TextExport, PlainTextOfEveryStartIsReadBack) {
    const Toy toy = toy_of_starts();
    PatternOptions options;
    options.contents.materials = options.contents.abbreviations = false;
    const std::string text = pattern_text(toy, options, TextForm::plain).toStdString();
    const Toy read = toy_of(read_pattern(text));
    ASSERT_EQ(read.pieces.size(), toy.pieces.size()) << text;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        EXPECT_EQ(read.pieces[i].start, toy.pieces[i].start) << toy.pieces[i].name;
        EXPECT_EQ(read.pieces[i].joining, toy.pieces[i].joining) << toy.pieces[i].name;
        EXPECT_EQ(stitch_counts(piece_graph(read.pieces[i]).graph),
                  stitch_counts(piece_graph(toy.pieces[i]).graph));
    }
}

TEST(TextExport, EveryPieceSaysItsYarn) {
    Toy toy = puffin();
    for (Round& round : toy.pieces[1].rounds) round.yarn = 0;
    for (const TextForm form : {TextForm::plain, TextForm::markdown}) {
        const QString text = pattern_text(toy, {}, form).simplified();
        EXPECT_TRUE(text.contains(QStringLiteral("Begin with yarn B, Foam."))) << text.toStdString();
        EXPECT_TRUE(text.contains(QStringLiteral("Use yarn A, Ink."))) << text.toStdString();
    }
    EXPECT_TRUE(pattern_text(ball(4), {}, TextForm::plain).contains(QStringLiteral("Use yarn A, Sand.")));
    Toy none = ball(4);
    none.yarns.clear();
    EXPECT_FALSE(pattern_text(none, {}, TextForm::plain).contains(QStringLiteral("yarn A")));
}

TEST(TextExport, NotesToOneselfStayAtHome) {
    Toy toy = puffin();
    toy.notes = "For the harbour fair.";
    toy.private_notes = "Sell for more than last year.";
    for (const QString& text :
         {pattern_text(toy, {}, TextForm::plain), pattern_text(toy, {}, TextForm::markdown),
          rounds_csv(toy, {}), QString::fromStdString(write_toy(toy, Terms::us))})
        EXPECT_FALSE(text.contains(QStringLiteral("last year"))) << text.toStdString();
    EXPECT_TRUE(pattern_text(toy, {}, TextForm::plain).contains(QStringLiteral("For the harbour fair.")));
}

// What a maker works out on the printed length and the label has to be what is printed beside it.
TEST(TextExport, GramsAgreeWithMetres) {
    for (const LengthUnit units : {LengthUnit::millimetres, LengthUnit::inches}) {
        for (const double metres : {0.2, 1.2, 12.1, 12.4, 29.999, 80.3}) {
            Yarn yarn = testing::yarn_of("Sand", {});
            yarn.metres_per_100_g = 250;
            const Estimate length{metres, metres / 2, metres};
            const YarnUse use{length, yarn_grams(yarn, length), {}};
            const double printed = printed_yarn_metres(metres, units);
            const double grams = grams_upwards(printed * 100 / 250);
            const QString said = yarn_amount_words(yarn, use, units).simplified().replace(QChar::Nbsp, u' ');
            EXPECT_TRUE(said.contains(number_words(grams) + QStringLiteral(" g")))
                << metres << " " << said.toStdString();
            EXPECT_GE(grams * 2.5, printed - 1e-9);
            EXPECT_LT(grams * 2.5, printed + 2.5);
        }
    }
}

TEST(TextExport, BallsAreThoseThatThePrintedGramsTake) {
    Yarn yarn = testing::yarn_of("Sand", {});  // balls of 50 g
    yarn.metres_per_100_g = 250;
    const YarnUse use{{124.6, 124.6, 124.6}, {49.84, 49.84, 49.84}, 1};
    EXPECT_EQ(yarn_amount_words(yarn, use, LengthUnit::millimetres).toStdString(), "50 g\n1 ball");
    const YarnUse more{{125.2, 125.2, 125.2}, {50.08, 50.08, 50.08}, 2};
    EXPECT_EQ(yarn_amount_words(yarn, more, LengthUnit::millimetres).toStdString(), "51 g\n2 balls");
}

TEST(TextExport, RangesSayWhatTheyHold) {
    EXPECT_TRUE(pattern_text(puffin(), {}, TextForm::plain)
                    .simplified()
                    .contains(QStringLiteral("about 9 in 10 toys")));
    Toy exact = ball(4);  // of an exact gauge, and unstuffed
    exact.pieces[0].area_stretch = 0;
    EXPECT_FALSE(pattern_text(exact, {}, TextForm::plain).contains(QStringLiteral("9 in 10")));
}

TEST(TextExport, ARuffledEdgeIsNotCalledFlat) {
    Toy toy = ball(1);
    toy.pieces[0] = testing::piece_of("Base", {8, 16, 24, 32, 40, 48}, End::left_open);
    toy.pieces[0].area_stretch = 0;
    const QString text = pattern_text(toy, {}, TextForm::plain).simplified();
    EXPECT_TRUE(text.contains(QStringLiteral("The edge ruffles, in waves about"))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("across, flat")));
    toy.gauge = GivenGauge{{5.0, 4.78, 0, 0}};  // 6 more a round lie flat: 2 pi h / w = 6.0
    toy.pieces[0] = testing::piece_of("Base", {6, 12, 18, 24, 30, 36}, End::left_open);
    toy.pieces[0].area_stretch = 0;
    EXPECT_TRUE(pattern_text(toy, {}, TextForm::plain).simplified().contains(QStringLiteral("across, flat")));
}

TEST(TextExport, PlainTextFitsItsLines) {
    for (const QString& line : pattern_text(puffin(), {}, TextForm::plain).split(QLatin1Char('\n'))) {
        EXPECT_LE(line.size(), 78) << line.toStdString();
    }
}

TEST(TextExport, MarkdownHasTheSameWords) {
    QTextDocument read;
    read.setMarkdown(pattern_text(puffin(), {}, TextForm::markdown));
    const QString text = read.toPlainText();
    for (const char* part :
         {"Rnd 3: [sc, inc] x 6 (18)", "Puffin of the outer mole", "Change to yarn A, Ink.",
          "Pin the wings to the sides between rounds 9 and 14.", "single crochet"}) {
        EXPECT_TRUE(text.contains(QString::fromUtf8(part))) << part << "\n" << text.toStdString();
    }
}

TEST(TextExport, MarkdownEscapesMarkup) {
    for (const char* typed :
         {"*not* _slanted_ `code` [link](x) <b>bold</b>", "# no heading", "1. no list", "2) no list",
          "- no list", "+ no list", "a|b", "&amp; stays", "back\\slash", "=== no line", "![x](y)"}) {
        QTextDocument read;
        read.setMarkdown(markdown_escaped(QString::fromUtf8(typed)));
        EXPECT_EQ(read.toPlainText().toStdString(), typed);
    }
}

TEST(TextExport, CsvHasALineForEveryRound) {
    Toy toy = ball(3);
    toy.pieces[0].name = "Head, \"small\"";
    toy.pieces[0].rounds[1].note = "=1+1";
    const QStringList lines = rounds_csv(toy, {}).split(QStringLiteral("\r\n"));
    ASSERT_EQ(lines.size(), 1 + 8 + 1);  // a header, 3n - 1 rounds, and the end of the last line
    EXPECT_EQ(lines[1].toStdString(),
              "\"Head, \"\"small\"\"\",1,\"6 sc in magic ring\",6,6,\"A\",\"Sand\",\"\"");
    EXPECT_TRUE(lines[2].endsWith(QStringLiteral("\"'=1+1\"")));
    EXPECT_TRUE(lines[8].contains(QStringLiteral(",6,-6,")));
}

TEST(TextExport, NothingIsLeftOutOfAnEmptyToy) {
    EXPECT_TRUE(pattern_text(Toy{}, {}, TextForm::plain).contains(QStringLiteral("Safety")));
    EXPECT_EQ(rounds_csv(Toy{}, {}).count(QLatin1Char('\n')), 1);
}

}  // namespace
}  // namespace roundwright::render
