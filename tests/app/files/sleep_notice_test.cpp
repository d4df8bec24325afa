#include "app/files/sleep_notice.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <QDBusMessage>
#include <QDBusVirtualObject>
#include <QProcess>
#include <QStandardPaths>

#include "app/files/last_chances.h"
#include "tests/app/files/kept_testing.h"

namespace roundwright::app {
namespace {

/// Stands in for org.freedesktop.login1 on a bus of the test's own.
class Login : public QDBusVirtualObject {
  public:
    int asked = 0;

    ~Login() override {
        if (held_end_ >= 0) ::close(held_end_);
    }
    /// The other end of what was given out is open still.
    [[nodiscard]] bool is_held_back() const {
        char byte = 0;
        return held_end_ >= 0 && ::read(held_end_, &byte, 1) < 0;
    }
    static void tell(QDBusConnection& bus, bool sleeps) {
        auto signal = QDBusMessage::createSignal(QStringLiteral("/org/freedesktop/login1"),
                                                 QStringLiteral("org.freedesktop.login1.Manager"),
                                                 QStringLiteral("PrepareForSleep"));
        signal << sleeps;
        EXPECT_TRUE(bus.send(signal));
    }

    [[nodiscard]] QString introspect(const QString&) const override { return {}; }
    bool handleMessage(const QDBusMessage& message, const QDBusConnection& bus) override {
        if (message.member() != QStringLiteral("Inhibit")) return false;
        EXPECT_EQ(message.arguments().value(0).toString(), QStringLiteral("sleep"));
        EXPECT_EQ(message.arguments().value(3).toString(), QStringLiteral("delay"));
        ++asked;
        int ends[2] = {-1, -1};
        EXPECT_EQ(::pipe2(ends, O_NONBLOCK | O_CLOEXEC), 0);
        if (held_end_ >= 0) ::close(held_end_);
        held_end_ = ends[0];
        QDBusUnixFileDescriptor inhibitor;
        inhibitor.giveFileDescriptor(ends[1]);
        return bus.send(message.createReply(QVariant::fromValue(inhibitor)));
    }

  private:
    int held_end_ = -1;
};

TEST(SleepNoticeTest, WorkIsKeptBeforeTheComputerSleeps) {
    const QString daemon = QStandardPaths::findExecutable(QStringLiteral("dbus-daemon"));
    if (daemon.isEmpty()) GTEST_SKIP() << "no dbus-daemon";
    QProcess bus;
    bus.start(daemon,
              {QStringLiteral("--session"), QStringLiteral("--print-address"), QStringLiteral("--nofork")});
    ASSERT_TRUE(bus.waitForReadyRead(10'000));
    const QString address = QString::fromUtf8(bus.readLine()).trimmed();
    auto there = QDBusConnection::connectToBus(address, QStringLiteral("login"));
    ASSERT_TRUE(there.isConnected());
    Login login;
    ASSERT_TRUE(there.registerVirtualObject(QStringLiteral("/org/freedesktop/login1"), &login));
    ASSERT_TRUE(there.registerService(QStringLiteral("org.freedesktop.login1")));
    {
        const QTemporaryDir folder;
        DocumentSession session;
        session.start(toy_of({6, 12}));
        Autosave autosave(session, folder.path());
        autosave.set_interval_ms(600'000);
        const LastChances chances(autosave, QDBusConnection::connectToBus(address, QStringLiteral("window")));
        ASSERT_TRUE(wait_until([&] { return login.asked == 1 && login.is_held_back(); }));
        rename_piece(session, "Snout");
        ASSERT_EQ(copies_with(folder.path(), "Snout"), 0);
        Login::tell(there, true);
        ASSERT_TRUE(wait_until([&] { return !login.is_held_back(); }));
        EXPECT_EQ(copies_with(folder.path(), "Snout"), 1) << "kept before sleep was let begin";
        Login::tell(there, false);
        EXPECT_TRUE(wait_until([&] { return login.asked == 2 && login.is_held_back(); }));
        autosave.give_up();
    }
    QDBusConnection::disconnectFromBus(QStringLiteral("window"));
    QDBusConnection::disconnectFromBus(QStringLiteral("login"));
    bus.kill();
    bus.waitForFinished();
}

}  // namespace
}  // namespace roundwright::app
