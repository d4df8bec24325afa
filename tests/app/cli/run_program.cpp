#include "tests/app/cli/run_program.h"

#include <gtest/gtest.h>

#include <QProcess>

namespace roundwright::test {

ProgramRun run_program(const QStringList& arguments) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* display : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        environment.remove(QString::fromLatin1(display));
    }
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral(ROUNDWRIGHT_PROGRAM), arguments);
    EXPECT_TRUE(process.waitForFinished(120'000)) << arguments.join(QLatin1Char(' ')).toStdString();
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit) << arguments.join(QLatin1Char(' ')).toStdString();
    return {process.exitCode(), process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

QString sample(const char* name) {
    return QStringLiteral(ROUNDWRIGHT_SOURCE "/samples/") + QString::fromLatin1(name);
}

}  // namespace roundwright::test
