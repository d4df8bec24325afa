#include <gtest/gtest.h>

#include "render/pages/layout/drawable_text.h"
#include "render/wording/printable.h"
#include "tests/render/pages/demo_toys.h"
#include "tests/render/pages/pdf_reader.h"

namespace roundwright::render {
namespace {

using testing::ball;
using testing::fixed_date;
using testing::PdfReader;

QString repeated(const char* text, int times) { return QString::fromUtf8(text).repeated(times); }

Toy with_title(const QString& title) {
    Toy toy = ball(4);
    toy.title = title.toStdString();
    toy.designer = title.toStdString();
    toy.pieces[0].name = title.toStdString();
    toy.yarns[0].name = title.toStdString();
    toy.notes = title.toStdString();
    return toy;
}

/// Every glyph of text that stands outside the paper, but for white space.
std::string outside(const PdfReader& pdf) {
    QString words;
    for (int i = 0; i < pdf.pages(); ++i) {
        const std::unique_ptr<Poppler::Page> page(pdf.document().page(i));
        const QSizeF paper = page->pageSizeF();
        for (const auto& box : page->textList()) {
            const QRectF place = box->boundingBox();
            const bool on_paper = place.left() >= 0 && place.top() >= 0 && place.right() <= paper.width() &&
                                  place.bottom() <= paper.height();
            if (!on_paper && !box->text().trimmed().isEmpty()) words += box->text();
        }
    }
    return words.toStdString();
}

TEST(HostileText, PrintsOrDegradesCleanly) {
    const std::vector<QString> titles = {
        QString(),
        repeated("A very long title that goes on and on ", 100),
        repeated("unbreakable", 400),
        QString::fromUtf8("דג קטן מן הנמל"),
        QString::fromUtf8("‮reversed by a mark‬ and سلحفاة بحرية"),
        QString::fromUtf8("🐙🦀 emoji 👨‍👩‍👧‍👦 ☺"),
        QString::fromUtf8("<b>bold</b> &amp; <script>alert(1)</script> %1 %2 %n \\n $HOME"),
        QStringLiteral("line\nbreaks\tand\x01 controls\x7f"),
        QString::fromUtf8("e") + repeated("\u0301", 500),
        repeated("章", 400),
        QStringLiteral(")) >> endobj (unbalanced ( \\ /Type"),
    };
    for (const QString& title : titles) {
        const PdfReader pdf(with_title(title));
        ASSERT_TRUE(pdf.opened()) << title.left(40).toStdString();
        EXPECT_TRUE(pdf.flowing_text().contains(QStringLiteral("6 sc in magic ring")))
            << title.left(40).toStdString();
        EXPECT_LE(pdf.pages(), 60) << title.left(40).toStdString();
        EXPECT_EQ(outside(pdf), "") << title.left(40).toStdString();
    }
}

TEST(HostileText, MarkupIsPrintedAsTyped) {
    const PdfReader pdf(with_title(QStringLiteral("<b>bold</b> &amp; %1")));
    EXPECT_TRUE(pdf.text(0).contains(QStringLiteral("<b>bold</b> &amp; %1"))) << pdf.text(0).toStdString();
    EXPECT_EQ(pdf.document().title().toStdString(), "<b>bold</b> &amp; %1");
}

TEST(HostileText, RightToLeftIsKeptInTheFilesTitle) {
    const QString title = QString::fromUtf8("דג קטן מן הנמל");
    EXPECT_EQ(PdfReader(with_title(title)).document().title(), title);
}

TEST(HostileText, ALongTitleEndsInAnEllipsis) {
    const PdfReader pdf(with_title(repeated("A very long title that goes on and on ", 100)));
    EXPECT_TRUE(pdf.text(0).contains(QChar(0x2026)));
}

TEST(HostileText, InvalidUtf8DoesNoHarm) {
    Toy toy = ball(4);
    toy.title = "caf\xE9 \xFF\xFE \xF0\x9F";
    EXPECT_TRUE(PdfReader(toy).opened());
}

// U+E000 to U+F8FF are for private use, and in no font of the pages.
TEST(HostileText, CharactersThatNoFontHasBecomeOneReplacement) {
    const QString lost = QString(QChar(0xF0F1)) + QChar(0xF0F2);
    EXPECT_EQ(drawable(QStringLiteral("a") + lost + QStringLiteral("b")), QStringLiteral("a\uFFFDb"));
    EXPECT_EQ(drawable(lost + QChar(0x2069) + QStringLiteral(" Häkeln ×")),
              QStringLiteral("\uFFFD\u2069 Häkeln ×"));
    const PdfReader pdf(with_title(QStringLiteral("Pup ") + lost));
    EXPECT_TRUE(pdf.text(0).contains(QStringLiteral("Pup \uFFFD"))) << pdf.text(0).toStdString();
    EXPECT_EQ(pdf.document().title(), QStringLiteral("Pup ") + lost);  // kept where nothing is drawn
}

TEST(HostileText, ControlCharactersAreLeftOut) {
    EXPECT_EQ(printable_line(QStringLiteral("a\x01"
                                            "b\x7f"
                                            "c\td\ne"))
                  .toStdString(),
              "abc d e");
    EXPECT_EQ(printable(QStringLiteral("a\nb")).toStdString(), "a\nb");
}

}  // namespace
}  // namespace roundwright::render
