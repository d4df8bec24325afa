#include "app/session/document_file.h"

#include <gtest/gtest.h>

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

TEST_F(DocumentFileTest, SaysWhenAFolderCannotBeWritten) {
    EXPECT_TRUE(save_document_file(QStringLiteral("/nowhere/at/all/pup.roundwright"), toy_of({6})));
}

}  // namespace
}  // namespace roundwright::app
