#include "app/kit/still_label.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFontMetrics>

namespace roundwright::app {
namespace {

const QString sentence =
    QStringLiteral("Taller than wide, widest at round 12, drawn closed at the last round");

TEST(StillLabel, TakesTheSameRoomWhateverItSays) {
    StillLabel label(QStringLiteral("Size"));
    label.set_lines(2);
    const QSize empty = label.sizeHint();
    label.resize(200, empty.height());
    label.say(sentence.repeated(4));
    EXPECT_EQ(label.sizeHint(), empty);
    EXPECT_EQ(label.minimumSizeHint().width(), 0);
    EXPECT_FALSE(label.hasHeightForWidth());
}

TEST(StillLabel, WrapsAndEndsInAnEllipsisOnlyWhereItMust) {
    const QFont font = QApplication::font();
    const int width = QFontMetrics(font).horizontalAdvance(sentence);
    EXPECT_EQ(broken_and_elided(sentence, font, width + 1, 1), sentence);
    const QString two = broken_and_elided(sentence, font, width * 2 / 3, 2);
    EXPECT_EQ(QString(two).replace(u'\n', u' '), sentence);
    const QString cut = broken_and_elided(sentence, font, width / 4, 2);
    EXPECT_EQ(cut.count(u'\n'), 1);
    EXPECT_TRUE(cut.endsWith(QChar(0x2026)));
    EXPECT_EQ(broken_and_elided({}, font, 10, 2), QString());
}

TEST(StillLabel, ShowsWhatIsCutInTheToolTip) {
    StillLabel label(QStringLiteral("Size"));
    label.resize(60, 20);
    label.show();
    label.say(sentence);
    EXPECT_EQ(label.toolTip(), sentence);
    EXPECT_EQ(label.spoken(), QStringLiteral("Size: ") + sentence);
    label.resize(4000, 20);
    QCoreApplication::processEvents();
    EXPECT_EQ(label.text(), sentence);
}

}  // namespace
}  // namespace roundwright::app
