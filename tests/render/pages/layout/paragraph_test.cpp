#include "render/pages/layout/paragraph.h"

#include <gtest/gtest.h>

namespace roundwright::render {
namespace {

TEST(Paragraph, BreaksAtTheWidth) {
    const QString text = QStringLiteral("one two three four five six seven eight nine ten");
    const Paragraph narrow(text, mm(30));
    const Paragraph wide(text, mm(300));
    EXPECT_EQ(wide.lines(), 1);
    EXPECT_GT(narrow.lines(), 2);
    EXPECT_LE(narrow.natural_width(), mm(30));
    EXPECT_DOUBLE_EQ(narrow.height(), narrow.lines() * wide.height());
}

TEST(Paragraph, AWordLongerThanALineIsBroken) {
    const Paragraph broken(QString(200, QLatin1Char('m')), mm(40));
    EXPECT_GT(broken.lines(), 2);
    EXPECT_LE(broken.natural_width(), mm(40));
}

TEST(Paragraph, KeepsToItsLines) {
    ParagraphStyle style;
    style.most_lines = 2;
    const Paragraph cut(QStringLiteral("word ").repeated(100), mm(40), style);
    EXPECT_EQ(cut.lines(), 2);
    EXPECT_LE(cut.natural_width(), mm(40));
}

TEST(Paragraph, LineEndsAreKept) { EXPECT_EQ(Paragraph(QStringLiteral("a\nb\nc"), mm(100)).lines(), 3); }

}  // namespace
}  // namespace roundwright::render
