#pragma once

#include <QDBusConnection>
#include <QDBusUnixFileDescriptor>
#include <QObject>

namespace roundwright::app {

/// Tells before the computer goes to sleep, and holds sleep back until those who are told have done what they
/// must: PrepareForSleep and a delaying inhibitor of org.freedesktop.login1 (systemd, "Inhibitor Locks"; the
/// system itself waits five seconds at most). Without that service on the bus, it never tells.
class SleepNotice : public QObject {
    Q_OBJECT
  public:
    explicit SleepNotice(QDBusConnection bus = QDBusConnection::systemBus(), QObject* parent = nullptr);

    [[nodiscard]] bool holds_back() const { return inhibitor_.isValid(); }

  Q_SIGNALS:
    /// The computer goes to sleep once the slots have returned.
    void about_to_sleep();

  private Q_SLOTS:
    void prepare(bool sleeps);

  private:
    void hold_back();

    QDBusConnection bus_;
    QDBusUnixFileDescriptor inhibitor_;
};

}  // namespace roundwright::app
