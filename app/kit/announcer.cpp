#include "app/kit/announcer.h"

#include <algorithm>
#include <utility>

#include <QAbstractItemView>
#include <QAccessible>
#include <QApplication>
#include <QShortcut>
#include <QStringList>
#include <QWidget>

#include "app/kit/action_keys.h"
#include "app/kit/at_spi_words.h"

namespace roundwright::app {
namespace {

constexpr int together_ms = 150;

}  // namespace

Announcer::Announcer(QWidget* window) : QObject(window), window_(window) {
    together_.setSingleShot(true);
    together_.setInterval(together_ms);
    connect(&together_, &QTimer::timeout, this, &Announcer::say_waiting);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget* left) {
        if (left != nullptr && left == described_) give_back();
    });
}

Announcer::~Announcer() = default;

void Announcer::say(const QString& topic, const QString& words, Weight weight) {
    drop(topic);
    if (words.isEmpty()) return;
    waiting_.push_back({topic, words, weight});
    together_.start();
}

void Announcer::drop(const QString& topic) {
    std::erase_if(waiting_, [&topic](const Message& each) { return each.topic == topic; });
}

void Announcer::answer(const QString& words) { speak(words, Weight::answer); }

void Announcer::complain(const QString& words) {
    complaint_ = words;
    speak(words, Weight::fault);
}

void Announcer::dealt_with() {
    if (complaint_.isEmpty()) return;
    if (last_ == joined_sentences({complaint_})) last_.clear();
    complaint_.clear();
    Q_EMIT shown_changed(shown());
}

void Announcer::say_again() {
    const QString words = shown();
    if (!words.isEmpty()) tell(words, complaint_.isEmpty() ? Weight::answer : Weight::fault);
}

QString Announcer::shown() const { return complaint_.isEmpty() ? last_ : complaint_; }

void Announcer::say_waiting() {
    auto messages = std::exchange(waiting_, {});
    std::ranges::stable_sort(messages, std::ranges::greater{}, &Message::weight);
    QStringList news;
    for (const Message& each : messages) {
        if (said_.value(each.topic) == each.words) continue;
        said_.insert(each.topic, each.words);
        news << each.words;
    }
    if (!news.isEmpty()) speak(joined_sentences(news), messages.front().weight);
}

void Announcer::speak(const QString& words, Weight weight) {
    last_ = joined_sentences({words});
    Q_EMIT shown_changed(shown());
    tell(last_, weight);
}

// --- how it reaches the ear

#if QT_VERSION >= QT_VERSION_CHECK(6, 8, 0)
void Announcer::tell(const QString& words, Weight weight) {
    QWidget* focus = QApplication::focusWidget();
    QAccessibleAnnouncementEvent event(focus != nullptr ? focus : window_, words);
    event.setPoliteness(weight == Weight::fault ? QAccessible::AnnouncementPoliteness::Assertive
                                                : QAccessible::AnnouncementPoliteness::Polite);
    QAccessible::updateAccessibility(&event);
}
#else
void Announcer::tell(const QString& words, Weight) {
    QWidget* focus = QApplication::focusWidget();
    describe(focus != nullptr ? focus : window_, words);
}
#endif

/// A screen reader takes words that it has heard for no change: a space more makes another text of them.
void Announcer::describe(QWidget* widget, const QString& words) {
    const bool goes_on = described_ == widget && widget->accessibleDescription() == lent_words_;
    if (!goes_on) {
        give_back();
        described_ = widget;
        own_words_ = widget->accessibleDescription();
    }
    lent_words_ = goes_on && lent_words_ == words ? words + u' ' : words;
    auto* view = qobject_cast<QAbstractItemView*>(widget);
    auto* cell = view != nullptr ? describe_current_cell(view, lent_words_) : nullptr;
    widget->setAccessibleDescription(lent_words_);
    if (!QAccessible::isActive()) return;
    auto* heard = cell != nullptr ? cell : QAccessible::queryAccessibleInterface(widget);
    if (heard != nullptr) tell_at_spi_of_description(*heard, lent_words_);
}

/// In a table the keyboard is at a cell, and that is what is listened to.
QAccessibleInterface* Announcer::describe_current_cell(QAbstractItemView* view, const QString& words) {
    const QModelIndex current = view->currentIndex();
    if (!current.isValid() || !QAccessible::isActive()) return nullptr;
    auto* table = QAccessible::queryAccessibleInterface(view);
    auto* cells = table != nullptr ? table->tableInterface() : nullptr;
    auto* cell = cells != nullptr ? cells->cellAt(current.row(), current.column()) : nullptr;
    auto* model = dynamic_cast<AnnouncedAtACell*>(view->model());
    if (model == nullptr || cell == nullptr) return cell;
    cells_ = view->model();
    model->set_announced(current, words);
    QAccessibleEvent event(cell, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
    return cell;
}

void Announcer::give_back() {
    if (auto* model = dynamic_cast<AnnouncedAtACell*>(cells_.data())) model->set_announced({}, {});
    cells_.clear();
    if (described_ && described_->accessibleDescription() == lent_words_)
        described_->setAccessibleDescription(own_words_);
    described_.clear();
}

void say_again_by_key(QWidget& window, Announcer& announcer) {
    auto* shortcut = new QShortcut(&window);
    const auto follow = [shortcut] {
        shortcut->setKeys(ActionKeys::instance().keys(QStringLiteral("help.say-again")));
    };
    follow();
    QObject::connect(&ActionKeys::instance(), &ActionKeys::changed, shortcut, follow);
    QObject::connect(shortcut, &QShortcut::activated, &announcer, &Announcer::say_again);
}

QString joined_sentences(const QStringList& sentences) {
    QStringList ended;
    for (const QString& each : sentences) {
        const QString words = each.trimmed();
        if (words.isEmpty()) continue;
        const bool has_end = QStringLiteral(".!?…").contains(words.back());
        ended << (has_end ? words : words + u'.');
    }
    return ended.join(u' ');
}

}  // namespace roundwright::app
