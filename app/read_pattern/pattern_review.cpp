#include "app/read_pattern/pattern_review.h"

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <optional>
#include <utility>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScopedValueRollback>
#include <QScrollBar>
#include <QSplitter>
#include <QTableView>
#include <QTextBlock>
#include <QVBoxLayout>

#include "app/kit/action_maker.h"
#include "app/kit/announcer.h"
#include "app/kit/room_on_screen.h"
#include "app/kit/still_label.h"
#include "app/kit/theme.h"
#include "app/kit/true_focus.h"
#include "app/read_pattern/added_pieces.h"
#include "app/read_pattern/findings_part.h"
#include "app/read_pattern/mend_outcome.h"
#include "app/read_pattern/review_model.h"
#include "app/read_pattern/text_places.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/terms_words.h"

namespace roundwright::app {

namespace {

constexpr int read_after_ms = 150;

bool is_alike(const ReadDiagnostic& a, const ReadDiagnostic& b) {
    return a.code == b.code && a.expected == b.expected && a.found == b.found && a.arguments == b.arguments;
}

/// The same finding in a text that was changed since: the nearest of its kind that has the mend.
std::optional<std::pair<ReadDiagnostic, Mend>> found_again(const ReadPattern& pattern,
                                                           const ReadDiagnostic& finding, const Mend& mend) {
    std::optional<std::pair<ReadDiagnostic, Mend>> nearest;
    const auto away = [&](const ReadDiagnostic& other) {
        return std::abs(other.where.line - finding.where.line);
    };
    for (const ReadDiagnostic& other : pattern.diagnostics) {
        if (!is_alike(other, finding) || (nearest && away(nearest->first) <= away(other))) continue;
        const auto same = std::ranges::find_if(other.mends, [&](const Mend& each) {
            return each.code == mend.code && each.arguments == mend.arguments;
        });
        if (same != other.mends.end()) nearest = std::pair(other, *same);
    }
    return nearest;
}

}  // namespace

PatternReview::PatternReview(DocumentSession& session, const QString& text, QWidget* parent)
    : QDialog(parent),
      session_(session),
      draft_(session.drafts(), pattern_review_draft),
      announcer_(new Announcer(this)),
      source_(new QPlainTextEdit),
      understood_(new TrueFocus<QTableView>),
      model_(new ReviewModel(this)),
      findings_(new FindingsPart),
      terms_(new QComboBox),
      summary_(new QLabel(tr("Reading…"))),
      said_(new StillLabel(tr("Said last"))) {
    setWindowTitle(tr("Read a pattern"));
    resize(room_on_screen(*this, {1040, 680}));
    build();
    add_actions();
    draft_.follow(*source_, QStringLiteral("text"));
    if (source_->toPlainText().isEmpty()) source_->setPlainText(text);
    soon_.setSingleShot(true);
    soon_.setInterval(read_after_ms);
    connect_parts();
    source_->setFocus();
    read();
}

// --- what it is made of

void PatternReview::build() {
    source_->setAccessibleName(tr("Pattern text"));
    source_->setTabChangesFocus(true);
    source_->setLineWrapMode(QPlainTextEdit::NoWrap);
    // The place that is gone to is seen while the keyboard is at its fixes.
    QPalette palette = source_->palette();
    palette.setBrush(QPalette::Inactive, QPalette::Highlight, palette.highlight());
    palette.setBrush(QPalette::Inactive, QPalette::HighlightedText, palette.highlightedText());
    source_->setPalette(palette);
    build_understood();
    said_->set_lines(2);
    auto* sides = new QSplitter(Qt::Horizontal);
    sides->addWidget(source_);
    sides->addWidget(understood_);
    sides->setChildrenCollapsible(false);
    sides->setSizes({2, 3});  // in proportion: the table has columns, the text scrolls
    auto* layout = new QVBoxLayout(this);
    layout->addLayout(head_row());
    layout->addWidget(sides, 1);
    layout->addWidget(said_);
    layout->addWidget(findings_);
    layout->addLayout(button_row());
}

void PatternReview::build_understood() {
    understood_->setModel(model_);
    understood_->setAccessibleName(tr("What each line is"));
    understood_->setTabKeyNavigation(false);
    understood_->setSelectionBehavior(QAbstractItemView::SelectRows);
    understood_->setSelectionMode(QAbstractItemView::SingleSelection);
    understood_->verticalHeader()->hide();
    understood_->setShowGrid(false);
    understood_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    understood_->horizontalHeader()->setSectionResizeMode(ReviewModel::understood, QHeaderView::Stretch);
    understood_->installEventFilter(this);
}

QHBoxLayout* PatternReview::head_row() {
    auto* row = new QHBoxLayout;
    auto* label = new QLabel(tr("T&erms"));
    terms_->addItem(tr("detect"));
    terms_->addItems(terms_names());
    label->setBuddy(terms_);
    label->setContentsMargins(0, 0, 2, 0);  // in large type the last letter reaches beyond its advance
    summary_->setWordWrap(true);
    row->addWidget(summary_, 1);
    row->addWidget(label);
    row->addWidget(terms_);
    return row;
}

QHBoxLayout* PatternReview::button_row() {
    auto* row = new QHBoxLayout;
    row->addWidget(button_for("review.previous", tr("&Previous"), [this] { step(-1); }));
    row->addWidget(button_for("review.next", tr("&Next"), [this] { step(+1); }));
    row->addWidget(button_for("review.fix", tr("&Fix"),
                              [this] { mend(findings_->current(), findings_->marked_mend()); }));
    row->addWidget(button_for("review.undo", tr("&Undo"), [this] { take_back(); }));
    row->addStretch(1);
    take_ = button_for("review.add", tr("&Add these pieces"), [this] { take(); });
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel);
    box->addButton(take_, QDialogButtonBox::AcceptRole);
    take_->setAutoDefault(true);
    take_->setDefault(true);
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    row->addWidget(box);
    return row;
}

/// A button for an action of the catalogue, whose keys its tool tip tells.
QPushButton* PatternReview::button_for(const char* id, const QString& text,
                                       const std::function<void()>& act) {
    auto* action = make_action(this, id);
    auto* button = new QPushButton(text);
    button->setAutoDefault(false);
    const auto follow = [action, button] { button->setToolTip(action->toolTip()); };
    follow();
    connect(action, &QAction::changed, button, follow);
    connect(action, &QAction::triggered, this, act);
    connect(button, &QPushButton::clicked, action, &QAction::trigger);
    return button;
}

void PatternReview::add_actions() {
    connect(make_action(this, "review.text"), &QAction::triggered, this, &PatternReview::go_to_text);
    say_again_by_key(*this, *announcer_);
}

void PatternReview::connect_parts() {
    connect(&soon_, &QTimer::timeout, this, &PatternReview::read);
    connect(source_, &QPlainTextEdit::textChanged, this, &PatternReview::text_changed);
    connect(&reading_, &render::Background::failed, summary_,
            [this](render::Background::Ticket, const QString& why) {
                making_ = false;
                after_reading_ = nullptr;
                summary_->setText(why);
            });
    connect(terms_, &QComboBox::currentIndexChanged, this, &PatternReview::read);
    connect(announcer_, &Announcer::shown_changed, said_, &StillLabel::say);
    connect(findings_, &FindingsPart::picked, this, &PatternReview::go_to);
    connect(findings_, &FindingsPart::fix_wanted, this,
            [this] { mend(findings_->current(), findings_->marked_mend()); });
    connect(findings_, &FindingsPart::text_wanted, this, &PatternReview::go_to_text);
    connect(understood_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& row) {
                if (!row.isValid() || !understood_->hasFocus() || following_) return;
                source_->setTextCursor(
                    QTextCursor(source_->document()->findBlockByNumber(model_->line(row.row()) - 1)));
                source_->ensureCursorVisible();
                if (const int found = model_->finding(row.row()); found >= 0) findings_->set_current(found);
            });
    connect(source_, &QPlainTextEdit::cursorPositionChanged, this, [this] {
        const int row = model_->row_of_line(source_->textCursor().blockNumber() + 1);
        if (row >= 0 && source_->hasFocus()) understood_->selectRow(row);
    });
}

/// Enter on a line goes to it in the text.
bool PatternReview::eventFilter(QObject* watched, QEvent* event) {
    if (watched == understood_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (static_cast<QKeyEvent*>(event)->modifiers().testFlag(Qt::ControlModifier)) return false;
            go_to_text();
            return true;
        }
    }
    return QDialog::eventFilter(watched, event);
}

// --- reading

void PatternReview::text_changed() {
    reading_.cancel();
    after_reading_ = nullptr;
    making_ = false;
    soon_.start();
}

void PatternReview::read() {
    soon_.stop();
    ReadOptions options;
    if (terms_->currentIndex() > 0)
        options.terms = static_cast<roundwright::Terms>(terms_->currentIndex() - 1);
    for (const Yarn& yarn : session_.toy().yarns) options.yarn_names.push_back(yarn.name);
    reading_.start_latest(
        render::Lane::longer,
        [this, options, text = source_->toPlainText()](const render::TaskRun&) -> render::Delivery {
            auto read = std::make_shared<ReadPattern>(read_pattern(text.toStdString(), options));
            return [this, read = std::move(read)] { show_pattern(std::move(*read)); };
        });
}

void PatternReview::show_pattern(ReadPattern pattern) {
    pattern_ = std::move(pattern);
    show_lines();
    findings_->set_findings(pattern_.diagnostics);
    mark_source();
    summary_->setText(summary_words());
    take_->setEnabled(!pattern_.pieces.empty() &&
                      std::ranges::any_of(pattern_.pieces, [](const Piece& p) { return !p.rounds.empty(); }));
    if (const auto act = std::exchange(after_reading_, nullptr)) return act();
    announcer_->say(QStringLiteral("findings"),
                    findings_->count() == 0 ? tr("Every stitch works out.")
                                            : tr("%n finding(s).", nullptr, findings_->count()),
                    Weight::checks);
}

/// The table stays where it was, as the text does.
void PatternReview::show_lines() {
    const int top = understood_->verticalScrollBar()->value();
    const QModelIndex current = understood_->currentIndex();
    const int column = std::max(current.column(), 0);
    const bool is_read_along = understood_->hasFocus() && current.isValid();
    const int line = is_read_along ? model_->line(current.row()) : source_->textCursor().blockNumber() + 1;
    model_->set_pattern(pattern_);
    follow_to_line(line, column);
    understood_->verticalScrollBar()->setValue(top);
}

/// The table goes along with the text, and the text stays where it is.
void PatternReview::follow_to_line(int line, int column) {
    const QScopedValueRollback following(following_, true);
    if (const int row = model_->row_of_line(line); row >= 0)
        understood_->setCurrentIndex(model_->index(row, column));
}

QString PatternReview::summary_words() const {
    int rounds = 0;
    for (const Piece& piece : pattern_.pieces) rounds += static_cast<int>(piece.rounds.size());
    const QString pieces = tr("%n piece(s)", nullptr, static_cast<int>(pattern_.pieces.size()));
    const QString read = tr("%1, %2, %3").arg(pieces, rounds_words(rounds), terms_in_words(pattern_.terms));
    const auto lost =
        static_cast<int>(std::ranges::count(pattern_.account, ReadLineKind::not_read, &LineAccount::kind));
    return lost == 0 ? read : tr("%1, %2 not understood").arg(read, lines_words(lost));
}

void PatternReview::when_read(const std::function<void()>& act) {
    if (is_read()) return act();
    if (soon_.isActive()) read();
    after_reading_ = act;
}

void PatternReview::mark_source() {
    QList<QTextEdit::ExtraSelection> marks;
    for (const ReadDiagnostic& problem : pattern_.diagnostics) {
        QTextEdit::ExtraSelection mark;
        mark.cursor = cursor_at(*source_->document(), problem.where);
        mark.format.setUnderlineStyle(QTextCharFormat::WaveUnderline);
        mark.format.setUnderlineColor(problem.severity == Severity::error ? QColor(0xC0, 0x39, 0x2B)
                                                                          : Theme::colours().accent);
        marks.append(mark);
    }
    source_->setExtraSelections(marks);
}

// --- from finding to finding

const ReadDiagnostic& PatternReview::finding(int index) const {
    return pattern_.diagnostics[static_cast<std::size_t>(index)];
}

int PatternReview::place_of(int finding_index) const {
    return cursor_at(*source_->document(), finding(finding_index).where).selectionStart();
}

PatternReview::Shown PatternReview::place_shown() const {
    const QTextCursor cursor = source_->textCursor();
    return {cursor.anchor(), cursor.position(), source_->document()->revision()};
}

/// From the one that is shown, as long as the cursor is still there; else from where the maker is.
int PatternReview::finding_from_cursor(int by) const {
    if (findings_->current() >= 0 && place_shown() == shown_) return findings_->current() + by;
    const int here = source_->textCursor().selectionStart();
    int next = 0;
    while (next < findings_->count() && place_of(next) < here) ++next;
    return by > 0 ? next : next - 1;
}

void PatternReview::step(int by) {
    when_read([this, by] {
        const int count = findings_->count();
        if (count == 0) return announcer_->answer(tr("Nothing to fix: every stitch works out."));
        const int next = finding_from_cursor(by);
        QString turn;
        if (next >= count) turn = tr("From the end back to the top.");
        if (next < 0) turn = tr("From the top to the end.");
        const QString place = arrive_at((next + count) % count);
        announcer_->answer(joined_sentences({turn, place}));
    });
}

void PatternReview::go_to(int index) {
    if (index < 0 || index >= findings_->count()) return;
    const TextSpan& where = finding(index).where;
    source_->setTextCursor(cursor_at(*source_->document(), where));
    source_->ensureCursorVisible();
    shown_ = place_shown();
    follow_to_line(where.line, 0);
}

QString PatternReview::arrive_at(int index) {
    findings_->set_current(index);
    go_to(index);
    const QString place =
        tr("Finding %1 of %2. %3").arg(index + 1).arg(findings_->count()).arg(finding_words(finding(index)));
    if (findings_->go_to_mends()) return place;
    source_->setFocus();
    return joined_sentences({place, tr("Change it in the text")});
}

void PatternReview::go_to_text() {
    source_->setFocus();
    source_->ensureCursorVisible();
}

// --- fixes

void PatternReview::mend(int index, int mend_index) {
    if (making_) return;
    if (index < 0 || index >= findings_->count()) return;
    const ReadDiagnostic& of = finding(index);
    if (mend_index < 0 || mend_index >= static_cast<int>(of.mends.size()))
        return announcer_->answer(tr("There is no fix to offer here. Change it in the text."));
    const Mend wanted = of.mends[static_cast<std::size_t>(mend_index)];
    if (is_read()) return make(of, wanted);
    when_read([this, of, wanted] {
        if (const auto again = found_again(pattern_, of, wanted)) return make(again->first, again->second);
        announcer_->answer(tr("The text has changed, and this fix does not fit any more."));
    });
}

void PatternReview::make(const ReadDiagnostic& of, const Mend& wanted) {
    const ReadPattern before = pattern_;
    source_->setTextCursor(make_mend(*source_->document(), wanted));
    read();
    making_ = true;
    after_reading_ = [this, before, of, wanted] {
        making_ = false;
        tell_made(before, of, wanted);
    };
}

/// What it changed, what comes out now, and the next finding, which is gone to.
void PatternReview::tell_made(const ReadPattern& before, const ReadDiagnostic& of, const Mend& wanted) {
    const QString made = mend_made_words(wanted);
    const QString outcome = mend_outcome_words(before, pattern_, of);
    QString next = tr("Nothing left to fix: the pieces can be added.");
    if (findings_->count() > 0) next = arrive_at(finding_from_cursor(+1) % findings_->count());
    announcer_->answer(joined_sentences({made, outcome, next}));
}

void PatternReview::take_back() {
    if (!source_->document()->isUndoAvailable()) return announcer_->answer(tr("Nothing to take back."));
    int changed = 0;
    const auto watch = connect(source_->document(), &QTextDocument::contentsChange, this,
                               [&changed](int position) { changed = position; });
    source_->undo();
    disconnect(watch);
    QTextCursor at(source_->document());
    at.setPosition(std::min(changed, source_->document()->characterCount() - 1));
    source_->setTextCursor(at);
    if (is_read()) return announcer_->answer(tr("Taken back."));
    when_read([this] { tell_taken_back(); });
}

/// Back at what was mended, if it is a finding again.
void PatternReview::tell_taken_back() {
    const int line = source_->textCursor().blockNumber() + 1;
    const auto at = std::ranges::find_if(
        pattern_.diagnostics, [line](const ReadDiagnostic& each) { return each.where.line == line; });
    QString place;
    if (at != pattern_.diagnostics.end())
        place = arrive_at(static_cast<int>(at - pattern_.diagnostics.begin()));
    announcer_->answer(joined_sentences({tr("Taken back"), place}));
}

// --- into the toy

Toy PatternReview::toy_with_pieces() const { return with_pieces_read(session_.toy(), pattern_); }

void PatternReview::take() {
    if (!is_read()) return when_read([this] { take(); });
    if (!take_->isEnabled()) return;
    const auto first = static_cast<int>(has_rounds(session_.toy()) ? session_.toy().pieces.size() : 0);
    session_.edit(tr("Add pieces from text"), toy_with_pieces());
    session_.set_current_piece(first);
    accept();
}

}  // namespace roundwright::app
