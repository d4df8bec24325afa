#include "render/scene/scene_view.h"

#include <gtest/gtest.h>
#include <memory>

#include <QApplication>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "render/scene/painter_scene_view.h"
#include "tests/render/scene/example_surfaces.h"

namespace roundwright::render {
namespace {

struct Shown {
    QWidget window;
    PainterSceneView* view;

    Shown() : view(new PainterSceneView(&window)) {
        auto* layout = new QVBoxLayout(&window);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->addWidget(view->widget());
        window.resize(400, 360);
        window.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window));
    }
    [[nodiscard]] QWidget* canvas() const { return view->widget()->focusProxy(); }
    [[nodiscard]] QPoint middle() const { return canvas()->rect().center(); }
};

TEST(SceneView, ClickNamesTheStitchAndDragDoesNot) {
    Shown shown;
    shown.view->set_surface(test::ball_surface(6));
    QSignalSpy clicks(shown.view, &SceneView::clicked);
    QTest::mouseClick(shown.canvas(), Qt::LeftButton, {}, shown.middle());
    ASSERT_EQ(clicks.size(), 1);
    EXPECT_EQ(clicks[0][0].toInt(), shown.view->hit(shown.middle())->round);
    EXPECT_GE(clicks[0][0].toInt(), 6);
    QTest::mousePress(shown.canvas(), Qt::LeftButton, {}, shown.middle());
    QTest::mouseMove(shown.canvas(), shown.middle() + QPoint(60, 0));
    QTest::mouseRelease(shown.canvas(), Qt::LeftButton, {}, shown.middle() + QPoint(60, 0));
    EXPECT_EQ(clicks.size(), 1);
    QTest::mouseClick(shown.canvas(), Qt::LeftButton, {}, {3, 3});
    ASSERT_EQ(clicks.size(), 2);
    EXPECT_EQ(clicks[1][0].toInt(), -1);
}

}  // namespace
}  // namespace roundwright::render
