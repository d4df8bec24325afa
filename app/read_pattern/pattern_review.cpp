#include "app/read_pattern/pattern_review.h"

#include <algorithm>
#include <memory>
#include <utility>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSplitter>
#include <QTableView>
#include <QTextBlock>
#include <QVBoxLayout>

#include "app/kit/room_on_screen.h"
#include "app/kit/theme.h"
#include "app/kit/true_focus.h"
#include "app/read_pattern/review_model.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/terms_words.h"

namespace roundwright::app {

namespace {

constexpr int read_after_ms = 150;

/// Position in the document of a span's start; columns count code points.
QTextCursor cursor_at(QTextDocument& document, const TextSpan& span) {
    const QTextBlock block = document.findBlockByNumber(span.line - 1);
    QTextCursor cursor(block.isValid() ? block : document.lastBlock());
    const QString line = block.text();
    qsizetype unit = 0;
    const auto step = [&] { unit += unit < line.size() && line[unit].isHighSurrogate() ? 2 : 1; };
    for (int k = 1; k < span.column && unit < line.size(); ++k) step();
    cursor.setPosition(block.position() + static_cast<int>(unit));
    for (int k = 0; k < std::max(span.length, 1) && unit < line.size(); ++k) step();
    cursor.setPosition(block.position() + static_cast<int>(unit), QTextCursor::KeepAnchor);
    return cursor;
}

void add_paragraphs(std::string& text, const std::string& more) {
    if (!text.empty() && !more.empty()) text += "\n\n";
    text += more;
}

bool has_rounds(const Toy& toy) {
    return std::any_of(toy.pieces.begin(), toy.pieces.end(),
                       [](const Piece& piece) { return !piece.rounds.empty(); });
}

}  // namespace

PatternReview::PatternReview(DocumentSession& session, const QString& text, QWidget* parent)
    : QDialog(parent),
      session_(session),
      draft_(session.drafts(), pattern_review_draft),
      source_(new QPlainTextEdit),
      understood_(new TrueFocus<QTableView>),
      model_(new ReviewModel(this)),
      problems_(new TrueFocus<QListWidget>),
      mend_(new QPushButton(tr("&Fix"))),
      terms_(new QComboBox),
      summary_(new QLabel(tr("Reading…"))),
      take_(new QPushButton(tr("&Add these pieces"))) {
    setWindowTitle(tr("Read a pattern"));
    resize(room_on_screen(*this, {1040, 680}));
    build();
    draft_.follow(*source_, QStringLiteral("text"));
    if (source_->toPlainText().isEmpty()) source_->setPlainText(text);
    soon_.setSingleShot(true);
    soon_.setInterval(read_after_ms);
    connect(&soon_, &QTimer::timeout, this, &PatternReview::read);
    connect(source_, &QPlainTextEdit::textChanged, this, &PatternReview::text_changed);
    connect(&reading_, &render::Background::failed, summary_,
            [this](render::Background::Ticket, const QString& why) { summary_->setText(why); });
    connect(terms_, &QComboBox::currentIndexChanged, this, &PatternReview::read);
    read();
}

void PatternReview::build() {
    source_->setAccessibleName(tr("Pattern text"));
    source_->setTabChangesFocus(true);
    source_->setLineWrapMode(QPlainTextEdit::NoWrap);
    understood_->setModel(model_);
    understood_->setAccessibleName(tr("What was understood"));
    understood_->setTabKeyNavigation(false);
    understood_->setSelectionBehavior(QAbstractItemView::SelectRows);
    understood_->verticalHeader()->hide();
    understood_->setShowGrid(false);
    understood_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    understood_->horizontalHeader()->setSectionResizeMode(ReviewModel::understood, QHeaderView::Stretch);

    auto* sides = new QSplitter(Qt::Horizontal);
    sides->addWidget(source_);
    sides->addWidget(understood_);
    sides->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    auto* heads = new QHBoxLayout;
    auto* terms_label = new QLabel(tr("T&erms"));
    terms_->addItem(tr("detect"));
    terms_->addItems(terms_names());
    terms_label->setBuddy(terms_);
    heads->addWidget(summary_, 1);
    heads->addWidget(terms_label);
    heads->addWidget(terms_);
    layout->addLayout(heads);
    layout->addWidget(sides, 1);
    layout->addWidget(lower_part());

    connect(understood_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& row) {
                if (!row.isValid() || !understood_->hasFocus()) return;
                source_->setTextCursor(QTextCursor(
                    source_->document()->findBlockByNumber(model_->line(row.row()).first_line - 1)));
                source_->ensureCursorVisible();
            });
    connect(source_, &QPlainTextEdit::cursorPositionChanged, this, [this] {
        const int row = model_->row_of_line(source_->textCursor().blockNumber() + 1);
        if (row >= 0 && source_->hasFocus()) understood_->selectRow(row);
    });
}

QWidget* PatternReview::lower_part() {
    auto* part = new QWidget;
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* row = new QHBoxLayout;
    problems_->setAccessibleName(tr("Problems in the text"));
    problems_->setWordWrap(true);
    problems_->setMaximumHeight(fontMetrics().height() * 7);
    row->addWidget(problems_, 1);
    row->addWidget(mend_, 0, Qt::AlignTop);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Cancel);
    box->addButton(take_, QDialogButtonBox::AcceptRole);
    take_->setDefault(true);
    layout->addLayout(row);
    layout->addWidget(box);
    connect(problems_, &QListWidget::currentRowChanged, this, &PatternReview::go_to);
    connect(mend_, &QPushButton::clicked, this, [this] { mend(problems_->currentRow()); });
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(box, &QDialogButtonBox::accepted, this, &PatternReview::take);
    return part;
}

void PatternReview::text_changed() {
    reading_.cancel();
    after_reading_ = nullptr;
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
    model_->set_pattern(pattern_);
    show_problems();
    mark_source();
    int rounds = 0;
    for (const Piece& piece : pattern_.pieces) rounds += static_cast<int>(piece.rounds.size());
    const QString pieces = tr("%n piece(s)", nullptr, static_cast<int>(pattern_.pieces.size()));
    const QString terms = terms_in_words(pattern_.terms);
    const QString read = tr("%1, %2, %3").arg(pieces, rounds_words(rounds), terms);
    summary_->setText(lines_not_read() == 0 ? read
                                            : tr("%1, %2 not read").arg(read, lines_words(lines_not_read())));
    take_->setEnabled(rounds > 0);
    if (const auto act = std::exchange(after_reading_, nullptr)) act();
}

void PatternReview::when_read(const std::function<void()>& act) {
    if (is_read()) return act();
    if (soon_.isActive()) read();
    after_reading_ = act;
}

int PatternReview::lines_not_read() const {
    return static_cast<int>(
        std::count_if(pattern_.account.begin(), pattern_.account.end(),
                      [](const LineAccount& line) { return line.kind == ReadLineKind::not_read; }));
}

void PatternReview::show_problems() {
    const int current = problems_->currentRow();
    const QSignalBlocker quiet(problems_);
    problems_->clear();
    for (const ReadDiagnostic& problem : pattern_.diagnostics) {
        QString sentence = tr("Line %1, column %2: %3")
                               .arg(problem.where.line)
                               .arg(problem.where.column)
                               .arg(diagnostic_sentence(problem));
        if (!problem.mends.empty()) sentence += QLatin1Char(' ') + mend_question(problem.mends.front());
        problems_->addItem(sentence);
    }
    if (pattern_.diagnostics.empty()) problems_->addItem(tr("Every stitch works out."));
    problems_->setCurrentRow(std::clamp(current, 0, problems_->count() - 1));
    const auto row = static_cast<std::size_t>(problems_->currentRow());
    mend_->setEnabled(row < pattern_.diagnostics.size() && !pattern_.diagnostics[row].mends.empty());
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

void PatternReview::go_to(int problem) {
    const bool known = problem >= 0 && static_cast<std::size_t>(problem) < pattern_.diagnostics.size();
    mend_->setEnabled(known && !pattern_.diagnostics[static_cast<std::size_t>(problem)].mends.empty());
    if (!known) return;
    source_->setTextCursor(
        cursor_at(*source_->document(), pattern_.diagnostics[static_cast<std::size_t>(problem)].where));
    source_->ensureCursorVisible();
}

void PatternReview::mend(int problem) {
    when_read([this, problem] { insert_mended(problem); });
}

void PatternReview::insert_mended(int problem) {
    if (problem < 0 || static_cast<std::size_t>(problem) >= pattern_.diagnostics.size()) return;
    const auto& mends = pattern_.diagnostics[static_cast<std::size_t>(problem)].mends;
    if (mends.empty()) return;
    const std::string text = mended(source_->toPlainText().toStdString(), mends.front());
    // Through the cursor, so that the text's own undo takes it back.
    QTextCursor all(source_->document());
    all.select(QTextCursor::Document);
    all.insertText(QString::fromStdString(text));
    read();
}

Toy PatternReview::toy_with_pieces() const {
    const Toy& toy = session_.toy();
    Toy read = toy_of(pattern_, toy);
    if (!has_rounds(toy)) return read;
    Toy both = toy;
    both.yarns = read.yarns;
    add_paragraphs(both.notes, pattern_.notes);
    add_paragraphs(both.text.assembly, pattern_.assembly);
    add_paragraphs(both.text.finishing, pattern_.finishing);
    both.pieces.insert(both.pieces.end(), read.pieces.begin(), read.pieces.end());
    return both;
}

void PatternReview::take() {
    if (!is_read()) return when_read([this] { take(); });
    if (!take_->isEnabled()) return;
    const auto first = static_cast<int>(has_rounds(session_.toy()) ? session_.toy().pieces.size() : 0);
    session_.edit(tr("Add pieces from text"), toy_with_pieces());
    session_.set_current_piece(first);
    accept();
}

}  // namespace roundwright::app
