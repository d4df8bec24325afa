#include "app/kit/system_wishes.h"

#include <QApplication>
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QDBusVariant>
#include <QPalette>

namespace roundwright::app {
namespace {

const auto service = QStringLiteral("org.freedesktop.portal.Desktop");
const auto object = QStringLiteral("/org/freedesktop/portal/desktop");
const auto interface = QStringLiteral("org.freedesktop.portal.Settings");
const auto appearance_group = QStringLiteral("org.freedesktop.appearance");
const auto scheme_key = QStringLiteral("color-scheme");
const auto desktop_group = QStringLiteral("org.gnome.desktop.interface");
const auto animations_key = QStringLiteral("enable-animations");

bool is_dark(const QPalette& palette) {
    return palette.color(QPalette::Window).lightnessF() < palette.color(QPalette::WindowText).lightnessF();
}

/// The portal wraps its answer in one variant more in older versions.
QVariant unwrapped(QVariant value) {
    while (value.canConvert<QDBusVariant>()) value = value.value<QDBusVariant>().variant();
    return value;
}

}  // namespace

SystemWishes& SystemWishes::instance() {
    static auto* wishes = new SystemWishes(qApp);
    return *wishes;
}

SystemWishes::SystemWishes(QObject* parent)
    : QObject(parent), prefers_dark_(is_dark(QApplication::palette())) {
    auto bus = QDBusConnection::sessionBus();
    if (!bus.isConnected()) return;
    bus.connect(service, object, interface, QStringLiteral("SettingChanged"), this,
                SLOT(setting_changed(QString, QString, QDBusVariant)));
    ask(appearance_group, scheme_key);
    ask(desktop_group, animations_key);
}

void SystemWishes::ask(const QString& group, const QString& key) {
    auto message = QDBusMessage::createMethodCall(service, object, interface, QStringLiteral("Read"));
    message << group << key;
    auto* watcher = new QDBusPendingCallWatcher(QDBusConnection::sessionBus().asyncCall(message, 2000), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [=, this] {
        const QDBusPendingReply<QDBusVariant> reply = *watcher;
        if (reply.isValid()) take(group, key, reply.value().variant());
        watcher->deleteLater();
    });
}

void SystemWishes::setting_changed(const QString& group, const QString& key, const QDBusVariant& value) {
    take(group, key, value.variant());
}

void SystemWishes::take(const QString& group, const QString& key, const QVariant& wrapped) {
    const QVariant value = unwrapped(wrapped);
    if (group == appearance_group && key == scheme_key) {
        constexpr unsigned dark = 1;  // 0: no preference, 2: light
        prefers_dark_ = value.toUInt() == dark;
    } else if (group == desktop_group && key == animations_key) {
        prefers_less_motion_ = !value.toBool();
    } else {
        return;
    }
    Q_EMIT changed();
}

}  // namespace roundwright::app
