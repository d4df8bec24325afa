#include <algorithm>

#include <QFileInfo>
#include <QLineEdit>
#include <QSettings>
#include <QTimer>

#include "app/files/document_files.h"
#include "app/files/first_toy.h"
#include "app/files/last_toy.h"
#include "app/pieces/piece_edits.h"
#include "app/read_pattern/pattern_review.h"
#include "app/read_pattern/pattern_text_actions.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_panel.h"
#include "app/toy/toy_details.h"
#include "app/window/main_window.h"
#include "app/window/panel_column.h"
#include "app/window/work_area.h"

/// With which toy the window begins, and how what was typed when it was last closed comes back.

namespace roundwright::app {
namespace {

constexpr int look_again_ms = 5000;  // as long as a busy disk holds up the end of a program
const auto gauge_section = QStringLiteral("gauge");
const auto started_setting = QStringLiteral("started-before");

}  // namespace

void MainWindow::begin(const QString& path) {
    say_which_keys_are_lost();
    const bool first_time = !QSettings().value(started_setting, false).toBool();
    QSettings().setValue(started_setting, true);
    // A program that was ended a moment ago may still hold its copy.
    if (autosave_.another_is_running())
        QTimer::singleShot(look_again_ms, this, &MainWindow::say_what_was_left);
    if (!path.isEmpty() && files_->open(path)) {
        bring_back_typing();
        return say_what_was_left();
    }
    if (files_->offer_left_behind()) return;
    if (path.isEmpty() && !first_time && open_last_toy()) return;
    session_.start(first_time ? first_toy() : empty_toy());
    turn_once_ = first_time && !wants_less_motion();
    if (turn_once_ && shape_->scene()) shape_->turn_once();
    offer_first_steps();
}

/// The first round is typed at once; the gauge circle stands beside it, where there is room for both.
void MainWindow::offer_first_steps() {
    if (!work_area_->is_narrow()) panels_->open_section(gauge_section);
    fast_entry_->focus_line();
}

/// Where the maker stopped. While another window of the program is open it may be the one with that toy, and
/// a copy that is still to be asked about may be of it: then a new toy is begun.
bool MainWindow::open_last_toy() {
    if (autosave_.another_is_running() || !autosave_.left_behind().empty()) return false;
    const LastToy last = last_toy();
    if (last.path.isEmpty()) {
        if (last.pending.text.isEmpty()) return false;
        session_.start(empty_toy());
    } else if (!QFileInfo::exists(last.path)) {
        tell(tr("“%1” is no longer where it was.").arg(QFileInfo(last.path).fileName()));
        return false;
    } else if (!files_->open(last.path)) {
        return false;
    }
    session_.set_current_piece(last.piece);
    bring_back_last(last.pending);
    return true;
}

/// What was typed for the toy and not entered when the program was closed.
void MainWindow::bring_back_typing() {
    const LastToy last = last_toy();
    if (last.path.isEmpty() || last.pending.empty() || !pending_entry().empty()) return;
    if (canonical_toy_path(last.path) == canonical_toy_path(session_.path())) bring_back_last(last.pending);
}

/// Once it is kept with the toy it must not come back after it was entered.
void MainWindow::bring_back_last(const PendingEntry& pending) {
    bring_back(pending);
    if (pending.empty()) return;
    autosave_.keep_now();
    if (autosave_.all_kept()) forget_last_typing();
}

PendingEntry MainWindow::pending_entry() const {
    return {fast_entry_->line()->text(), std::max(session_.current_piece(), 0), rounds_view_->typed(),
            session_.drafts().texts()};
}

void MainWindow::bring_back(const PendingEntry& pending) {
    bring_back_dialog(pending.texts);
    if (!pending.empty()) session_.set_current_piece(std::max(pending.piece, 0));
    fast_entry_->bring_back(pending.text);
    if (!pending.cell) return;
    work_area_->show_rounds();
    rounds_view_->bring_back(*pending.cell);
}

/// The dialog that was open opens again, once the window is ready for it.
void MainWindow::bring_back_dialog(const std::vector<TypedText>& texts) {
    session_.drafts().bring_back(texts);
    if (texts.empty()) return;
    QTimer::singleShot(0, this, [this, dialog = texts.front().dialog] {
        if (dialog == toy_details_draft) ask_toy_details(session_, this);
        if (dialog == pattern_review_draft) pattern_text_actions_->review({});
    });
}

}  // namespace roundwright::app
