#include "app/files/last_chances.h"

#include <QGuiApplication>

#include "app/files/autosave.h"
#include "app/files/sleep_notice.h"

namespace roundwright::app {

LastChances::LastChances(Autosave& autosave, QObject* parent)
    : LastChances(autosave, QDBusConnection::systemBus(), parent) {}

LastChances::LastChances(Autosave& autosave, const QDBusConnection& bus, QObject* parent)
    : QObject(parent), autosave_(autosave) {
    auto* sleep = new SleepNotice(bus, this);
    connect(sleep, &SleepNotice::about_to_sleep, &autosave, &Autosave::keep_now);
    connect(qGuiApp, &QGuiApplication::applicationStateChanged, &autosave, [&](Qt::ApplicationState state) {
        if (state != Qt::ApplicationActive) autosave.keep_soon();
    });
    // The desktop ends programs after this without asking again; nothing is asked here either.
    connect(qGuiApp, &QGuiApplication::commitDataRequest, this, &LastChances::keep_for_end_of_session,
            Qt::DirectConnection);
}

void LastChances::keep_for_end_of_session() {
    autosave_.keep_now();
    session_ends_ = autosave_.all_kept();
}

}  // namespace roundwright::app
