#include <gtest/gtest.h>
#include <memory>

#include <QFontMetrics>
#include <QInputDialog>
#include <QMenuBar>
#include <QScreen>
#include <QTextBrowser>

#include "app/chart/chart_window.h"
#include "app/checks/checks_list.h"
#include "app/kit/room_on_screen.h"
#include "app/print/pattern_preview.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "app/work_along/work_along_view.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

constexpr int title_height = 30;

class WindowPlacingTest : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        open_window();
    }
    void open_window() {
        window.reset();
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, folder.filePath(QStringLiteral("state")));
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        session->start(toy_of({6, 12, 18, 24, 24, 18, 12, 6}));
        ASSERT_TRUE(wait_for_shape(*session));
    }
    void press(int key, Qt::KeyboardModifiers modifiers = {}) {
        QWidget* focus = QApplication::focusWidget();
        QTest::keyClick(focus != nullptr ? focus : window.get(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    /// A key for the main window, whichever other has come up.
    void press_in_main(int key, Qt::KeyboardModifiers modifiers = {}) {
        window->activateWindow();
        ASSERT_TRUE(wait_until([&] { return QApplication::activeWindow() == window.get(); }));
        press(key, modifiers);
    }
    [[nodiscard]] QRect screen() const { return window->screen()->availableGeometry(); }
    void expect_title_on_screen(const QWidget& shown) const {
        const QRect inside = shown.geometry();
        EXPECT_GE(inside.top(), screen().top() + title_height) << shown.windowTitle().toStdString();
        EXPECT_LE(inside.bottom(), screen().bottom()) << shown.windowTitle().toStdString();
        EXPECT_GE(inside.left(), screen().left()) << shown.windowTitle().toStdString();
        EXPECT_LE(inside.right(), screen().right()) << shown.windowTitle().toStdString();
    }
    /// Looks at the next dialog that waits for an answer, and rejects it.
    void look_at_next_dialog(const std::function<void(QDialog&)>& look) {
        auto* timer = new QTimer(window.get());
        QObject::connect(timer, &QTimer::timeout, timer, [timer, look] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (dialog == nullptr || QApplication::activeWindow() != dialog) return;
            timer->stop();
            timer->deleteLater();
            look(*dialog);
            dialog->reject();
        });
        timer->start(20);
    }

    QTemporaryDir folder;
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

TEST(PlacedOnScreen, MovesAndShrinksNoMoreThanItMust) {
    const QRect screen(1000, 0, 1024, 700);  // at the right of another
    const QRect room = screen.adjusted(4, 36, -4, -4);
    const struct {
        QRect inside;
        QRect placed;
    } cases[] = {{{1100, 100, 400, 300}, {1100, 100, 400, 300}},
                 {{1100, -50, 400, 300}, {1100, 36, 400, 300}},
                 {{900, 600, 400, 300}, {1004, 396, 400, 300}},
                 {{1900, 100, 400, 300}, {1620, 100, 400, 300}},
                 {{1200, 100, 1600, 1200}, room},
                 {{1100, 100, 400, 1200}, {1100, 36, 400, room.height()}}};
    for (const auto& [inside, placed] : cases) {
        const QRect found = placed_on_screen(inside, screen);
        EXPECT_TRUE(found == placed) << found.x() << ", " << found.y() << ", " << found.width() << " x "
                                     << found.height();
    }
}

TEST_F(WindowPlacingTest, WindowsBesideTheMainOneOpenWithTheirTitlesOnTheScreen) {
    window->setGeometry(0, 0, 700, 600);  // at the upper edge
    press_in_main(Qt::Key_P, Qt::ControlModifier);
    press_in_main(Qt::Key_F7, Qt::ShiftModifier);
    press_in_main(Qt::Key_F9);
    const auto* preview = window->findChild<PatternPreview*>();
    const auto* chart = window->findChild<ChartWindow*>();
    const auto* working = window->findChild<WorkAlongView*>();
    for (const QWidget* shown : {static_cast<const QWidget*>(preview), static_cast<const QWidget*>(chart),
                                 static_cast<const QWidget*>(working)}) {
        ASSERT_NE(shown, nullptr);
        expect_title_on_screen(*shown);
    }
}

TEST_F(WindowPlacingTest, TheNextTimeAWindowIsPutBackOnTheScreen) {
    press(Qt::Key_F7, Qt::ShiftModifier);
    auto* chart = window->findChild<ChartWindow*>();
    ASSERT_NE(chart, nullptr);
    chart->setGeometry(300, -200, 500, 400);
    chart->close();
    press_in_main(Qt::Key_F7, Qt::ShiftModifier);
    expect_title_on_screen(*chart);
    EXPECT_EQ(chart->size(), QSize(500, 400)) << "its size is the maker's";
}

TEST_F(WindowPlacingTest, ARememberedWindowIsFittedToTheScreenThereIs) {
    QWidget large;  // as the program left it on a higher screen
    large.setGeometry(60, 500, 640, 1200);
    large.show();
    QSettings().setValue(QStringLiteral("window/geometry"), large.saveGeometry());
    large.hide();
    open_window();
    EXPECT_GE(window->geometry().top(), screen().top() + title_height);
    EXPECT_LE(window->geometry().bottom(), screen().bottom());
}

TEST_F(WindowPlacingTest, AWindowThatFilledALargerScreenGoesBackToOneThatFits) {
    QWidget large;
    large.setGeometry(60, 500, 640, 1200);
    large.showMaximized();
    QSettings().setValue(QStringLiteral("window/geometry"), large.saveGeometry());
    large.hide();
    open_window();
    EXPECT_TRUE(window->isMaximized());
    EXPECT_LE(window->normalGeometry().bottom(), screen().bottom());
}

TEST_F(WindowPlacingTest, SmallDialogsAreAsWideAsTheirTitles) {
    const std::pair<Qt::Key, Qt::KeyboardModifiers> keys[] = {
        {Qt::Key_N, {}}, {Qt::Key_2, {}}, {Qt::Key_F2, Qt::ShiftModifier}};  // letters: after Ctrl+B
    QApplication::setApplicationDisplayName(QStringLiteral("A program with a long name indeed"));
    for (const auto& [key, modifiers] : keys) {
        bool seen = false;
        look_at_next_dialog([&](QDialog& dialog) {
            seen = true;
            QFont bold = QApplication::font();
            bold.setBold(true);
            const int words = QFontMetrics(bold).horizontalAdvance(
                dialog.windowTitle() + QStringLiteral(" — ") + QApplication::applicationDisplayName());
            EXPECT_GE(dialog.width(), words + 3 * 32) << dialog.windowTitle().toStdString();
            expect_title_on_screen(dialog);
        });
        if (modifiers == Qt::NoModifier) press_in_main(Qt::Key_B, Qt::ControlModifier);
        press_in_main(key, modifiers);
        EXPECT_TRUE(seen) << key;
    }
    QApplication::setApplicationDisplayName({});
}

TEST_F(WindowPlacingTest, CtrlWClosesWindowsAndDialogs) {
    press(Qt::Key_F7, Qt::ShiftModifier);
    auto* chart = window->findChild<ChartWindow*>();
    ASSERT_NE(chart, nullptr);
    ASSERT_TRUE(wait_until([&] { return QApplication::activeWindow() == chart; }));
    press(Qt::Key_W, Qt::ControlModifier);
    EXPECT_FALSE(chart->isVisible());
    EXPECT_TRUE(window->isVisible());
    press_in_main(Qt::Key_F9);
    const QPointer<WorkAlongView> working = window->findChild<WorkAlongView*>();
    ASSERT_FALSE(working.isNull());
    ASSERT_TRUE(wait_until([&] { return QApplication::activeWindow() == working; }));
    press(Qt::Key_W, Qt::ControlModifier);
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_TRUE(working.isNull());
    bool closed = false;
    look_at_next_dialog([&](QDialog& dialog) {
        QTest::keyClick(&dialog, Qt::Key_W, Qt::ControlModifier);
        closed = !dialog.isVisible();
    });
    press_in_main(Qt::Key_F1);
    EXPECT_TRUE(closed);
    press_in_main(Qt::Key_W, Qt::ControlModifier);
    EXPECT_TRUE(window->isVisible()) << "once too often, it must not take the toy away";
    press_in_main(Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_FALSE(window->isVisible());
}

TEST_F(WindowPlacingTest, TheKeyboardHelpListsWhatMovesAnEye) {
    QString help;
    look_at_next_dialog([&](QDialog& dialog) { help = dialog.findChild<QTextBrowser*>()->toPlainText(); });
    press(Qt::Key_F1);
    for (const char* keys : {"Ctrl+Up", "Ctrl+Left", "Backspace", "Ctrl+W", "Up to the table"})
        EXPECT_TRUE(help.contains(QString::fromLatin1(keys))) << keys;
}

// Desktop convention: the three dots are one character, right after the words.
void expect_dots_after_words(const QMenu& menu) {
    for (const auto* action : menu.actions()) {
        const std::string text = action->text().toStdString();
        EXPECT_FALSE(action->text().contains(QStringLiteral(" …"))) << text;
        EXPECT_FALSE(action->text().contains(QStringLiteral("..."))) << text;
        if (action->menu() != nullptr) expect_dots_after_words(*action->menu());
    }
}

TEST_F(WindowPlacingTest, EveryMenuSetsItsDotsAlike) {
    for (const auto* action : window->menuBar()->actions()) expect_dots_after_words(*action->menu());
}

TEST_F(WindowPlacingTest, UpFromTheEntryLineGoesToTheTable) {
    window->fast_entry().focus_line();
    press(Qt::Key_Up);
    EXPECT_TRUE(window->rounds_view().hasFocus());
    EXPECT_EQ(window->rounds_view().currentIndex().row(), window->rounds_view().model()->rowCount() - 1);
}

}  // namespace
}  // namespace roundwright::app
