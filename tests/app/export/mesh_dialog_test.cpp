#include "app/export/mesh_dialog.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QFile>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy two_balls() {
    Toy toy = toy_of({6, 12, 18, 18, 12, 6});
    toy.pieces.push_back(piece_of({6, 12, 12, 6}, "Nose"));
    return toy;
}

QByteArray contents(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

class MeshDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.start(two_balls());
        dialog = std::make_unique<MeshDialog>(session);
        dialog->show();
        choices = dialog->findChildren<QComboBox*>();
        ASSERT_EQ(choices.size(), 3);
        path = folder.filePath(QStringLiteral("balls"));
    }
    [[nodiscard]] QByteArray saved() const {
        EXPECT_FALSE(dialog->save_to(path).problem);
        return contents(path);
    }

    QTemporaryDir folder;
    QString path;
    DocumentSession session;
    std::unique_ptr<MeshDialog> dialog;
    QList<QComboBox*> choices;
};

TEST_F(MeshDialogTest, SavesThePieceOnShowAsGlb) {
    const QByteArray bytes = saved();
    EXPECT_TRUE(bytes.startsWith("glTF"));
    EXPECT_TRUE(bytes.contains("Head"));
    EXPECT_FALSE(bytes.contains("Nose"));
}

TEST_F(MeshDialogTest, SavesAllPiecesInARow) {
    choices[0]->setCurrentIndex(1);
    EXPECT_TRUE(saved().contains("Nose"));
}

TEST_F(MeshDialogTest, TheKeyboardChoosesTheKindOfFile) {
    choices[2]->setFocus();
    QTest::keyClick(choices[2], Qt::Key_Down);
    EXPECT_TRUE(saved().contains("\nv "));
    QTest::keyClick(choices[2], Qt::Key_Down);
    EXPECT_FALSE(saved().contains("\nv "));
}

TEST_F(MeshDialogTest, AnEndingThatIsTypedSaysTheKind) {
    path += QStringLiteral(".obj");
    EXPECT_TRUE(saved().contains("\nv "));
}

TEST_F(MeshDialogTest, ASmoothSurfaceIsSmaller) {
    const auto with_stitches = saved().size();
    choices[1]->setCurrentIndex(1);
    EXPECT_LT(saved().size(), with_stitches / 2);
}

TEST_F(MeshDialogTest, CanBeStoppedAndWritesNothingThen) {
    std::stop_source stop;
    stop.request_stop();
    render::Progress progress;
    progress.stop = stop.get_token();
    EXPECT_EQ(dialog->save_to(path, progress).problem, QString());
    EXPECT_FALSE(QFile::exists(path));
}

TEST_F(MeshDialogTest, SaysWhyAFileCannotBeWritten) {
    const auto problem = dialog->save_to(folder.filePath(QStringLiteral("no such folder/ball.glb"))).problem;
    ASSERT_TRUE(problem);
    EXPECT_FALSE(problem->isEmpty());
}

}  // namespace
}  // namespace roundwright::app
