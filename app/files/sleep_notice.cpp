#include "app/files/sleep_notice.h"

#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>

namespace roundwright::app {
namespace {

const auto service = QStringLiteral("org.freedesktop.login1");
const auto object = QStringLiteral("/org/freedesktop/login1");
const auto interface = QStringLiteral("org.freedesktop.login1.Manager");

}  // namespace

SleepNotice::SleepNotice(QDBusConnection bus, QObject* parent) : QObject(parent), bus_(std::move(bus)) {
    if (!bus_.isConnected()) return;
    bus_.connect(service, object, interface, QStringLiteral("PrepareForSleep"), this, SLOT(prepare(bool)));
    hold_back();
}

void SleepNotice::hold_back() {
    auto message = QDBusMessage::createMethodCall(service, object, interface, QStringLiteral("Inhibit"));
    message << QStringLiteral("sleep") << QStringLiteral("Roundwright")
            << tr("Unsaved changes are being kept") << QStringLiteral("delay");
    auto* watcher = new QDBusPendingCallWatcher(bus_.asyncCall(message), this);
    connect(watcher, &QDBusPendingCallWatcher::finished, this, [this, watcher] {
        const QDBusPendingReply<QDBusUnixFileDescriptor> reply = *watcher;
        if (reply.isValid()) inhibitor_ = reply.value();
        watcher->deleteLater();
    });
}

/// Closing the inhibitor's file lets the computer sleep.
void SleepNotice::prepare(bool sleeps) {
    if (!sleeps) return hold_back();
    Q_EMIT about_to_sleep();
    inhibitor_ = {};
}

}  // namespace roundwright::app
