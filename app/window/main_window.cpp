#include "app/window/main_window.h"

#include <algorithm>
#include <numeric>

#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QSettings>
#include <QSplitter>
#include <QStatusBar>
#include <QTimer>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/checks/checks_list.h"
#include "app/export/export_actions.h"
#include "app/face/face_panel.h"
#include "app/face/face_scene.h"
#include "app/files/document_files.h"
#include "app/files/dropped_files.h"
#include "app/files/file_notices.h"
#include "app/files/last_toy.h"
#include "app/gauge/finished_piece_notice.h"
#include "app/gauge/gauge_actions.h"
#include "app/gauge/gauge_panel.h"
#include "app/kit/action_catalogue.h"
#include "app/kit/alt_sent_again.h"
#include "app/kit/announcer.h"
#include "app/kit/field_rules.h"
#include "app/kit/look.h"
#include "app/kit/notice_bar.h"
#include "app/kit/plain_texts.h"
#include "app/kit/read_out.h"
#include "app/kit/room_on_screen.h"
#include "app/materials/stuffing_panel.h"
#include "app/materials/takes_and_earns.h"
#include "app/materials/yarn_panel.h"
#include "app/own_pieces/own_piece_actions.h"
#include "app/pieces/finish_panel.h"
#include "app/pieces/piece_actions.h"
#include "app/pieces/piece_bar.h"
#include "app/pieces/piece_edits.h"
#include "app/plot/rounds_plot.h"
#include "app/read_pattern/pattern_text_actions.h"
#include "app/reshape/reshape_actions.h"
#include "app/rounds/fast_entry_line.h"
#include "app/rounds/round_actions.h"
#include "app/rounds/rounds_view.h"
#include "app/session/live_preview.h"
#include "app/shape/shape_actions.h"
#include "app/shape/shape_panel.h"
#include "app/versions/version_actions.h"
#include "app/versions/version_store.h"
#include "app/window/announcements.h"
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
const auto geometry_setting = QStringLiteral("window/geometry");
const auto columns_setting = QStringLiteral("window/columns");
const auto rows_setting = QStringLiteral("window/rows");
const auto gauge_section = QStringLiteral("gauge");

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
    AltSentAgain::pass_over();
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

// A cell or a handle that goes with an edit open rolls it back, and every part is told, gone or not. So it is
// rolled back while the window is whole. The window does not follow any more: what is being typed stays kept.
MainWindow::~MainWindow() {
    session_.disconnect(this);
    session_.disconnect(&autosave_);
    session_.drafts().disconnect(this);
    rounds_model_->disconnect(this);
    rounds_view_->disconnect(this);
    LivePreview(session_, QString()).roll_back();
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
    work_area_ = new WorkArea({left, whole_toy_->picture(), shape_, fast_entry_, panels_}, this);
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
    panels_->add_section(QStringLiteral("takes"), panel_title("takes"), QStringLiteral("scales"),
                         new TakesAndEarns(session_));
    panels_->add_section(QStringLiteral("plot"), panel_title("plot"), QStringLiteral("lie-cups"),
                         new RoundsPlot(session_));
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
    connect(&checks_->model(), &ChecksModel::overlap_shown, &whole_toy_->toy(), &ToyPanel::look_at_overlap);
    connect(whole_toy_, &WholeToy::scene_made, this, [this] { parts_->order_tabs(); });
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
    new Announcements(session_, *announcer_, checks_->model(), *fast_entry_, *rounds_view_, this);
    connect(announcer_, &Announcer::shown_changed, this, &MainWindow::show_said);
    const auto say_what_is_open = [this] {
        announcer_->answer(tr("%1 is open").arg(name_in_words(toy_name(session_))));
    };
    connect(files_, &DocumentFiles::opened, this, say_what_is_open);
    connect(files_, &DocumentFiles::new_toy, this, [this] { announcer_->answer(tr("New toy")); });
    connect(&session_, &DocumentSession::saved, this, [this] { announcer_->answer(tr("Saved")); });
}

void MainWindow::show_said(const QString& words) {
    words.isEmpty() ? statusBar()->clearMessage() : statusBar()->showMessage(words);
    statusBar()->setToolTip(words);
}

// --- beginning and end

bool MainWindow::wants_less_motion() const { return less_motion(); }

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
        const int beside_shape = width() - panels_->width() - shape_->unfolded_width();
        const int rounds = std::max(std::min(rounds_view_->sizeHint().width(), beside_shape), 1);
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
