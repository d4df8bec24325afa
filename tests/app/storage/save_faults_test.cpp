#include <gtest/gtest.h>

#include "app/kept/kept_writer.h"
#include "app/versions/version_store.h"
#include "tests/app/app_testing.h"
#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

const Toy& old_toy() {
    static const Toy toy = toy_of({6, 12, 18});
    return toy;
}

const Toy& new_toy() {
    static const Toy toy = toy_of({6, 12, 18, 24, 24});
    return toy;
}

/// How a call fails: with an error, or for good.
struct Failing {
    int error = 0;
    std::optional<FailingDisk::Unsynced> power{};
};

// Which error it is makes no difference here: whole_file_faults_test tries them all.
const Failing ways_to_fail[] = {
    {ENOSPC, {}}, {0, FailingDisk::Unsynced::kept}, {0, FailingDisk::Unsynced::lost}};

/// Does `what` on a disk that fails at its first call, its second, and so on, until it no longer gets that
/// far.
void for_every_call(const std::function<void(FailingDisk&, const Failing&)>& what) {
    for (const Failing& way : ways_to_fail) {
        for (int call = 1;; ++call) {
            ASSERT_LT(call, 1000);
            SCOPED_TRACE(testing::Message()
                         << "call " << call << ", error " << way.error << (way.power ? ", power lost" : ""));
            FailingDisk disk;
            if (way.power)
                disk.lose_power_at(call, *way.power);
            else
                disk.fail_at(call, way.error);
            what(disk, way);
            if (disk.calls() < call) break;
        }
    }
}

class SaveFaults : public ::testing::Test {
  protected:
    /// Sound, and quicker than the real one: what is synced is only counted.
    FailingDisk sound_disk;
    DiskInUse in_use{sound_disk};
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("pup.roundwright"));
    QString state = folder.filePath(QStringLiteral("state"));
};

TEST_F(SaveFaults, ASaveThatFailsLeavesTheOldFileAndTheToyUnsaved) {
    for_every_call([&](FailingDisk& disk, const Failing&) {
        ASSERT_FALSE(save_document_file(path, old_toy()));
        DocumentSession session;
        ASSERT_FALSE(session.open(path));
        ASSERT_TRUE(session.edit(QStringLiteral("Add rounds"), new_toy()));
        std::optional<FileProblem> problem;
        {
            const DiskInUse failing(disk);
            problem = session.save(path);
        }
        const auto there = load_document_file(path);
        ASSERT_FALSE(there.problem) << there.problem->message.toStdString();
        EXPECT_EQ(session.modified(), problem.has_value());
        EXPECT_EQ(session.toy(), new_toy());
        if (problem) {
            EXPECT_FALSE(problem->message.isEmpty());
            EXPECT_EQ(there.document.toy, old_toy());
            EXPECT_FALSE(session.save(path)) << "the next one goes";
            EXPECT_EQ(load_document_file(path).document.toy, new_toy());
        } else if (!disk.has_failed()) {
            EXPECT_EQ(there.document.toy, new_toy());
        }
        EXPECT_TRUE(there.document.toy == old_toy() || there.document.toy == new_toy());
    });
}

TEST_F(SaveFaults, AKeptCopyIsTheOldOneOrTheNewOneWhole) {
    for_every_call([&](FailingDisk& disk, const Failing&) {
        const QTemporaryDir own;
        const KeptFolder sound(own.path());
        const QString name = KeptFolder::new_name();
        ASSERT_FALSE(KeptWriter(sound, name).keep(1, {old_toy(), path}));
        ASSERT_TRUE(sound.newest_of(name));
        std::optional<DiskFault> fault;
        {
            KeptWriter writer(KeptFolder(own.path(), disk), name);
            fault = writer.keep(1, {new_toy(), path});
            if (!fault) fault = writer.make_safe().fault;
        }
        const auto kept = sound.newest_of(name);
        ASSERT_TRUE(kept);
        const QByteArray old_bytes = QByteArray::fromStdString(write_document(old_toy()));
        const QByteArray new_bytes = QByteArray::fromStdString(write_document(new_toy()));
        EXPECT_TRUE(kept->toy == new_bytes || kept->toy == old_bytes);
        if (!fault && !disk.has_failed()) {
            EXPECT_EQ(kept->toy, new_bytes);
        }
        EXPECT_EQ(kept->head.document, path);
    });
}

TEST_F(SaveFaults, EarlierVersionsStayWhole) {
    for_every_call([&](FailingDisk& disk, const Failing&) {
        const QTemporaryDir own;
        const VersionStore sound(own.path());
        ASSERT_FALSE(sound.keep(path, "one", VersionKind::saved).fault);
        const KeptVersion kept = VersionStore(own.path(), disk).keep(path, "two", VersionKind::saved);
        std::vector<QByteArray> contents;
        for (const Version& version : sound.versions_of(path)) contents.push_back(sound.read(version).bytes);
        const std::vector<QByteArray> before{"one"};
        const std::vector<QByteArray> after{"two", "one"};
        EXPECT_TRUE(contents == before || contents == after) << contents.size();
        if (!kept.fault && !disk.has_failed()) {
            EXPECT_EQ(contents, after);
        }
    });
}

}  // namespace
}  // namespace roundwright::app
