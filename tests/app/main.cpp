#include <gtest/gtest.h>

#include <QSettings>
#include <QTemporaryDir>

#include "app/kit/guarded_application.h"

// Settings, kept copies and earlier versions go to a folder of the run's own, so that no test sees, or
// touches, those of the person running it.
int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    const bool display =
        qEnvironmentVariableIsSet("DISPLAY") && qEnvironmentVariableIsSet("ROUNDWRIGHT_TEST_WINDOWS");
    if (!display) {
        // A run may say which screen there is in memory: offscreen:configfile=...
        if (!qgetenv("QT_QPA_PLATFORM").startsWith("offscreen")) qputenv("QT_QPA_PLATFORM", "offscreen");
        qputenv("ROUNDWRIGHT_VIEW", "painter");
    }
    qputenv("QT3D_RENDERER", "opengl");
    const QTemporaryDir home;
    qputenv("XDG_STATE_HOME", home.path().toUtf8());
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, home.path());
    QApplication::setOrganizationName(QStringLiteral("roundwright-tests"));
    QApplication::setApplicationName(QStringLiteral("roundwright-tests"));
    // Most tests are of what a key brings at once. Those of the shape of every stitch ask for it.
    if (!qEnvironmentVariableIsSet("ROUNDWRIGHT_TEST_EVERY_STITCH"))
        QSettings(QSettings::IniFormat, QSettings::UserScope, QApplication::organizationName())
            .setValue(QStringLiteral("every-stitch"), false);
    const roundwright::app::GuardedApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
