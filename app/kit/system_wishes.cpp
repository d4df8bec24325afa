#include "app/kit/system_wishes.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include <QApplication>
#include <QDBusConnection>
#include <QDBusMessage>
#include <QDBusPendingCallWatcher>
#include <QDBusPendingReply>
#include <QDBusVariant>
#include <QPalette>
#include <QScreen>

namespace roundwright::app {
namespace {

const auto service = QStringLiteral("org.freedesktop.portal.Desktop");
const auto object = QStringLiteral("/org/freedesktop/portal/desktop");
const auto interface = QStringLiteral("org.freedesktop.portal.Settings");
const auto appearance_group = QStringLiteral("org.freedesktop.appearance");
const auto scheme_key = QStringLiteral("color-scheme");
const auto contrast_key = QStringLiteral("contrast");
const auto reduced_motion_key = QStringLiteral("reduced-motion");
const auto desktop_group = QStringLiteral("org.gnome.desktop.interface");
const auto animations_key = QStringLiteral("enable-animations");
const auto text_scale_key = QStringLiteral("text-scaling-factor");
const auto access_group = QStringLiteral("org.gnome.desktop.a11y.interface");
const auto high_contrast_key = QStringLiteral("high-contrast");
const auto other_desktop_group = QStringLiteral("org.kde.kdeglobals.KDE");
const auto duration_key = QStringLiteral("AnimationDurationFactor");

// The groups of org.freedesktop.appearance are those of the portal's description; the others, which desktops
// pass on under their own names, are from memory.
const std::pair<QString, QString> asked[] = {
    {appearance_group, scheme_key},         {appearance_group, contrast_key},
    {appearance_group, reduced_motion_key}, {desktop_group, animations_key},
    {desktop_group, text_scale_key},        {access_group, high_contrast_key},
    {other_desktop_group, duration_key},
};

QString name_of(const QString& group, const QString& key) { return group + QLatin1Char(' ') + key; }

double resolution() {
    const QScreen* screen = QGuiApplication::primaryScreen();
    return screen == nullptr ? 0 : screen->logicalDotsPerInch();
}

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
    : QObject(parent), prefers_dark_(is_dark(QApplication::palette())), resolution_at_start_(resolution()) {
    auto bus = QDBusConnection::sessionBus();
    if (!bus.isConnected()) return;
    bus.connect(service, object, interface, QStringLiteral("SettingChanged"), this,
                SLOT(setting_changed(QString, QString, QDBusVariant)));
    for (const auto& [group, key] : asked) ask(group, key);
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
    const std::pair setting(group, key);
    if (std::ranges::find(asked, setting) == std::end(asked)) return;
    if (setting == std::pair(appearance_group, scheme_key)) {
        constexpr unsigned dark = 1;  // 0: no preference, 2: light
        prefers_dark_ = value.toUInt() == dark;
    }
    const bool is_text_scale = setting == std::pair(desktop_group, text_scale_key);
    if (is_text_scale && text_scale_at_start_ <= 0) text_scale_at_start_ = value.toDouble();
    QVariant& before = told_[name_of(group, key)];
    if (before == value) return;
    before = value;
    Q_EMIT changed();
}

bool SystemWishes::prefers_less_motion() const {
    const QVariant animations = told_.value(name_of(desktop_group, animations_key));
    const QVariant duration = told_.value(name_of(other_desktop_group, duration_key));
    return told_.value(name_of(appearance_group, reduced_motion_key)).toUInt() == 1 ||
           (animations.isValid() && !animations.toBool()) ||
           (duration.isValid() && !(duration.toDouble() > 0));
}

bool SystemWishes::prefers_more_contrast() const {
    return told_.value(name_of(appearance_group, contrast_key)).toUInt() == 1 ||
           told_.value(name_of(access_group, high_contrast_key)).toBool();
}

double SystemWishes::text_growth() const {
    const double now = told_.value(name_of(desktop_group, text_scale_key)).toDouble();
    if (!(now > 0) || !(text_scale_at_start_ > 0)) return 1;
    const bool qt_follows = resolution() != resolution_at_start_;
    return qt_follows ? 1 : std::clamp(now / text_scale_at_start_, 0.5, 4.0);
}

}  // namespace roundwright::app
