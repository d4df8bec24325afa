#include "app/gauge/several_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QDate>
#include <QDir>
#include <QLineEdit>
#include <QListView>
#include <QToolButton>

#include "app/gauge/gauge_panel.h"
#include "app/gauge/measurement_dialog.h"
#include "app/kit/length_spin_box.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::HasSubstr;

GaugeMeasurement circle(double across_mm, const char* day) {
    return {CircleGauge{.rounds = 5, .increases = 6, .across_mm = across_mm}, {}, day};
}

class SeveralPageTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_units(LengthUnit::millimetres);
        Toy toy = toy_of({6, 12, 18, 24, 24, 18, 12, 6});
        toy.gauge =
            SeveralGauge{{circle(52, "2026-05-01"), circle(52.5, "2026-05-02"), circle(58, "2026-05-03")}};
        session.start(toy);
        panel = std::make_unique<GaugePanel>(session);
        panel->resize(320, 640);
        panel->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(panel.get()));
    }
    [[nodiscard]] const std::vector<GaugeMeasurement>& measurements() const {
        return std::get<SeveralGauge>(session.toy().gauge).measurements;
    }
    QToolButton* button(const QString& words) {
        for (auto* found : panel->several().findChildren<QToolButton*>())
            if (found->text().remove(u'&') == words) return found;
        return nullptr;
    }
    QListView& list() { return panel->several().list(); }
    MeasurementDialog* dialog() { return panel->findChild<MeasurementDialog*>(); }

    DocumentSession session;
    std::unique_ptr<GaugePanel> panel;
};

TEST_F(SeveralPageTest, SaysWhatEachIsAndWhichDisagrees) {
    EXPECT_EQ(list().model()->rowCount(), 3);
    const std::string third = list().model()->index(2, 0).data().toString().toStdString();
    EXPECT_THAT(third, HasSubstr("The circle of 3 May 2026"));
    EXPECT_THAT(third, HasSubstr("counts for 34\u00a0%"));
    EXPECT_THAT(third, HasSubstr("5 rounds of 6, 58.0\u00a0mm across"));
    EXPECT_THAT(panel->several().disagreement().toStdString(),
                HasSubstr("The circle of 3 May 2026 gives stitches 11\u00a0% larger than the others."));
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    EXPECT_TRUE(panel->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/gauge-several.png")));
}

TEST_F(SeveralPageTest, TheSpaceBarLeavesOneOutInOneStep) {
    list().setFocus();
    list().setCurrentIndex(list().model()->index(2, 0));
    QTest::keyClick(&list(), Qt::Key_Space);
    EXPECT_FALSE(measurements()[2].counts);
    EXPECT_EQ(panel->several().disagreement(), QString());
    EXPECT_THAT(list().model()->index(2, 0).data().toString().toStdString(), HasSubstr("left out"));
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_TRUE(measurements()[2].counts);
}

TEST_F(SeveralPageTest, DeletingAllComesBackToTheEstimate) {
    for (int left = 2; left >= 0; --left) {
        list().setCurrentIndex(list().model()->index(0, 0));
        QTest::mouseClick(button(QStringLiteral("Delete")), Qt::LeftButton);
        EXPECT_EQ(list().model()->rowCount(), left);
    }
    EXPECT_TRUE(std::holds_alternative<EstimatedGauge>(session.toy().gauge));
    EXPECT_EQ(session.undo_stack().count(), 3);
    for (int i = 0; i < 3; ++i) session.undo_stack().undo();
    EXPECT_EQ(measurements().size(), 3U);
}

TEST_F(SeveralPageTest, AnotherCircleIsAddedByKeysAlone) {
    panel->ask_for_circle();
    ASSERT_NE(dialog(), nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog()));
    LengthSpinBox* across = nullptr;
    for (auto* box : dialog()->findChildren<LengthSpinBox*>())
        if (box->accessibleName() == QStringLiteral("Across the gauge circle")) across = box;
    ASSERT_NE(across, nullptr);
    dialog()->activateWindow();
    across->setFocus();
    ASSERT_TRUE(wait_until([&] { return QApplication::focusWidget() == across; }));
    QTest::keyClicks(across, QStringLiteral("51"));
    QTest::keyClick(across, Qt::Key_Tab);
    auto* name = dialog()->findChildren<QLineEdit*>().last();
    for (auto* line : dialog()->findChildren<QLineEdit*>())
        if (line->placeholderText() == QStringLiteral("if you like")) name = line;
    name->setFocus();
    EXPECT_EQ(across->millimetres(), 51);
    QTest::keyClicks(name, QStringLiteral("grey"));
    QTest::keyClick(name, Qt::Key_Return);
    ASSERT_EQ(measurements().size(), 4U);
    EXPECT_EQ(measurements()[3].name, "grey");
    EXPECT_EQ(measurements()[3].measured_on, QDate::currentDate().toString(Qt::ISODate).toStdString());
    EXPECT_EQ(std::get<CircleGauge>(measurements()[3].what).across_mm, 51);
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(SeveralPageTest, AnEmptyCircleIsNotUsed) {
    panel->ask_for_circle();
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog()));
    QTest::keyClick(dialog(), Qt::Key_Return);
    EXPECT_EQ(measurements().size(), 3U);
    QTest::keyClick(dialog(), Qt::Key_Escape);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST(MeasurementsModel, FollowsTheToy) {
    DocumentSession session;
    MeasurementsModel model(session);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    session.start(toy_of({6, 12}));
    EXPECT_EQ(model.rowCount(), 1);
    model.add(circle(50, ""));
    model.add(circle(51, ""));
    EXPECT_EQ(model.rowCount(), 3);
    EXPECT_TRUE(model.setData(model.index(1), Qt::Unchecked, Qt::CheckStateRole));
    EXPECT_FALSE(model.setData(model.index(1), Qt::Unchecked, Qt::CheckStateRole));
    EXPECT_EQ(model.index(1).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    model.replace(2, circle(53, ""));
    model.remove(0);
    EXPECT_EQ(model.rowCount(), 2);
    while (session.undo_stack().canUndo()) session.undo_stack().undo();
    EXPECT_EQ(model.rowCount(), 1);
    session.start(Toy{});
    EXPECT_EQ(model.rowCount(), 0);
}

}  // namespace
}  // namespace roundwright::app
