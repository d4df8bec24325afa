#include <gtest/gtest.h>
#include <sys/xattr.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "app/storage/whole_file.h"
#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

const QByteArray old_bytes("6, 12, 18\n");
const QByteArray new_bytes(20'000, 'x');

enum class Before { nothing, file, file_with_attributes, link };

struct Case {
    Before before = Before::nothing;
    bool is_private = false;
    bool unnamed = true;  ///< the file system knows files without names
    bool known = false;   ///< only the state of before is to be replaced, or nothing where there is none
    bool renames = true;  ///< the file system can exchange two files
};

/// A folder of its own for each try, made ready for one case.
class Try {
  public:
    explicit Try(const Case& asked) : case_(asked) {
        if (case_.before == Before::link) {
            EXPECT_TRUE(QFile::link(QStringLiteral("target"), path()));
        }
        if (case_.before == Before::nothing) return;
        QFile file(target());
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(old_bytes);
        file.close();
        if (case_.before == Before::file_with_attributes)
            ::setxattr(target().toLocal8Bit().constData(), "user.harbour", "grey", 4, 0);
    }

    [[nodiscard]] WrittenFile write(FailingDisk& disk) const {
        if (!case_.unnamed) disk.know_no_unnamed_files();
        if (!case_.renames) disk.know_only_plain_renames();
        WriteWishes wishes;
        wishes.only_new = case_.known && case_.before == Before::nothing;
        if (case_.known && !wishes.only_new) wishes.in_place_of = read_whole(path(), 1 << 20).stamp;
        wishes.is_private = case_.is_private;
        if (case_.is_private && case_.before != Before::link) wishes.links = Links::refuse;
        return write_whole(path(), new_bytes, wishes, disk);
    }
    /// Nothing if there is none.
    [[nodiscard]] std::optional<QByteArray> content() const {
        QFile file(target());
        return file.open(QIODevice::ReadOnly) ? std::optional(file.readAll()) : std::nullopt;
    }
    [[nodiscard]] bool has_old() const {
        return case_.before == Before::nothing ? !content() : content() == old_bytes;
    }
    [[nodiscard]] bool has_new() const { return content() == new_bytes; }
    [[nodiscard]] qsizetype things() const {
        return QDir(folder_.path())
            .entryList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot)
            .size();
    }
    [[nodiscard]] qsizetype things_wanted() const {
        return case_.before == Before::link ? 2 : content() ? 1 : 0;
    }

  private:
    [[nodiscard]] QString path() const { return folder_.filePath(QStringLiteral("pup")); }
    [[nodiscard]] QString target() const {
        return case_.before == Before::link ? folder_.filePath(QStringLiteral("target")) : path();
    }

    Case case_;
    QTemporaryDir folder_;
};

class WholeFileFaults : public ::testing::TestWithParam<Case> {
  protected:
    /// Does it for every call that writing makes.
    static void for_every_call(const std::function<void(FailingDisk&, int call)>& arrange,
                               const std::function<void(const Try&, const WrittenFile&, int call)>& judge) {
        int call = 1;
        for (;; ++call) {
            ASSERT_LT(call, 1000);
            const Try once(GetParam());
            FailingDisk disk;
            arrange(disk, call);
            const auto written = once.write(disk);
            SCOPED_TRACE(call);
            if (disk.calls() < call) {
                EXPECT_TRUE(written.ok() && once.has_new());
                break;
            }
            judge(once, written, call);
        }
        EXPECT_GT(call, 8);
    }
};

TEST_P(WholeFileFaults, TheOldFileOrTheNewOneWholeForEveryCallThatFails) {
    for (const int error : {EIO, ENOSPC, EDQUOT, EROFS, EACCES, ENOENT, ESTALE, EMFILE, ENOMEM}) {
        for_every_call([&](FailingDisk& disk, int call) { disk.fail_at(call, error); },
                       [&](const Try& once, const WrittenFile& written, int) {
                           EXPECT_TRUE(written.ok() ? once.has_new() : once.has_old()) << error;
                           // ENOENT of a link says that there is none, and a link that is there all the same
                           // is refused.
                           if (written.fault && error != ENOENT) {
                               EXPECT_EQ(written.fault->error, error);
                           }
                           EXPECT_EQ(once.things(), once.things_wanted()) << error;
                       });
    }
}

TEST_P(WholeFileFaults, TheOldFileOrTheNewOneWholeWhereverThePowerIsLost) {
    for (const auto unsynced : {FailingDisk::Unsynced::kept, FailingDisk::Unsynced::lost}) {
        for_every_call([&](FailingDisk& disk, int call) { disk.lose_power_at(call, unsynced); },
                       [&](const Try& once, const WrittenFile& written, int) {
                           EXPECT_TRUE(once.has_old() || once.has_new());
                           if (written.ok() && !written.not_yet_safe) {
                               EXPECT_TRUE(once.has_new());
                           }
                           if (written.fault) {
                               EXPECT_TRUE(once.has_old());
                           }
                       });
    }
}

TEST_P(WholeFileFaults, ADiskThatFillsLeavesTheOldFileAndNothingBeside) {
    for (const qint64 room : {0, 1, 4096, 19'999}) {
        const Try once(GetParam());
        FailingDisk disk;
        disk.have_room_for(room);
        const auto written = once.write(disk);
        ASSERT_TRUE(written.fault);
        EXPECT_EQ(written.fault->error, ENOSPC);
        EXPECT_EQ(written.fault->step, DiskStep::write);
        EXPECT_TRUE(once.has_old());
        EXPECT_EQ(once.things(), once.things_wanted());
    }
}

INSTANTIATE_TEST_SUITE_P(
    , WholeFileFaults,
    ::testing::Values(Case{Before::nothing}, Case{Before::nothing, true}, Case{Before::nothing, false, false},
                      Case{Before::file}, Case{Before::file, true}, Case{Before::file, false, false},
                      Case{Before::file_with_attributes}, Case{Before::file_with_attributes, false, false},
                      Case{Before::link}, Case{Before::link, false, false},
                      Case{Before::nothing, false, true, true},
                      Case{Before::nothing, false, true, true, false}, Case{Before::file, false, true, true},
                      Case{Before::file, false, false, true}, Case{Before::file, false, true, true, false},
                      Case{Before::file_with_attributes, false, true, true},
                      Case{Before::link, false, true, true}));

}  // namespace
}  // namespace roundwright::app
