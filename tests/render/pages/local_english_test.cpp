#include <gtest/gtest.h>

#include <QRegularExpression>

#include "render/pages/text_export.h"
#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::PdfReader;
using testing::puffin;

/// A toy that says as much as a pattern can: two colours, one brushed, eyes, a nose, lines, firm and light
/// stuffing, every heading, the teacher's sheet.
Toy talkative() {
    Toy toy = puffin();
    toy.text.finishing.clear();
    toy.text.notions.clear();
    toy.yarns[0].weight = YarnWeight::medium;
    toy.yarns[1].weight = YarnWeight::light;
    toy.yarns[1].brushed = true;
    toy.gauge = GivenGauge{{5.0, 5.0, 0.2, 0.2}};
    Feature eyes;
    eyes.round = 12;
    eyes.stitches_apart = 9;
    eyes.name = "Eyes";
    Feature nose;
    nose.kind = FeatureKind::safety_nose;
    nose.pair = false;
    nose.round = 14;
    nose.stitches_right = 1;
    toy.pieces[0].features = {eyes, nose};
    return toy;
}

PatternOptions everything(Terms terms) {
    PatternOptions options;
    options.terms = terms;
    options.paper = terms == Terms::us ? Paper::letter : Paper::a4;
    options.contents.teaching_sheet = true;
    return options;
}

/// What a toy's pattern says on paper and as text.
QStringList said(const Toy& toy, Terms terms) {
    return {PdfReader(toy, everything(terms)).flowing_text(),
            pattern_text(toy, everything(terms), TextForm::plain).simplified()};
}

void expect_words(const QStringList& texts, std::initializer_list<const char*> wanted,
                  std::initializer_list<const char*> unwanted) {
    for (const QString& text : texts) {
        for (const char* words : wanted) {
            EXPECT_TRUE(text.contains(QString::fromUtf8(words), Qt::CaseInsensitive)) << words << "\n"
                                                                                      << text.toStdString();
        }
        for (const char* words : unwanted) {
            const QRegularExpression whole(QStringLiteral("\\b%1\\b").arg(QString::fromUtf8(words)),
                                           QRegularExpression::CaseInsensitiveOption);
            EXPECT_FALSE(text.contains(whole)) << words << "\n" << text.toStdString();
        }
    }
}

TEST(LocalEnglish, AmericanPagesSpeakAmerican) {
    expect_words(
        said(talkative(), Terms::us),
        {"gauge", "change of color", "polyester fiberfill", "loose fiber", "Worsted (4)", "DK (3)",
         "yarn over", "right of center", "single crochet", "(parentheses)"},
        {"colours?", "fibrefill", "fibre", "tension", "toy filling", "aran", "centre", "yarn round hook"});
}

TEST(LocalEnglish, BritishPagesSpeakBritish) {
    expect_words(said(talkative(), Terms::uk),
                 {"tension", "change of colour", "toy filling", "loose fibre", "Aran (4)", "DK (3)",
                  "yarn round hook", "right of the middle", "double crochet", "(round brackets)"},
                 {"color", "fiberfill", "fiber", "gauge", "gauges", "worsted", "center", "parentheses",
                  "yarn over", "notions", "single crochet", "sc"});
}

TEST(LocalEnglish, TableHeadsAreSpelledAsTheTerms) {
    EXPECT_TRUE(PdfReader(talkative(), everything(Terms::us)).text().contains(QStringLiteral("COLOR")));
    EXPECT_TRUE(PdfReader(talkative(), everything(Terms::uk)).text().contains(QStringLiteral("COLOUR")));
    EXPECT_TRUE(PdfReader(talkative(), everything(Terms::us)).text().contains(QStringLiteral("Notions")));
    EXPECT_TRUE(
        PdfReader(talkative(), everything(Terms::uk)).text().contains(QStringLiteral("You also need")));
}

TEST(LocalEnglish, WhatIsSaidOfEyesIsSaidOnceAndCanBeCounted) {
    for (const QString& text : said(talkative(), Terms::us)) {
        EXPECT_TRUE(text.contains(QStringLiteral(
            "Insert the 8 mm safety eyes now, between rounds 13 and 14, with 9 stitches between them.")))
            << text.toStdString();
        EXPECT_FALSE(text.contains(QStringLiteral("safety eyes (")));
        EXPECT_FALSE(text.contains(QStringLiteral("stitches apart,")));
        EXPECT_FALSE(text.contains(QStringLiteral("Features")));
        EXPECT_TRUE(text.contains(QStringLiteral("2 safety eyes, 8 mm, with washers")));
    }
    EXPECT_TRUE(said(talkative(), Terms::us)[0].contains(QStringLiteral("Eyes and nose")));
}

}  // namespace
}  // namespace roundwright::render
