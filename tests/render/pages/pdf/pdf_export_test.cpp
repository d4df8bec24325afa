#include "render/pages/pdf/pdf_export.h"

#include <gtest/gtest.h>
#include <stop_token>

#include <QFile>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::pdf_bytes;
using testing::PdfReader;
using testing::puffin;

std::vector<int> counts_in(const QString& text) {
    std::vector<int> counts;
    static const QRegularExpression count(QStringLiteral("\\((\\d+)\\)\\s*$"),
                                          QRegularExpression::MultilineOption);
    for (auto found = count.globalMatch(text); found.hasNext();)
        counts.push_back(found.next().captured(1).toInt());
    return counts;
}

TEST(PdfExport, CountsAreTheToys) {
    const PdfReader pdf(ball(6));
    ASSERT_TRUE(pdf.opened());
    // Six equal rounds of 36 are one line.
    EXPECT_EQ(counts_in(pdf.text()), (std::vector<int>{6, 12, 18, 24, 30, 36, 36, 30, 24, 18, 12, 6}));
    EXPECT_TRUE(pdf.flowing_text().contains(QStringLiteral("7–12 sc in each st around (36)")))
        << pdf.text().toStdString();
}

TEST(PdfExport, PagesHaveTheSizeOfThePaper) {
    // A4 595.276 x 841.890 pt (ISO 216), Letter 612 x 792 pt; whole points in the file.
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        PatternOptions options;
        options.paper = paper;
        const PdfReader pdf(ball(4), options);
        const std::unique_ptr<Poppler::Page> page(pdf.document().page(0));
        const QSizeF wanted = paper == Paper::a4 ? QSizeF(595.276, 841.890) : QSizeF(612, 792);
        EXPECT_NEAR(page->pageSizeF().width(), wanted.width(), 0.5);
        EXPECT_NEAR(page->pageSizeF().height(), wanted.height(), 0.5);
    }
}

TEST(PdfExport, EveryFontIsEmbedded) {
    const PdfReader pdf(puffin());
    ASSERT_FALSE(pdf.document().fonts().isEmpty());
    for (const Poppler::FontInfo& font : pdf.document().fonts()) {
        EXPECT_TRUE(font.isEmbedded()) << font.name().toStdString();
    }
}

TEST(PdfExport, TellsBothTerms) {
    PatternOptions options;
    options.terms = Terms::uk;
    // Craft Yarn Council: US sc is UK dc.
    EXPECT_TRUE(PdfReader(ball(4), options).flowing_text().contains(QStringLiteral("6 dc in magic ring")));
    EXPECT_TRUE(PdfReader(ball(4)).flowing_text().contains(QStringLiteral("6 sc in magic ring")));
}

TEST(PdfExport, WordsAreCopiedAsTheyAreSpelt) {
    const QString text = PdfReader(puffin()).flowing_text();
    EXPECT_TRUE(text.contains(QStringLiteral("Stuffing")));
    EXPECT_FALSE(text.contains(QChar(0xFB01)));  // the ligature of f and i
}

TEST(PdfExport, WarnsOfSmallPartsThatAreNamed) {
    const QString hazard = QStringLiteral("are small parts and a choking hazard");
    EXPECT_TRUE(PdfReader(puffin()).flowing_text().contains(
        QStringLiteral("Safety eyes, noses, buttons and beads ") + hazard));
    EXPECT_TRUE(
        PdfReader(ball(4)).flowing_text().contains(QStringLiteral("If you add eyes, buttons or beads")));
}

TEST(PdfExport, TheSameToyGivesTheSameBytes) {
    EXPECT_EQ(pdf_bytes(puffin()), pdf_bytes(puffin()));
    EXPECT_NE(pdf_bytes(puffin()), pdf_bytes(ball(4)));
}

TEST(PdfExport, IsMadeInOneStep) {
    QString error = QStringLiteral("of before");
    const auto bytes = pattern_pdf(ball(4), {}, &error);
    ASSERT_TRUE(bytes);
    EXPECT_TRUE(bytes->startsWith("%PDF-"));
    EXPECT_TRUE(error.isEmpty());
}

TEST(PdfExport, StoppedIsNoError) {
    std::stop_source source;
    source.request_stop();
    QString error;
    EXPECT_FALSE(pattern_pdf(ball(4), {}, &error, {{}, source.get_token()}));
    EXPECT_TRUE(error.isEmpty());
}

}  // namespace
}  // namespace roundwright::render
