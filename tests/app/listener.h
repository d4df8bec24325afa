#pragma once

#include <utility>

#include <QAccessible>
#include <QApplication>
#include <QPointer>
#include <QStringList>
#include <QWidget>

#include "app/kit/read_out.h"

namespace roundwright::app {

/// Hears what assistive technology is told: what is said (announcements where Qt has them, else the
/// descriptions of what has the keyboard), and where the focus is said to be.
class Listener {
  public:
    Listener() {
        set_active(true);
        ear() = this;
        before_ = QAccessible::installUpdateHandler(&Listener::hear);
    }
    ~Listener() {
        QAccessible::installUpdateHandler(before_);
        ear() = nullptr;
        set_active(false);
    }
    /// False: Qt's private headers are not installed, and no event would come.
    [[nodiscard]] static bool can_listen() { return QAccessible::isActive(); }
    Listener(const Listener&) = delete;
    Listener& operator=(const Listener&) = delete;

    /// What was said since the last time this was asked.
    [[nodiscard]] QStringList take_said() { return std::exchange(said_, {}); }
    /// The new names of read-outs.
    [[nodiscard]] QStringList take_names() { return std::exchange(names_, {}); }
    /// What had the last focus event, as it was told then.
    struct Place {
        QAccessible::Role role = QAccessible::NoRole;
        QString name;
        QString value;
        QAccessible::State state;
    };
    [[nodiscard]] const Place& place() const { return place_; }
    /// Focus events of widgets that did not have the keyboard, by class and name.
    [[nodiscard]] QStringList phantoms() const { return phantoms_; }
    [[nodiscard]] int focus_events() const { return focus_events_; }

  private:
    static void set_active(bool active);

    static Listener*& ear() {
        static Listener* one = nullptr;
        return one;
    }

    static void hear(QAccessibleEvent* event) {
        if (!ear()) return;
        if (event->type() == QAccessible::Focus) ear()->hear_focus(*event);
        // A label that is going is no read-out any more, and its name must not be asked for.
        if (event->type() == QAccessible::NameChanged && qobject_cast<ReadOut*>(event->object()))
            ear()->names_ << event->accessibleInterface()->text(QAccessible::Name);
        if (event->type() == QAccessible::DescriptionChanged) ear()->hear_description(*event);
#if QT_VERSION >= QT_VERSION_CHECK(6, 8, 0)
        if (event->type() == QAccessible::Announcement)
            ear()->said_ << static_cast<QAccessibleAnnouncementEvent*>(event)->message();
#endif
    }

    /// The widget that an event is about, itself or by one of its cells.
    static QWidget* widget_of(QAccessibleEvent& event) {
        for (auto* at = event.accessibleInterface(); at != nullptr; at = at->parent())
            if (auto* widget = qobject_cast<QWidget*>(at->object())) return widget;
        return qobject_cast<QWidget*>(event.object());
    }

    static Place place_of(QAccessibleInterface& about) {
        auto* number = about.valueInterface();
        auto* text = about.textInterface();
        const QString value = text     ? text->text(0, text->characterCount())
                              : number ? number->currentValue().toString()
                                       : about.text(QAccessible::Value);
        return {about.role(), about.text(QAccessible::Name), value, about.state()};
    }

    /// Menus take keys as popups, without being the focus widget.
    static bool has_keyboard(const QWidget& widget) {
        return &widget == QApplication::focusWidget() || widget.inherits("QMenu") ||
               widget.inherits("QMenuBar");
    }

    void hear_focus(QAccessibleEvent& event) {
        ++focus_events_;
        if (auto* about = event.accessibleInterface()) place_ = place_of(*about);
        const QWidget* widget = widget_of(event);
        if (widget == nullptr || has_keyboard(*widget)) return;
        phantoms_ << QStringLiteral("%1 “%2”").arg(QLatin1String(widget->metaObject()->className()),
                                                   widget->accessibleName());
    }

    void hear_description(QAccessibleEvent& event) {
        const QWidget* widget = widget_of(event);
        auto* about = event.accessibleInterface();
        if (widget == nullptr || about == nullptr || widget != QApplication::focusWidget()) return;
        const QString words = about->text(QAccessible::Description).trimmed();
        if (!words.isEmpty() && (said_.isEmpty() || said_.back() != words)) said_ << words;
    }

    QAccessible::UpdateHandler before_ = nullptr;
    QStringList said_, names_, phantoms_;
    Place place_;
    int focus_events_ = 0;
};

}  // namespace roundwright::app
