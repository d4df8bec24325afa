#include "app/storage/whole_file.h"

#include <cstdio>
#include <fcntl.h>
#include <functional>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "tests/app/storage/failing_disk.h"

namespace roundwright::app {
namespace {

const QByteArray old_bytes("6, 12, 18\n");
const QByteArray new_bytes(300'000, 'x');
constexpr qint64 much = 1 << 20;

struct ::stat look(const QString& path) {
    struct ::stat found {};
    EXPECT_EQ(::lstat(QFile::encodeName(path).constData(), &found), 0) << path.toStdString();
    return found;
}

mode_t rights_of(const QString& path) { return look(path).st_mode & 07777; }

class Umask {
  public:
    explicit Umask(mode_t mask) : before_(::umask(mask)) {}
    ~Umask() { ::umask(before_); }
    Umask(const Umask&) = delete;
    Umask& operator=(const Umask&) = delete;

  private:
    mode_t before_;
};

class WholeFile : public ::testing::Test {
  protected:
    [[nodiscard]] QString path(const QString& name = QStringLiteral("pup")) const {
        return folder.filePath(name);
    }
    void put(const QString& at, const QByteArray& bytes = old_bytes) const {
        QFile file(at);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly)) << at.toStdString();
        ASSERT_EQ(file.write(bytes), bytes.size());
    }
    [[nodiscard]] static QByteArray read(const QString& at) {
        QFile file(at);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray("(none)");
    }
    [[nodiscard]] QStringList names() const {
        return QDir(folder.path())
            .entryList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot);
    }
    [[nodiscard]] static int error_of(const WrittenFile& written) {
        return written.fault ? written.fault->error : 0;
    }
    [[nodiscard]] static int error_of(const ReadFile& read_file) {
        return read_file.fault ? read_file.fault->error : 0;
    }

    QTemporaryDir folder;
};

TEST_F(WholeFile, ReadsBackWhatItWrote) {
    for (const QByteArray& bytes : {QByteArray(), QByteArray(1, '\0'), old_bytes, new_bytes}) {
        const auto written = write_whole(path(), bytes);
        ASSERT_TRUE(written.ok());
        EXPECT_FALSE(written.not_yet_safe || written.attributes_lost || written.other_names_left);
        const auto back = read_whole(path(), much);
        EXPECT_EQ(back.bytes, bytes);
        EXPECT_EQ(back.stamp, written.stamp);
        EXPECT_EQ(back.stamp.size, bytes.size());
    }
    EXPECT_EQ(names(), QStringList(QStringLiteral("pup")));
}

TEST_F(WholeFile, MoreThanTheMostIsSeenButNotAllRead) {
    put(path(), new_bytes);
    EXPECT_EQ(read_whole(path(), new_bytes.size()).bytes.size(), new_bytes.size());
    EXPECT_EQ(read_whole(path(), 10).bytes.size(), 11);
}

TEST_F(WholeFile, NewFilesHaveTheRightsOfTheUmask) {
    for (const mode_t mask : {022, 002, 077}) {
        const Umask now(mask);
        const QString at = path(QString::number(mask));
        ASSERT_TRUE(write_whole(at, old_bytes).ok());
        EXPECT_EQ(rights_of(at), 0666 & ~mask);
    }
    WriteWishes wishes;
    wishes.is_private = true;
    const Umask none(0);
    ASSERT_TRUE(write_whole(path(), old_bytes, wishes).ok());
    EXPECT_EQ(rights_of(path()), mode_t{0600});
}

TEST_F(WholeFile, KeepsTheRightsOfTheFileOfBefore) {
    const Umask mask(077);
    put(path());
    for (const mode_t mode : {0600, 0644, 0664, 0666, 0755}) {
        ASSERT_EQ(::chmod(path().toLocal8Bit().constData(), mode), 0);
        EXPECT_FALSE(write_whole(path(), new_bytes).attributes_lost);
        EXPECT_EQ(rights_of(path()), mode);
    }
    WriteWishes wishes;
    wishes.is_private = true;
    ASSERT_TRUE(write_whole(path(), new_bytes, wishes).ok());
    EXPECT_EQ(rights_of(path()), mode_t{0600});
}

TEST_F(WholeFile, KeepsOwnerAndGroup) {
    if (::geteuid() != 0) GTEST_SKIP() << "only root gives files away";
    put(path());
    ASSERT_EQ(::chown(path().toLocal8Bit().constData(), 1234, 4321), 0);
    ASSERT_EQ(::chmod(path().toLocal8Bit().constData(), 0640), 0);
    const auto written = write_whole(path(), new_bytes);
    EXPECT_FALSE(written.attributes_lost);
    EXPECT_EQ(look(path()).st_uid, uid_t{1234});
    EXPECT_EQ(look(path()).st_gid, gid_t{4321});
    EXPECT_EQ(rights_of(path()), mode_t{0640});
}

TEST_F(WholeFile, RightsOfAGroupThatCouldNotBeKeptAreNotHandedToAnotherOne) {
    if (::geteuid() != 0) GTEST_SKIP() << "only root gives files away";
    put(path());
    ASSERT_EQ(::chown(path().toLocal8Bit().constData(), 1234, 4321), 0);
    ASSERT_EQ(::chmod(path().toLocal8Bit().constData(), 0664), 0);
    FailingDisk disk;
    disk.fail_each({DiskCall::set_owner}, EPERM);
    const auto written = write_whole(path(), new_bytes, {}, disk);
    EXPECT_TRUE(written.ok());
    EXPECT_TRUE(written.attributes_lost);
    EXPECT_EQ(rights_of(path()), mode_t{0604});
}

TEST_F(WholeFile, KeepsExtendedAttributesAndSaysWhenItCannot) {
    put(path());
    const QByteArray name = path().toLocal8Bit();
    if (::setxattr(name.constData(), "user.harbour", "grey\0pup", 8, 0) != 0)
        GTEST_SKIP() << "no attributes here";
    ASSERT_EQ(::setxattr(name.constData(), "user.empty", "", 0, 0), 0);
    const auto written = write_whole(path(), new_bytes);
    EXPECT_FALSE(written.attributes_lost);
    char value[20] = {};
    EXPECT_EQ(::getxattr(name.constData(), "user.harbour", value, sizeof value), 8);
    EXPECT_EQ(QByteArray(value, 8), QByteArray("grey\0pup", 8));
    EXPECT_EQ(::getxattr(name.constData(), "user.empty", value, sizeof value), 0);

    FailingDisk disk;
    disk.fail_each({DiskCall::set_attribute}, ENOTSUP);
    const auto without = write_whole(path(), old_bytes, {}, disk);
    EXPECT_TRUE(without.ok());
    EXPECT_TRUE(without.attributes_lost);
    EXPECT_EQ(read(path()), old_bytes);
}

TEST_F(WholeFile, FollowsLinksToWhatTheyMean) {
    ASSERT_TRUE(QDir(folder.path()).mkpath(QStringLiteral("far/inner")));
    put(path(QStringLiteral("far/pup")));
    ASSERT_EQ(::symlink("far/inner", path(QStringLiteral("near")).toLocal8Bit().constData()), 0);
    // From near/, ".." is far/, not the folder of near.
    ASSERT_EQ(::symlink("../pup", path(QStringLiteral("far/inner/link")).toLocal8Bit().constData()), 0);
    const QString link = path(QStringLiteral("near/link"));
    ASSERT_TRUE(write_whole(link, new_bytes).ok());
    EXPECT_EQ(read(path(QStringLiteral("far/pup"))), new_bytes);
    EXPECT_TRUE(S_ISLNK(look(link).st_mode));
    EXPECT_FALSE(QFile::exists(path()));
    EXPECT_EQ(read_whole(link, much).bytes, new_bytes);
}

TEST_F(WholeFile, ALinkThatLeadsNowhereYetGetsItsFile) {
    ASSERT_EQ(::symlink("later", path().toLocal8Bit().constData()), 0);
    ASSERT_TRUE(write_whole(path(), old_bytes).ok());
    EXPECT_EQ(read(path(QStringLiteral("later"))), old_bytes);
    EXPECT_TRUE(S_ISLNK(look(path()).st_mode));
}

TEST_F(WholeFile, ACircleOfLinksIsSaid) {
    ASSERT_EQ(::symlink("pup", path().toLocal8Bit().constData()), 0);
    EXPECT_EQ(error_of(write_whole(path(), old_bytes)), ELOOP);
    EXPECT_EQ(error_of(read_whole(path(), much)), ELOOP);
}

TEST_F(WholeFile, LinksInPlaceOfOwnFilesAreRefused) {
    put(path(QStringLiteral("theirs")));
    ASSERT_EQ(::symlink("theirs", path().toLocal8Bit().constData()), 0);
    WriteWishes wishes;
    wishes.links = Links::refuse;
    EXPECT_EQ(error_of(write_whole(path(), new_bytes, wishes)), ELOOP);
    EXPECT_EQ(error_of(read_whole(path(), much, Links::refuse)), ELOOP);
    EXPECT_EQ(read(path(QStringLiteral("theirs"))), old_bytes);
    EXPECT_TRUE(S_ISLNK(look(path()).st_mode));
    EXPECT_EQ(remove_file(path()), std::nullopt);
    EXPECT_EQ(read(path(QStringLiteral("theirs"))), old_bytes);
}

TEST_F(WholeFile, OtherNamesOfTheFileKeepWhatWasInIt) {
    put(path());
    const QString other = path(QStringLiteral("other"));
    ASSERT_EQ(::link(path().toLocal8Bit().constData(), other.toLocal8Bit().constData()), 0);
    EXPECT_TRUE(write_whole(path(), new_bytes).other_names_left);
    EXPECT_EQ(read(other), old_bytes);
    EXPECT_FALSE(write_whole(path(), old_bytes).other_names_left);
}

TEST_F(WholeFile, AFileThatMayNotBeWrittenStays) {
    put(path());
    FailingDisk disk;  // root may write anything
    disk.fail_each({DiskCall::may_write}, EACCES);
    EXPECT_EQ(error_of(write_whole(path(), new_bytes, {}, disk)), EACCES);
    EXPECT_EQ(read(path()), old_bytes);
    EXPECT_TRUE(write_whole(path(QStringLiteral("new")), new_bytes, {}, disk).ok());
}

TEST_F(WholeFile, NamesMayHaveTwoHundredAndFiftyFiveBytesAndAnyOfThem) {
    QString every;
    for (char16_t letter = 1; letter < 128; ++letter)
        if (letter != u'/') every += QChar(letter);
    const QString seals = QString::fromUtf8("\xF0\x9F\xA6\xAD").repeated(63) + QStringLiteral("abc");
    for (const QString& name :
         {QString(255, u'a'), seals, every, QStringLiteral("-o"), QStringLiteral("...hidden"),
          QStringLiteral(" "), QStringLiteral("a\nb"), QStringLiteral("\u202eabc")}) {
        const QString at = path(name);
        ASSERT_TRUE(write_whole(at, old_bytes).ok()) << name.toStdString();
        ASSERT_TRUE(write_whole(at, new_bytes).ok()) << name.toStdString();
        EXPECT_EQ(read_whole(at, much).bytes, new_bytes);
        EXPECT_EQ(remove_file(at), std::nullopt);
    }
    EXPECT_TRUE(names().isEmpty());
    EXPECT_EQ(error_of(write_whole(path(QString(256, u'a')), old_bytes)), ENAMETOOLONG);
    const QString cut = path() + QChar(u'\0') + QStringLiteral("after");
    EXPECT_EQ(error_of(write_whole(cut, old_bytes)), EINVAL);
    EXPECT_EQ(error_of(read_whole(cut, much)), EINVAL);
    EXPECT_EQ(error_of(write_whole(QString(), old_bytes)), ENOENT);
    EXPECT_TRUE(names().isEmpty());
}

TEST_F(WholeFile, RelativePathsStartFromTheFolderOfTheProgram) {
    const QString before = QDir::currentPath();
    ASSERT_TRUE(QDir::setCurrent(folder.path()));
    EXPECT_TRUE(write_whole(QStringLiteral("pup"), old_bytes).ok());
    EXPECT_TRUE(write_whole(QStringLiteral("./pup"), new_bytes).ok());
    EXPECT_EQ(read_whole(QStringLiteral("pup"), much).bytes, new_bytes);
    ASSERT_TRUE(QDir::setCurrent(before));
    EXPECT_EQ(read(path()), new_bytes);
    EXPECT_EQ(names(), QStringList(QStringLiteral("pup")));
}

TEST_F(WholeFile, FoldersPipesAndSocketsStayWhatTheyAre) {
    EXPECT_EQ(error_of(write_whole(folder.path(), old_bytes)), EISDIR);
    EXPECT_EQ(error_of(read_whole(folder.path(), much)), EISDIR);
    const QByteArray pipe = path(QStringLiteral("pipe")).toLocal8Bit();
    ASSERT_EQ(::mkfifo(pipe.constData(), 0600), 0);
    EXPECT_EQ(error_of(write_whole(QFile::decodeName(pipe), old_bytes)), ENOTSUP);
    EXPECT_EQ(error_of(read_whole(QFile::decodeName(pipe), much)), ENOTSUP);  // and waits for nobody
    const QByteArray name = path(QStringLiteral("socket")).toLocal8Bit();
    const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
    ::sockaddr_un address{};
    address.sun_family = AF_UNIX;
    std::copy(name.begin(), name.end(), address.sun_path);
    ASSERT_EQ(::bind(socket, reinterpret_cast<const ::sockaddr*>(&address), sizeof address), 0);
    EXPECT_EQ(error_of(write_whole(QFile::decodeName(name), old_bytes)), ENOTSUP);
    EXPECT_EQ(error_of(read_whole(QFile::decodeName(name), much)), ENXIO);
    ::close(socket);
    EXPECT_EQ(error_of(write_whole(QStringLiteral("/dev/null"), old_bytes)), ENOTSUP);
    EXPECT_TRUE(S_ISCHR(look(QStringLiteral("/dev/null")).st_mode));
    EXPECT_EQ(names().size(), 2);
}

TEST_F(WholeFile, FoldersThatAreNotThereAreSaid) {
    EXPECT_EQ(error_of(write_whole(path(QStringLiteral("gone/pup")), old_bytes)), ENOENT);
    put(path());
    EXPECT_EQ(error_of(write_whole(path(QStringLiteral("pup/pup")), old_bytes)), ENOTDIR);
    EXPECT_EQ(error_of(read_whole(path(QStringLiteral("gone")), much)), ENOENT);
}

TEST_F(WholeFile, OnlyInPlaceOfTheStateThatWasRead) {
    put(path());
    WriteWishes wishes;
    wishes.in_place_of = read_whole(path(), much).stamp;
    put(path(), "changed by another program");
    auto written = write_whole(path(), new_bytes, wishes);
    EXPECT_TRUE(written.was_changed && !written.ok() && !written.fault);
    EXPECT_EQ(read(path()), "changed by another program");
    wishes.in_place_of = read_whole(path(), much).stamp;
    written = write_whole(path(), new_bytes, wishes);
    ASSERT_TRUE(written.ok());
    wishes.in_place_of = written.stamp;
    EXPECT_TRUE(write_whole(path(), old_bytes, wishes).ok());
    ASSERT_EQ(remove_file(path()), std::nullopt);
    EXPECT_TRUE(write_whole(path(), new_bytes, wishes).was_changed);
    EXPECT_TRUE(names().isEmpty());
}

TEST_F(WholeFile, ShortWritesAndInterruptionsComeToTheWhole) {
    for (const std::size_t at_once : {std::size_t{1}, std::size_t{7}, std::size_t{4096}}) {
        FailingDisk disk;
        disk.pass_at_most(at_once);
        disk.interrupt_each_call();
        const QByteArray bytes = new_bytes.left(9'999);
        ASSERT_TRUE(write_whole(path(), bytes, {}, disk).ok());
        EXPECT_EQ(read(path()), bytes);
        EXPECT_EQ(read_whole(path(), much, Links::follow, disk).bytes, bytes);
    }
    EXPECT_EQ(names(), QStringList(QStringLiteral("pup")));
}

TEST_F(WholeFile, AFileThatIsWrittenWhileItIsReadIsReadAgain) {
    class WrittenMeanwhile : public Disk {
      public:
        explicit WrittenMeanwhile(QString at) : at_(std::move(at)) {}
        ssize_t read(int file, char* bytes, std::size_t count) override {
            const ssize_t got = Disk::read(file, bytes, count);
            if (!std::exchange(done_, true)) {
                QFile other(at_);
                EXPECT_TRUE(other.open(QIODevice::WriteOnly));
                other.write("another");
            }
            return got;
        }

      private:
        QString at_;
        bool done_ = false;
    };
    put(path());
    WrittenMeanwhile disk(path());
    const auto back = read_whole(path(), much, Links::follow, disk);
    EXPECT_EQ(back.bytes, "another");
    EXPECT_EQ(back.stamp, read_whole(path(), much).stamp);
}

// --- what another program does between the last look and the rename

/// Another program that is quicker: it does something just before the new file gets its name, and may do more
/// just before an exchange is taken back.
class QuickerProgram : public FailingDisk {
  public:
    using Deed = std::function<void()>;
    explicit QuickerProgram(std::vector<Deed> deeds) : deeds_(std::move(deeds)) {}
    int rename(const QByteArray& from, const QByteArray& to) override {
        do_next();
        return FailingDisk::rename(from, to);
    }
    int exchange(const QByteArray& one, const QByteArray& other) override {
        do_next();
        return FailingDisk::exchange(one, other);
    }
    int rename_to_free(const QByteArray& from, const QByteArray& to) override {
        do_next();
        return FailingDisk::rename_to_free(from, to);
    }

  private:
    void do_next() {
        if (next_ < deeds_.size()) deeds_[next_++]();
    }
    std::vector<Deed> deeds_;
    std::size_t next_ = 0;
};

TEST_F(WholeFile, WhatIsWrittenInTheLastMomentIsNotOverwritten) {
    const auto in_place = [&] { put(path(), "written in place"); };
    const auto replaced = [&] {
        put(path() + QStringLiteral("-theirs"), "replaced by them");
        ASSERT_EQ(std::rename((path() + QStringLiteral("-theirs")).toLocal8Bit().constData(),
                              path().toLocal8Bit().constData()),
                  0);
    };
    const auto again = [&] {
        put(path() + QStringLiteral("-theirs"), "and replaced again");
        ASSERT_EQ(std::rename((path() + QStringLiteral("-theirs")).toLocal8Bit().constData(),
                              path().toLocal8Bit().constData()),
                  0);
    };
    const auto removed = [&] { QFile::remove(path()); };
    const struct {
        std::vector<QuickerProgram::Deed> deeds;
        QByteArray left;
    } cases[] = {{{in_place}, "written in place"},
                 {{replaced}, "replaced by them"},
                 {{replaced, again}, "and replaced again"},
                 {{removed}, {}}};
    for (const auto& each : cases) {
        put(path());
        QuickerProgram disk(each.deeds);
        const WriteWishes wishes{.in_place_of = read_whole(path(), much).stamp};
        const auto written = write_whole(path(), new_bytes, wishes, disk);
        EXPECT_TRUE(written.was_changed) << each.left.toStdString();
        EXPECT_FALSE(written.fault);
        EXPECT_EQ(QFile::exists(path()) ? read(path()) : QByteArray(), each.left);
        EXPECT_EQ(names(), each.left.isEmpty() ? QStringList() : QStringList(QStringLiteral("pup")));
    }
}

TEST_F(WholeFile, WhatAppearsInTheLastMomentIsNotOverwritten) {
    QuickerProgram disk({[&] { put(path(), "theirs"); }});
    const auto written = write_whole(path(), new_bytes, {.only_new = true}, disk);
    EXPECT_TRUE(written.was_changed);
    EXPECT_EQ(read(path()), "theirs");
    EXPECT_EQ(names(), QStringList(QStringLiteral("pup")));
}

TEST_F(WholeFile, WhatCannotBePutBackIsKeptBesideAndSaid) {
    put(path());
    QuickerProgram disk({[&] { put(path(), "theirs"); }, [&] { disk.fail_each({DiskCall::rename}, EIO); }});
    const WriteWishes wishes{.in_place_of = read_whole(path(), much).stamp};
    const auto written = write_whole(path(), new_bytes, wishes, disk);
    EXPECT_TRUE(written.ok());
    EXPECT_EQ(read(path()), new_bytes);
    ASSERT_FALSE(written.theirs_beside.isEmpty());
    EXPECT_EQ(read(written.theirs_beside), "theirs");
}

TEST_F(WholeFile, AnExchangedFileKeepsRightsAttributesAndOtherNames) {
    put(path());
    ASSERT_EQ(::chmod(path().toLocal8Bit().constData(), 0640), 0);
    ::setxattr(path().toLocal8Bit().constData(), "user.harbour", "grey", 4, 0);
    const QString second = path() + QStringLiteral("-second");
    ASSERT_EQ(::link(path().toLocal8Bit().constData(), second.toLocal8Bit().constData()), 0);
    const auto written = write_whole(path(), new_bytes, {.in_place_of = read_whole(path(), much).stamp});
    EXPECT_TRUE(written.ok());
    EXPECT_TRUE(written.other_names_left);
    EXPECT_EQ(read(path()), new_bytes);
    EXPECT_NE(read(second), new_bytes);
    struct ::stat found {};
    ASSERT_EQ(::stat(path().toLocal8Bit().constData(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777, 0640u);
    char value[8] = {};
    EXPECT_EQ(::getxattr(path().toLocal8Bit().constData(), "user.harbour", value, sizeof value), 4);
}

TEST_F(WholeFile, WithoutTheSyncItIsThereAtOnceAndSafeAfterIt) {
    FailingDisk disk;
    const WriteWishes wishes{.links = Links::refuse, .is_private = true, .safe_at_once = false};
    ASSERT_TRUE(write_whole(path(), new_bytes, wishes, disk).ok());
    EXPECT_EQ(read(path()), new_bytes);
    EXPECT_EQ(disk.calls(DiskCall::sync), 0);
    EXPECT_FALSE(make_safe(path(), disk));
    EXPECT_EQ(disk.calls(DiskCall::sync), 2) << "the file and its folder";
    constexpr int of_the_file = 2;  // each after an open
    constexpr int of_the_folder = 4;
    for (const int call : {of_the_file, of_the_folder}) {
        FailingDisk failing;
        failing.fail_at(call, EIO);
        const auto fault = make_safe(path(), failing);
        ASSERT_TRUE(fault) << call;
        EXPECT_EQ(fault->error, EIO);
        EXPECT_EQ(fault->step, DiskStep::sync);
    }
    const QString link = path() + QStringLiteral("-link");
    ASSERT_TRUE(QFile::link(path(), link));
    EXPECT_TRUE(make_safe(link)) << "a link in its place is not ours";
}

TEST_F(WholeFile, RemovingWhatIsNotThereIsNoFault) {
    EXPECT_EQ(remove_file(path()), std::nullopt);
    put(path());
    EXPECT_EQ(remove_file(path()), std::nullopt);
    EXPECT_TRUE(names().isEmpty());
    FailingDisk disk;
    disk.fail_each({DiskCall::remove}, EROFS);
    put(path());
    const auto fault = remove_file(path(), disk);
    ASSERT_TRUE(fault);
    EXPECT_EQ(*fault, (DiskFault{DiskStep::remove, EROFS, path()}));
}

class PrivateFolder : public WholeFile {};

TEST_F(PrivateFolder, IsMadeWithThoseAboveItForItsOwnerAlone) {
    const Umask none(0);
    const QString state = path(QStringLiteral("a/b/c"));
    ASSERT_EQ(make_private_folder(state), std::nullopt);
    ASSERT_EQ(make_private_folder(state), std::nullopt);
    for (const char* made : {"a", "a/b", "a/b/c"})
        EXPECT_EQ(rights_of(path(QString::fromLatin1(made))), mode_t{0700}) << made;
}

TEST_F(PrivateFolder, ThoseAboveThatAreThereStayAsTheyAre) {
    const Umask none(0);
    ASSERT_EQ(::mkdir(path(QStringLiteral("home")).toLocal8Bit().constData(), 0755), 0);
    ASSERT_EQ(::mkdir(path(QStringLiteral("real")).toLocal8Bit().constData(), 0755), 0);
    ASSERT_EQ(::symlink("../real", path(QStringLiteral("home/link")).toLocal8Bit().constData()), 0);
    ASSERT_EQ(make_private_folder(path(QStringLiteral("home/link/state/notes"))), std::nullopt);
    EXPECT_EQ(rights_of(path(QStringLiteral("home"))), mode_t{0755});
    EXPECT_EQ(rights_of(path(QStringLiteral("real"))), mode_t{0755});
    EXPECT_EQ(rights_of(path(QStringLiteral("real/state/notes"))), mode_t{0700});
}

TEST_F(PrivateFolder, OneThatIsThereBecomesPrivate) {
    ASSERT_EQ(::mkdir(path().toLocal8Bit().constData(), 0755), 0);
    ASSERT_EQ(make_private_folder(path()), std::nullopt);
    EXPECT_EQ(rights_of(path()), mode_t{0700});
}

TEST_F(PrivateFolder, LinksFilesAndFoldersOfOthersAreRefused) {
    ASSERT_EQ(::mkdir(path(QStringLiteral("theirs")).toLocal8Bit().constData(), 0755), 0);
    ASSERT_EQ(::symlink("theirs", path().toLocal8Bit().constData()), 0);
    EXPECT_EQ(make_private_folder(path()), (DiskFault{DiskStep::make_folder, ELOOP, path()}));
    EXPECT_EQ(rights_of(path(QStringLiteral("theirs"))), mode_t{0755});
    const QString file = path(QStringLiteral("file"));
    put(file);
    EXPECT_EQ(make_private_folder(file), (DiskFault{DiskStep::make_folder, ENOTDIR, file}));
    if (::geteuid() != 0) return;
    const QString theirs = path(QStringLiteral("theirs"));
    ASSERT_EQ(::chown(theirs.toLocal8Bit().constData(), 1234, 4321), 0);
    EXPECT_EQ(make_private_folder(theirs), (DiskFault{DiskStep::make_folder, EPERM, theirs}));
}

}  // namespace
}  // namespace roundwright::app
