#include "render/pages/text_export.h"

#include <gtest/gtest.h>

#include <QTextDocument>

#include "core/instructions/piece_graph.h"
#include "core/instructions/read_pattern.h"
#include "render/pages/text_writer.h"
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
    EXPECT_TRUE(text.contains(QStringLiteral("lying flat")));
    EXPECT_TRUE(text.contains(QStringLiteral("Not stuffed.")));
    const Toy read = toy_of(read_pattern(text.toStdString()));
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].end, End::sewn_straight);
    toy.pieces[0].area_stretch = medium_stuffing_stretch;
    const QString stuffed = pattern_text(toy, options, TextForm::plain);
    EXPECT_TRUE(stuffed.simplified().contains(
        QStringLiteral("Stuff, press the last round flat and sew straight across it, through both layers.")));
    EXPECT_FALSE(stuffed.contains(QStringLiteral("lying flat")));
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
