#include "app/working/working_view.h"

#include <algorithm>

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

#include "app/window/room_on_screen.h"
#include "app/wording/counted.h"
#include "app/working/work_notes.h"
#include "core/instructions/write.h"
#include "core/reshape/frog_back.h"

namespace roundwright::app {
namespace {

constexpr int notes_shown = 3;

QFont scaled(QFont font, double factor, int weight) {
    font.setPointSizeF(font.pointSizeF() * factor);
    font.setWeight(static_cast<QFont::Weight>(weight));
    return font;
}

QLabel* big_label(const QString& name, double factor, int weight = QFont::Normal) {
    auto* label = new QLabel;
    label->setAccessibleName(name);
    label->setFont(scaled(label->font(), factor, weight));
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

WorkingView::WorkingView(DocumentSession& session, RoundClock clock, QWidget* parent)
    : QWidget(parent, Qt::Window), session_(session), clock_(std::move(clock)) {
    setWindowTitle(tr("Work along"));
    build();
    add_shortcuts();
    connect_all();
    list_pieces();
    show_all();
    done_->setFocus();
}

// --- layout

void WorkingView::build() {
    pieces_ = new QComboBox;
    pieces_->setAccessibleName(tr("Piece"));
    pieces_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    number_ = big_label(tr("Round"), 1.8, QFont::DemiBold);
    words_ = big_label(tr("What to work"), 3.0, QFont::DemiBold);
    stitches_ = big_label(tr("Stitches"), 1.8);
    next_ = big_label(tr("Next round"), 1.3);
    next_->setForegroundRole(QPalette::PlaceholderText);
    coming_up_ = big_label(tr("Coming up"), 1.3);
    progress_ = new QProgressBar;
    progress_->setAccessibleName(tr("Progress"));
    times_ = big_label(tr("Times"), 1.1);
    measure_ = new QCheckBox(tr("&Measure the time"));
    done_ = new QPushButton(tr("Round done (Space)"));
    back_ = new QPushButton(tr("Back (Backspace)"));
    stitch_ = new QPushButton(tr("Count a stitch (→)"));
    again_ = new QPushButton(tr("Begin &again"));
    done_->setFont(scaled(done_->font(), 1.4, QFont::DemiBold));
    for (auto* button : {back_, stitch_, again_}) button->setFont(scaled(button->font(), 1.1, QFont::Normal));
    done_->setMinimumSize(done_->sizeHint() + QSize(28, 14));
    words_->setMinimumHeight(2 * QFontMetrics(words_->font()).lineSpacing());

    auto* top = new QHBoxLayout;
    top->addWidget(pieces_);
    top->addStretch(1);
    top->addWidget(measure_);
    auto* buttons = new QHBoxLayout;
    for (auto* button : {back_, stitch_, again_}) buttons->addWidget(button);
    buttons->addStretch(1);
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
    layout->addWidget(progress_);
    layout->addLayout(buttons);
    resize(room_on_screen(*this, {860, 600}));
}

void WorkingView::add_shortcuts() {
    const std::pair<Qt::Key, std::function<void()>> keys[] = {{Qt::Key_Space, [this] { round_done(); }},
                                                              {Qt::Key_Backspace, [this] { round_back(); }},
                                                              {Qt::Key_Right, [this] { count_stitch(+1); }},
                                                              {Qt::Key_Left, [this] { count_stitch(-1); }},
                                                              {Qt::Key_Escape, [this] { close(); }}};
    for (const auto& [key, act] : keys) {
        auto* shortcut = new QShortcut(QKeySequence(key), this);
        connect(shortcut, &QShortcut::activated, this, act);
    }
    for (const auto& [standard, act] : {std::pair{QKeySequence::Undo, &QUndoStack::undo},
                                        std::pair{QKeySequence::Redo, &QUndoStack::redo}}) {
        auto* shortcut = new QShortcut(QKeySequence(standard), this);
        connect(shortcut, &QShortcut::activated, &session_.undo_stack(), act);
    }
}

void WorkingView::connect_all() {
    connect(done_, &QPushButton::clicked, this, &WorkingView::round_done);
    connect(back_, &QPushButton::clicked, this, &WorkingView::round_back);
    connect(stitch_, &QPushButton::clicked, this, [this] { count_stitch(+1); });
    connect(again_, &QPushButton::clicked, this, &WorkingView::begin_again);
    connect(measure_, &QCheckBox::toggled, this, &WorkingView::set_measuring);
    connect(pieces_, &QComboBox::activated, &session_, &DocumentSession::set_current_piece);
    connect(&session_, &DocumentSession::current_piece_changed, this, [this] {
        clock_.restart();
        list_pieces();
        show_all();
    });
    connect(&session_, &DocumentSession::toy_changed, this, [this](const ChangeSet& changes) {
        if (changes.piece_list() || changes.piece_settings) list_pieces();
        show_all();
    });
    connect(&session_, &DocumentSession::study_ready, this, &WorkingView::show_coming_up);
    connect(&session_.preferences(), &Preferences::terms_changed, this, &WorkingView::show_all);
    second_.setInterval(1000);
    connect(&second_, &QTimer::timeout, this, &WorkingView::show_times);
}

/// Enter presses the button that has the focus; the space bar always ticks off a round.
void WorkingView::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (enter && button != nullptr) return button->click();
    QWidget::keyPressEvent(event);
}

// --- what is in hand

int WorkingView::rounds() const { return static_cast<int>(counts_.size()); }

const WorkedSoFar& WorkingView::worked() const {
    static const WorkedSoFar nothing;
    return session_.piece() != nullptr ? session_.piece()->worked : nothing;
}

int WorkingView::in_hand() const { return std::clamp(worked().rounds, 0, rounds()); }

QString WorkingView::round_text(int round) const {
    return QString::fromStdString(
        round_words(graph_.graph, round, session_.preferences().terms(), session_.piece()->start));
}

bool WorkingView::change_progress(const QString& step, const std::function<void(WorkedSoFar&)>& change,
                                  const QString& merge_key) {
    return session_.edit_piece(
        step, [&](Piece& piece) { change(piece.worked); }, merge_key);
}

void WorkingView::round_done() {
    if (finished()) return;
    const int round = in_hand();
    const double seconds = clock_.running() ? clock_.seconds() : 0;
    clock_.restart();
    change_progress(
        tr("Round %1 of %2 done").arg(round + 1).arg(QString::fromStdString(session_.piece()->name)),
        [round, seconds](WorkedSoFar& worked) {
            worked.rounds = round + 1;
            worked.stitches = 0;
            if (seconds <= 0) return;
            worked.seconds_of_round.resize(static_cast<std::size_t>(round) + 1, 0.0);
            worked.seconds_of_round.back() = seconds;
        });
}

void WorkingView::round_back() {
    const int round = in_hand();
    if (round == 0 && worked().stitches == 0) return;
    clock_.restart();
    // A round begun is begun again; else the one before is taken back.
    const int back_to = worked().stitches > 0 ? round : round - 1;
    change_progress(tr("Back to round %1").arg(back_to + 1), [back_to](WorkedSoFar& worked) {
        worked.rounds = back_to;
        worked.stitches = 0;
        const auto measured = std::min(worked.seconds_of_round.size(), static_cast<std::size_t>(back_to));
        worked.seconds_of_round.resize(measured);
    });
}

void WorkingView::count_stitch(int by) {
    if (finished()) return;
    const int round = in_hand();
    const int stitches = std::clamp(worked().stitches + by, 0, counts_[static_cast<std::size_t>(round)]);
    if (stitches == counts_[static_cast<std::size_t>(round)]) return round_done();
    change_progress(
        tr("Count stitches of round %1").arg(round + 1),
        [stitches](WorkedSoFar& worked) { worked.stitches = stitches; },
        QStringLiteral("count-stitches-%1").arg(round));
}

void WorkingView::begin_again() {
    clock_.restart();
    change_progress(tr("Begin %1 again").arg(QString::fromStdString(session_.piece()->name)),
                    [](WorkedSoFar& worked) { worked = {}; });
}

void WorkingView::set_measuring(bool measuring) {
    if (measuring) {
        clock_.run();
        second_.start();
    } else {
        clock_.pause();
        second_.stop();
    }
    show_times();
}

// --- showing it

void WorkingView::list_pieces() {
    const QSignalBlocker quiet(pieces_);
    pieces_->clear();
    for (const Piece& piece : session_.toy().pieces) {
        const QString name = QString::fromStdString(piece.name);
        pieces_->addItem(piece.make > 1 ? tr("%1 (make %2)").arg(name).arg(piece.make) : name);
    }
    pieces_->setCurrentIndex(session_.current_piece());
}

void WorkingView::show_all() {
    graph_ = session_.piece() != nullptr ? piece_graph(*session_.piece()) : PieceGraph{};
    counts_ = stitch_counts(graph_.graph);
    const bool may_change = !session_.read_only() && rounds() > 0;
    done_->setEnabled(may_change && !finished());
    stitch_->setEnabled(may_change && !finished());
    back_->setEnabled(may_change && worked() != WorkedSoFar{});
    again_->setEnabled(may_change && worked() != WorkedSoFar{});
    if (finished())
        show_finished();
    else
        show_round();
    show_coming_up();
    show_progress();
    show_times();
}

void WorkingView::show_round() {
    const int round = in_hand();
    const int count = counts_[static_cast<std::size_t>(round)];
    const QString text = round_text(round);
    number_->setText(tr("Round %1").arg(round + 1));
    words_->setText(text);
    QStringList parts{stitches_words(count)};
    const Repeat repeat = repeat_of(text, count);
    if (worked().stitches > 0) {
        parts = {tr("%1 of %2").arg(worked().stitches).arg(stitches_words(count))};
        if (repeat.times > 0)
            parts << tr("repeat %1 of %2").arg(worked().stitches / repeat.stitches + 1).arg(repeat.times);
    } else if (repeat.times > 0) {
        parts << tr("%1 in each of %2 repeats").arg(stitches_words(repeat.stitches)).arg(repeat.times);
    }
    stitches_->setText(parts.join(QStringLiteral(" · ")));
    next_->setText(round + 1 < rounds() ? tr("Then round %1: %2 (%3)")
                                              .arg(round + 2)
                                              .arg(round_text(round + 1))
                                              .arg(counts_[static_cast<std::size_t>(round) + 1])
                                        : tr("This is the last round."));
}

void WorkingView::show_finished() {
    const bool empty = rounds() == 0;
    number_->setText(empty ? QString() : tr("All %1 rounds are done").arg(rounds()));
    words_->setText(empty ? tr("This piece has no rounds yet.")
                          : QString::fromStdString(session_.piece()->name));
    const int make = session_.piece() != nullptr ? session_.piece()->make : 1;
    stitches_->setText(make > 1 && !empty ? tr("The toy needs %1 of it.").arg(make) : QString());
    next_->clear();
}

void WorkingView::show_coming_up() {
    const auto study = session_.study(session_.current_piece());
    QStringList lines;
    if (session_.piece() != nullptr && rounds() > 0) {
        const QString note =
            finished()
                ? QString()
                : QString::fromStdString(session_.piece()->rounds[static_cast<std::size_t>(in_hand())].note);
        if (!note.isEmpty()) lines << note;
        const PieceStudy none;
        for (const WorkNote& due : work_notes(session_.toy(), *session_.piece(), study ? *study : none)) {
            const bool now = due.after_round == in_hand() - 1;
            if (due.after_round < in_hand() - 1 || lines.size() >= notes_shown) continue;
            lines << (now ? tr("Now: %1").arg(due.words)
                          : tr("After round %1: %2").arg(due.after_round + 1).arg(due.words));
        }
    }
    coming_up_->setText(lines.join(QLatin1Char('\n')));
    coming_up_->setVisible(!lines.isEmpty());
}

void WorkingView::show_progress() {
    int all = 0;
    int done = 0;
    for (int i = 0; i < rounds(); ++i) {
        all += counts_[static_cast<std::size_t>(i)];
        if (i < in_hand()) done += counts_[static_cast<std::size_t>(i)];
    }
    progress_->setRange(0, std::max(all, 1));
    progress_->setValue(finished() ? all : std::min(done + worked().stitches, all));
    progress_->setFormat(tr("%1 of %2 rounds, %p % of the stitches").arg(in_hand()).arg(rounds()));
}

void WorkingView::show_times() {
    QStringList parts;
    if (clock_.running() && !finished()) parts << tr("this round %1").arg(time_text(clock_.seconds()));
    const auto& seconds = worked().seconds_of_round;
    const auto last = static_cast<std::size_t>(in_hand());
    if (last > 0 && last <= seconds.size() && seconds[last - 1] > 0)
        parts << tr("round %1 took %2").arg(last).arg(time_text(seconds[last - 1]));
    const double left = finished() ? 0 : seconds_left(worked(), counts_);
    if (left > 0) parts << tr("about %1 to go").arg(time_text(left));
    times_->setText(parts.join(QStringLiteral(" · ")));
}

QString WorkingView::words() const {
    return QStringList{number_->text(), words_->text(), stitches_->text()}.join(QLatin1Char('\n'));
}
QString WorkingView::coming_up() const { return coming_up_->text(); }
QString WorkingView::times() const { return times_->text(); }

}  // namespace roundwright::app
