#include "app/kit/spoken_roles.h"

#include <QAccessibleWidget>

#include "app/kit/read_out.h"

namespace roundwright::app {
namespace {

constexpr char role_property[] = "spoken-role";
constexpr char fold_property[] = "spoken-fold";

class ReadOutSpoken : public QAccessibleWidget {
  public:
    explicit ReadOutSpoken(ReadOut& read_out)
        : QAccessibleWidget(&read_out, QAccessible::StaticText), read_out_(read_out) {}

    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Name ? read_out_.spoken() : QAccessibleWidget::text(kind);
    }
    /// Not that it can be edited, only that its text is not to be changed here.
    [[nodiscard]] QAccessible::State state() const override {
        QAccessible::State state = QAccessibleWidget::state();
        state.readOnly = true;
        return state;
    }

  private:
    ReadOut& read_out_;
};

class FoldSpoken : public QAccessibleWidget {
  public:
    explicit FoldSpoken(QAbstractButton& title)
        : QAccessibleWidget(&title, QAccessible::Button), title_(title) {}

    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        const QString said = QAccessibleWidget::text(kind);
        if (kind != QAccessible::Name || !said.isEmpty()) return said;
        return title_.text().remove(u'&');
    }
    [[nodiscard]] QAccessible::State state() const override {
        QAccessible::State state = QAccessibleWidget::state();
        state.expandable = true;
        state.expanded = title_.isChecked();
        state.collapsed = !title_.isChecked();
        return state;
    }
    [[nodiscard]] QStringList actionNames() const override {
        return QStringList{pressAction()} + QAccessibleWidget::actionNames();
    }
    void doAction(const QString& action) override {
        if (action != pressAction()) return QAccessibleWidget::doAction(action);
        if (title_.isEnabled()) title_.animateClick();
    }

  private:
    QAbstractButton& title_;
};

QAccessibleInterface* spoken(const QString&, QObject* object) {
    auto* widget = qobject_cast<QWidget*>(object);
    if (widget == nullptr) return nullptr;
    if (auto* read_out = qobject_cast<ReadOut*>(widget)) return new ReadOutSpoken(*read_out);
    if (widget->property(fold_property).toBool())
        return new FoldSpoken(*qobject_cast<QAbstractButton*>(widget));
    const QVariant role = widget->property(role_property);
    if (!role.isValid()) return nullptr;
    return new QAccessibleWidget(widget, static_cast<QAccessible::Role>(role.toInt()));
}

/// A frame passes the keyboard on to the picture in it.
QWidget& keyboard_of(QWidget& picture) {
    QWidget* at = &picture;
    while (at->focusProxy() != nullptr) at = at->focusProxy();
    return *at;
}

}  // namespace

void speak_as(QWidget& widget, QAccessible::Role role) {
    QAccessible::installFactory(&spoken);  // once, however often it is called
    widget.setProperty(role_property, static_cast<int>(role));
    // Whatever Qt has made for it so far has another role, and Qt would keep it.
    if (auto* known = QAccessible::queryAccessibleInterface(&widget))
        QAccessible::deleteAccessibleInterface(QAccessible::uniqueId(known));
}

void speak_as_fold(QAbstractButton& title) {
    speak_as(title, QAccessible::Button);
    title.setProperty(fold_property, true);
    QObject::connect(&title, &QAbstractButton::toggled, &title, [&title] {
        QAccessible::State changed;
        changed.expanded = true;
        changed.collapsed = true;
        QAccessibleStateChangeEvent event(&title, changed);
        QAccessible::updateAccessibility(&event);
    });
}

void speak_as_picture(QWidget& picture, const QString& name) {
    QWidget& heard = keyboard_of(picture);
    speak_as(heard, QAccessible::Graphic);
    heard.setAccessibleName(name);
}

void describe_picture(QWidget& picture, const QString& words) {
    QWidget& heard = keyboard_of(picture);
    if (heard.accessibleDescription() != words) heard.setAccessibleDescription(words);
}

}  // namespace roundwright::app
