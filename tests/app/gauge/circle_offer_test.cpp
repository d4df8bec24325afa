#include "app/gauge/circle_offer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QComboBox>
#include <QDir>
#include <QSignalSpy>

#include "app/gauge/gauge_panel.h"
#include "app/kit/length_spin_box.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

using testing::HasSubstr;

class CircleOfferTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_units(LengthUnit::millimetres);
        Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
        toy.gauge = EstimatedGauge{YarnWeight::light};
        toy.pieces[0].end = End::drawn_closed;
        session.start(toy);
        ASSERT_TRUE(wait_for_shape(session));
    }
    void TearDown() override { session.preferences().set_units(LengthUnit::millimetres); }

    DocumentSession session;
};

// One number and Enter.
TEST_F(CircleOfferTest, OneLengthAndEnterIsTheGauge) {
    GaugePanel panel(session);
    panel.resize(320, 640);
    panel.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&panel));
    ASSERT_NE(panel.offer(), nullptr);
    EXPECT_THAT(panel.offer()->expected().toStdString(), HasSubstr("Expected with this yarn and hook: "));
    EXPECT_THAT(panel.offer()->help().toStdString(), HasSubstr("one measured circle brings that to "));
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    EXPECT_TRUE(panel.grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/gauge-circle-offer.png")));
    QSignalSpy measured(&panel, &GaugePanel::circle_measured);
    panel.ask_for_circle();
    EXPECT_EQ(QApplication::focusWidget(), panel.offer()->across());
    QTest::keyClicks(panel.offer()->across(), QStringLiteral("51"));
    EXPECT_TRUE(std::holds_alternative<EstimatedGauge>(session.toy().gauge));
    QTest::keyClick(panel.offer()->across(), Qt::Key_Return);
    ASSERT_TRUE(std::holds_alternative<CircleGauge>(session.toy().gauge));
    EXPECT_EQ(std::get<CircleGauge>(session.toy().gauge),
              (CircleGauge{.rounds = 5, .increases = 6, .across_mm = 51}));
    EXPECT_EQ(panel.offer(), nullptr);
    EXPECT_EQ(measured.count(), 1);
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    ASSERT_NE(panel.offer(), nullptr);
    EXPECT_EQ(panel.offer()->across()->millimetres(), 0);
}

TEST_F(CircleOfferTest, FollowsHookYarnAndUnits) {
    GaugePanel panel(session);
    panel.show();
    const QString before = panel.offer()->expected();
    session.edit(QStringLiteral("Hook"), [](Toy toy) {
        toy.hook_mm = 5;
        return toy;
    });
    EXPECT_NE(panel.offer()->expected(), before);
    session.preferences().set_units(LengthUnit::inches);
    EXPECT_THAT(panel.offer()->expected().toStdString(), HasSubstr("in."));
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_THAT(panel.offer()->help().toStdString(), HasSubstr("in\u00a0wide"));
}

// What the words promise is what a circle of the expected size then gives.
TEST_F(CircleOfferTest, ThePromiseIsKept) {
    const auto study = session.study(0);
    ASSERT_TRUE(study->sizes->with_circle.has_value());
    const Range promised = study->sizes->with_circle->width_mm;
    session.edit(QStringLiteral("Circle"), [&](Toy toy) {
        toy.gauge = CircleGauge{.rounds = 5, .increases = 6, .across_mm = 10 * study->gauge.round_height_mm};
        return toy;
    });
    ASSERT_TRUE(wait_for_shape(session));
    const Range now = session.study(0)->size().width_mm;
    EXPECT_NEAR(now.high - now.low, promised.high - promised.low, 0.15 * (promised.high - promised.low));
    EXPECT_FALSE(session.study(0)->sizes->with_circle.has_value());
}

TEST_F(CircleOfferTest, AfterwardsTheNextMeasurementIsNamed) {
    session.edit(QStringLiteral("Circle"), [](Toy toy) {
        toy.gauge = CircleGauge{.rounds = 5, .increases = 6, .across_mm = 51};
        return toy;
    });
    GaugePanel panel(session);
    panel.show();
    ASSERT_TRUE(wait_until([&] { return !panel.busy(); }));
    EXPECT_THAT(panel.next().toStdString(), HasSubstr("What would help most: "));
}

}  // namespace
}  // namespace roundwright::app
