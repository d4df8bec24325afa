#include "app/window/main_window.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include <QCloseEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QMenuBar>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QStatusBar>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>
#include <QWindow>

#include "app/chart/chart_window.h"
#include "app/checks/checks_list.h"
#include "app/export/export_actions.h"
#include "app/face/face_panel.h"
#include "app/face/face_scene.h"
#include "app/files/document_files.h"
#include "app/files/dropped_files.h"
#include "app/files/file_notices.h"
#include "app/files/first_toy.h"
#include "app/files/keeping_words.h"
#include "app/files/last_toy.h"
#include "app/gauge/finished_piece_notice.h"
#include "app/gauge/gauge_actions.h"
#include "app/gauge/gauge_panel.h"
#include "app/keys/shortcuts_dialog.h"
#include "app/kit/action_catalogue.h"
#include "app/kit/action_keys.h"
#include "app/kit/action_maker.h"
#include "app/kit/announcer.h"
#include "app/kit/field_rules.h"
#include "app/kit/look.h"
#include "app/kit/notice_bar.h"
#include "app/kit/plain_texts.h"
#include "app/kit/read_out.h"
#include "app/kit/room_on_screen.h"
#include "app/materials/stuffing_panel.h"
#include "app/materials/yarn_panel.h"
#include "app/own_pieces/own_piece_actions.h"
#include "app/pieces/finish_panel.h"
#include "app/pieces/piece_actions.h"
#include "app/pieces/piece_bar.h"
#include "app/pieces/piece_edits.h"
#include "app/plot/rounds_plot.h"
#include "app/print/pattern_preview.h"
#include "app/read_pattern/pattern_review.h"
#include "app/read_pattern/pattern_text_actions.h"
#include "app/reshape/reshape_actions.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/round_actions.h"
#include "app/rounds/rounds_in_words.h"
#include "app/rounds/rounds_view.h"
#include "app/shape/shape_actions.h"
#include "app/shape/shape_panel.h"
#include "app/toy/toy_details.h"
#include "app/versions/version_actions.h"
#include "app/versions/version_store.h"
#include "app/window/announcements.h"
#include "app/window/help.h"
#include "app/window/panel_column.h"
#include "app/window/preference_actions.h"
#include "app/window/whole_toy.h"
#include "app/window/window_parts.h"
#include "app/window/window_placing.h"
#include "app/window/work_area.h"
#include "app/work_along/work_along_actions.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/counted.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr int piece_menu = 3;  // in the menu bar
constexpr int look_again_ms = 5000;  // as long as a busy disk holds up the end of a program
const auto geometry_setting = QStringLiteral("window/geometry");
const auto columns_setting = QStringLiteral("window/columns");
const auto rows_setting = QStringLiteral("window/rows");
const auto keeping_notice = QStringLiteral("keeping");
const auto left_notice = QStringLiteral("left-behind");
const auto keys_notice = QStringLiteral("keys");
const auto gauge_section = QStringLiteral("gauge");
const auto started_setting = QStringLiteral("started-before");

QString panel_title(const char* key) {
    return action_name(action_entry(QLatin1String("panel.") + QLatin1String(key)));
}

}  // namespace

MainWindow::MainWindow(DocumentSession& session, const QString& state_folder, QWidget* parent)
    : QMainWindow(parent),
      session_(session),
      autosave_(session, state_folder),
      versions_(session, VersionStore(state_folder)),
      last_chances_(autosave_),
      follower_(session, state_folder),
      theme_(session.preferences()),
      announcer_(new Announcer(this)),
      notices_(new NoticeBar(this)),
      rounds_model_(new RoundsModel(session, this)),
      rounds_view_(new RoundsView(*rounds_model_, this)),
      round_actions_(new RoundActions(session, *rounds_view_, this)),
      piece_actions_(new PieceActions(session, this)),
      reshape_actions_(new ReshapeActions(session, this)),
      own_pieces_(new OwnPieceActions(session, this)),
      gauge_actions_(new GaugeActions(session, this)),
      work_along_actions_(new WorkAlongActions(session, this)),
      shape_actions_(new ShapeActions(session, this)),
      export_actions_(new ExportActions(session, this)),
      files_(new DocumentFiles(session, autosave_, follower_, this)),
      version_actions_(new VersionActions(session, versions_, this)),
      shape_(new ShapePanel(session, *shape_actions_, this)),
      fast_entry_(new FastEntryLine(session, this)),
      checks_(new ChecksList(session, this)),
      panels_(new PanelColumn(this)),
      preference_actions_(new PreferenceActions(session.preferences(), this)) {
    FieldRules::hold();
    PlainTexts::hold();
    setWindowIcon(QIcon(QStringLiteral(":/icons/roundwright.svg")));
    setAcceptDrops(true);
    fill_panels();
    build_menus();
    lay_out();
    add_whole_toy();
    order_parts();
    follow_session();
    announce();
    follow_keeping();
    restore_places();
    show_name();
    show_counts();
    new WindowPlacing(*this);
}

// An edit that is open ends as its editor goes, when there is no window left to tell of it.
MainWindow::~MainWindow() {
    session_.disconnect(this);
    rounds_model_->disconnect(this);
}

// --- layout

QWidget* MainWindow::rounds_side() {
    auto* side = rounds_side_ = new QWidget(this);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(8, 4, 8, 0);
    head->addWidget(new PieceBar(session_, piece_actions_->add(), piece_actions_->rename(), side), 1);
    auto* rows = new QHBoxLayout;
    rows->setContentsMargins(8, 0, 8, 2);
    rows->setSpacing(2);
    for (QAction* action : round_actions_->row_actions()) {
        auto* button = new QToolButton(side);
        button->setDefaultAction(action);
        button->setAccessibleName(tr("Round: %1").arg(action->text().remove(u'&')));
        button->setFocusPolicy(Qt::TabFocus);
        rows->addWidget(button);
    }
    rows->addStretch(1);
    auto* table = new QWidget(side);
    auto* table_layout = new QVBoxLayout(table);
    table_layout->setContentsMargins(0, 0, 0, 0);
    table_layout->setSpacing(2);
    table_layout->addWidget(rounds_view_, 1);
    table_layout->addLayout(rows);
    whole_toy_ = new WholeToy(session_, {table, shape_, fast_entry_}, *shape_actions_, this);
    auto* layout = new QVBoxLayout(side);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addLayout(head);
    layout->addWidget(whole_toy_->left(), 1);
    return side;
}

void MainWindow::lay_out() {
    rows_ = new QSplitter(Qt::Vertical, this);
    auto* left = rounds_side();
    work_area_ = new WorkArea({left, whole_toy_->picture(), fast_entry_, panels_}, this);
    rows_->addWidget(work_area_);
    rows_->addWidget(checks_);
    rows_->setChildrenCollapsible(false);
    rows_->setHandleWidth(1);
    rows_->setStretchFactor(0, 1);
    rows_->setStretchFactor(1, 0);
    auto* all = new QWidget(this);
    auto* layout = new QVBoxLayout(all);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(notices_);
    layout->addWidget(rows_, 1);
    setCentralWidget(all);
    fill_status_bar();
}

/// Always there: what it says comes and goes without moving anything.
void MainWindow::fill_status_bar() {
    counts_ = new ReadOut(tr("The whole piece"), this);
    counts_->setForegroundRole(QPalette::PlaceholderText);
    counts_->setContentsMargins(0, 0, 10, 0);
    statusBar()->setSizeGripEnabled(false);
    statusBar()->addPermanentWidget(counts_);
}

void MainWindow::show_counts() {
    const auto study = session_.study(session_.current_piece());
    if (session_.piece() == nullptr || study == nullptr) return counts_->setText({});
    const auto counts = stitch_counts(study->graph().graph);
    const int stitches = std::accumulate(counts.begin(), counts.end(), 0);
    counts_->setText(
        tr("%1, %2").arg(rounds_words(static_cast<int>(counts.size())), stitches_words(stitches)));
}

void MainWindow::fill_panels() {
    face_ = new FacePanel(session_);
    panels_->add_section(QStringLiteral("yarn"), panel_title("yarn"), QStringLiteral("yarn"),
                         new YarnPanel(session_));
    auto* gauge = new GaugePanel(session_, gauge_actions_->from_finished_piece());
    panels_->add_section(gauge_section, panel_title("gauge"), QStringLiteral("gauge"), gauge);
    connect(gauge_actions_->measure_circle(), &QAction::triggered, this, [this, gauge] {
        panels_->open_section(gauge_section);
        gauge->ask_for_circle();
    });
    connect(gauge, &GaugePanel::circle_measured, this, [this] { fast_entry_->focus_line(); });
    panels_->add_section(QStringLiteral("stuffing"), panel_title("stuffing"), QStringLiteral("stuffing"),
                         new StuffingPanel(session_));
    panels_->add_section(QStringLiteral("face"), panel_title("face"), QStringLiteral("face"), face_);
    panels_->add_section(QStringLiteral("finish"), panel_title("finish"), QStringLiteral("finish"),
                         new FinishPanel(session_));
    panels_->add_section(QStringLiteral("plot"), panel_title("plot"), QStringLiteral("lie-cups"),
                         new RoundsPlot(session_));
}

// --- menus

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

/// As the eye goes: pieces and rounds, the entry line below them, the shape with its buttons, the panels, the
/// checks along the bottom.
void MainWindow::order_parts() {
    parts_ = new WindowParts(this);
    parts_->add(notices_, [this] { return notices_->take_keyboard(); });
    parts_->add(rounds_side_, [this] {
        if (session_.shows_whole_toy()) return whole_toy_->take_left();
        go_to_rounds(Qt::ShortcutFocusReason);
        return true;
    });
    parts_->add(fast_entry_, [this] {
        fast_entry_->focus_line();
        return true;
    });
    parts_->add(whole_toy_->picture(), [this] { return whole_toy_->take_picture(); });
    parts_->add(panels_, [this] { return panels_->take_keyboard(); });
    parts_->add(checks_, [this] { return checks_->take_keyboard(); });
    parts_->order_tabs();
}

// --- following the session

void MainWindow::follow_session() {
    connect(&session_, &DocumentSession::file_changed, this, &MainWindow::show_name);
    connect(&session_, &DocumentSession::modified_changed, this, &MainWindow::show_name);
    connect(&session_, &DocumentSession::toy_changed, this, [this](const ChangeSet& changes) {
        if (changes.words || changes.everything) show_name();
    });
    connect(&session_, &DocumentSession::edit_refused, this, &MainWindow::tell);
    connect(&session_, &DocumentSession::toy_changed, &last_chances_, &LastChances::goes_on);
    connect(&session_, &DocumentSession::remarked, this, &MainWindow::tell);
    connect(rounds_model_, &RoundsModel::entry_refused, this, &MainWindow::tell);
    connect(&versions_, &VersionKeeper::keeping_failed, this, &MainWindow::tell);
    connect(files_, &DocumentFiles::gave_up, &versions_, &VersionKeeper::keep_given_up);
    connect(&session_, &DocumentSession::study_ready, this, &MainWindow::show_counts);
    connect(&session_, &DocumentSession::current_piece_changed, this, &MainWindow::show_counts);
    connect(round_actions_, &RoundActions::text_pasted, fast_entry_, &FastEntryLine::take_text);
    // Once the paste is over: the review is a dialog of its own.
    connect(fast_entry_, &FastEntryLine::pattern_pasted, pattern_text_actions_, &PatternTextActions::review,
            Qt::QueuedConnection);
    connect(fast_entry_, &FastEntryLine::rounds_added, this, [this] { rounds_view_->scrollToBottom(); });
    connect(fast_entry_, &FastEntryLine::left_upwards, this, &MainWindow::go_up_to_rounds);
    const auto keep_pending = [this] { autosave_.set_pending(pending_entry()); };
    connect(fast_entry_->line(), &QLineEdit::textChanged, this, keep_pending);
    connect(rounds_view_, &RoundsView::typed_changed, this, keep_pending);
    connect(&session_.drafts(), &TypedDrafts::changed, this, keep_pending);
    connect(&session_, &DocumentSession::current_piece_changed, this, keep_pending);
    connect(files_, &DocumentFiles::brought_back, this, &MainWindow::bring_back);
    connect(piece_actions_, &PieceActions::piece_added, fast_entry_, &FastEntryLine::focus_line);
    connect(shape_, &ShapePanel::round_clicked, this, [this](int round) { session_.select_rounds({round}); });
    connect(files_, &DocumentFiles::new_toy, this, &MainWindow::offer_first_steps);
    auto* finished = new FinishedPieceNotice(session_, *notices_, this);
    connect(finished, &FinishedPieceNotice::wanted, gauge_actions_->from_finished_piece(), &QAction::trigger);
    connect(files_, &DocumentFiles::opened, this, [this] { go_to_rounds(Qt::OtherFocusReason); });
    connect(new DroppedFiles(this), &DroppedFiles::dropped, files_,
            [this](const QString& path) { files_->open(path); });
    auto* file_notices = new FileNotices(session_, follower_, *files_, *notices_, this);
    connect(file_notices, &FileNotices::told, this, &MainWindow::tell);
    connect(notices_, &NoticeBar::left, this, [this] { go_to_rounds(Qt::OtherFocusReason); });
    connect(&theme_, &Theme::changed, this, [this] {
        shape_->set_scene_colour(Theme::colours().scene);
        whole_toy_->set_scene_colour(Theme::colours().scene);
    });
}

void MainWindow::add_whole_toy() {
    whole_toy_->fill_piece_menu(menuBar()->actions().value(piece_menu)->menu());
    whole_toy_->share_keys(*face_, *panels_);
    whole_toy_->announce_to(*announcer_);
    connect(own_pieces_, &OwnPieceActions::told, announcer_, &Announcer::answer);
    connect(whole_toy_, &WholeToy::rounds_wanted, this, [this] { go_to_rounds(Qt::OtherFocusReason); });
    connect(whole_toy_, &WholeToy::scene_made, this, [this] { parts_->order_tabs(); });
}

void MainWindow::follow_keeping() {
    connect(&autosave_, &Autosave::keeping_failed, this, [this](const DiskFault& fault) {
        notices_->put_up(
            keeping_notice,
            {NoticeRank::danger,
             tr("Unsaved changes cannot be kept safe at the moment: if the program or the computer "
                "stopped now, they would be lost. Save the toy. %1")
                 .arg(keeping_fault_words(fault)),
             {{tr("&Save"), [this] { files_->save(); }}}});
    });
    connect(&autosave_, &Autosave::keeping_works, this, [this] { notices_->take_down(keeping_notice); });
}

/// A file was asked for, so what other files have left is said and does not stand in the way.
void MainWindow::say_what_was_left() {
    const int copies = files_->copies_left();
    if (copies == 0) return notices_->take_down(left_notice);
    notices_->put_up(
        left_notice,
        {NoticeRank::remark,
         tr("Unsaved changes of %n other toy(s) were kept when Roundwright stopped.", nullptr, copies),
         {{tr("&Look at them…"),
           [this] {
               files_->show_kept_copies();
               say_what_was_left();
           }},
          {tr("Not &now"), [this] { notices_->take_down(left_notice); }}}});
}

void MainWindow::show_name() {
    QString name = name_in_words(toy_name(session_)).replace(QStringLiteral("[*]"), QStringLiteral("[*][*]"));
    name += QStringLiteral("[*]");
    if (session_.read_only()) name = tr("%1 (read-only)").arg(name);
    setWindowTitle(tr("%1 — Roundwright").arg(name));
    setWindowModified(session_.modified());
}

/// Stays until the next step is made, or it is dealt with.
void MainWindow::tell(const QString& text) { announcer_->complain(plain_message(text).replace(u'\n', u' ')); }

void MainWindow::announce() {
    new Announcements(session_, *announcer_, checks_->model(), *fast_entry_, this);
    connect(announcer_, &Announcer::shown_changed, this, &MainWindow::show_said);
}

void MainWindow::show_said(const QString& words) {
    words.isEmpty() ? statusBar()->clearMessage() : statusBar()->showMessage(words);
    statusBar()->setToolTip(words);
}

/// Never silently: a maker may press what does nothing, or something else.
void MainWindow::say_which_keys_are_lost() {
    const QStringList names = ActionKeys::instance().unreadable();
    if (names.isEmpty()) return;
    notices_->put_up(keys_notice, {NoticeRank::remark,
                                   tr("The keys you chose for %1 could not be used; the usual ones are back.")
                                       .arg(QLocale().createSeparatedList(names)),
                                   {{tr("Choose ke&ys…"),
                                     [this] {
                                         notices_->take_down(keys_notice);
                                         show_shortcuts();
                                     }},
                                    {tr("Not now", "keys"), [this] { notices_->take_down(keys_notice); }}}});
}

// --- beginning and end

bool MainWindow::wants_less_motion() const { return less_motion(); }

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

void MainWindow::go_to_rounds(Qt::FocusReason reason) {
    session_.show_whole_toy(false);
    work_area_->show_rounds();
    rounds_view_->setFocus(reason);
}

void MainWindow::go_up_to_rounds() {
    work_area_->show_rounds();
    rounds_view_->setFocus(Qt::OtherFocusReason);
    rounds_view_->go_to_next_round();
}

void MainWindow::showEvent(QShowEvent* event) {
    QMainWindow::showEvent(event);
    if (!shape_->scene()) QTimer::singleShot(0, this, &MainWindow::set_up_scene);
}

void MainWindow::set_up_scene() {
    shape_->make_scene();
    parts_->order_tabs();
    shape_actions_->drive(shape_->scene());
    export_actions_->show_from(shape_->scene());
    face_->set_scene(new FaceScene(session_, *shape_->scene(), this));
    connect(face_, &FacePanel::picked_on_the_shape, this,
            [this] { panels_->open_section(QStringLiteral("face")); });
    if (turn_once_ && !wants_less_motion()) shape_->turn_once();
}

void MainWindow::closeEvent(QCloseEvent* event) {
    // What is not saved is kept, and offered at the next start.
    const bool asks = !(session_.modified() && last_chances_.session_ends() && autosave_.all_kept());
    if (asks && !files_->may_leave()) {
        event->ignore();
        return;
    }
    keep_places();
    if (!asks) return event->accept();
    if (keep_last_toy(session_, pending_entry())) autosave_.give_up();
    event->accept();
}

void MainWindow::restore_places() {
    const QSettings settings;
    if (restoreGeometry(settings.value(geometry_setting).toByteArray()))
        keep_on_screen(*this);
    else
        resize(room_on_screen(*this, {1480, 940}));
    panels_->restore();
    rows_->restoreState(settings.value(rows_setting).toByteArray());
    if (!work_area_->columns().restoreState(settings.value(columns_setting).toByteArray())) {
        const int rounds = rounds_view_->sizeHint().width();
        work_area_->columns().setSizes({rounds, std::max(width() - rounds - panels_->width(), 1)});
    }
}

void MainWindow::keep_places() const {
    QSettings settings;
    settings.setValue(geometry_setting, saveGeometry());
    settings.setValue(columns_setting, work_area_->columns().saveState());
    settings.setValue(rows_setting, rows_->saveState());
}

}  // namespace roundwright::app
