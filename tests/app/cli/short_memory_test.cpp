#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include "core/document/json_document.h"
#include "tests/app/cli/run_program.h"
#include "tests/support/random_cases.h"
#include "tests/support/sanitizers.h"

namespace roundwright {
namespace {

using namespace test;

/// A run of the program with so much address space (setrlimit(2), RLIMIT_AS).
struct ShortRun {
    bool crashed = false;
    int exit_code = 0;
    std::string out, err;
};

ShortRun run_within(long kib, const QStringList& arguments) {
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.remove(QStringLiteral("DISPLAY"));
    environment.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral("/bin/sh"),
                  QStringList{"-c", QStringLiteral("ulimit -v %1; exec \"$0\" \"$@\"").arg(kib),
                              QStringLiteral(ROUNDWRIGHT_PROGRAM)} +
                      arguments);
    process.waitForFinished(120'000);
    return {process.exitStatus() != QProcess::NormalExit, process.exitCode(),
            process.readAllStandardOutput().toStdString(), process.readAllStandardError().toStdString()};
}

class ShortMemory : public ::testing::Test {
  protected:
    [[nodiscard]] QString path(const char* name) const { return folder_.filePath(QString::fromLatin1(name)); }

    QString wide_toy() const {
        Toy toy;
        Piece& piece = toy.pieces.emplace_back();
        piece.name = "Fin";
        piece.start = OpenTube{2'000};
        for (int k = 0; k < 60; ++k) piece.rounds.emplace_back().working = WorkedEvenly{2'000};
        QFile file(path("wide.roundwright"));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(write_document(toy)));
        return path("wide.roundwright");
    }

    QTemporaryDir folder_;
};

/// The least with which the program starts, and only says its version.
long least_to_start() {
    long kib = 20'000;
    while (kib < 2'000'000 && run_within(kib, {"--version"}).out.empty()) kib += kib / 20;
    return kib;
}

// Out of memory is an error with words, whatever the size at which it comes, and never a signal.
TEST_F(ShortMemory, EndsInWords) {
    if (test::under_sanitizer) GTEST_SKIP() << "no address space to limit";
    const QString toy = wide_toy();
    const std::vector<QStringList> commands{
        {"shape", toy},
        {"check", toy},
        {"write", toy, "--form", "pattern"},
        {"mesh", toy, "-o", path("m.obj"), "--force"},
        {"mesh", toy, "-o", path("m.glb"), "--force"},
        {"image", toy, "-o", path("i.png"), "--size", "4000x4000", "--force"},
        {"image", toy, "-o", path("i.svg"), "--force"},
        {"pdf", toy, "-o", path("p.pdf"), "--force"},
        {"resize", toy, "--width", "300"},
    };
    const long least = least_to_start();
    int short_of_memory = 0;
    for (int k = 0; k < testing::random_cases(120); ++k) {
        const QStringList& command = commands[static_cast<std::size_t>(k) % commands.size()];
        const long kib = least + least * (k * 37 % 100) / 60;
        const ShortRun run = run_within(kib, command);
        EXPECT_FALSE(run.crashed) << command.join(' ').toStdString() << " within " << kib << ": " << run.err;
        if (run.exit_code == 0) continue;
        EXPECT_FALSE(run.err.empty()) << command.join(' ').toStdString() << " within " << kib;
        short_of_memory += run.err.find("There is not enough memory for this.") != std::string::npos;
    }
    RecordProperty("short_of_memory", short_of_memory);
}

}  // namespace
}  // namespace roundwright
