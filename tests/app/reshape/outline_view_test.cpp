#include "app/reshape/outline_view.h"

#include <gtest/gtest.h>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Silhouette diamond() { return {{Vec2(0, 0), Vec2(20, 15), Vec2(30, 30), Vec2(20, 45), Vec2(0, 60)}}; }

class OutlineViewTest : public ::testing::Test {
  protected:
    void SetUp() override {
        preferences.set_units(LengthUnit::millimetres);
        view.resize(400, 400);
        view.set_drawn(diamond());
        view.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&view));
        view.setFocus();
        QObject::connect(&view, &OutlineView::nudged, &view, [this](const Vec2& by) { nudge = by; });
        QObject::connect(&view, &OutlineView::dragged, &view, [this](const Vec2& by) { drag = by; });
    }

    Preferences preferences;
    OutlineView view{preferences};
    Vec2 nudge = Vec2::Zero();
    Vec2 drag = Vec2::Zero();
};

TEST_F(OutlineViewTest, ArrowsChooseAndMoveTheHandle) {
    view.set_handle(2);
    QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_EQ(view.handle(), 3);
    QTest::keyClick(&view, Qt::Key_Home);
    EXPECT_EQ(view.handle(), 0);
    QTest::keyClick(&view, Qt::Key_End);
    EXPECT_EQ(view.handle(), 4);
    QTest::keyClick(&view, Qt::Key_Right);
    EXPECT_EQ(nudge, Vec2(1, 0));
    QTest::keyClick(&view, Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_EQ(nudge, Vec2(-5, 0));
    QTest::keyClick(&view, Qt::Key_PageUp);
    EXPECT_EQ(nudge, Vec2(0, 1));
}

TEST_F(OutlineViewTest, APieceThatStartsAtItsTopIsDrawnThatWay) {
    EXPECT_GT(view.handle_position(0).y(), view.handle_position(4).y());
    view.set_starts_at_top(true);
    EXPECT_LT(view.handle_position(0).y(), view.handle_position(4).y());
    view.set_handle(2);
    QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_EQ(view.handle(), 1);
    QTest::keyClick(&view, Qt::Key_PageUp);
    EXPECT_EQ(nudge, Vec2(0, -1));
}

TEST_F(OutlineViewTest, AHandleIsDraggedByTheMouse) {
    const QPoint at = view.handle_position(2).toPoint();
    QTest::mousePress(&view, Qt::LeftButton, {}, at);
    EXPECT_EQ(view.handle(), 2);
    QTest::mouseMove(&view, at + QPoint(30, 0));
    const double mm = 30 * 60.0 / (view.handle_position(0).y() - view.handle_position(4).y());
    EXPECT_NEAR(drag.x(), mm, 0.3);
    EXPECT_NEAR(drag.y(), 0, 0.3);
    QTest::mouseMove(&view, at + QPoint(30, -30));
    EXPECT_NEAR(drag.y(), mm, 0.3);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, at + QPoint(30, -30));
    drag = Vec2::Zero();
    QTest::mouseMove(&view, at);
    EXPECT_EQ(drag, Vec2(0, 0));
}

TEST_F(OutlineViewTest, EscapeGivesADragUp) {
    bool cancelled = false;
    QObject::connect(&view, &OutlineView::drag_cancelled, &view, [&] { cancelled = true; });
    const QPoint at = view.handle_position(2).toPoint();
    QTest::mousePress(&view, Qt::LeftButton, {}, at);
    QTest::mouseMove(&view, at + QPoint(10, 0));
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_TRUE(cancelled);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, at);
}

TEST_F(OutlineViewTest, SaysWhereTheHandleIs) {
    view.set_handle(2);
    EXPECT_EQ(view.handle_words(), QStringLiteral("Round 2: 60\u00A0mm across, 30\u00A0mm up"));
    EXPECT_EQ(view.accessibleDescription(), view.handle_words());
    view.set_handle(4);
    EXPECT_TRUE(view.handle_words().startsWith(QStringLiteral("Closed end")));
}

TEST_F(OutlineViewTest, WithNothingToMoveItTakesNoFocus) {
    view.set_drawn(std::nullopt);
    EXPECT_EQ(view.focusPolicy(), Qt::NoFocus);
    EXPECT_EQ(view.handle_words(), QString());
}

}  // namespace
}  // namespace roundwright::app
