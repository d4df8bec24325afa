#include <gtest/gtest.h>

#include <QApplication>

// Without a screen the windows are drawn in memory; what needs OpenGL then skips itself.
int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    if (qEnvironmentVariableIsEmpty("DISPLAY") && qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") &&
        qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    qputenv("QT3D_RENDERER", "opengl");
    QApplication::setStyle(QStringLiteral("Fusion"));
    const QApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
