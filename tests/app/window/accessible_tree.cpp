#include "tests/app/window/accessible_tree.h"

#include <functional>
#include <set>

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMetaEnum>
#include <QRegularExpression>
#include <QTextDocumentFragment>

namespace roundwright::app {
namespace {

using Visitor = std::function<void(QAccessibleInterface&, int)>;
constexpr int most_children = 400;  // of a long table the first rows are enough

void walk(QAccessibleInterface* at, int depth, const Visitor& visit) {
    if (at == nullptr || !at->isValid() || at->state().invisible) return;
    visit(*at, depth);
    const int count = std::min(at->childCount(), most_children);
    for (int k = 0; k < count; ++k) walk(at->child(k), depth + 1, visit);
}

void walk(QWidget& window, const Visitor& visit) {
    walk(QAccessible::queryAccessibleInterface(&window), 0, visit);
}

QString role_name(QAccessible::Role role) {
    const int at = QAccessible::staticMetaObject.indexOfEnumerator("Role");
    const char* key = at < 0 ? nullptr : QAccessible::staticMetaObject.enumerator(at).valueToKey(role);
    return key ? QString::fromLatin1(key) : QString::number(role);
}

bool is_control(QAccessible::Role role) {
    static const std::set<QAccessible::Role> controls = {
        QAccessible::Button,      QAccessible::CheckBox,     QAccessible::RadioButton,
        QAccessible::ComboBox,    QAccessible::EditableText, QAccessible::SpinBox,
        QAccessible::Slider,      QAccessible::List,         QAccessible::ListItem,
        QAccessible::Table,       QAccessible::Cell,         QAccessible::Tree,
        QAccessible::TreeItem,    QAccessible::PageTab,      QAccessible::PageTabList,
        QAccessible::ProgressBar, QAccessible::MenuItem,     QAccessible::Graphic,
        QAccessible::Chart,       QAccessible::Canvas,       QAccessible::ColumnHeader,
        QAccessible::RowHeader,   QAccessible::ButtonMenu,   QAccessible::ButtonDropDown,
        QAccessible::Document,    QAccessible::AlertMessage};
    return controls.contains(role);
}

/// The field within a spin box or a combo box is spoken of as that box.
bool is_part_of_another(const QAccessibleInterface& at) {
    const auto* widget = qobject_cast<const QWidget*>(at.object());
    const QWidget* parent = widget ? widget->parentWidget() : nullptr;
    return qobject_cast<const QAbstractSpinBox*>(parent) || qobject_cast<const QComboBox*>(parent) ||
           (widget && widget->objectName().startsWith(QStringLiteral("qt_")));
}

QString text_of(const QLabel& label) {
    QString text = label.text();
    if (Qt::mightBeRichText(text)) text = QTextDocumentFragment::fromHtml(text).toPlainText();
    text = text.remove(QLatin1Char('&')).remove(QChar(0x2060)).simplified();
    if (text.endsWith(QChar(0x2026))) text.chop(1);  // seen cut
    return text.trimmed();
}

QString described(const QAccessibleInterface& at) {
    const QObject* object = at.object();
    return QStringLiteral("%1 “%2” %3 %4")
        .arg(role_name(at.role()), at.text(QAccessible::Name),
             object ? QString::fromLatin1(object->metaObject()->className()) : QStringLiteral("(part)"),
             object ? object->objectName() : QString());
}

bool is_a_class_name(const QAccessibleInterface& at, const QString& name) {
    static const QRegularExpression qt_class(QStringLiteral("^Q[A-Z][A-Za-z]+$"));
    if (qt_class.match(name).hasMatch()) return true;
    const QString class_name =
        at.object() ? QString::fromLatin1(at.object()->metaObject()->className()) : QString();
    return !name.isEmpty() && (name == class_name || name == class_name.section(QStringLiteral("::"), -1));
}

/// What means nothing to someone who hears it alone.
bool makes_no_sense_alone(const QString& name) {
    static const QSet<QString> words = {QStringLiteral("to within"),        QStringLiteral("give or take"),
                                        QStringLiteral("Choose…"),          QStringLiteral("over a width of"),
                                        QStringLiteral("over a height of"), QStringLiteral("…"),
                                        QStringLiteral("Middle"),           QStringLiteral("Wide")};
    return words.contains(name);
}

QStringList faults_of(const QAccessibleInterface& at) {
    QStringList faults;
    const QString name = at.text(QAccessible::Name).trimmed();
    const auto* widget = qobject_cast<const QWidget*>(at.object());
    const bool takes_keys =
        widget && (widget->focusPolicy() & Qt::TabFocus) && !widget->isWindow() && !widget->focusProxy();
    const bool shown_only = is_part_of_another(at);
    if ((is_control(at.role()) || takes_keys) && !shown_only && name.isEmpty())
        faults << QStringLiteral("no name: ") + described(at);
    if (is_a_class_name(at, name)) faults << QStringLiteral("a class's name: ") + described(at);
    if (makes_no_sense_alone(name) && at.role() != QAccessible::StaticText)
        faults << QStringLiteral("makes no sense alone: ") + described(at);
    if (takes_keys && !shown_only &&
        (at.role() == QAccessible::Client || at.role() == QAccessible::NoRole ||
         at.role() == QAccessible::Pane))
        faults << QStringLiteral("no role: ") + described(at);
    if (const auto* label = qobject_cast<const QLabel*>(widget);
        label && !label->text().isEmpty() && !label->accessibleName().isEmpty())
        faults << QStringLiteral("a label with a name in place of its text: ") + described(at);
    if (const auto* label = qobject_cast<const QLabel*>(widget);
        label && !text_of(*label).isEmpty() && !name.simplified().contains(text_of(*label)))
        faults << QStringLiteral("hides “%1”: ").arg(text_of(*label)) + described(at);
    if (auto* holder = const_cast<QAccessibleInterface&>(at).valueInterface();
        holder && !shown_only && !holder->currentValue().isValid())
        faults << QStringLiteral("no value: ") + described(at);
    return faults;
}

bool is_button(const QAccessibleInterface& at) {
    const auto* widget = qobject_cast<const QWidget*>(at.object());
    return qobject_cast<const QAbstractButton*>(widget) && !is_part_of_another(at);
}

}  // namespace

QStringList faults_of_accessible_tree(QWidget& window) {
    QStringList faults;
    std::set<QString> buttons;
    walk(window, [&](const QAccessibleInterface& at, int) {
        faults << faults_of(at);
        const QString name = at.text(QAccessible::Name);
        if (is_button(at) && !name.isEmpty() && !buttons.insert(name).second)
            faults << QStringLiteral("two buttons: ") + described(at);
    });
    faults.removeDuplicates();
    return faults;
}

QString accessible_tree_in_words(QWidget& window) {
    QStringList lines;
    walk(window, [&](QAccessibleInterface& at, int depth) {
        const QString value = at.valueInterface() ? at.valueInterface()->currentValue().toString()
                                                  : at.text(QAccessible::Value);
        lines << QString(depth * 2, QLatin1Char(' ')) + described(at) +
                     (value.isEmpty() ? QString() : QStringLiteral(" = ") + value) +
                     (at.text(QAccessible::Description).isEmpty()
                          ? QString()
                          : QStringLiteral(" | ") + at.text(QAccessible::Description));
    });
    return lines.join(QLatin1Char('\n'));
}

QStringList accessible_names(QWidget& window) {
    QStringList names;
    walk(window, [&](const QAccessibleInterface& at, int) { names << at.text(QAccessible::Name); });
    return names;
}

}  // namespace roundwright::app
