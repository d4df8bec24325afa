#include "app/rounds/rounds_delegate.h"

#include <algorithm>

#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QTimer>

#include "app/kit/theme.h"
#include "app/rounds/round_counts.h"
#include "app/rounds/rounds_model.h"
#include "app/rounds/words_edit.h"
#include "app/session/live_preview.h"
#include "core/language/round/write.h"
#include "core/rounds/workable_counts.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

RoundColumn column_of(const QModelIndex& index) { return static_cast<RoundColumn>(index.column()); }

/// Half-typed counts mostly cannot be worked.
bool can_be_worked(const DocumentSession& session, const Toy& toy, const std::vector<int>& rounds) {
    const auto& piece = toy.pieces[static_cast<std::size_t>(session.current_piece())];
    const auto graph = session.graph_of(toy, session.current_piece());
    const auto counts = edge_counts(graph->get().graph, piece.rounds.size());
    return std::ranges::all_of(rounds, [&](int round) {
        const int below = counts[static_cast<std::size_t>(round)];
        const int count = counts[static_cast<std::size_t>(round) + 1];
        return roundwright::can_be_worked(below, count);
    });
}

QComboBox* yarn_picker(QWidget* parent, const Toy& toy) {
    auto* picker = new QComboBox(parent);
    for (std::size_t yarn = 0; yarn < toy.yarns.size(); ++yarn) {
        const auto& colour = toy.yarns[yarn].colour;
        QPixmap patch(16, 16);
        patch.fill(QColor(colour.red, colour.green, colour.blue));
        picker->addItem(
            patch, QStringLiteral("%1  %2").arg(QString::fromStdString(yarn_letter(static_cast<int>(yarn))),
                                                name_in_words(toy.yarns[yarn].name)));
    }
    return picker;
}

/// Up and Down move among what a picker, or a popup of the words, offers.
std::optional<RoundsDelegate::Ending> ending_by(const QKeyEvent& key, const QWidget& editor) {
    using Ending = RoundsDelegate::Ending;
    if (is_enter(key)) return Ending::enter;
    if (key.key() == Qt::Key_Backtab) return Ending::backtab;
    if ((key.modifiers() & ~Qt::KeypadModifier) != 0) return std::nullopt;
    if (key.key() == Qt::Key_Tab) return Ending::tab;
    const bool offers = !qobject_cast<const QLineEdit*>(&editor) || QApplication::activePopupWidget();
    if (offers) return std::nullopt;
    if (key.key() == Qt::Key_Up) return Ending::up;
    if (key.key() == Qt::Key_Down) return Ending::down;
    return std::nullopt;
}

}  // namespace

RoundsDelegate::RoundsDelegate(RoundsModel& model, QObject* parent) : CellDelegate(parent), model_(model) {}

RoundsDelegate::~RoundsDelegate() = default;

QWidget* RoundsDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                      const QModelIndex& index) const {
    open_ = {index, model_.edited_rounds(index.row()), {}, {}, nullptr};
    if (column_of(index) == RoundColumn::yarn) {
        auto* picker = yarn_picker(parent, model_.session().toy());
        auto* self = const_cast<RoundsDelegate*>(this);
        connect(picker, &QComboBox::activated, self, [self, picker] {
            Q_EMIT self->commitData(picker);
            Q_EMIT self->closeEditor(picker);
        });
        QTimer::singleShot(0, picker, &QComboBox::showPopup);
        return picker;
    }
    if (column_of(index) == RoundColumn::words) {
        auto* words = words_edit(parent, index.row());
        follow_line(words);
        return words;
    }
    auto* line = new QLineEdit(parent);
    line->setFrame(false);
    line->setAlignment(Qt::AlignRight);
    line->setAccessibleName(tr("Stitches of round %1").arg(index.row() + 1));
    connect(line, &QLineEdit::textEdited, this,
            [this, row = index.row()](const QString& text) { preview(row, text); });
    follow_line(line);
    return line;
}

void RoundsDelegate::follow_line(QLineEdit* line) const {
    open_.line = line;
    auto* self = const_cast<RoundsDelegate*>(this);
    connect(line, &QLineEdit::textEdited, self, &RoundsDelegate::typed_changed);
}

std::optional<TypedCell> RoundsDelegate::typed() const {
    if (!open_.line || !open_.line->isModified() || open_.line->text() == open_.text) return std::nullopt;
    return TypedCell{open_.line->text(), open_.cell.row(), column_of(open_.cell) == RoundColumn::words};
}

QString RoundsDelegate::spoken_hint() const {
    const auto* words = qobject_cast<const WordsEdit*>(open_.line.data());
    return words != nullptr && words->isModified() ? words->spoken_hint() : QString();
}

QLineEdit* RoundsDelegate::words_edit(QWidget* parent, int row) const {
    const auto& session = model_.session();
    const auto round = static_cast<std::size_t>(row);
    const auto graph = session.graph_of(session.toy(), session.current_piece());
    auto* words = new WordsEdit(
        cell_setting(*session.piece(), graph->get().graph, round, session.preferences().terms()),
        yarn_table(session.toy()), parent);
    words->setFrame(false);
    words->setAccessibleName(tr("Words of round %1").arg(row + 1));
    connect(words, &WordsEdit::words_read, this, [this, words, row] { preview_words(row, *words); });
    connect(words, &WordsEdit::offer_chosen, this, &RoundsDelegate::offer_chosen);
    return words;
}

/// While words are written the counts and the shape follow, whenever the words come out.
void RoundsDelegate::preview_words(int row, const WordsEdit& words) const {
    auto& session = model_.session();
    if (!words.isModified() || session.read_only()) return;
    if (row >= model_.rounds()) return try_next_words(words);
    if (!words.reading().proved() || words.text().trimmed().isEmpty()) return open_.preview.reset();
    show(model_.edits().with_words(row, words.text()));
}

void RoundsDelegate::show(Toy toy) const {
    if (!open_.preview) open_.preview = std::make_unique<LivePreview>(model_.session(), QString());
    open_.preview->show(std::move(toy));
}

/// While a count is typed the shape follows, as soon as the count is one that can be worked.
void RoundsDelegate::preview(int row, const QString& text) const {
    const auto& session = model_.session();
    if (session.read_only()) return;
    if (row >= model_.rounds()) return try_next_round(text);
    const auto entry = parse_count_entry(text);
    if (!entry) return open_.preview.reset();
    auto piece = model_.edits().with_count(open_.rounds, *entry);
    if (piece.refusal) return open_.preview.reset();
    Toy toy = session.said_toy();
    toy.pieces[static_cast<std::size_t>(session.current_piece())] = std::move(piece.value);
    if (!can_be_worked(session, toy, each_times(open_.rounds, entry->times))) return open_.preview.reset();
    show(std::move(toy));
}

// The table has no row for the next round before it is there, so only the shape shows it.
void RoundsDelegate::try_next_round(const QString& text) const {
    auto& session = model_.session();
    const auto entry = session.piece() ? parse_count_entry(text) : std::nullopt;
    auto toy = entry ? model_.edits().with_appended(*entry) : std::nullopt;
    if (!toy || !can_be_worked(session, *toy, each_times({model_.rounds()}, entry->times)))
        return session.end_trial();
    session.try_out(std::move(*toy));
}

void RoundsDelegate::try_next_words(const WordsEdit& words) const {
    auto& session = model_.session();
    auto toy = session.piece() && words.reading().proved() ? model_.edits().with_appended_words(words.text())
                                                           : std::nullopt;
    if (!toy) return session.end_trial();
    session.try_out(std::move(*toy));
}

void RoundsDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    if (auto* picker = qobject_cast<QComboBox*>(editor)) {
        const auto round = static_cast<std::size_t>(index.row());
        picker->setCurrentIndex(static_cast<int>(model_.session().piece()->rounds[round].yarn));
        return;
    }
    auto* line = qobject_cast<QLineEdit*>(editor);
    if (!line || line->isModified()) return;
    open_.text = index.data(Qt::EditRole).toString();
    line->setText(open_.text);
    line->selectAll();
}

void RoundsDelegate::setModelData(QWidget* editor, QAbstractItemModel*, const QModelIndex& index) const {
    say(editor, index);
    open_.preview.reset();  // what was said has taken its place
}

void RoundsDelegate::say(QWidget* editor, const QModelIndex& index) const {
    if (const auto* picker = qobject_cast<QComboBox*>(editor)) {
        model_.set_yarn(open_.rounds, picker->currentIndex());
        return;
    }
    auto* line = qobject_cast<QLineEdit*>(editor);
    if (!line || !line->isModified()) return;
    line->setModified(false);  // it is said once, however often the view asks
    if (column_of(index) != RoundColumn::words) {
        model_.set_count(open_.rounds, line->text());
    } else if (line->text() != open_.text) {
        model_.set_words(index.row(), line->text());
    }
}

void RoundsDelegate::destroyEditor(QWidget* editor, const QModelIndex& index) const {
    open_ = {};
    Q_EMIT const_cast<RoundsDelegate*>(this)->typed_changed();
    model_.session().end_trial();
    CellDelegate::destroyEditor(editor, index);
}

bool RoundsDelegate::eventFilter(QObject* watched, QEvent* event) {
    auto* editor = qobject_cast<QWidget*>(watched);
    const auto ending = editor && event->type() == QEvent::KeyPress
                            ? ending_by(*static_cast<QKeyEvent*>(event), *editor)
                            : std::nullopt;
    if (!ending) return CellDelegate::eventFilter(watched, event);
    Q_EMIT ended(editor, open_.cell, *ending);
    return true;
}

void RoundsDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                          const QModelIndex&) const {
    QRect place = option.rect;
    if (qobject_cast<QComboBox*>(editor)) place.setWidth(std::max(place.width(), editor->sizeHint().width()));
    editor->setGeometry(place);
}

void RoundsDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
    QStyleOptionViewItem calm = option;
    calm.palette.setColor(QPalette::Highlight, Theme::colours().soft_accent);
    calm.palette.setColor(QPalette::HighlightedText, option.palette.color(QPalette::Text));
    calm.state &= ~QStyle::State_HasFocus;
    CellDelegate::paint(painter, calm, index);
}

}  // namespace roundwright::app
