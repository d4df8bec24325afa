#include "app/export/picture_dialog.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QSvgRenderer>

#include "render/drawing/contrast.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class PictureDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.start(toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6}));
        dialog = std::make_unique<PictureDialog>(session, nullptr);
        dialog->show();
    }
    [[nodiscard]] QString path(const char* name) const { return folder.filePath(QLatin1String(name)); }

    QTemporaryDir folder;
    DocumentSession session;
    std::unique_ptr<PictureDialog> dialog;
};

int opaque_pixels(const QImage& image) {
    int opaque = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x) opaque += qAlpha(image.pixel(x, y)) == 255;
    return opaque;
}

TEST_F(PictureDialogTest, SavesAPictureOfTheSizeWantedWithNothingBehindIt) {
    const auto boxes = dialog->findChildren<QSpinBox*>();
    ASSERT_EQ(boxes.size(), 2);
    boxes[0]->setValue(300);
    boxes[1]->setValue(200);
    ASSERT_FALSE(dialog->save_to(path("ball.png")).problem);
    const QImage image(path("ball.png"));
    EXPECT_EQ(image.size(), QSize(300, 200));
    EXPECT_EQ(qAlpha(image.pixel(2, 2)), 0);
    // A ball as high as the picture, less a margin.
    EXPECT_GT(opaque_pixels(image), 300 * 200 / 4);
}

TEST_F(PictureDialogTest, ALineGoesAroundTheShapeWhereItIsWanted) {
    ASSERT_FALSE(dialog->save_to(path("plain.png")).problem);
    auto* line = dialog->findChild<QCheckBox*>();
    QTest::keyClick(line, Qt::Key_Space);
    ASSERT_TRUE(line->isChecked());
    ASSERT_FALSE(dialog->save_to(path("lined.png")).problem);
    const QImage plain(path("plain.png")), lined(path("lined.png"));
    ASSERT_EQ(plain.size(), lined.size());
    const int y = plain.height() / 2;
    int x = 0;
    while (qAlpha(plain.pixel(x, y)) < 255) ++x;
    EXPECT_EQ(lined.pixel(x + 8, y), plain.pixel(x + 8, y)) << "the shape stays as it is";
    EXPECT_EQ(qAlpha(plain.pixel(x - 3, y)), 0);
    EXPECT_EQ(qAlpha(lined.pixel(x - 3, y)), 255);
    EXPECT_GE(render::contrast_ratio(lined.pixelColor(x - 3, y), Qt::white), 3);
    EXPECT_EQ(qAlpha(lined.pixel(2, 2)), 0);
}

TEST_F(PictureDialogTest, AWhiteBackgroundFillsThePicture) {
    const auto choices = dialog->findChildren<QComboBox*>();
    choices.back()->setFocus();
    QTest::keyClick(choices.back(), Qt::Key_Down);
    ASSERT_EQ(choices.back()->currentText(), QStringLiteral("White"));
    ASSERT_FALSE(dialog->save_to(path("ball.png")).problem);
    EXPECT_EQ(QImage(path("ball.png")).pixel(2, 2), qRgb(255, 255, 255));
}

TEST_F(PictureDialogTest, SavesADrawingByItsEnding) {
    ASSERT_FALSE(dialog->save_to(path("ball.svg")).problem);
    QSvgRenderer drawing(path("ball.svg"));
    EXPECT_TRUE(drawing.isValid());
}

TEST_F(PictureDialogTest, SaysWhyAFileCannotBeWritten) {
    const auto problem = dialog->save_to(path("no such folder/ball.png")).problem;
    ASSERT_TRUE(problem);
    EXPECT_FALSE(problem->isEmpty());
}

TEST_F(PictureDialogTest, ThePreviewFollowsTheView) {
    auto* preview = dialog->findChild<QLabel*>(QString(), Qt::FindDirectChildrenOnly);
    ASSERT_NE(preview, nullptr);
    const QImage front = preview->pixmap().toImage();
    dialog->findChildren<QComboBox*>().front()->setCurrentText(QStringLiteral("Top"));
    EXPECT_NE(preview->pixmap().toImage(), front);
}

TEST(PictureDialog, APieceWithoutAShapeIsNotWritten) {
    DocumentSession session;
    session.start(toy_of({}));
    const PictureDialog dialog(session, nullptr);
    const QTemporaryDir folder;
    EXPECT_TRUE(dialog.save_to(folder.filePath(QStringLiteral("nothing.png"))).problem);
}

}  // namespace
}  // namespace roundwright::app
