#pragma once

#include <span>

#include <QString>

#include "app/cli/arguments.h"

namespace roundwright::app {

/// One command of the command line.
struct Command {
    const char* name;
    const char* operands;  ///< as shown in its help: "FILE..."
    const char* summary;   ///< one line
    std::span<const Option> options;
    int (*run)(const Arguments&);
    bool draws = false;  ///< needs fonts or pictures
};

[[nodiscard]] const Command& check_command();
[[nodiscard]] const Command& shape_command();
[[nodiscard]] const Command& read_command();
[[nodiscard]] const Command& write_command();
[[nodiscard]] const Command& resize_command();
[[nodiscard]] const Command& gauge_command();
[[nodiscard]] const Command& pdf_command();
[[nodiscard]] const Command& image_command();
[[nodiscard]] const Command& mesh_command();

/// All of them, in the order of the help.
[[nodiscard]] std::span<const Command* const> commands();

}  // namespace roundwright::app
