#include "tests/app/storage/failing_disk.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <QStatusBar>

#include "app/files/document_files.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"
#include "tests/app/storage/small_disk.h"

namespace roundwright::app {
namespace {

const std::set<DiskCall> writing{DiskCall::write, DiskCall::sync, DiskCall::rename, DiskCall::give_name,
                                 DiskCall::make_folder};

/// A window with a toy that is saved, and then changed.
class FailingDiskTest : public ::testing::Test {
  protected:
    void SetUp() override {
        QSettings().clear();
        QSettings().setValue(QStringLiteral("started-before"), true);
        open_window(folder.filePath(QStringLiteral("state")));
    }

    void open_window(const QString& state) {
        window.reset();
        session = std::make_unique<DocumentSession>();
        window = std::make_unique<MainWindow>(*session, state);
        window->resize(1280, 760);
        window->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    }

    void save_and_change(const QString& path) {
        session->start(toy_of({6, 12, 18}));
        ASSERT_FALSE(session->save(path));
        ASSERT_TRUE(session->edit(QStringLiteral("Add rounds"), toy_of({6, 12, 18, 24})));
    }

    /// Ctrl+S, as a maker presses it; what the dialog says that opens.
    QString save_by_key() {
        QString told;
        answer_next_dialog(QStringLiteral("OK"), &told);
        QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
        EXPECT_TRUE(wait_until([&] { return !told.isNull(); }));
        return told;
    }

    /// After a dialog, once the window has the keyboard again.
    void save_again_by_key() {
        window->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
        QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
        EXPECT_FALSE(session->modified());
    }

    QTemporaryDir folder;
    QString pup = folder.filePath(QStringLiteral("pup.roundwright"));
    std::unique_ptr<DocumentSession> session;
    std::unique_ptr<MainWindow> window;
};

/// The maker's disk fails; the one of the state folder does not.
class OneFolderFails : public FailingDisk {
  public:
    explicit OneFolderFails(QByteArray in) : folder_(std::move(in)) {}
    int open(const QByteArray& path, int flags, mode_t mode) override {
        if ((flags & O_ACCMODE) == O_RDONLY || (path != folder_ && !is_directly_in(path)))
            return FailingDisk::open(path, flags, mode);
        errno = ENOSPC;
        return -1;
    }

  private:
    [[nodiscard]] bool is_directly_in(const QByteArray& path) const {
        return path.startsWith(folder_ + '/') && path.lastIndexOf('/') == folder_.size();
    }
    QByteArray folder_;
};

TEST_F(FailingDiskTest, ASaveThatFailsSaysWhyAndThatTheCopyIsKept) {
    save_and_change(pup);
    OneFolderFails disk(folder.path().toLocal8Bit());
    {
        const DiskInUse failing(disk);
        const QString told = save_by_key();
        EXPECT_TRUE(told.contains(QStringLiteral("“pup.roundwright” could not be saved.")))
            << told.toStdString();
        EXPECT_TRUE(told.contains(QStringLiteral("The disk is full."))) << told.toStdString();
        EXPECT_TRUE(told.contains(QStringLiteral("The toy in the window is safe, and its copy is kept.")))
            << told.toStdString();
    }
    EXPECT_TRUE(session->modified());
    EXPECT_TRUE(window->isWindowModified());
    EXPECT_EQ(load_document_file(pup).document.toy, toy_of({6, 12, 18}));
    save_again_by_key();
    EXPECT_EQ(load_document_file(pup).document.toy, toy_of({6, 12, 18, 24}));
}

TEST_F(FailingDiskTest, WhereNoCopyCanBeKeptItSaysSo) {
    for (const int error : {ENOSPC, EDQUOT, EROFS, EIO, EACCES, ESTALE, EMFILE, ENOMEM}) {
        const QTemporaryDir own;
        FailingDisk disk;
        const DiskInUse failing(disk);
        open_window(own.path());
        save_and_change(pup);
        disk.fail_each(writing, error);
        const QString told = save_by_key();
        EXPECT_TRUE(told.contains(QStringLiteral("no copy of it can be kept")))
            << error << told.toStdString();
        EXPECT_FALSE(told.contains(QStringLiteral("is safe"))) << told.toStdString();
        EXPECT_FALSE(told.contains(QStringLiteral("The system says"))) << told.toStdString();
        EXPECT_TRUE(session->modified());
        EXPECT_EQ(load_document_file(pup).document.toy, toy_of({6, 12, 18}));
        disk.be_sound();
        window.reset();
    }
}

TEST_F(FailingDiskTest, ARealDiskThatFillsLosesNothing) {
    const SmallDisk disk;
    if (!disk.is_there()) GTEST_SKIP() << "no disk can be mounted here";
    const QString path = disk.path(QStringLiteral("pup.roundwright"));
    save_and_change(path);
    disk.fill();
    EXPECT_TRUE(save_by_key().contains(QStringLiteral("The disk is full.")));
    EXPECT_TRUE(session->modified());
    EXPECT_EQ(load_document_file(path).document.toy, toy_of({6, 12, 18}));
    disk.make_room();
    save_again_by_key();
    EXPECT_EQ(load_document_file(path).document.toy, toy_of({6, 12, 18, 24}));
}

TEST_F(FailingDiskTest, OtherNamesOfTheFileAreSaidOnceNotAtEverySave) {
    save_and_change(pup);
    for (const char* other : {"one", "two"}) {
        ASSERT_EQ(::link(pup.toLocal8Bit().constData(),
                         folder.filePath(QString::fromLatin1(other)).toLocal8Bit().constData()),
                  0);
        window->statusBar()->clearMessage();
        ASSERT_TRUE(session->edit(QStringLiteral("Name"), toy_of({6, 12, 18 + other[0]})));
        QTest::keyClick(window.get(), Qt::Key_S, Qt::ControlModifier);
        ASSERT_FALSE(session->modified());
        EXPECT_EQ(window->statusBar()->currentMessage().contains(QStringLiteral("hard links")),
                  other == std::string("one"))
            << window->statusBar()->currentMessage().toStdString();
    }
}

}  // namespace
}  // namespace roundwright::app
