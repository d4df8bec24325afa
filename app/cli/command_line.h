#pragma once

#include <optional>

namespace roundwright::app {

/// What a command ends with.
enum ExitCode : int {
    exit_fine = 0,
    exit_checks_failed =
        1,               ///< a check found an error, or a wanted result was not reached, or memory ran out
    exit_bad_input = 2,  ///< bad usage, or a file that cannot be read or written
};

/// Runs the command that the arguments name ("check", "shape" ...), or prints the help or version they ask
/// for, and gives the exit code. Nothing where they name no command: the window is wanted. No display is
/// needed.
[[nodiscard]] std::optional<int> run_command_line(int argc, char** argv);

}  // namespace roundwright::app
