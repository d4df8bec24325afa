#include <gtest/gtest.h>
#include <set>

#include <QDir>
#include <QScreen>

#include "app/rounds/fast_entry_line.h"
#include "app/shape/shape_panel.h"
#include "app/window/main_window.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

/// How many colours the middle of a picture has: a flat ground has one.
int colours_in_the_middle(const QImage& image) {
    std::set<QRgb> colours;
    const QRect middle(image.width() / 2 - 40, image.height() / 2 - 40, 80, 80);
    for (int y = middle.top(); y < middle.bottom(); ++y) {
        for (int x = middle.left(); x < middle.right(); ++x) colours.insert(image.pixel(x, y));
    }
    return static_cast<int>(colours.size());
}

// The whole window with the 3D view of the program, where there is a display.
TEST(OnTheDisplay, ATypedTableShowsItsShape) {
    if (QGuiApplication::platformName() == QStringLiteral("offscreen")) GTEST_SKIP() << "no display";
    QSettings().clear();
    QTemporaryDir folder;
    DocumentSession session;
    session.preferences().set_reduced_motion(true);
    MainWindow window(session, folder.filePath(QStringLiteral("state")));
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    ASSERT_TRUE(wait_until([&] { return window.shape().scene() != nullptr; }));
    window.begin({});
    ASSERT_TRUE(wait_for_shape(session));
    auto* line = window.fast_entry().line();
    QTest::keyClicks(line, QStringLiteral("30, 24, 18, 12, 6"));
    QTest::keyClick(line, Qt::Key_Return);
    ASSERT_TRUE(wait_for_shape(session));
    const auto* widget = window.shape().scene()->widget();
    const auto picture = [&] {
        const QPoint corner = widget->mapToGlobal(QPoint());
        return window.screen()
            ->grabWindow(0, corner.x(), corner.y(), widget->width(), widget->height())
            .toImage();
    };
    EXPECT_TRUE(wait_until([&] { return colours_in_the_middle(picture()) > 20; }));
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    EXPECT_TRUE(
        window.screen()->grabWindow(0).save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/on-the-display.png")));
}

}  // namespace
}  // namespace roundwright::app
