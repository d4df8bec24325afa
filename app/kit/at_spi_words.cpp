#include "app/kit/at_spi_words.h"

#include <QAccessible>
#include <QDBusArgument>
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusMetaType>
#include <QDBusObjectPath>
#include <QDBusVariant>

namespace roundwright::app {

/// An object of a program, as the bus writes it: "(so)".
struct AtSpiObject {
    QString program;
    QDBusObjectPath path;
};

QDBusArgument& operator<<(QDBusArgument& argument, const AtSpiObject& object) {
    argument.beginStructure();
    argument << object.program << object.path;
    argument.endStructure();
    return argument;
}

const QDBusArgument& operator>>(const QDBusArgument& argument, AtSpiObject& object) {
    argument.beginStructure();
    argument >> object.program >> object.path;
    argument.endStructure();
    return argument;
}

}  // namespace roundwright::app

Q_DECLARE_METATYPE(roundwright::app::AtSpiObject)

namespace roundwright::app {
namespace {

/// Qt's own connection, by the name that Qt gave it: a screen reader knows our objects by no other sender.
QDBusConnection accessibility_bus() { return QDBusConnection(QStringLiteral("a11y")); }

/// As Qt names them.
QString path_of(QAccessibleInterface& object) {
    return QStringLiteral("/org/a11y/atspi/accessible/%1").arg(QAccessible::uniqueId(&object));
}

}  // namespace

void tell_at_spi_of_description(QAccessibleInterface& about, const QString& words) {
    const QDBusConnection bus = accessibility_bus();
    if (!bus.isConnected()) return;
    qDBusRegisterMetaType<AtSpiObject>();
    QDBusMessage event =
        QDBusMessage::createSignal(path_of(about), QStringLiteral("org.a11y.atspi.Event.Object"),
                                   QStringLiteral("PropertyChange"));
    const AtSpiObject program{bus.baseService(),
                              QDBusObjectPath(QStringLiteral("/org/a11y/atspi/accessible/root"))};
    event << QStringLiteral("accessible-description") << 0 << 0
          << QVariant::fromValue(QDBusVariant(words)) << QVariant::fromValue(program);
    bus.send(event);
}

}  // namespace roundwright::app
