#include <functional>

#include <QMenuBar>

#include "app/chart/chart_window.h"
#include "app/checks/checks_list.h"
#include "app/export/export_actions.h"
#include "app/face/face_panel.h"
#include "app/files/document_files.h"
#include "app/gauge/gauge_actions.h"
#include "app/keys/shortcuts_dialog.h"
#include "app/kit/action_catalogue.h"
#include "app/kit/action_maker.h"
#include "app/kit/announcer.h"
#include "app/kit/notice_bar.h"
#include "app/kit/plain_texts.h"
#include "app/own_pieces/own_piece_actions.h"
#include "app/pieces/piece_actions.h"
#include "app/print/pattern_preview.h"
#include "app/read_pattern/pattern_text_actions.h"
#include "app/reshape/reshape_actions.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/round_actions.h"
#include "app/rounds/rounds_in_words.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_actions.h"
#include "app/shape/shape_panel.h"
#include "app/versions/version_actions.h"
#include "app/window/help.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "app/window/preference_actions.h"
#include "app/window/window_parts.h"
#include "app/window/whole_toy.h"
#include "app/work_along/work_along_actions.h"

/// The menus of the main window: who fills them, in which order.

namespace roundwright::app {

void MainWindow::build_menus() {
    auto* file = menuBar()->addMenu(place_text(ActionPlace::file));
    files_->fill(file);
    version_actions_->fill(file);
    file->addSeparator();
    export_actions_->fill(file);
    file->addSeparator();
    auto* close = make_action(this, "file.close");
    connect(close, &QAction::triggered, this, &QWidget::close);
    file->addAction(close);
    auto* quit = make_action(this, "file.quit");
    connect(quit, &QAction::triggered, this, &QWidget::close);
    file->addAction(quit);
    fill_edit_menu(menuBar()->addMenu(place_text(ActionPlace::edit)));
    auto* round = menuBar()->addMenu(place_text(ActionPlace::round));
    round_actions_->fill(round);
    round->addSeparator();
    work_along_actions_->fill_round_menu(round);
    auto* piece = menuBar()->addMenu(place_text(ActionPlace::piece));
    piece_actions_->fill(piece);
    piece->addSeparator();
    reshape_actions_->fill_piece_menu(piece);
    own_pieces_->fill_piece_menu(piece);
    auto* shape = menuBar()->addMenu(place_text(ActionPlace::shape));
    reshape_actions_->fill_shape_menu(shape);
    gauge_actions_->fill_shape_menu(shape);
    shape->addSeparator();
    shape_actions_->fill(shape);
    auto* words = make_action(this, "shape.words");
    connect(words, &QAction::triggered, this, [this] { show_rounds_in_words(session_, this); });
    shape->addAction(words);
    shape->addSeparator();
    face_->fill_menu(shape->addMenu(place_text(ActionPlace::on_the_face)));
    shape_->offer(reshape_actions_->reshape());
    fill_pattern_menu(menuBar()->addMenu(place_text(ActionPlace::pattern)));
    fill_go_menu(menuBar()->addMenu(place_text(ActionPlace::go)));
    fill_help_menu(menuBar()->addMenu(place_text(ActionPlace::help)));
}

void MainWindow::fill_edit_menu(QMenu* menu) {
    auto* undo = make_action(this, "edit.undo");
    auto* redo = make_action(this, "edit.redo");
    QUndoStack& steps = session_.undo_stack();
    undo->setEnabled(steps.canUndo());
    redo->setEnabled(steps.canRedo());
    connect(undo, &QAction::triggered, &steps, &QUndoStack::undo);
    connect(redo, &QAction::triggered, &steps, &QUndoStack::redo);
    connect(&steps, &QUndoStack::canUndoChanged, undo, &QAction::setEnabled);
    connect(&steps, &QUndoStack::canRedoChanged, redo, &QAction::setEnabled);
    name_as_text(*undo, undo->text(), &QUndoStack::undoTextChanged);
    name_as_text(*redo, redo->text(), &QUndoStack::redoTextChanged);
    menu->addActions({undo, redo});
    menu->addSeparator();
    menu->addActions(round_actions_->clipboard_actions());
    own_pieces_->fill_edit_menu(menu);
    menu->addSeparator();
    preference_actions_->fill_edit_menu(menu);
    menu->addSeparator();
    auto* shortcuts = make_action(this, "edit.shortcuts");
    connect(shortcuts, &QAction::triggered, this, &MainWindow::show_shortcuts);
    menu->addAction(shortcuts);
}

/// What a step is called may hold names, and an "&" in them is no mnemonic.
void MainWindow::name_as_text(QAction& action, const QString& what,
                              void (QUndoStack::*changed)(const QString&)) {
    connect(&session_.undo_stack(), changed, &action, [&action, what](const QString& step) {
        action.setText(step.isEmpty() ? what : tr("%1 %2").arg(what, without_mnemonics(step)));
    });
}

void MainWindow::fill_pattern_menu(QMenu* menu) {
    pattern_text_actions_ = new PatternTextActions(session_, this);
    work_along_actions_->fill_pattern_menu(menu);
    menu->addSeparator();
    preference_actions_->fill_pattern_menu(menu);
    menu->addSeparator();
    add_actions(
        menu, {{"pattern.preview", [this] { show_preview(); }}, {"pattern.chart", [this] { show_chart(); }}});
    menu->addSeparator();
    pattern_text_actions_->fill(menu);
    menu->addSeparator();
    add_actions(menu, {{"pattern.next-check", [this] { checks_->step(+1); }},
                       {"pattern.previous-check", [this] { checks_->step(-1); }},
                       {"pattern.fix-check", [this] { checks_->cure_current(); }}});
}

void MainWindow::add_actions(QMenu* menu,
                             std::initializer_list<std::pair<const char*, std::function<void()>>> actions) {
    for (const auto& [id, act] : actions) {
        auto* action = make_action(this, id);
        connect(action, &QAction::triggered, this, act);
        menu->addAction(action);
    }
}

void MainWindow::show_chart() {
    if (chart_ == nullptr) chart_ = new ChartWindow(session_, this);
    chart_->show();
    chart_->raise();
    chart_->activateWindow();
}

void MainWindow::show_preview() {
    if (preview_ == nullptr) preview_ = new PatternPreview(session_, this);
    preview_->show();
    preview_->raise();
    preview_->activateWindow();
}

void MainWindow::fill_go_menu(QMenu* menu) {
    add_actions(menu, {{"go.next", [this] { parts_->go(+1); }}, {"go.previous", [this] { parts_->go(-1); }}});
    menu->addSeparator();
    add_actions(menu, {{"go.rounds", [this] { go_to_rounds(Qt::ShortcutFocusReason); }},
                       {"go.line", [this] { fast_entry_->focus_line(); }},
                       {"go.shape", [this] { whole_toy_->take_picture(); }},
                       {"go.panels", [this] { panels_->take_keyboard(); }},
                       {"go.checks", [this] { checks_->take_keyboard(); }},
                       {"go.notices", [this] { notices_->take_keyboard(); }}});
    auto* panels = menu->addMenu(place_text(ActionPlace::panels));
    for (const QString& key : panels_->keys()) {
        auto* action = make_action(this, (QStringLiteral("panel.") + key).toLatin1().constData());
        connect(action, &QAction::triggered, this, [this, key] { panels_->go_to_section(key); });
        panels->addAction(action);
    }
}

void MainWindow::fill_help_menu(QMenu* menu) {
    add_actions(menu, {{"help.keyboard", [this] { show_keyboard_help(*this); }},
                       {"help.say-again", [this] { announcer_->say_again(); }},
                       {"help.about", [this] { show_about(*this); }}});
}

void MainWindow::show_shortcuts() {
    auto* dialog = new ShortcutsDialog(this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

}  // namespace roundwright::app
