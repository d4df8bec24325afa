#include "app/kit/notice_bar.h"

#include <algorithm>

#include <QAccessible>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "app/kit/icons.h"
#include "app/kit/theme.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

constexpr int margin = 12;
constexpr int gap = 8;
constexpr int stripe = 4;
constexpr int least_letters_beside = 44;  // of words that have buttons beside them; else those go below
constexpr double tint = 0.14;             // of the rank's colour in the ground: text keeps 4.5 to 1 on it

QString without_mnemonic(QString words) { return words.remove(u'&'); }

QString sign_name(NoticeRank rank) {
    switch (rank) {
        case NoticeRank::remark:
            return QStringLiteral("notice");
        case NoticeRank::caution:
            return QStringLiteral("warning");
        case NoticeRank::danger:
            break;
    }
    return QStringLiteral("error");
}

QColor rank_colour(NoticeRank rank) {
    const ThemeColours& colours = Theme::colours();
    switch (rank) {
        case NoticeRank::remark:
            return colours.accent;
        case NoticeRank::caution:
            return colours.warning_text;
        case NoticeRank::danger:
            break;
    }
    return colours.error_text;
}

QColor mixed(const QColor& ground, const QColor& colour, double share) {
    const auto part = [share](int one, int other) {
        return static_cast<int>((1 - share) * one + share * other);
    };
    return {part(ground.red(), colour.red()), part(ground.green(), colour.green()),
            part(ground.blue(), colour.blue())};
}

}  // namespace

/// One notice: sign, words, and its buttons beside them or, where it is narrow, below.
class NoticeRow : public QWidget {
  public:
    NoticeRow(QString cause, NoticeBar& bar)
        : QWidget(&bar),
          cause_(std::move(cause)),
          words_(new QLabel(this)),
          around_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
          buttons_layout_(new QHBoxLayout) {
        words_->setTextFormat(Qt::PlainText);
        words_->setWordWrap(true);
        words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
        QSizePolicy wrapping(QSizePolicy::Ignored, QSizePolicy::Preferred);
        wrapping.setHeightForWidth(true);
        words_->setSizePolicy(wrapping);
        around_->setSpacing(gap);
        around_->addWidget(words_, 1);
        around_->addLayout(buttons_layout_);
        buttons_layout_->setSpacing(gap);
        buttons_layout_->addStretch(1);
        QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
        policy.setHeightForWidth(true);
        setSizePolicy(policy);
    }

    [[nodiscard]] const QString& cause() const { return cause_; }
    [[nodiscard]] NoticeRank rank() const { return rank_; }
    [[nodiscard]] QString words() const { return words_->text(); }
    [[nodiscard]] const std::vector<QPushButton*>& buttons() const { return buttons_; }

    void say(const Notice& notice) {
        rank_ = notice.rank;
        words_->setText(plain_message(notice.words));
        setAccessibleName(words());
        fit_buttons(notice.answers);
        for (std::size_t at = 0; at < buttons_.size(); ++at) {
            buttons_[at]->disconnect(this);
            const QString& hint = notice.answers[at].hint;
            buttons_[at]->setToolTip(hint);
            buttons_[at]->setAccessibleDescription(hint.isEmpty() ? notice.words
                                                                  : notice.words + u' ' + hint);
            // After the click is over: the answer may take the button away.
            connect(buttons_[at], &QPushButton::clicked, this, notice.answers[at].act, Qt::QueuedConnection);
        }
        const int side = sign_side();
        around_->setContentsMargins(stripe + margin + side + gap, gap / 2, margin, gap / 2);
        update();
    }
    /// The buttons beside the words or, where it is narrow, below them.
    void arrange_for(int width) {
        int taken = around_->contentsMargins().left() + around_->contentsMargins().right();
        for (const QPushButton* button : buttons_) taken += button->sizeHint().width() + gap;
        const bool beside =
            width - taken >= fontMetrics().averageCharWidth() * least_letters_beside || buttons_.empty();
        const auto direction = beside ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
        if (around_->direction() == direction) return;
        around_->setDirection(direction);
        updateGeometry();
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const QColor colour = rank_colour(rank_);
        painter.fillRect(rect(), mixed(palette().color(QPalette::Window), colour, tint));
        painter.fillRect(QRect(0, 0, stripe, height()), colour);
        painter.fillRect(QRect(0, height() - 1, width(), 1), Theme::colours().line);
        const int side = sign_side();
        const int top = words_->y() + (std::min(words_->height(), first_line_height()) - side) / 2;
        icon(sign_name(rank_)).paint(&painter, QRect(stripe + margin, top, side, side));
    }
    void resizeEvent(QResizeEvent* event) override {
        QWidget::resizeEvent(event);
        arrange_for(width());
    }
    void changeEvent(QEvent* event) override {
        QWidget::changeEvent(event);
        if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) arrange_for(width());
    }

  private:
    [[nodiscard]] int sign_side() const { return fontMetrics().height() + 2; }
    /// Words of one line stand in the middle of the row, beside their buttons.
    [[nodiscard]] int first_line_height() const {
        return words_->height() < 2 * fontMetrics().lineSpacing() ? words_->height()
                                                                  : fontMetrics().lineSpacing();
    }

    /// Buttons whose words and place stay the same are kept, with the keyboard, the pointer and a press that
    /// is on them.
    void fit_buttons(const std::vector<NoticeAnswer>& answers) {
        std::size_t same = 0;
        while (same < std::min(buttons_.size(), answers.size()) &&
               buttons_[same]->text() == answers[same].words)
            ++same;
        for (std::size_t at = same; at < buttons_.size(); ++at) {
            buttons_[at]->hide();
            buttons_[at]->deleteLater();
        }
        buttons_.resize(same);
        for (std::size_t at = same; at < answers.size(); ++at) {
            auto* button = new QPushButton(answers[at].words, this);
            button->setAutoDefault(true);  // Enter presses it, outside a dialog too
            button->setFocusPolicy(Qt::TabFocus);
            buttons_layout_->addWidget(button);
            buttons_.push_back(button);
        }
    }

    const QString cause_;
    NoticeRank rank_ = NoticeRank::remark;
    QLabel* words_;
    QBoxLayout* around_;
    QHBoxLayout* buttons_layout_;
    std::vector<QPushButton*> buttons_;
};

NoticeBar::NoticeBar(QWidget* parent) : QWidget(parent), area_(new QScrollArea(this)) {
    area_->setFrameShape(QFrame::NoFrame);
    area_->setWidgetResizable(true);
    area_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area_->setFocusPolicy(Qt::NoFocus);
    area_->setMinimumHeight(0);
    area_->setWidget(new QWidget);
    layout_ = new QVBoxLayout(area_->widget());
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->setSpacing(0);
    layout_->setSizeConstraint(QLayout::SetNoConstraint);
    area_->widget()->installEventFilter(this);
    setAccessibleName(tr("Notices"));
    hide();
}

/// The height that its words take at this width, and no more: a window that asks words that wrap how high
/// they could ever get makes itself higher than the screen. A bar that is not shown yet has no width of its
/// own.
void NoticeBar::fit_height() {
    const int all = std::max(isVisible() || !parentWidget() ? width() : parentWidget()->width(), 1);
    const int most = most_height();
    const auto height_within = [this](int room) {
        for (NoticeRow* each : rows_) each->arrange_for(room);
        return layout_->totalHeightForWidth(room);
    };
    int wanted = rows_.empty() ? 0 : height_within(all);
    if (wanted > most) wanted = height_within(all - area_->verticalScrollBar()->sizeHint().width());
    area_->widget()->setFixedHeight(wanted);
    setFixedHeight(std::min(wanted, most));
    area_->setGeometry(0, 0, width(), height());
}

/// The maker's work has the greater part of the window, and whatever it cannot do without.
int NoticeBar::most_height() const {
    constexpr double share = 0.3;
    const QWidget* window = parentWidget();
    if (window == nullptr || window->layout() == nullptr || window->height() <= 0) return QWIDGETSIZE_MAX;
    const int work = window->layout()->minimumSize().height() - (isVisible() ? minimumHeight() : 0);
    const int least = 2 * fontMetrics().lineSpacing() + gap;
    return std::max(least, std::min(static_cast<int>(share * window->height()), window->height() - work));
}

void NoticeBar::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit_height();
}

bool NoticeBar::event(QEvent* event) {
    const bool done = QWidget::event(event);
    if (event->type() == QEvent::LayoutRequest) fit_height();
    return done;
}

bool NoticeBar::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::LayoutRequest) fit_height();
    return QWidget::eventFilter(watched, event);
}

NoticeRow* NoticeBar::row(const QString& cause) const {
    const auto found = std::ranges::find(rows_, cause, &NoticeRow::cause);
    return found == rows_.end() ? nullptr : *found;
}

/// Below those that matter as much, which came before it.
void NoticeBar::place(NoticeRow* row) {
    std::erase(rows_, row);
    layout_->removeWidget(row);
    const auto below =
        std::ranges::find_if(rows_, [row](const NoticeRow* other) { return other->rank() < row->rank(); });
    layout_->insertWidget(static_cast<int>(below - rows_.begin()), row);
    rows_.insert(below, row);
    QWidget* last = nullptr;
    for (const NoticeRow* each : rows_) {
        for (QPushButton* button : each->buttons()) {
            if (last) setTabOrder(last, button);
            last = button;
        }
    }
}

void NoticeBar::put_up(const QString& cause, const Notice& notice) {
    NoticeRow* shown = row(cause);
    const bool is_new = shown == nullptr;
    if (is_new) shown = new NoticeRow(cause, *this);
    const bool says_else = shown->words() != notice.words;
    const bool has_keyboard = shown->isAncestorOf(focusWidget());
    const bool moves = is_new || shown->rank() != notice.rank;
    shown->say(notice);
    if (moves) place(shown);
    shown->show();
    fit_height();
    show();
    if (moves) area_->ensureWidgetVisible(shown, 0, 0);
    if (has_keyboard && (!focusWidget() || !focusWidget()->isVisibleTo(this))) Q_EMIT left();
    if (!says_else) return;
    QAccessibleEvent alert(shown, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void NoticeBar::take_down(const QString& cause) {
    NoticeRow* gone = row(cause);
    if (!gone) return;
    const bool has_keyboard = gone->isAncestorOf(focusWidget());
    std::erase(rows_, gone);
    layout_->removeWidget(gone);
    gone->hide();
    gone->deleteLater();
    fit_height();
    setVisible(!rows_.empty());
    if (has_keyboard) Q_EMIT left();
}

QStringList NoticeBar::causes() const {
    QStringList causes;
    for (const NoticeRow* each : rows_) causes << each->cause();
    return causes;
}

QString NoticeBar::words(const QString& cause) const {
    const NoticeRow* shown = row(cause);
    return shown ? shown->words() : QString();
}

QStringList NoticeBar::answers(const QString& cause) const {
    QStringList answers;
    if (const NoticeRow* shown = row(cause)) {
        for (const QPushButton* each : shown->buttons()) answers << without_mnemonic(each->text());
    }
    return answers;
}

QPushButton* NoticeBar::button(const QString& cause, const QString& words) const {
    const NoticeRow* shown = row(cause);
    if (!shown) return nullptr;
    const auto found = std::ranges::find_if(
        shown->buttons(), [&](const QPushButton* each) { return without_mnemonic(each->text()) == words; });
    return found == shown->buttons().end() ? nullptr : *found;
}

bool NoticeBar::take_keyboard() {
    for (NoticeRow* each : rows_) {
        if (each->buttons().empty()) continue;
        each->buttons().front()->setFocus(Qt::ShortcutFocusReason);
        area_->ensureWidgetVisible(each, 0, 0);
        return true;
    }
    return false;
}

void NoticeBar::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
    Q_EMIT left();
}

}  // namespace roundwright::app
