#include "render/wording/measure_words.h"

#include <gtest/gtest.h>

#include <QTextLayout>

namespace roundwright {
namespace {

TEST(MeasureWords, SayTheRangeWhereItSaysMore) {
    EXPECT_EQ(width_words(84, {80, 89}, LengthUnit::millimetres),
              QStringLiteral("84\u00a0mm wide (80\u201389)"));
    EXPECT_EQ(width_words(84, {84, 84}, LengthUnit::millimetres), QStringLiteral("84\u00a0mm wide"));
    EXPECT_EQ(height_words(0.2, {0, 0.4}, LengthUnit::millimetres), QStringLiteral("flat"));
}

TEST(MeasureWords, NoLineEndsWithinARange) {
    const QString words = sizes_kept_whole(QStringLiteral(
        "76\u00a0mm wide (69\u201384), 64\u00a0mm tall (58\u201373): 23 rounds, 768 stitches."));
    for (int width = 20; width < 400; width += 7) {
        QTextLayout layout(words);
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            const QString text = words.mid(line.textStart(), line.textLength());
            if (line.naturalTextWidth() > width) continue;  // one word alone, too long for the line
            EXPECT_EQ(text.count(u'('), text.count(u')')) << text.toStdString();
        }
        layout.endLayout();
    }
}

}  // namespace
}  // namespace roundwright
