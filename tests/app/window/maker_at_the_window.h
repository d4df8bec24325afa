#pragma once

#include <memory>

#include <QDialog>
#include <QLineEdit>
#include <QListView>
#include <QMenu>
#include <QMenuBar>
#include <QSpinBox>
#include <QTabBar>
#include <QTableView>
#include <QTest>

#include "app/files/document_files.h"
#include "app/materials/yarn_panel.h"
#include "app/pieces/piece_bar.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {

/// The program's window with a maker at it, who has nothing but keys and mouse. Keys go where they go on the
/// screen: to an open popup, or to what has the keyboard. Between two keys nothing of the program's own goes
/// on unless the test lets it, as when the program is busy and the keys wait.
class MakerAtTheWindow {
  public:
    explicit MakerAtTheWindow(Toy toy) {
        QApplication::setQuitOnLastWindowClosed(false);
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        session.preferences().set_units(LengthUnit::millimetres);
        session.preferences().set_terms(Terms::us);
        window = std::make_unique<MainWindow>(session, folder.filePath(QStringLiteral("state")));
        window->resize(1280, 760);
        window->show();
        come_back();
        EXPECT_TRUE(wait_until([&] { return window->shape().scene() != nullptr; }));
        session.start(std::move(toy));
        EXPECT_FALSE(session.save(file()));
        EXPECT_TRUE(wait_for_shape(session));
    }

    [[nodiscard]] QString file() const { return folder.filePath(QStringLiteral("pup.roundwright")); }
    [[nodiscard]] RoundsView& table() { return window->rounds_view(); }
    [[nodiscard]] QTabBar& tabs() { return *window->findChild<PieceBar*>()->findChild<QTabBar*>(); }
    [[nodiscard]] std::vector<int> counts() const { return counts_of(*session.piece()); }
    [[nodiscard]] const Round& round(int at) const {
        return session.piece()->rounds[static_cast<std::size_t>(at)];
    }
    [[nodiscard]] std::string words(int at) const {
        const auto* written = std::get_if<AsWritten>(&round(at).working);
        return written ? written->words : std::string();
    }

    static QWidget* under_the_keys() {
        if (QWidget* popup = QApplication::activePopupWidget()) return popup;
        // On a busy display the window gets the keyboard late, and nobody types into one that has none.
        if (!QApplication::focusWidget()) wait_until([] { return QApplication::focusWidget() != nullptr; });
        if (QWidget* focus = QApplication::focusWidget()) return focus;
        return QApplication::activeWindow();
    }
    /// The hand rests this long after each key; nothing goes on meanwhile without it.
    std::function<void()> after_each_key = [] {};

    void type(const QString& text) {
        for (const QChar letter : text) {
            if (QWidget* target = under_the_keys()) QTest::keyClick(target, letter.toLatin1());
            after_each_key();
        }
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = {}) {
        if (QWidget* target = under_the_keys()) QTest::keyClick(target, key, modifiers);
        after_each_key();
    }
    void click(QWidget* widget, const QPoint& place) { QTest::mouseClick(widget, Qt::LeftButton, {}, place); }
    void click(QWidget* widget) { click(widget, widget->rect().center()); }
    /// A cell of the table; row and column from 0.
    void click_cell(int row, RoundColumn column = RoundColumn::stitches) {
        const auto index = table().model()->index(row, static_cast<int>(column));
        table().scrollTo(index);
        click(table().viewport(), table().visualRect(index).center());
    }
    void click_tab(int piece) { click(&tabs(), tabs().tabRect(piece + 1).center()); }
    /// Opens the words of a round and takes what stands there away.
    void begin_words(int row) {
        click_cell(row);
        press(Qt::Key_F2);
        press(Qt::Key_A, Qt::ControlModifier);
        press(Qt::Key_Backspace);
    }
    /// Opens the name of a yarn and takes it away.
    void begin_yarn_name(int yarn) {
        press(Qt::Key_1, Qt::AltModifier);
        auto* list = window->findChild<YarnPanel*>()->findChild<QListView*>();
        const QPoint place = list->visualRect(list->model()->index(yarn, 0)).center();
        click(list->viewport(), place);
        QTest::mouseDClick(list->viewport(), Qt::LeftButton, {}, place);
        press(Qt::Key_A, Qt::ControlModifier);
    }
    /// Puts the cursor into the field that says how many of the piece are made, with its number chosen.
    void begin_make() {
        press(Qt::Key_5, Qt::AltModifier);
        for (auto* box : window->panels().findChildren<QSpinBox*>()) {
            if (!box->isVisible() || box->maximum() != 99) continue;
            click(box->findChild<QLineEdit*>());
            press(Qt::Key_A, Qt::ControlModifier);
        }
    }
    void put_popup_away() {
        if (QApplication::activePopupWidget()) press(Qt::Key_Escape);
    }

    /// Looks into another window and comes back.
    void glance_at_another_window() {
        QWidget other;
        other.show();
        other.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&other));
        come_back();
    }
    /// Asks to close the window and thinks better of it. A window without changes closes, and is shown again.
    void nearly_close() {
        answer_next_dialog_if_any(QStringLiteral("Cancel"));
        const bool closed = window->close();
        dialog_answer_.reset();
        if (closed) window->show();
        come_back();
    }
    /// A command of the menu bar, by mouse: the menu opens over what is being typed.
    void choose(const QString& menu_name, const QString& command) {
        for (QAction* title : window->menuBar()->actions()) {
            if (title->text().remove(u'&') != menu_name) continue;
            QMenu* menu = title->menu();
            menu->popup(window->mapToGlobal(QPoint(20, 20)));
            for (QAction* action : menu->actions()) {
                if (!action->text().remove(u'&').startsWith(command)) continue;
                click(menu, menu->actionGeometry(action).center());
                menu->close();  // which it does not do over a command that is not to be had
                return;
            }
            menu->close();
        }
        ADD_FAILURE() << "no command " << command.toStdString();
    }
    /// Presses what opens a dialog, acts in it, and is back in the window when it is closed. False: none
    /// opened.
    bool through_a_dialog(Qt::Key key, Qt::KeyboardModifiers modifiers,
                          const std::function<void(QDialog&)>& act) {
        bool opened = false;
        QTimer timer;
        QObject::connect(&timer, &QTimer::timeout, &timer, [&] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!dialog || !dialog->isActiveWindow()) return;
            timer.stop();
            opened = true;
            act(*dialog);
        });
        timer.start(2);
        press(key, modifiers);
        come_back();
        return opened;
    }

    QTemporaryDir folder;
    DocumentSession session;
    std::unique_ptr<MainWindow> window;

  private:
    /// As a window manager does when another window goes, and the windows in memory do not.
    void come_back() {
        window->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }
    void answer_next_dialog_if_any(const QString& words) {
        dialog_answer_ = std::make_unique<QTimer>();
        QObject::connect(dialog_answer_.get(), &QTimer::timeout, dialog_answer_.get(), [words] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            if (!dialog) return;
            for (auto* button : dialog->findChildren<QAbstractButton*>())
                if (button->text().remove(u'&').contains(words)) return button->click();
        });
        dialog_answer_->start(2);
    }

    std::unique_ptr<QTimer> dialog_answer_;
};

/// A head and a fin, with rounds that are worked evenly and one that is written otherwise.
inline Toy toy_to_type_into() {
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 42, 48, 42, 36, 30, 24});
    toy.pieces.push_back(piece_of({6, 9, 9, 12}, "Fin"));
    return toy;
}

}  // namespace roundwright::app
