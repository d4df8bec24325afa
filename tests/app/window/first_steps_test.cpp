#include <gtest/gtest.h>

#include "app/gauge/circle_offer.h"
#include "app/gauge/gauge_panel.h"
#include "app/kit/length_spin_box.h"
#include "app/kit/notice_bar.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

Toy estimated_toy() {
    Toy toy = toy_of({6, 12, 18, 18, 12, 6});
    toy.gauge = EstimatedGauge{YarnWeight::light};
    return toy;
}

// From the rounds to a measured gauge and back with keys alone.
TEST(FirstSteps, TheGaugeCircleTakesOneShortcutAndOneLength) {
    MakerAtTheWindow maker(estimated_toy());
    maker.table().setFocus();
    maker.press(Qt::Key_G, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(maker.window->panels().open_key(), QStringLiteral("gauge"));
    auto* panel = maker.window->findChild<GaugePanel*>();
    ASSERT_NE(panel->offer(), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), panel->offer()->across());
    maker.type(QStringLiteral("51"));
    maker.press(Qt::Key_Return);
    ASSERT_TRUE(std::holds_alternative<CircleGauge>(maker.session.toy().gauge));
    EXPECT_EQ(std::get<CircleGauge>(maker.session.toy().gauge).across_mm, 51);
    EXPECT_EQ(QApplication::focusWidget(), maker.window->fast_entry().line());
    maker.press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(std::holds_alternative<EstimatedGauge>(maker.session.toy().gauge));
}

TEST(FirstSteps, ANewToyOffersTheCircleAndLeavesTheKeyboardToTheRounds) {
    MakerAtTheWindow maker(estimated_toy());
    maker.window->panels().open_section(QStringLiteral("yarn"));
    maker.press(Qt::Key_N, Qt::ControlModifier);
    EXPECT_EQ(maker.window->panels().open_key(), QStringLiteral("gauge"));
    EXPECT_NE(maker.window->findChild<GaugePanel*>()->offer(), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), maker.window->fast_entry().line());
}

TEST(FirstSteps, TheFirstFinishedPieceIsAskedForInANotice) {
    MakerAtTheWindow maker(estimated_toy());
    maker.table().setFocus();
    maker.session.select_rounds({5});
    maker.press(Qt::Key_F9, Qt::ShiftModifier);
    EXPECT_TRUE(maker.window->notices().causes().contains(QStringLiteral("finished-piece")));
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_TRUE(maker.table().hasFocus());
}

}  // namespace
}  // namespace roundwright::app
