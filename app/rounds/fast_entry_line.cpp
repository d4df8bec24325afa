#include "app/rounds/fast_entry_line.h"

#include <QApplication>
#include <QClipboard>
#include <QGridLayout>
#include <QKeyEvent>
#include <QMimeData>
#include <QRegularExpression>
#include <QTimer>
#include <QUndoStack>

#include "app/kit/field_rules.h"
#include "app/kit/read_out.h"
#include "app/rounds/round_edits.h"

namespace roundwright::app {
namespace {

/// More than one line, and words: headings, ranges and remarks are read with what stands around them.
bool is_pattern(const QString& text) {
    static const QRegularExpression word(QStringLiteral("\\p{L}{2}"));
    const QString lines = text.trimmed();
    return lines.contains(u'\n') && lines.contains(word);
}

/// Stands for a line end in a one-line field; a text from elsewhere is not likely to hold it.
constexpr QChar line_end = u'\u23CE';

}  // namespace

FastEntryLine::FastEntryLine(DocumentSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      line_(new QLineEdit(this)),
      understood_(new ReadOut(tr("What was understood"), this)) {
    name_ = new QLabel(tr("&Next rounds"), this);
    name_->setBuddy(line_);
    line_->setPlaceholderText(tr("6, 12, 18   24x4   +6x3   or a pattern"));
    line_->setAccessibleName(tr("Next rounds"));
    line_->setAccessibleDescription(
        tr("Counts such as 6, 12, 18, or 24x4, or +6x3, or a pattern in words; Enter adds them."));
    line_->setClearButtonEnabled(true);
    line_->installEventFilter(this);
    line_->setProperty(toy_undo_when_empty, true);
    understood_->setTextFormat(Qt::PlainText);
    understood_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    layout_ = new QGridLayout(this);
    layout_->setContentsMargins(12, 8, 12, 8);
    layout_->setHorizontalSpacing(10);
    layout_->setVerticalSpacing(4);
    layout_->addWidget(name_, 0, 0);
    layout_->addWidget(line_, 0, 1);
    layout_->addWidget(understood_, 0, 2);
    layout_->setColumnStretch(1, 4);
    layout_->setColumnStretch(2, 5);
    connect(line_, &QLineEdit::textChanged, this, &FastEntryLine::read);
    connect(line_, &QLineEdit::returnPressed, this, &FastEntryLine::add_rounds);
    connect(&session_, &DocumentSession::toy_changed, this, &FastEntryLine::read);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FastEntryLine::read);
    connect(&session_, &DocumentSession::file_changed, this, &FastEntryLine::read);
    connect(&session_.undo_stack(), &QUndoStack::indexChanged, this, &FastEntryLine::follow_steps);
    read();
}

/// What was understood stands beside the line, or under it where there is room for a few words only. It hangs
/// on the room alone, so that nothing moves while one types.
void FastEntryLine::arrange() {
    constexpr int characters_beside = 48;
    const QMargins margins = layout_->contentsMargins();
    const int rest = width() - margins.left() - margins.right() - name_->sizeHint().width() -
                     2 * layout_->horizontalSpacing();
    const bool below = 5 * rest / 9 < characters_beside * fontMetrics().averageCharWidth();
    if (below == below_) return;
    below_ = below;
    layout_->removeWidget(understood_);
    if (below)
        layout_->addWidget(understood_, 1, 0, 1, 2);
    else
        layout_->addWidget(understood_, 0, 2);
    layout_->setColumnStretch(2, below ? 0 : 5);
    layout_->setContentsMargins(12, below ? 4 : 8, 12, below ? 4 : 8);
}

void FastEntryLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void FastEntryLine::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) arrange();
}

QString FastEntryLine::typed() const { return line_->text().replace(line_end, u'\n'); }

void FastEntryLine::focus_line() {
    session_.show_whole_toy(false);
    line_->setFocus(Qt::OtherFocusReason);
    line_->selectAll();
}

void FastEntryLine::bring_back(const QString& typed) {
    line_->setText(typed);
    line_->setFocus(Qt::OtherFocusReason);
}

void FastEntryLine::take_text(const QString& text) {
    if (is_pattern(text)) return Q_EMIT pattern_pasted(text);
    QString one_line = text.trimmed();
    one_line.remove(u'\r').replace(u'\n', line_end);
    line_->setText(one_line);
    line_->setFocus(Qt::OtherFocusReason);
}

void FastEntryLine::read() {
    if (adding_) return;
    if (line_->text() != brought_back_) brought_back_.clear();
    setEnabled(session_.piece() && !session_.read_only());
    reading_ = {};
    if (session_.piece()) {
        const auto like =
            RoundEdits(session_).like_round_before(static_cast<int>(session_.piece()->rounds.size()));
        reading_ = read_entry(typed(), {*session_.piece(), like, yarn_table(session_.toy()).names,
                                        session_.preferences().terms(),
                                        session_.graph_of(session_.toy(), session_.current_piece())});
    }
    show_understood();
    try_out();
}

/// Only while the line has the focus: elsewhere the shape is that of the rounds there are.
void FastEntryLine::try_out() {
    if (!line_->hasFocus()) return;
    const bool half_typed = !line_->text().isEmpty() && !reading_.can_be_added();
    if (half_typed) return;  // the shape of what came out last stays
    const auto toy = reading_.can_be_added() ? RoundEdits(session_).with_inserted(
                                                   static_cast<int>(session_.piece()->rounds.size()),
                                                   reading_.rounds, reading_.yarn_names)
                                             : std::nullopt;
    toy ? session_.try_out(*toy) : session_.end_trial();
}

void FastEntryLine::show_understood() {
    const bool problem = !reading_.problem.isEmpty();
    QString text = problem ? reading_.problem : reading_.understood;
    if (!problem && !text.isEmpty()) text = QStringLiteral("\u2192  %1").arg(text);
    if (line_->text().isEmpty() && session_.piece()) {
        text = tr("Enter adds them after round %1.").arg(session_.piece()->rounds.size());
        if (session_.piece()->rounds.empty()) text = tr("Enter adds them as the first rounds.");
    }
    understood_->setText(text);
    understood_->setToolTip(text);
    understood_->setForegroundRole(problem ? QPalette::BrightText : QPalette::PlaceholderText);
}

void FastEntryLine::add_rounds() {
    if (!reading_.can_be_added()) {
        if (!reading_.problem.isEmpty()) Q_EMIT not_understood(reading_.problem);
        if (reading_.problem_length > 0) line_->setSelection(reading_.problem_at, reading_.problem_length);
        return;
    }
    const EntryReading reading = reading_;
    const auto& rounds = reading.rounds;
    const int at = static_cast<int>(session_.piece()->rounds.size());
    const QString text = rounds.size() == 1 ? tr("Add round %1").arg(at + 1)
                                            : tr("Add rounds %1 to %2").arg(at + 1).arg(at + rounds.size());
    adding_ = true;  // what is typed is not to go after the rounds that it makes
    const bool added = RoundEdits(session_).insert(at, rounds, text, reading.yarn_names);
    adding_ = false;
    if (!added) return;
    remember_step(line_->text());
    line_->setText({});  // and not clear(), which Undo would take back in place of the rounds
    Q_EMIT rounds_added();
}

void FastEntryLine::remember_step(const QString& typed) {
    const int step = session_.undo_stack().index();
    added_[step] = {session_.undo_stack().command(step - 1), typed};
    brought_back_.clear();
}

/// Where the next step to be redone was made here, the line holds its words as it did before that step. What
/// the maker has typed since stays.
void FastEntryLine::follow_steps(int step) {
    const QUndoStack& steps = session_.undo_stack();
    std::erase_if(
        added_, [&steps](const auto& added) { return steps.command(added.first - 1) != added.second.step; });
    if (adding_ || !line_->hasFocus() || line_->text() != brought_back_) return;
    const auto next = added_.find(step + 1);
    brought_back_ = next == added_.end() ? QString() : next->second.typed;
    if (line_->text() == brought_back_) return;
    line_->setText(brought_back_);
    line_->selectAll();
}

bool FastEntryLine::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusOut) session_.end_trial();
    if (event->type() == QEvent::FocusIn) QTimer::singleShot(0, this, &FastEntryLine::try_out);
    if (event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        const auto* clip = QApplication::clipboard()->mimeData();
        if (key->matches(QKeySequence::Paste) && clip && clip->text().contains(u'\n')) {
            take_text(clip->text());
            return true;
        }
        if (key->key() == Qt::Key_Up && (key->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier) {
            Q_EMIT left_upwards();
            return true;
        }
        if (key->key() == Qt::Key_Escape && !line_->text().isEmpty()) {
            line_->clear();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace roundwright::app
