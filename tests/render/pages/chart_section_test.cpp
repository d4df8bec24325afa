#include <gtest/gtest.h>

#include <QRegularExpression>

#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::PdfReader;
using testing::piece_of;

PatternOptions charts_only() {
    PatternOptions options;
    options.contents = {};
    options.contents.cover = options.contents.materials = options.contents.abbreviations = false;
    options.contents.rounds = options.contents.face = options.contents.making = false;
    options.contents.silhouette = options.contents.notes = false;
    return options;
}

/// A disc that repeats nowhere: 7 stitches more and 6 more in turn.
Toy disc(int rounds) {
    Toy toy = ball(1);
    std::vector<int> counts{7};
    for (int i = 1; i < rounds; ++i) counts.push_back(counts.back() + (i % 2 == 0 ? 7 : 6));
    toy.pieces[0] = piece_of("Rug", counts, End::left_open);
    return toy;
}

TEST(ChartSection, ALargePartIsDrawnInSectorsOnFurtherPages) {
    const PdfReader pdf(disc(34), charts_only());  // 3,808 stitches
    const QString said = pdf.flowing_text();
    static const QRegularExpression last(QStringLiteral("Sector (\\d+) of \\1\\."));
    const auto found = last.match(said);
    ASSERT_TRUE(found.hasMatch()) << said.toStdString();
    const int sectors = found.captured(1).toInt();
    EXPECT_GT(sectors, 1);
    EXPECT_EQ(said.count(QStringLiteral("Sector ")), sectors);
    EXPECT_FALSE(said.contains(QStringLiteral("not charted")));
}

TEST(ChartSection, APartTooLargeForThePaperSaysSo) {
    const QString said = PdfReader(disc(120), charts_only()).flowing_text();
    EXPECT_TRUE(said.contains(QStringLiteral("Rug, rounds 1 to 120: not charted, since on this paper its ")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("stitches would be too small to read")));
    EXPECT_FALSE(said.contains(QStringLiteral("Sector")));
}

TEST(ChartSection, PartsOfEveryPieceAreChartedOrSaidNotToBe) {
    Toy toy = disc(120);
    toy.pieces.push_back(piece_of("Fin", {6, 9, 12, 15, 18, 18, 12, 12}, End::left_open));
    const QString said = PdfReader(toy, charts_only()).flowing_text();
    EXPECT_TRUE(said.contains(QStringLiteral("Fin Rounds 1 to 6.")) ||
                said.contains(QStringLiteral("Rounds 1 to 6.")));
    EXPECT_TRUE(said.contains(QStringLiteral("Rounds 7 to 8.")));
    EXPECT_TRUE(said.contains(QStringLiteral("not charted")));
}

TEST(ChartSection, SmallChartsShareAPage) {
    Toy toy = ball(4);
    for (const int n : {3, 4, 3, 5}) toy.pieces.push_back(ball(n).pieces[0]);
    EXPECT_LE(PdfReader(toy, charts_only()).pages(), 3);  // ten charts, and the safety words
}

}  // namespace
}  // namespace roundwright::render
