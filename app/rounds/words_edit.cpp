#include "app/rounds/words_edit.h"

#include <algorithm>
#include <utility>

#include <QAbstractItemView>
#include <QCompleter>
#include <QCoreApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QListView>
#include <QPainter>
#include <QPainterPath>
#include <QScopedValueRollback>
#include <QStringListModel>

#include "app/kit/action_keys.h"
#include "app/kit/announcer.h"
#include "app/kit/theme.h"
#include "app/kit/true_focus.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright::app {
namespace {

constexpr int least_hint_width = 320;
const auto fix_words = QStringLiteral("round.fix-words");

/// The editor has the keys before the window's action would end the edit.
bool fixes(const QKeyEvent& key) {
    return ActionKeys::instance().keys(fix_words).contains(QKeySequence(key.keyCombination()));
}

/// UTF-16 units of the first `points` code points.
int units(const QString& text, int points) {
    const auto front = text.toUcs4().mid(0, points);
    return static_cast<int>(
        QString::fromUcs4(reinterpret_cast<const char32_t*>(front.constData()), front.size()).size());
}

void draw_wave(QPainter& painter, double from, double to, double y) {
    constexpr double step = 2;
    QPainterPath wave({from, y});
    bool up = true;
    for (double x = from + step; x <= to; x += step, up = !up) wave.lineTo(x, up ? y - step : y);
    painter.drawPath(wave);
}

/// As the list is that Qt makes.
QListView* list_of_words() {
    auto* list = new TrueFocus<QListView>;
    list->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    list->setSelectionBehavior(QAbstractItemView::SelectRows);
    list->setSelectionMode(QAbstractItemView::SingleSelection);
    return list;
}

}  // namespace

WordsEdit::WordsEdit(const RoundSetting& setting, YarnTable yarns, QWidget* parent)
    : QLineEdit(parent),
      setting_(setting),
      yarns_(std::move(yarns)),
      offered_(new QStringListModel(this)),
      completer_(new QCompleter(offered_, this)),
      hint_(new QLabel(parent)) {
    completer_->setPopup(list_of_words());
    completer_->setCompletionMode(QCompleter::UnfilteredPopupCompletion);
    completer_->popup()->setAccessibleName(tr("What may come next"));
    // A sheet with rules for items only takes the frame away, and the list would lie over the table in
    // patches.
    completer_->popup()->setStyleSheet(
        QStringLiteral("QAbstractItemView { border: 1px solid %1; padding: 3px 0; }"
                       "QAbstractItemView::item { padding: 4px 8px; }")
            .arg(Theme::colours().rim.name()));
    hint_->setTextFormat(Qt::PlainText);
    hint_->setWordWrap(true);
    hint_->setBackgroundRole(QPalette::Base);
    hint_->setAutoFillBackground(true);
    hint_->setFrameShape(QFrame::StyledPanel);
    hint_->setMargin(4);
    hint_->setAttribute(Qt::WA_TransparentForMouseEvents);
    hint_->hide();
    connect(completer_, qOverload<const QModelIndex&>(&QCompleter::activated), this,
            [this](const QModelIndex& index) { take(index.row()); });
    connect(completer_->popup()->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) {
                if (!offering_ && popup_open() && index.isValid())
                    Q_EMIT offer_chosen(index.data().toString());
            });
    connect(this, &QLineEdit::textChanged, this, &WordsEdit::read);
    connect(this, &QLineEdit::textEdited, this, &WordsEdit::offer);
    connect(this, &QLineEdit::cursorPositionChanged, this, [this](int, int) { update(); });
}

WordsEdit::~WordsEdit() { delete hint_; }

QString WordsEdit::hint() const { return hint_->isVisibleTo(parentWidget()) ? hint_->text() : QString(); }

QStringList WordsEdit::offered() const { return offered_->stringList(); }

QWidget* WordsEdit::popup() const { return completer_->popup(); }

// --- reading

void WordsEdit::read() {
    YarnTable yarns = yarns_;
    reading_ = read_round(text().toStdString(), setting_, yarns);
    say();
    update();
    Q_EMIT words_read();
}

const ReadDiagnostic* WordsEdit::fault() const {
    const auto& all = reading_.diagnostics;
    const auto found = std::ranges::find(all, Severity::error, &ReadDiagnostic::severity);
    return found == all.end() ? nullptr : &*found;
}

/// Words that only do not reach the end yet, while they are being written, are no fault; nor is a word that
/// can be completed.
bool WordsEdit::unfinished() const {
    const auto* what = fault();
    if (!what || !isModified() || cursorPosition() < text().size()) return false;
    const bool begun = !completions_.empty() && completions_.front().replaced > 0;
    if (begun && what->code == ReadCode::unknown_words) return true;
    if (reading_.syntax.open && what->code != ReadCode::unknown_words) return true;
    return what->code == ReadCode::loops_do_not_fit && what->found < what->expected && !reading_.stated;
}

QString WordsEdit::sentence() const {
    const auto* what = fault();
    const int below = setting_.work.loops_below;
    const QString made = stitches_words(reading_.stitches);
    if (text().trimmed().isEmpty()) return {};
    if (unfinished())
        return tr("%1 so far, over %2 of the %3 below.").arg(made).arg(reading_.taken).arg(below);
    if (what && what->mends.empty()) return diagnostic_sentence(*what);
    if (what)
        return tr("%1 %2 %3 fixes it.")
            .arg(diagnostic_sentence(*what), mend_question(what->mends.front()),
                 ActionKeys::instance().shown(fix_words));
    if (!isModified()) return {};
    return setting_.work.into_ring ? tr("%1 in the ring.").arg(made)
                                   : tr("%1; all %2 below are used.").arg(made).arg(below);
}

QString WordsEdit::spoken_hint() const {
    const bool begun = popup_open() && !completions_.empty() && completions_.front().replaced > 0;
    if (!begun) return sentence();
    return joined_sentences({sentence(), tr("Tab for “%1”").arg(offered_->stringList().front())});
}

/// What is wrong with words that were not touched yet is heard with the line itself; a description that
/// changed with each key would talk over typing.
void WordsEdit::say() {
    const bool wrong = fault() && !unfinished();
    hint_->setForegroundRole(wrong ? QPalette::BrightText : QPalette::PlaceholderText);
    hint_->setText(sentence());
    const QString described = isModified() ? QString() : hint_->text();
    if (described != accessibleDescription()) setAccessibleDescription(described);
    place_hint();
}

/// Under the line, or over it where there is no room.
void WordsEdit::place_hint() {
    const bool shown = isVisible() && !hint_->text().isEmpty();
    hint_->setVisible(shown);
    if (!shown || !parentWidget()) return;
    const int width = std::min(std::max(this->width(), least_hint_width), parentWidget()->width());
    const int height = hint_->heightForWidth(width);
    const int left = std::min(x(), parentWidget()->width() - width);
    const bool below = geometry().bottom() + 1 + height <= parentWidget()->height();
    hint_->setGeometry(std::max(left, 0), below ? geometry().bottom() + 1 : y() - height, width, height);
    hint_->raise();
}

void WordsEdit::paintEvent(QPaintEvent* event) {
    QLineEdit::paintEvent(event);
    const auto* what = fault();
    if (!what || unfinished() || what->where.line != 1) return;
    const QString words = text();
    const int from = units(words, what->where.column - 1);
    const int to = units(words, what->where.column - 1 + std::max(what->where.length, 1));
    const QFontMetricsF metrics(font());
    const double origin = cursorRect().center().x() - metrics.horizontalAdvance(words.left(cursorPosition()));
    const QRect inside = rect().adjusted(2, 0, -2, 0);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setClipRect(inside);
    painter.setPen(QPen(Theme::colours().error_text, 1.3));
    draw_wave(painter, origin + metrics.horizontalAdvance(words.left(from)),
              origin + metrics.horizontalAdvance(words.left(std::max(to, from + 1))),
              height() / 2.0 + metrics.height() / 2 + 1);
}

bool WordsEdit::mend() {
    const auto* what = fault();
    if (!what || what->mends.empty()) return false;
    hide_popup();
    const QString words = QString::fromStdString(mended(text().toStdString(), what->mends.front()));
    selectAll();
    insert(words);  // so that the line's own undo takes it back
    return true;
}

// --- what may go on

void WordsEdit::find_completions() {
    const bool goes_on = cursorPosition() == text().size() || !text().at(cursorPosition()).isLetterOrNumber();
    completions_ = goes_on ? completions(text().left(cursorPosition()).toStdString(), setting_, yarns_)
                           : std::vector<Completion>{};
    say();
}

void WordsEdit::offer() {
    if (taking_) return;
    find_completions();
    if (completions_.empty()) return hide_popup();
    QStringList words;
    for (const Completion& one : completions_) words << QString::fromStdString(one.words).trimmed();
    offered_->setStringList(words);
    // The filter has to come before the table's, which takes the popup for the end of editing.
    const QScopedValueRollback guard(offering_, true);
    completer_->setWidget(nullptr);
    completer_->setWidget(this);
    const int under = hint_->isVisible() && hint_->y() > y() ? hint_->height() : 0;
    const int wide = completer_->popup()->sizeHintForColumn(0) + 40;
    const int left = under > 0 ? hint_->x() - x() : 0;
    completer_->complete(
        QRect(left, 0, std::max({wide, 160, under > 0 ? hint_->width() : 0}), height() + under));
    // A word that is begun is completed by Enter; after a whole one Enter ends the round.
    const bool begun = completions_.front().replaced > 0;
    completer_->popup()->setCurrentIndex(begun ? completer_->completionModel()->index(0, 0) : QModelIndex());
}

void WordsEdit::bring_back(const QString& words) {
    const bool before = std::exchange(taking_, true);
    selectAll();
    insert(words);
    taking_ = before;
    find_completions();
}

void WordsEdit::hide_popup() {
    completions_.clear();
    offered_->setStringList({});
    completer_->popup()->hide();
}

bool WordsEdit::popup_open() const { return completer_->popup()->isVisible(); }

int WordsEdit::chosen() const {
    const QModelIndex index = completer_->popup()->currentIndex();
    return index.isValid() ? index.row() : -1;
}

void WordsEdit::take(int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= completions_.size()) return;
    const Completion one = completions_[static_cast<std::size_t>(row)];
    hide_popup();
    const int to = cursorPosition();
    const QByteArray written = text().left(to).toUtf8();
    const auto begun =
        static_cast<int>(QString::fromUtf8(written.right(static_cast<int>(one.replaced))).size());
    setSelection(to - begun, begun);
    const bool before = std::exchange(taking_, true);
    insert(QString::fromStdString(one.words));
    taking_ = before;
}

// --- keys

bool WordsEdit::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        const bool offers = key.key() == Qt::Key_Space && key.modifiers() == Qt::ControlModifier;
        const bool ours = offers || fixes(key);
        if (ours && event->type() == QEvent::ShortcutOverride) {
            event->accept();
            return true;
        }
        if (event->type() == QEvent::KeyPress && (popup_open() ? take_popup_key(key) : take_key(key))) {
            event->accept();
            return true;
        }
    }
    if (event->type() == QEvent::FocusOut && popup_open() && !hasFocus()) hide_popup();
    return QLineEdit::event(event);
}

bool WordsEdit::take_key(const QKeyEvent& key) {
    if (fixes(key)) return mend();
    if (key.modifiers() != Qt::ControlModifier || key.key() != Qt::Key_Space) return false;
    offer();
    return true;
}

bool WordsEdit::take_popup_key(const QKeyEvent& key) {
    switch (key.key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter: {
            if (chosen() >= 0) {
                take(chosen());
                return true;
            }
            hide_popup();
            QKeyEvent again(QEvent::KeyPress, key.key(), key.modifiers(), key.text());
            QCoreApplication::sendEvent(this, &again);  // ends the round, as without the popup
            return true;
        }
        case Qt::Key_Tab:
            take(std::max(chosen(), 0));
            return true;
        case Qt::Key_Escape:
            hide_popup();
            say();
            return true;
        default:
            return take_key(key);
    }
}

void WordsEdit::moveEvent(QMoveEvent* event) {
    QLineEdit::moveEvent(event);
    place_hint();
}

void WordsEdit::resizeEvent(QResizeEvent* event) {
    QLineEdit::resizeEvent(event);
    place_hint();
}

void WordsEdit::showEvent(QShowEvent* event) {
    QLineEdit::showEvent(event);
    place_hint();
}

void WordsEdit::hideEvent(QHideEvent* event) {
    hide_popup();
    hint_->hide();
    QLineEdit::hideEvent(event);
}

}  // namespace roundwright::app
