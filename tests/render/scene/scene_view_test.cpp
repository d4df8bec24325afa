#include "render/scene/scene_view.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <QAccessible>
#include <QApplication>
#include <QDir>
#include <QLineEdit>
#include <QScreen>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <QWindow>

#include "render/drawing/contrast.h"
#include "render/raster/scene_frame.h"
#include "render/scene/gl_probe.h"
#include "render/scene/painter_scene_view.h"
#include "render/scene/stepping_ground.h"
#include "tests/render/scene/example_surfaces.h"
#include "tests/render/scene/silhouette_contrast.h"

namespace roundwright::render {
namespace {

constexpr int settle_ms = 400;
constexpr int wait_ms = 30'000;

/// The view in a window, and a way to send it events whichever way it is drawn.
class SceneViewTest : public ::testing::TestWithParam<const char*> {
  protected:
    void SetUp() override {
        qputenv("ROUNDWRIGHT_VIEW", GetParam());
        if (on_card() && !opengl_found().has_3_2) {
            if (qEnvironmentVariableIsSet("ROUNDWRIGHT_NEEDS_OPENGL"))
                FAIL() << "no OpenGL 3.2 on this display";
            GTEST_SKIP() << "no OpenGL 3.2 on this display, so no Qt3D view";
        }
        window_ = std::make_unique<QWidget>();
        view_ = make_scene_view(window_.get());
        auto* layout = new QVBoxLayout(window_.get());
        layout->setContentsMargins(0, 0, 0, 0);
        above_ = new QLineEdit;
        below_ = new QLineEdit;
        layout->addWidget(above_);
        layout->addWidget(view_->widget());
        layout->addWidget(below_);
        window_->setGeometry(0, 0, 420, 460);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        if (on_card()) {
            ASSERT_TRUE(QTest::qWaitFor([] { return native() && native()->isExposed(); }));
        }
    }
    void TearDown() override { qunsetenv("ROUNDWRIGHT_VIEW"); }

    [[nodiscard]] static bool on_card() { return std::string(GetParam()) == "qt3d"; }
    [[nodiscard]] QWidget* inner() const { return view_->widget()->focusProxy(); }
    [[nodiscard]] static QWindow* native() {
        for (QWindow* window : QGuiApplication::allWindows()) {
            if (window->inherits("Qt3DExtras::Qt3DWindow")) return window;
        }
        return nullptr;
    }
    [[nodiscard]] bool ring() const { return qobject_cast<SceneFrame*>(view_->widget())->ring(); }
    [[nodiscard]] QPoint middle() const { return inner()->rect().center(); }

    void press(QPoint at, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers keys = {}) const {
        on_card() ? QTest::mousePress(native(), button, keys, at)
                  : QTest::mousePress(inner(), button, keys, at);
    }
    void release(QPoint at, Qt::MouseButton button = Qt::LeftButton, Qt::KeyboardModifiers keys = {}) const {
        on_card() ? QTest::mouseRelease(native(), button, keys, at)
                  : QTest::mouseRelease(inner(), button, keys, at);
    }
    void move(QPoint at, Qt::MouseButtons held = {}, Qt::KeyboardModifiers keys = {}) const {
        QObject* target = on_card() ? static_cast<QObject*>(native()) : inner();
        QMouseEvent event(QEvent::MouseMove, at, inner()->mapToGlobal(at), Qt::NoButton, held, keys);
        QCoreApplication::sendEvent(target, &event);
    }
    void drag(QPoint from, QPoint to, Qt::MouseButton button = Qt::LeftButton,
              Qt::KeyboardModifiers keys = {}) const {
        press(from, button, keys);
        for (int i = 1; i <= 10; ++i) move(from + (to - from) * i / 10, button, keys);
        release(to, button, keys);
    }
    void click(QPoint at) const {
        press(at);
        release(at);
    }
    void wheel(int delta) const {
        QObject* target = on_card() ? static_cast<QObject*>(native()) : inner();
        QWheelEvent event(middle(), inner()->mapToGlobal(middle()), {}, {0, delta}, Qt::NoButton, {},
                          Qt::NoScrollPhase, false);
        QCoreApplication::sendEvent(target, &event);
    }
    void key(int which, Qt::KeyboardModifiers keys = {}) const {
        QObject* target = on_card() ? static_cast<QObject*>(native()) : inner();
        QKeyEvent event(QEvent::KeyPress, which, keys);
        QCoreApplication::sendEvent(target, &event);
    }
    /// What the screen shows of the view, once it rests.
    [[nodiscard]] QImage seen() const {
        const QRect place(inner()->mapTo(window_.get(), QPoint(0, 0)), inner()->size());
        if (const auto* painter = dynamic_cast<PainterSceneView*>(view_)) {
            EXPECT_TRUE(QTest::qWaitFor([painter] { return painter->is_fine(); }, wait_ms));
            return window_->grab(place).toImage();
        }
        const auto grab = [&] {
            return window_->screen()->grabWindow(window_->winId()).toImage().copy(place);
        };
        QTest::qWait(settle_ms);
        QImage last = grab();
        for (int i = 0; i < 20; ++i) {
            QTest::qWait(settle_ms / 2);
            const QImage now = grab();
            if (now == last) break;
            last = now;
        }
        return last;
    }
    void save(const QImage& image, const QString& name) const {
        QDir().mkpath(QStringLiteral(ROUNDWRIGHT_PICTURES));
        EXPECT_TRUE(image.save(
            QStringLiteral(ROUNDWRIGHT_PICTURES "/%1_%2.png").arg(QLatin1String(GetParam()), name)));
    }
    [[nodiscard]] static int different_pixels(const QImage& a, const QImage& b, int by = 24) {
        int count = 0;
        for (int y = 0; y < std::min(a.height(), b.height()); ++y) {
            for (int x = 0; x < std::min(a.width(), b.width()); ++x) {
                const QColor p = a.pixelColor(x, y), q = b.pixelColor(x, y);
                count += std::abs(p.red() - q.red()) + std::abs(p.green() - q.green()) +
                             std::abs(p.blue() - q.blue()) >
                         by;
            }
        }
        return count;
    }

    std::unique_ptr<QWidget> window_;
    SceneView* view_ = nullptr;
    QLineEdit* above_ = nullptr;
    QLineEdit* below_ = nullptr;
};

/// WCAG 2.2, 1.4.11: yarn of dark and light in one piece has a rim, which goes with it.
TEST_P(SceneViewTest, ARimIsAroundDarkAndLightYarn) {
    const auto* camera_view = dynamic_cast<const CameraSceneView*>(view_);
    for (const QColor& usual : {QColor(0xec, 0xea, 0xe5), QColor(0x2a, 0x2f, 0x34)}) {
        view_->set_surface(test::striped_ball_surface(6, {{12, 12, 14}, {250, 248, 242}}));
        set_stepping_ground(*view_, usual);
        ASSERT_TRUE(QTest::qWaitFor([&] { return camera_view->rim().has_value(); }, wait_ms));
        const QImage shown = seen();
        save(shown, QStringLiteral("rim_on_%1").arg(usual.name().mid(1)));
        EXPECT_GE(test::least_contrast_along(view_->picture(shown.size(), Qt::transparent), shown,
                                             shown.pixelColor(3, 3)),
                  3.0);
        EXPECT_LT(contrast_ratio(shown.pixelColor(3, 3), usual), 1.05) << "the ground has stepped aside too";
        view_->set_surface(test::ball_surface(6));
        ASSERT_TRUE(QTest::qWaitFor([&] { return !camera_view->rim().has_value(); }, wait_ms));
    }
}

TEST_P(SceneViewTest, ShowsTheSurfaceWhereItIs) {
    view_->set_background(QColor(30, 60, 200));
    view_->set_surface(test::ball_surface(6));
    const QImage image = seen();
    save(image, QStringLiteral("surface"));
    const auto there = [&](double x, double y) { return view_->hit({x, y}).has_value(); };
    int wrong = 0, compared = 0;
    for (int y = 6; y < image.height() - 6; y += 11) {
        for (int x = 6; x < image.width() - 6; x += 11) {
            const bool inside = there(x, y);
            const bool by_outline = there(x + 4, y) != inside || there(x - 4, y) != inside ||
                                    there(x, y + 4) != inside || there(x, y - 4) != inside;
            if (by_outline) continue;
            const QColor c = image.pixelColor(x, y);
            wrong += inside != (c.blue() < c.red() + 40);
            ++compared;
        }
    }
    EXPECT_EQ(wrong, 0);
    EXPECT_GT(compared, 800);
    EXPECT_TRUE(view_->hit(middle()));
    EXPECT_FALSE(view_->hit({2, 2}));
}

/// Mean difference of a channel, of 255, over the pixels that are not background.
double mean_difference(const QImage& a, const QImage& b, const QColor& background) {
    double sum = 0;
    int pixels = 0;
    for (int y = 0; y < a.height(); ++y) {
        for (int x = 0; x < a.width(); ++x) {
            const QColor p = a.pixelColor(x, y), q = b.pixelColor(x, y);
            if (p == background && q == background) continue;
            sum +=
                std::abs(p.red() - q.red()) + std::abs(p.green() - q.green()) + std::abs(p.blue() - q.blue());
            pixels += 3;
        }
    }
    return sum / std::max(1, pixels);
}

// Relief, shade of the hollows, plies and pile: pixel by pixel, but for the finer outlines of the
// processor's.
TEST_P(SceneViewTest, BothWaysOfDrawingAgree) {
    const QColor background(246, 245, 242);
    view_->set_background(background);
    const std::pair<const char*, StitchSurface> surfaces[] = {
        {"striped", test::striped_ball_surface(6, {{150, 60, 70}, {235, 225, 210}})},
        {"white", test::striped_ball_surface(6, {{255, 255, 255}})},
        {"brushed", test::brushed_ball_surface(6, {176, 138, 90})},
        {"open", test::tube_surface(30, 8)}};
    for (const auto& [name, surface] : surfaces) {
        view_->set_surface(surface);
        view_->set_lit_rounds(name == std::string("striped") ? std::vector<int>{9} : std::vector<int>{});
        view_->set_parts(
            name == std::string("white")
                ? std::vector<ScenePart>{{test::sphere_mesh(Vec3(10, 35, 25), 9, 48, {20, 18, 18}),
                                          Finish::glossy, false}}
                : std::vector<ScenePart>{});
        view_->set_ghost(name == std::string("open")
                             ? std::optional(test::sphere_mesh(Vec3(0, 20, 0), 30, 64, {}))
                             : std::nullopt);
        view_->fit();
        const QImage image = seen();
        const QImage drawn = view_->picture(image.size(), background);
        save(image, QLatin1String(name));
        save(drawn, QLatin1String(name) + QStringLiteral("_by_processor"));
        EXPECT_LT(mean_difference(image, drawn, background), 3) << name;
        RecordProperty(name, std::to_string(mean_difference(image, drawn, background)));
        EXPECT_LT(different_pixels(image, drawn, 60), image.width() * image.height() / 40) << name;
    }
}

TEST_P(SceneViewTest, LitRoundChangesTheStripeAndComesOff) {
    view_->set_background(Qt::white);
    view_->set_surface(test::ball_surface(6));
    const QImage plain = seen();
    view_->set_lit_rounds({9});
    const QImage lit = seen();
    save(lit, QStringLiteral("lit"));
    EXPECT_GT(different_pixels(plain, lit), 1000);
    view_->set_lit_rounds({});
    EXPECT_EQ(different_pixels(plain, seen()), 0);
    view_->set_lit_rounds({4000});
    EXPECT_FALSE(seen().isNull());
}

TEST_P(SceneViewTest, GhostAndPartsComeAndGo) {
    view_->set_background(Qt::white);
    view_->set_surface(test::ball_surface(6));
    const QImage plain = seen();
    view_->set_parts({{test::sphere_mesh(Vec3(0, 30, 60), 6, 48, {20, 18, 18}), Finish::glossy, false}});
    view_->set_ghost(test::ball_surface(7, false).mesh);
    const QImage both = seen();
    save(both, QStringLiteral("ghost"));
    EXPECT_GT(different_pixels(plain, both), 1000);
    view_->set_parts({});
    view_->set_ghost(std::nullopt);
    view_->fit();
    EXPECT_EQ(different_pixels(plain, seen()), 0);
}

TEST_P(SceneViewTest, ClickNamesTheStitchAndDragDoesNot) {
    view_->set_surface(test::ball_surface(6));
    QSignalSpy clicks(view_, &SceneView::clicked);
    click(middle());
    ASSERT_EQ(clicks.size(), 1);
    EXPECT_EQ(clicks[0][0].toInt(), view_->hit(middle())->round);
    EXPECT_EQ(clicks[0][1].toInt(), view_->hit(middle())->stitch);
    EXPECT_GE(clicks[0][0].toInt(), 6);
    drag(middle(), middle() + QPoint(60, 0));
    EXPECT_EQ(clicks.size(), 1);
    click({3, 3});
    ASSERT_EQ(clicks.size(), 2);
    EXPECT_EQ(clicks[1][0].toInt(), -1);
    EXPECT_EQ(clicks[1][1].toInt(), -1);
}

// 120,000 stitches have fewer triangles than that.
TEST_P(SceneViewTest, NamesTheStitchWhereTrianglesAreLargerThanStitches) {
    const StitchSurface tube = test::tube_surface(600, 200);
    ASSERT_LT(tube.mesh.triangle_count(), 2 * tube.stitches.size());
    view_->set_surface(tube);
    for (const QPointF at : {QPointF(200, 200), QPointF(150, 120), QPointF(230, 260)}) {
        const auto hit = view_->hit(at);
        ASSERT_TRUE(hit);
        const auto first = tube.first_stitch_of_round[static_cast<std::size_t>(hit->round)];
        const auto& corners = tube.stitches[first + static_cast<std::size_t>(hit->stitch)].corners;
        const Vec3 middle = (corners[0] + corners[1] + corners[2] + corners[3]) / 4;
        EXPECT_LT((middle - hit->point).norm(), 5) << "within a stitch";
    }
}

TEST_P(SceneViewTest, HoverIsToldOncePerStitch) {
    view_->set_surface(test::ball_surface(6));
    QSignalSpy hovers(view_, &SceneView::hovered);
    move(middle());
    EXPECT_TRUE(QTest::qWaitFor([&] { return hovers.size() == 1; }));
    move(middle());
    QTest::qWait(100);
    EXPECT_EQ(hovers.size(), 1);
    move({2, 2});
    EXPECT_TRUE(QTest::qWaitFor([&] { return hovers.size() == 2; }));
    ASSERT_EQ(hovers.size(), 2);
    EXPECT_EQ(hovers[1][0].toInt(), -1);
}

TEST_P(SceneViewTest, DragTurnsAndTheOtherDragsMove) {
    view_->set_surface(test::ball_surface(6));
    const auto before = *view_->hit(middle());
    const double scale = view_->pixels_per_mm();
    drag(middle(), middle() + QPoint(50, 0));
    const auto turned = *view_->hit(middle());
    EXPECT_GT((turned.point - before.point).norm(), 5);
    EXPECT_NEAR(view_->pixels_per_mm(), scale, 1e-9);
    const auto kept = *view_->hit(middle());
    for (const bool by_middle_button : {true, false}) {
        const QPoint step(40, 20);
        by_middle_button ? drag(middle(), middle() + step, Qt::MiddleButton)
                         : drag(middle(), middle() - step, Qt::LeftButton, Qt::ShiftModifier);
        const auto moved = view_->hit(middle() + (by_middle_button ? step : QPoint(0, 0)));
        ASSERT_TRUE(moved);
        EXPECT_NEAR((moved->point - kept.point).norm(), 0, 2.5);
    }
}

TEST_P(SceneViewTest, WheelAndKeysZoomAndHomeFits) {
    view_->set_surface(test::ball_surface(6));
    QSignalSpy moves(view_, &SceneView::camera_changed);
    const double fitted = view_->pixels_per_mm();
    wheel(120);
    EXPECT_NEAR(view_->pixels_per_mm(), fitted / std::pow(0.999, 120), 1e-6);
    key(Qt::Key_Minus);
    EXPECT_LT(view_->pixels_per_mm(), fitted);
    key(Qt::Key_Plus);
    key(Qt::Key_Home);
    EXPECT_NEAR(view_->pixels_per_mm(), fitted, 1e-6);
    key(Qt::Key_Left);
    key(Qt::Key_Up);
    EXPECT_EQ(moves.size(), 6);
    key(Qt::Key_T);
    EXPECT_GT(view_->hit(middle())->normal.y(), 0.9);
    key(Qt::Key_F);
    EXPECT_GT(view_->hit(middle())->normal.z(), 0.9);
    key(Qt::Key_S);
    EXPECT_GT(view_->hit(middle())->normal.x(), 0.9);
    wheel(-240);
    on_card() ? QTest::mouseDClick(native(), Qt::LeftButton, {}, middle())
              : QTest::mouseDClick(inner(), Qt::LeftButton, {}, middle());
    EXPECT_NEAR(view_->pixels_per_mm(), fitted, fitted / 20);
}

TEST_P(SceneViewTest, AtRestThePictureIsTheFullOne) {
    if (on_card()) GTEST_SKIP() << "a graphics card draws every picture in full";
    view_->set_background(Qt::white);
    for (int k = 0; k < 6; ++k) {
        view_->set_surface(test::ball_surface(6 + k % 2));
        view_->set_lit_rounds({4 + k});
        QTest::qWait(k * 5);
    }
    const QImage at_rest = seen().convertToFormat(QImage::Format_RGB32);
    const QImage full = view_->picture(inner()->size(), Qt::white).convertToFormat(QImage::Format_RGB32);
    EXPECT_EQ(at_rest, full);
}

TEST_P(SceneViewTest, PointingFindsTheSameBeforeAndAfterTheTreeHasGrown) {
    view_->set_surface(test::ball_surface(8));
    const auto first = view_->hit(middle());
    ASSERT_TRUE(first);
    for (int k = 0; k < 100; ++k) {
        const auto again = view_->hit(middle());
        ASSERT_TRUE(again);
        EXPECT_EQ(again->round, first->round);
        EXPECT_EQ(again->stitch, first->stitch);
        EXPECT_EQ(again->point, first->point);
        QTest::qWait(1);
    }
}

TEST_P(SceneViewTest, CameraStaysForASurfaceThatFitsAndFollowsOneThatWouldBeCut) {
    view_->set_surface(test::ball_surface(8));
    const double first = view_->pixels_per_mm();
    view_->set_surface(test::ball_surface(7));
    view_->set_surface(test::ball_surface(8));
    EXPECT_NEAR(view_->pixels_per_mm(), first, 1e-9);
    view_->set_surface(test::ball_surface(12));
    EXPECT_LT(view_->pixels_per_mm(), first);
    view_->zoom(2);
    const double mine = view_->pixels_per_mm();
    view_->set_surface(test::ball_surface(16));
    EXPECT_NEAR(view_->pixels_per_mm(), mine, 1e-9) << "a camera placed by hand is left alone";
}

TEST_P(SceneViewTest, MovablePartFollowsThePointerAndTheViewStays) {
    view_->set_surface(test::ball_surface(6));
    view_->look_from(ViewDirection::front);
    const auto nose = *view_->hit(middle());
    view_->set_parts({{test::sphere_mesh(nose.point, 6, 32, {20, 20, 20}), Finish::glossy, true}});
    EXPECT_EQ(view_->part_at(middle()), 0);
    EXPECT_FALSE(view_->part_at({2, 2}));
    QSignalSpy dragged(view_, &SceneView::part_dragged), dropped(view_, &SceneView::part_dropped);
    QSignalSpy moves(view_, &SceneView::camera_changed), clicks(view_, &SceneView::part_clicked);
    drag(middle(), middle() + QPoint(30, 0));
    EXPECT_GT(dragged.size(), 3);
    ASSERT_EQ(dropped.size(), 1);
    EXPECT_EQ(dropped[0][1].toPointF(), QPointF(middle() + QPoint(30, 0)));
    EXPECT_EQ(moves.size(), 0);
    click(middle());
    EXPECT_EQ(clicks.size(), 1);
}

TEST_P(SceneViewTest, IsNamedForScreenReadersAndReachedByTab) {
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(inner());
    ASSERT_NE(face, nullptr);
    EXPECT_FALSE(face->text(QAccessible::Name).isEmpty());
    EXPECT_TRUE(inner()->focusPolicy() & Qt::TabFocus);
    QWidget::setTabOrder(above_, view_->widget());
    QWidget::setTabOrder(view_->widget(), below_);
    window_->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    QTest::qWait(300);  // a window manager may still be giving the keyboard to the new window
    above_->setFocus();
    QTest::keyClick(above_, Qt::Key_Tab);
    if (on_card()) {
        EXPECT_TRUE(QTest::qWaitFor([] { return QGuiApplication::focusWindow() == native(); }));
    } else {
        EXPECT_EQ(QApplication::focusWidget(), inner());
    }
    EXPECT_TRUE(QTest::qWaitFor([this] { return ring(); }));
    key(Qt::Key_Tab);
    EXPECT_TRUE(QTest::qWaitFor([this] { return below_->hasFocus(); }));
    EXPECT_TRUE(QTest::qWaitFor([this] { return !ring(); }));
    QTest::keyClick(below_, Qt::Key_Backtab);
    EXPECT_TRUE(QTest::qWaitFor([this] { return ring(); }));
    key(Qt::Key_Backtab);
    EXPECT_TRUE(QTest::qWaitFor([this] { return above_->hasFocus(); }));
}

TEST_P(SceneViewTest, ThousandUpdatesDoNotGrow) {
    const auto resident_kb = [] {
        QFile status(QStringLiteral("/proc/self/status"));
        if (!status.open(QIODevice::ReadOnly)) return 0;
        for (const QByteArray& line : status.readAll().split('\n')) {
            if (line.startsWith("VmRSS:")) return line.simplified().split(' ')[1].toInt();
        }
        return 0;
    };
    window_->resize(160, 200);
    const StitchSurface ball = test::ball_surface(6, true, 5'000), other = test::ball_surface(7, true, 5'000);
    const auto update = [&](int times) {
        for (int i = 0; i < times; ++i) {
            view_->set_surface(i % 2 ? ball : other);
            view_->set_lit_rounds({i % 12});
            if (i % 10 == 0) view_->set_parts({{ball.mesh, Finish::felt, false}});
            QApplication::processEvents();
        }
        QTest::qWait(200);
    };
    update(100);
    const int before = resident_kb();
    update(1000);
    EXPECT_LT(resident_kb() - before, 24'000) << "kB; one surface is about 400";
}

TEST_P(SceneViewTest, EmptySurfacesAndRepeatedClosingAreHarmless) {
    view_->set_surface({});
    view_->fit();
    EXPECT_FALSE(view_->hit(middle()));
    click(middle());
    view_->set_surface(test::ball_surface(5));
    view_->set_surface({});
    QTest::qWait(50);
    for (int i = 0; i < 3; ++i) {
        QWidget holder;
        SceneView* view = make_scene_view(&holder);
        view->set_surface(test::ball_surface(4));
        if (i == 1) delete view->widget();
        if (i == 2) delete view;
    }
}

INSTANTIATE_TEST_SUITE_P(Drawn, SceneViewTest, ::testing::Values("painter", "qt3d"),
                         [](const auto& each) { return std::string(each.param); });

}  // namespace
}  // namespace roundwright::render
