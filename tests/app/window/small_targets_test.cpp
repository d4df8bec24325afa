#include "tests/app/window/small_targets.h"

#include <gtest/gtest.h>

#include <QPushButton>

#include "app/face/face_panel.h"
#include "tests/app/window/every_window.h"
#include "tests/app/window/maker_at_the_window.h"

namespace roundwright::app {
namespace {

std::string said(const QWidget& window) {
    return small_targets(window).join(QLatin1Char('\n')).toStdString();
}

// WCAG 2.2, 2.5.8.
TEST(SmallTargets, NoWindowHasAny) {
    MakerAtTheWindow maker(toy_to_type_into());
    for_every_window(*maker.window, [](QWidget& window, const QString& name) {
        EXPECT_EQ(said(window), "") << name.toStdString();
    });
    for (const FeatureKind kind : {FeatureKind::safety_eye, FeatureKind::stitched_line}) {
        maker.window->panels().go_to_section(QStringLiteral("face"));
        maker.window->face().add(kind);
        QTest::qWait(50);
        EXPECT_EQ(said(*maker.window), "") << static_cast<int>(kind);
    }
}

TEST(SmallTargets, WouldBeSeen) {
    QWidget window;
    auto* one = new QPushButton(QStringLiteral("One"), &window);
    auto* other = new QPushButton(QStringLiteral("Other"), &window);
    one->setGeometry(10, 10, 20, 20);
    other->setGeometry(30, 10, 20, 20);
    window.resize(100, 100);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    EXPECT_EQ(small_targets(window).size(), 2);
    other->move(60, 10);
    EXPECT_EQ(said(window), "") << "each has room around it";
}

}  // namespace
}  // namespace roundwright::app
