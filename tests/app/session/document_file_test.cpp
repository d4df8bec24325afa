#include "app/session/document_file.h"

#include <csignal>
#include <gtest/gtest.h>
#include <sys/resource.h>

#include "app/kit/save_bytes.h"
#include "core/base/limits.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class DocumentFileTest : public ::testing::Test {
  protected:
    QString write(const QByteArray& bytes) {
        const QString path = folder.filePath(QStringLiteral("toy.roundwright"));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        return path;
    }

    QTemporaryDir folder;
};

TEST_F(DocumentFileTest, ReadsWhatItWrote) {
    const QString path = folder.filePath(QStringLiteral("pup.roundwright"));
    ASSERT_FALSE(save_document_file(path, toy_of({6, 12, 18})));
    const auto loaded = load_document_file(path);
    ASSERT_FALSE(loaded.problem);
    EXPECT_EQ(loaded.document.toy, toy_of({6, 12, 18}));
}

TEST_F(DocumentFileTest, NamesThePlaceOfDamage) {
    std::string json = write_document(toy_of({6, 12, 18}));
    const auto at = json.find("12");
    json.replace(at, 2, "\"twelve\"");
    const auto loaded = load_document_file(write(QByteArray::fromStdString(json)));
    ASSERT_TRUE(loaded.problem);
    EXPECT_FALSE(loaded.problem->message.isEmpty());
    EXPECT_TRUE(loaded.problem->place.contains(QStringLiteral("/pieces/0/rounds/1")))
        << loaded.problem->place.toStdString();
}

TEST_F(DocumentFileTest, DamageLeavesTheOpenToyAlone) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    session.edit_piece(QStringLiteral("Name"), [](Piece& piece) { piece.name = "Snout"; });
    const std::string before = write_document(session.toy());
    for (const QByteArray& bytes : {QByteArray(), QByteArray("{"), QByteArray("\xff\xfe\x00"),
                                    QByteArray("[1,2]"), QByteArray(100'000, '[')}) {
        EXPECT_TRUE(session.open(write(bytes))) << bytes.left(10).toStdString();
        EXPECT_EQ(write_document(session.toy()), before);
        EXPECT_TRUE(session.path().isEmpty());
        EXPECT_TRUE(session.undo_stack().canUndo());
    }
}

TEST_F(DocumentFileTest, RefusesWhatIsNoFileOrTooLarge) {
    EXPECT_TRUE(load_document_file(folder.path()).problem);
    EXPECT_TRUE(load_document_file(folder.filePath(QStringLiteral("nowhere"))).problem);
    const QString path = folder.filePath(QStringLiteral("large"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_TRUE(file.resize(static_cast<qint64>(max_file_bytes) + 1));
    const auto loaded = load_document_file(path);
    ASSERT_TRUE(loaded.problem);
    EXPECT_TRUE(loaded.problem->message.contains(QStringLiteral("64")))
        << loaded.problem->message.toStdString();
}

// What would be too large to be opened again is not written over what is there.
TEST_F(DocumentFileTest, SavesNothingThatWouldNotOpenAgain) {
    const QString path = folder.filePath(QStringLiteral("pup.roundwright"));
    ASSERT_FALSE(save_document_file(path, toy_of({6, 12})));
    Toy vast = toy_of({6, 12, 18});
    vast.notes.assign(max_file_bytes, 'x');
    const auto problem = save_document_file(path, vast);
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->message.contains(QStringLiteral("64 MiB"))) << problem->message.toStdString();
    EXPECT_EQ(load_document_file(path).document.toy, toy_of({6, 12}));
}

TEST_F(DocumentFileTest, SaysWhenAFolderCannotBeWritten) {
    EXPECT_TRUE(save_document_file(QStringLiteral("/nowhere/at/all/pup.roundwright"), toy_of({6})));
}

/// No file may grow beyond this meanwhile: what a full disk is to a program.
class DiskIsFull {
  public:
    explicit DiskIsFull(rlim_t bytes) : signal_(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit now{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &now);
    }
    ~DiskIsFull() {
        setrlimit(RLIMIT_FSIZE, &before_);
        (void)std::signal(SIGXFSZ, signal_);
    }
    DiskIsFull(const DiskIsFull&) = delete;
    DiskIsFull& operator=(const DiskIsFull&) = delete;

  private:
    rlimit before_{};
    void (*signal_)(int);
};

// Small files fail when they are flushed, large ones when they are written.
TEST_F(DocumentFileTest, SaysWhyAFullDiskTakesNoMore) {
    const QString path = folder.filePath(QStringLiteral("pup.roundwright"));
    ASSERT_FALSE(save_document_file(path, toy_of({6})));
    for (const std::size_t rounds : {std::size_t{20}, max_rounds_per_piece}) {
        std::optional<FileProblem> problem;
        {
            const DiskIsFull full(100);
            Toy large = toy_of({6});
            large.pieces[0].rounds.resize(rounds);
            problem = save_document_file(path, large);
        }
        ASSERT_TRUE(problem) << rounds;
        EXPECT_TRUE(problem->message.startsWith(QStringLiteral("The file would be larger"))) << rounds;
        EXPECT_EQ(load_document_file(path).document.toy, toy_of({6})) << rounds;
    }
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files | QDir::Hidden).size(), 1);
}

TEST_F(DocumentFileTest, ADeviceIsWrittenToAndAFullOneSaysSo) {
    if (!is_device(QStringLiteral("/dev/full"))) GTEST_SKIP();
    const auto problem = save_document_file(QStringLiteral("/dev/full"), toy_of({6}));
    ASSERT_TRUE(problem);
    EXPECT_TRUE(problem->message.startsWith(QStringLiteral("The disk is full.")))
        << problem->message.toStdString();
    EXPECT_FALSE(save_document_file(QStringLiteral("/dev/null"), toy_of({6})));
}

TEST_F(DocumentFileTest, NamesThatMeanNothingAreKnownWhenTheToyIsOpen) {
    std::string json = write_document(toy_of({6, 12, 18}));
    json.replace(json.find("\"title\""), 7, "\"titel\"");
    DocumentSession session;
    ASSERT_FALSE(session.open(write(QByteArray::fromStdString(json))));
    ASSERT_EQ(session.not_understood().size(), 1u);
    EXPECT_EQ(unread_key_words(session.not_understood()[0]),
              QStringLiteral("at /titel: kept, but not understood. Did you mean “title”?"));
    ASSERT_FALSE(session.open(write(QByteArray::fromStdString(write_document(toy_of({6}))))));
    EXPECT_TRUE(session.not_understood().empty());
}

}  // namespace
}  // namespace roundwright::app
