#include <gtest/gtest.h>

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>

// Windows are drawn in memory, and settings are kept in a folder of the run's own.
int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("ROUNDWRIGHT_VIEW", "painter");
    const QTemporaryDir home;
    QSettings::setDefaultFormat(QSettings::IniFormat);
    QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, home.path());
    QApplication::setOrganizationName(QStringLiteral("roundwright-tests"));
    QApplication::setApplicationName(QStringLiteral("roundwright-tests"));
    const QApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
