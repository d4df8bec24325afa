#include "app/work_along/work_along_view.h"

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <tuple>

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QShortcut>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "app/kit/action_keys.h"
#include "app/kit/announcer.h"
#include "app/kit/field_widgets.h"
#include "app/kit/flow_layout.h"
#include "app/kit/key_labels.h"
#include "app/kit/read_out.h"
#include "app/kit/room_on_screen.h"
#include "app/work_along/work_notes.h"
#include "render/wording/counted.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr int notes_shown = 3;

QLabel* big_label(const QString& name, double factor, QFont::Weight weight = QFont::Normal) {
    auto* label = new ReadOut(name);
    label->setFont(larger_font(label->font(), factor, weight));
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

WorkAlongView::WorkAlongView(DocumentSession& session, RoundClock clock, QWidget* parent)
    : QWidget(parent, Qt::Window),
      session_(session),
      work_(session, std::move(clock)),
      announcer_(new Announcer(this)) {
    setWindowTitle(tr("Work along"));
    build();
    add_shortcuts();
    connect_all();
    list_pieces();
    show_all();
    done_->setFocus();
}

// --- layout

void WorkAlongView::build() {
    make_read_outs();
    make_buttons();
    lay_out();
}

void WorkAlongView::make_read_outs() {
    pieces_ = new QComboBox;
    pieces_->setAccessibleName(tr("Piece to work"));
    pieces_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    number_ = big_label(tr("Round to work"), 1.8, QFont::DemiBold);
    words_ = big_label(tr("What to work"), 3.0, QFont::DemiBold);
    stitches_ = big_label(tr("Stitches of the round"), 1.8);
    next_ = big_label(tr("Next round"), 1.3);
    next_->setForegroundRole(QPalette::PlaceholderText);
    coming_up_ = big_label(tr("Coming up"), 1.3);
    progress_ = new QProgressBar;
    progress_->setAccessibleName(tr("Progress of the piece"));
    times_ = big_label(tr("Time taken and time left"), 1.1);
    said_ = new QLabel;
    said_->setWordWrap(true);
    said_->setTextFormat(Qt::PlainText);
    words_->setMinimumHeight(2 * QFontMetrics(words_->font()).lineSpacing());
}

void WorkAlongView::make_buttons() {
    measure_ = new QCheckBox(tr("&Time my rounds"));
    done_ = new QPushButton;
    back_ = new QPushButton;
    stitch_back_ = new QPushButton;
    stitch_ = new QPushButton;
    again_ = new QPushButton(tr("Begin &again"));
    where_ = new QPushButton;
    say_again_ = new QPushButton;
    name_buttons();
    done_->setFont(larger_font(done_->font(), 1.4, QFont::DemiBold));
    for (auto* button : {back_, stitch_back_, stitch_})
        button->setFont(larger_font(button->font(), 1.1, QFont::Normal));
    done_->setMinimumSize(done_->sizeHint() + QSize(28, 14));
}

void WorkAlongView::lay_out() {
    auto* top = new QHBoxLayout;
    top->addWidget(pieces_);
    top->addStretch(1);
    auto* asked_now_and_then = new FlowLayout;
    asked_now_and_then->setSpacing(8);
    for (QWidget* each : std::initializer_list<QWidget*>{where_, say_again_, measure_, again_})
        asked_now_and_then->addWidget(each);
    top->addLayout(asked_now_and_then);
    auto* buttons = new QHBoxLayout;
    auto* others = new FlowLayout;
    others->setSpacing(buttons->spacing());
    for (auto* button : {back_, stitch_back_, stitch_}) others->addWidget(button);
    buttons->addLayout(others, 1);
    buttons->addWidget(done_);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(28, 20, 28, 20);
    layout->setSpacing(10);
    layout->addLayout(top);
    layout->addStretch(1);
    layout->addWidget(number_);
    layout->addWidget(words_);
    layout->addWidget(stitches_);
    layout->addStretch(1);
    layout->addWidget(next_);
    layout->addWidget(coming_up_);
    layout->addStretch(1);
    layout->addWidget(times_);
    layout->addWidget(said_);
    layout->addWidget(progress_);
    layout->addLayout(buttons);
    resize(room_on_screen(*this, {860, 600}));
}

/// With the keys that the maker has chosen.
void WorkAlongView::name_buttons() {
    const std::tuple<QPushButton*, QString, const char*> names[] = {
        {done_, tr("Round done"), "work.done"},
        {back_, tr("Round back"), "work.back"},
        {stitch_back_, tr("Stitch back"), "work.stitch-back"},
        {stitch_, tr("Count a stitch"), "work.count"},
        {where_, tr("Where am I?"), "work.where"},
        {say_again_, tr("Say again"), "work.say-again"}};
    for (const auto& [button, words, id] : names) button->setText(with_keys(words, QLatin1String(id)));
}

void WorkAlongView::add_shortcuts() {
    const std::pair<const char*, std::function<void()>> keys[] = {
        {"work.done", [this] { finish_round(); }},  {"work.back", [this] { go_back(); }},
        {"work.count", [this] { count_stitch(); }}, {"work.stitch-back", [this] { take_stitch_back(); }},
        {"work.where", [this] { say_where(); }},    {"work.say-again", [this] { announcer_->say_again(); }},
        {"work.close", [this] { close(); }}};
    ActionKeys& all = ActionKeys::instance();
    connect(&all, &ActionKeys::changed, this, &WorkAlongView::name_buttons);
    for (const auto& [id, act] : keys) {
        auto* shortcut = new QShortcut(this);
        shortcut->setAutoRepeat(false);
        const auto follow = [shortcut, name = QString::fromLatin1(id)] {
            shortcut->setKeys(ActionKeys::instance().keys(name));
        };
        follow();
        connect(&all, &ActionKeys::changed, shortcut, follow);
        connect(shortcut, &QShortcut::activated, this, act);
    }
    for (const auto& [sequence, undo] : {std::pair{QKeySequence(QKeySequence::Undo), true},
                                         std::pair{QKeySequence(QKeySequence::Redo), false},
                                         std::pair{QKeySequence(Qt::CTRL | Qt::Key_Y), false}}) {
        auto* shortcut = new QShortcut(sequence, this);
        connect(shortcut, &QShortcut::activated, this, [this, back = undo] { undo_or_redo(back); });
    }
}

void WorkAlongView::connect_all() {
    connect(done_, &QPushButton::clicked, this, &WorkAlongView::finish_round);
    connect(back_, &QPushButton::clicked, this, &WorkAlongView::go_back);
    connect(stitch_back_, &QPushButton::clicked, this, &WorkAlongView::take_stitch_back);
    connect(stitch_, &QPushButton::clicked, this, &WorkAlongView::count_stitch);
    connect(again_, &QPushButton::clicked, this, &WorkAlongView::begin_again);
    connect(where_, &QPushButton::clicked, this, &WorkAlongView::say_where);
    connect(say_again_, &QPushButton::clicked, announcer_, &Announcer::say_again);
    connect(announcer_, &Announcer::shown_changed, said_, &QLabel::setText);
    connect(measure_, &QCheckBox::toggled, this, &WorkAlongView::set_measuring);
    connect(pieces_, &QComboBox::activated, &session_, &DocumentSession::set_current_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, [this] {
        work_.restart_clock();
        list_pieces();
        show_all();
    });
    connect(&session_, &DocumentSession::toy_changed, this, [this](const ChangeSet& changes) {
        if (changes.piece_list() || changes.piece_settings) list_pieces();
        show_all();
    });
    connect(&session_, &DocumentSession::study_ready, this, &WorkAlongView::show_coming_up);
    connect(&session_.preferences(), &Preferences::terms_changed, this, &WorkAlongView::show_all);
    second_.setInterval(1000);
    connect(&second_, &QTimer::timeout, this, &WorkAlongView::show_times);
}

/// Enter presses the button that has the focus, as the space bar does.
void WorkAlongView::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (enter && event->isAutoRepeat()) return;
    if (enter && button != nullptr) return button->click();
    QWidget::keyPressEvent(event);
}

// --- the steps, spoken

bool WorkAlongView::locked() const { return since_done_.isValid() && since_done_.elapsed() < lock_ms_; }

void WorkAlongView::finish_round() {
    if (work_.finished() || locked() || session_.read_only()) return;
    const int done = work_.round();
    work_.finish_round();
    since_done_.start();
    announcer_->answer(joined_sentences({tr("Round %1 done").arg(done + 1), after_a_round()}));
}

/// The last stitch of a round finishes it.
void WorkAlongView::count_stitch() {
    if (work_.finished() || session_.read_only()) return;
    const int round = work_.round();
    if (work_.stitches_worked() + 1 >= work_.stitches_of(round)) return finish_round();
    work_.count_stitch();
    announcer_->answer(stitches_text());
}

void WorkAlongView::go_back() {
    if (!work_.begun() || session_.read_only()) return;
    work_.go_back();
    announcer_->answer(tr("Back to %1").arg(round_in_hand()));
}

void WorkAlongView::take_stitch_back() {
    if (!work_.begun() || session_.read_only()) return;
    const int round = work_.round();
    work_.take_stitch_back();
    announcer_->answer(work_.round() == round
                           ? stitches_text()
                           : tr("Back to round %1. %2").arg(work_.round() + 1).arg(stitches_text()));
}

void WorkAlongView::begin_again() {
    if (!work_.begun() || session_.read_only()) return;
    work_.begin_again();
    announcer_->answer(tr("From the start: %1").arg(round_in_hand()));
}

void WorkAlongView::undo_or_redo(bool undo) {
    QUndoStack& steps = session_.undo_stack();
    const QString step = undo ? steps.undoText() : steps.redoText();
    if (step.isEmpty()) return announcer_->answer(undo ? tr("Nothing to undo") : tr("Nothing to redo"));
    undo ? steps.undo() : steps.redo();
    announcer_->answer((undo ? tr("Undone: %1. %2") : tr("Redone: %1. %2")).arg(step, round_in_hand()));
}

void WorkAlongView::say_where() {
    const auto [done, all] = work_.share_done();
    const QString piece = session_.piece() != nullptr ? name_in_words(session_.piece()->name) : QString();
    announcer_->answer(joined_sentences({tr("%1: %2").arg(piece, round_in_hand()),
                                         tr("%1 of %2 done").arg(done).arg(stitches_words(all)),
                                         coming_up_->text().replace(u'\n', u' ')}));
}

/// "round 4: [2 sc, inc] x 6, 24 stitches"
QString WorkAlongView::round_in_hand() const {
    if (work_.rounds() == 0) return words_->text();
    if (work_.finished()) return number_->text();
    return tr("round %1: %2, %3").arg(work_.round() + 1).arg(work_.words_of(work_.round()), stitches_text());
}

QString WorkAlongView::after_a_round() const {
    if (work_.finished()) return joined_sentences({number_->text(), coming_up_->text().replace(u'\n', u' ')});
    QStringList sentences{tr("Next, %1").arg(round_in_hand())};
    for (const QString& line : lines_coming_up())
        if (line.startsWith(tr("Now: %1").arg(QString()))) sentences << line;
    return joined_sentences(sentences);
}

QString WorkAlongView::said() const { return said_->text(); }

void WorkAlongView::set_measuring(bool measuring) {
    work_.measure_time(measuring);
    if (measuring)
        second_.start();
    else
        second_.stop();
    show_times();
}

// --- showing it

void WorkAlongView::list_pieces() {
    const QSignalBlocker quiet(pieces_);
    pieces_->clear();
    for (const Piece& piece : session_.toy().pieces) {
        const QString name = name_in_words(piece.name);
        pieces_->addItem(piece.make > 1 ? tr("%1 (make %2)").arg(name, QString::number(piece.make)) : name);
    }
    pieces_->setCurrentIndex(session_.current_piece());
}

void WorkAlongView::show_all() {
    work_.read_piece();
    const bool may_change = !session_.read_only() && work_.rounds() > 0;
    done_->setEnabled(may_change && !work_.finished());
    stitch_->setEnabled(may_change && !work_.finished());
    back_->setEnabled(may_change && work_.begun());
    stitch_back_->setEnabled(may_change && work_.begun());
    again_->setEnabled(may_change && work_.begun());
    if (work_.finished())
        show_finished();
    else
        show_round();
    show_coming_up();
    show_progress();
    show_times();
}

void WorkAlongView::show_round() {
    const int round = work_.round();
    number_->setText(tr("Round %1").arg(round + 1));
    words_->setText(work_.words_of(round));
    stitches_->setText(stitches_text());
    next_->setText(round + 1 < work_.rounds() ? tr("Then round %1: %2 (%3)")
                                                    .arg(round + 2)
                                                    .arg(work_.words_of(round + 1))
                                                    .arg(work_.stitches_of(round + 1))
                                              : tr("This is the last round."));
}

QString WorkAlongView::stitches_text() const {
    const int count = work_.stitches_of(work_.round());
    const int worked = work_.stitches_worked();
    const Repeat repeat = repeat_of(work_.words_of(work_.round()), count);
    QStringList parts;
    if (worked > 0) {
        parts << tr("%1 of %2").arg(worked).arg(stitches_words(count));
        if (repeat.times > 0)
            parts << tr("repeat %1 of %2").arg(worked / repeat.stitches + 1).arg(repeat.times);
    } else {
        parts << stitches_words(count);
        if (repeat.times > 0)
            parts << tr("%1 in each of %n repeat(s)", nullptr, repeat.times)
                         .arg(stitches_words(repeat.stitches));
    }
    return parts.join(QStringLiteral(" · "));
}

void WorkAlongView::show_finished() {
    const bool empty = work_.rounds() == 0;
    number_->setText(empty ? QString() : tr("All %n round(s) (is/are) done", nullptr, work_.rounds()));
    words_->setText(empty ? tr("This piece has no rounds yet.") : name_in_words(session_.piece()->name));
    const int make = session_.piece() != nullptr ? session_.piece()->make : 1;
    stitches_->setText(make > 1 && !empty ? tr("The toy needs %1 of these.").arg(make) : QString());
    next_->setText({});
}

void WorkAlongView::show_coming_up() {
    const QStringList lines = work_.rounds() > 0 ? lines_coming_up() : QStringList();
    coming_up_->setText(lines.join(QLatin1Char('\n')));
    coming_up_->setVisible(!lines.isEmpty());
}

QStringList WorkAlongView::lines_coming_up() const {
    const Piece& piece = *session_.piece();
    const int round = work_.round();
    QStringList lines;
    if (!work_.finished())
        lines << text_in_words(QString::fromStdString(piece.rounds[static_cast<std::size_t>(round)].note));
    lines.removeAll(QString());
    const auto study = session_.study(session_.current_piece());
    for (const WorkNote& due : work_notes(session_.toy(), piece, study ? *study : PieceStudy{})) {
        if (due.after_round < round - 1 || lines.size() >= notes_shown) continue;
        lines << (due.after_round == round - 1
                      ? tr("Now: %1").arg(due.words)
                      : tr("After round %1: %2").arg(due.after_round + 1).arg(due.words));
    }
    return lines;
}

void WorkAlongView::show_progress() {
    const auto [done, all] = work_.share_done();
    progress_->setRange(0, std::max(all, 1));
    progress_->setValue(done);
    progress_->setFormat(
        tr("%1 of %n round(s), %p % of the stitches", nullptr, work_.rounds()).arg(work_.round()));
}

void WorkAlongView::show_times() {
    QStringList parts;
    if (work_.measures_time() && !work_.finished())
        parts << tr("this round %1").arg(time_text(work_.seconds()));
    if (const double took = work_.seconds_of_last_round(); took > 0)
        parts << tr("round %1 took %2").arg(work_.round()).arg(time_text(took));
    if (const double left = work_.seconds_to_go(); left > 0)
        parts << tr("about %1 to go").arg(time_text(left));
    times_->setText(parts.join(QStringLiteral(" · ")));
}

QString WorkAlongView::words() const {
    return QStringList{number_->text(), words_->text(), stitches_->text()}.join(QLatin1Char('\n'));
}
QString WorkAlongView::coming_up() const { return coming_up_->text(); }
QString WorkAlongView::times() const { return times_->text(); }

}  // namespace roundwright::app
