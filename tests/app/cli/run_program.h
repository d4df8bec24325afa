#pragma once

#include <string>

#include <QStringList>

namespace roundwright::test {

/// What a run of the program left behind.
struct ProgramRun {
    int exit_code = -1;
    std::string out;
    std::string err;
};

/// Runs the program with no display to show anything on.
[[nodiscard]] ProgramRun run_program(const QStringList& arguments);

/// The same with the standard output going to a file or a device, and the standard input coming from one
/// (where named).
[[nodiscard]] ProgramRun run_program_into(const QString& out, const QStringList& arguments,
                                          const QString& in = {});

/// The path of one of the samples.
[[nodiscard]] QString sample(const char* name);

}  // namespace roundwright::test
