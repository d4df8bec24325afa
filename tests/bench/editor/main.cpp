#include <benchmark/benchmark.h>

#include <QApplication>
#include <QSettings>
#include <QStandardPaths>

int main(int argc, char** argv) {
    benchmark::Initialize(&argc, argv);
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QStandardPaths::setTestModeEnabled(true);
    const QApplication application(argc, argv);
    QCoreApplication::setOrganizationName(QStringLiteral("Roundwright benchmark"));
    QSettings().setValue(QStringLiteral("started-before"), true);
    benchmark::RunSpecifiedBenchmarks();
    return 0;
}
