#include <chrono>
#include <csignal>
#include <cstdio>
#include <gtest/gtest.h>
#include <thread>

#include "tests/app/files/kept_testing.h"

namespace roundwright::app {
namespace {

constexpr auto long_sync = std::chrono::seconds(3);
constexpr int between_changes_ms = 50;

class SlowDisk : public Disk {
  public:
    int sync(int file) override {
        std::this_thread::sleep_for(long_sync);
        return Disk::sync(file);
    }
};

// Run by the test below as a program of its own, which it kills.
TEST(KilledOnASlowDisk, DISABLED_ChangesSomethingAllTheTime) {
    SlowDisk disk;
    const DiskInUse in_use(disk);
    DocumentSession session;
    session.start(toy_of({6, 12}));
    Autosave autosave(session, qEnvironmentVariable("KILL_ME_STATE"));
    for (int change = 1; change < 10'000; ++change) {
        rename_piece(session, std::to_string(change).c_str());
        std::printf("changed %d\n", change);
        std::fflush(stdout);
        QTest::qWait(between_changes_ms);
    }
}

TEST(SlowDisk, AKillWhileTheDiskSyncsLosesNothingOlderThanASecond) {
    const QTemporaryDir folder;
    const QString state = folder.filePath(QStringLiteral("state"));
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("KILL_ME_STATE"), state);
    QProcess program;
    program.setProcessEnvironment(environment);
    program.start(QCoreApplication::applicationFilePath(),
                  {QStringLiteral("--gtest_filter=KilledOnASlowDisk.*"),
                   QStringLiteral("--gtest_also_run_disabled_tests")});
    QElapsedTimer since_first;
    std::vector<std::pair<qint64, int>> told;  // when, and which change
    constexpr int killed_after_ms = 2500;
    while (!since_first.isValid() || since_first.elapsed() < killed_after_ms) {
        ASSERT_TRUE(program.waitForReadyRead(20'000));
        while (program.canReadLine()) {
            const QByteArray line = program.readLine();
            if (!line.startsWith("changed ")) continue;
            if (!since_first.isValid()) since_first.start();
            told.emplace_back(since_first.elapsed(), line.mid(8).trimmed().toInt());
        }
    }
    const qint64 killed = since_first.elapsed();
    program.kill();
    program.waitForFinished();
    const auto left = KeptFolder(state).left_behind();
    ASSERT_EQ(left.size(), 1u);
    const auto copy = KeptFolder(state).read(left.front().file);
    ASSERT_TRUE(copy);
    const std::string_view text(copy->toy.constData(), static_cast<std::size_t>(copy->toy.size()));
    const int found = std::stoi(read_document(text).toy.pieces[0].name);
    for (const auto& [when, change] : told) {
        if (change > found) {
            EXPECT_LE(killed - when, 1000) << "change " << change << " is lost, " << found << " is there";
            break;
        }
    }
}

}  // namespace
}  // namespace roundwright::app
