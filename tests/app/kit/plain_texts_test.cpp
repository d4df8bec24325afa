#include "app/kit/plain_texts.h"

#include <gtest/gtest.h>

#include <QFileDialog>
#include <QHelpEvent>
#include <QInputDialog>
#include <QLabel>
#include <QListWidget>
#include <QMessageBox>
#include <QProgressDialog>
#include <QToolTip>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const QRgb loud = qRgb(255, 0, 255);

bool shows_the_picture(QWidget& widget) {
    const QImage image = widget.grab().toImage();
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixel(x, y) == loud) return true;
    return false;
}

QLabel* open_tip() {
    for (QWidget* top : QApplication::topLevelWidgets())
        if (top->inherits("QTipLabel") && top->isVisible()) return qobject_cast<QLabel*>(top);
    return nullptr;
}

/// A picture in a loud colour lies on the disk, and a name asks for it.
class PlainTextsTest : public ::testing::Test {
  protected:
    PlainTextsTest() {
        QImage picture(40, 40, QImage::Format_RGB32);
        picture.fill(loud);
        EXPECT_TRUE(picture.save(path));
        PlainTexts::hold();
    }
    ~PlainTextsTest() override { QToolTip::hideText(); }

    static void expect_plain(const QWidget& dialog) {
        for (const auto* label : dialog.findChildren<QLabel*>())
            if (!label->text().isEmpty()) {
                EXPECT_EQ(label->textFormat(), Qt::PlainText) << label->text().toStdString();
            }
    }

    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("loud.png"));
    const QString hostile =
        QStringLiteral("<img src=\"%1\"><a href=\"http://harbour.example\">Fin</a>").arg(path);
};

TEST_F(PlainTextsTest, ALabelShowsMarkupAsText) {
    QLabel label(hostile);
    label.show();
    EXPECT_FALSE(shows_the_picture(label));
    label.setText(hostile + hostile);
    EXPECT_FALSE(shows_the_picture(label));
    EXPECT_EQ(label.textFormat(), Qt::PlainText);
}

TEST_F(PlainTextsTest, MessagesDo) {
    QMessageBox message(QMessageBox::Warning, hostile, hostile, QMessageBox::Ok);
    message.setInformativeText(hostile);
    message.show();
    EXPECT_FALSE(shows_the_picture(message));
    expect_plain(message);
    QProgressDialog progress(hostile, hostile, 0, 1);
    progress.show();
    EXPECT_FALSE(shows_the_picture(progress));
    QInputDialog input;
    input.setLabelText(hostile);
    input.show();
    EXPECT_FALSE(shows_the_picture(input));
    expect_plain(input);
}

TEST_F(PlainTextsTest, AMessageNeitherTurnsAroundNorOutgrowsTheScreen) {
    QMessageBox message;
    message.setText(QStringLiteral("“%1” could not be opened.").arg(QChar(0x202E) + QString(10'000, u'W')));
    message.setInformativeText(QStringLiteral("a\x1B[31m") + QString(200, u'x'));
    message.show();
    EXPECT_LT(message.width(), message.screen()->availableGeometry().width());
    for (const auto* label : message.findChildren<QLabel*>()) {
        EXPECT_FALSE(label->text().contains(QChar(0x202E)));
        EXPECT_FALSE(label->text().contains(QChar(0x1B)));
    }
}

TEST_F(PlainTextsTest, ATipShowsMarkupAsText) {
    QWidget widget;
    widget.resize(200, 100);
    widget.setToolTip(hostile);
    widget.show();
    QHelpEvent asks(QEvent::ToolTip, QPoint(5, 5), widget.mapToGlobal(QPoint(5, 5)));
    QApplication::sendEvent(&widget, &asks);
    ASSERT_TRUE(wait_until([] { return open_tip() != nullptr; }));
    EXPECT_FALSE(shows_the_picture(*open_tip()));
    EXPECT_EQ(open_tip()->textFormat(), Qt::PlainText);
}

TEST_F(PlainTextsTest, SoDoesTheTipOfARow) {
    QListWidget list;
    auto* item = new QListWidgetItem(QStringLiteral("row"), &list);
    item->setToolTip(hostile);
    list.show();
    const QPoint at = list.visualItemRect(item).center();
    QHelpEvent asks(QEvent::ToolTip, at, list.viewport()->mapToGlobal(at));
    QApplication::sendEvent(list.viewport(), &asks);
    ASSERT_TRUE(wait_until([] { return open_tip() != nullptr; }));
    EXPECT_FALSE(shows_the_picture(*open_tip()));
}

TEST_F(PlainTextsTest, ALongTipIsBrokenIntoLinesAndStaysOnTheScreen) {
    QWidget widget;
    widget.show();
    QToolTip::showText(QPoint(20, 20), QString(10'000, u'W'), &widget);
    ASSERT_TRUE(wait_until([] { return open_tip() != nullptr; }));
    const QRect screen = widget.screen()->availableGeometry();
    EXPECT_LT(open_tip()->width(), screen.width());
    QString words;
    for (int i = 0; i < 2'000; ++i) words += QStringLiteral("seal pup ");
    QToolTip::showText(QPoint(20, 20), words, &widget);  // in place of the one that shows
    ASSERT_TRUE(wait_until([] { return open_tip() && open_tip()->text().startsWith(u's'); }));
    EXPECT_LT(open_tip()->width(), screen.width());
    EXPECT_TRUE(screen.contains(open_tip()->geometry())) << open_tip()->geometry().height();
    EXPECT_LE(open_tip()->text().count(u'\n'), 20);
}

QString lines_of(const QString& text) { return tip_lines(text, QFontMetrics(QApplication::font()), 5'000); }

TEST(TipLines, BreakAfterBlanksAndEndInAnEllipsis) {
    EXPECT_EQ(lines_of(QStringLiteral("Fog grey")), QStringLiteral("Fog grey"));
    EXPECT_EQ(lines_of(QStringLiteral("one\ntwo")), QStringLiteral("one\ntwo"));
    const QString long_line = QString(60, u'a') + u' ' + QString(60, u'b');
    EXPECT_EQ(lines_of(long_line), QString(60, u'a') + u'\n' + QString(60, u'b'));
    QStringList many;
    for (int i = 0; i < 60; ++i) many << QString::number(i);
    const QString cut = lines_of(many.join(u'\n'));
    EXPECT_EQ(cut.count(u'\n'), 19);
    EXPECT_TRUE(cut.endsWith(QChar(0x2026)));
    EXPECT_EQ(lines_of(QString()), QString());
    EXPECT_EQ(tip_lines(QStringLiteral("seal pup"), QFontMetrics(QApplication::font()), 1).count(u'\n'), 7);
}

TEST(Mnemonics, AnAndSignInANameIsAnAndSign) {
    EXPECT_EQ(without_mnemonics(QStringLiteral("Salt & Tide")), QStringLiteral("Salt && Tide"));
}

}  // namespace
}  // namespace roundwright::app
