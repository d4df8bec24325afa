#include "tests/app/cli/run_program.h"

#include <gtest/gtest.h>

#include <QProcess>

#include "tests/support/sanitizers.h"

namespace roundwright::test {

namespace {

ProgramRun run_in(QProcess& process, const QStringList& arguments) {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    for (const char* display : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
        environment.remove(QString::fromLatin1(display));
    }
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    // What Qt has to say of the machine (no XDG_RUNTIME_DIR) is not what the program says.
    environment.insert(QStringLiteral("QT_LOGGING_RULES"), QStringLiteral("default.warning=false"));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral(ROUNDWRIGHT_PROGRAM), arguments);
    EXPECT_TRUE(process.waitForFinished(test::slowdown * 120'000))
        << arguments.join(QLatin1Char(' ')).toStdString();
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit) << arguments.join(QLatin1Char(' ')).toStdString();
    return {process.exitCode(), process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

}  // namespace

ProgramRun run_program(const QStringList& arguments) {
    QProcess process;
    return run_in(process, arguments);
}

ProgramRun run_program_into(const QString& out, const QStringList& arguments, const QString& in) {
    QProcess process;
    process.setStandardOutputFile(out);
    if (!in.isEmpty()) process.setStandardInputFile(in);
    return run_in(process, arguments);
}

QString sample(const char* name) {
    return QStringLiteral(ROUNDWRIGHT_SOURCE "/samples/") + QString::fromLatin1(name);
}

}  // namespace roundwright::test
