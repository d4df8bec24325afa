#include "app/gauge/finished_piece_dialog.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <memory>
#include <numbers>

#include <QCheckBox>
#include <QDir>
#include <QLabel>
#include <QPushButton>

#include "app/gauge/gauge_panel.h"
#include "app/kit/length_spin_box.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::HasSubstr;

class FinishedPieceDialogTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_units(LengthUnit::millimetres);
        Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
        toy.pieces[0].end = End::drawn_closed;
        session.start(toy);
        ASSERT_TRUE(wait_for_shape(session));
        width = session.study(0)->measures().width_mm;
        height = session.study(0)->measures().height_mm;
    }
    void TearDown() override { session.preferences().set_units(LengthUnit::millimetres); }

    void open() {
        dialog = std::make_unique<FinishedPieceDialog>(session);
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
    }
    LengthSpinBox* box(const QString& name) {
        for (auto* found : dialog->findChildren<LengthSpinBox*>())
            if (found->accessibleName() == name) return found;
        return nullptr;
    }
    void type(const QString& name, const QString& text) {
        auto* field = box(name);
        ASSERT_NE(field, nullptr) << name.toStdString();
        field->setFocus();
        QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(field, text);
        settle();
    }
    void settle() {
        ASSERT_TRUE(wait_until([&] { return !dialog->busy(); }));
        QCoreApplication::processEvents();
    }
    QPushButton* use() {
        for (auto* found : dialog->findChildren<QPushButton*>())
            if (found->text().remove(u'&') == QStringLiteral("Use this gauge")) return found;
        return nullptr;
    }
    QString number(double mm) { return QLocale().toString(mm, 'f', 1); }

    DocumentSession session;
    std::unique_ptr<FinishedPieceDialog> dialog;
    double width = 0;
    double height = 0;
};

TEST_F(FinishedPieceDialogTest, SaysWhatToTypeFirst) {
    open();
    EXPECT_FALSE(use()->isEnabled());
    EXPECT_EQ(dialog->answer().toStdString(), "Type a length above.");
}

TEST_F(FinishedPieceDialogTest, AnswersWhileItIsTypedAndTakesTheGaugeInOneStep) {
    open();
    type(QStringLiteral("Width"), number(width * 1.2));
    EXPECT_THAT(dialog->notes().toStdString(), HasSubstr("say little about"));
    type(QStringLiteral("Height"), number(height * 1.2));
    EXPECT_THAT(dialog->answer().toStdString(), HasSubstr("A stitch is 6.0\u00a0mm ("));
    EXPECT_THAT(dialog->notes().toStdString(), HasSubstr("close to the piece's stuffing"));
    EXPECT_TRUE(QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS)));
    EXPECT_TRUE(dialog->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/finished-piece.png")));

    const Toy before = session.toy();
    QTest::keyClick(box(QStringLiteral("Height")), Qt::Key_Return);
    EXPECT_FALSE(dialog->isVisible());
    ASSERT_TRUE(std::holds_alternative<GivenGauge>(session.toy().gauge));
    const GivenGauge& given = std::get<GivenGauge>(session.toy().gauge);
    EXPECT_NEAR(given.gauge.stitch_width_mm, 6, 0.1);
    EXPECT_GT(given.gauge.stitch_width_error_mm, 0.05);
    EXPECT_EQ(given.found_on, "Head");
    EXPECT_EQ(session.undo_stack().count(), 1);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NEAR(session.study(0)->measures().width_mm, width * 1.2, 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), before);
}

TEST_F(FinishedPieceDialogTest, KnownStuffingLeavesNothingFree) {
    open();
    type(QStringLiteral("Width"), number(width));
    type(QStringLiteral("Height"), number(height));
    for (auto* choice : dialog->findChildren<QCheckBox*>())
        if (choice->text().contains(QStringLiteral("stuffing"))) {
            choice->setFocus();
            QTest::keyClick(choice, Qt::Key_Space);
        }
    settle();
    EXPECT_EQ(dialog->notes().toStdString(), "");
}

TEST_F(FinishedPieceDialogTest, SaysWhichLengthDisagrees) {
    open();
    type(QStringLiteral("Width"), number(width + 15));
    type(QStringLiteral("Around the widest place"), number(std::numbers::pi * width));
    EXPECT_THAT(dialog->notes().toStdString(), HasSubstr("The width does not fit with the rest"));
    EXPECT_THAT(dialog->notes().toStdString(), HasSubstr("say little about how tall a round is"));
    type(QStringLiteral("Width"), QStringLiteral("0"));  // left out again
    EXPECT_THAT(dialog->notes().toStdString(), testing::Not(HasSubstr("does not go")));
}

TEST_F(FinishedPieceDialogTest, TypesAndAnswersInInches) {
    session.preferences().set_units(LengthUnit::inches);
    open();
    type(QStringLiteral("Width"), QLocale().toString(width / 25.4, 'f', 3));
    type(QStringLiteral("Height"), QLocale().toString(height / 25.4, 'f', 3));
    EXPECT_THAT(dialog->answer().toStdString(), HasSubstr("A stitch is 0.20\u00a0in ("));
    EXPECT_TRUE(dialog->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/finished-piece-inches.png")));
}

TEST_F(FinishedPieceDialogTest, ThePanelSaysWhereTheGaugeWasFound) {
    open();
    type(QStringLiteral("Width"), number(width));
    type(QStringLiteral("Height"), number(height));
    QTest::mouseClick(use(), Qt::LeftButton);
    GaugePanel panel(session);
    panel.show();
    const auto labels = panel.findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](QLabel* label) {
        return label->isVisible() && label->text() == QStringLiteral("Found on the finished Head.");
    }));
}

// A circle was measured before: it goes on counting beside the piece, and one undo takes the piece away.
TEST_F(FinishedPieceDialogTest, JoinsWhatWasMeasuredBefore) {
    const CircleGauge circle{.rounds = 5, .increases = 6, .across_mm = 50};
    session.edit(QStringLiteral("Circle"), [&](Toy toy) {
        toy.gauge = circle;
        return toy;
    });
    ASSERT_TRUE(wait_for_shape(session));
    open();
    type(QStringLiteral("Width"), number(width));
    type(QStringLiteral("Height"), number(height));
    QTest::keyClick(box(QStringLiteral("Height")), Qt::Key_Return);
    ASSERT_TRUE(std::holds_alternative<SeveralGauge>(session.toy().gauge));
    const auto measurements = std::get<SeveralGauge>(session.toy().gauge).measurements;
    ASSERT_EQ(measurements.size(), 2U);
    EXPECT_EQ(std::get<CircleGauge>(measurements[0].what), circle);
    EXPECT_TRUE(measurements[0].counts);
    EXPECT_EQ(std::get<FinishedPieceGauge>(measurements[1].what).measured.size(), 2U);
    EXPECT_FALSE(measurements[1].measured_on.empty());
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().gauge, GaugeSource(circle));
}

}  // namespace
}  // namespace roundwright::app
