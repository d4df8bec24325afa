#pragma once

namespace roundwright::app {

/// Opens the editor; arguments that are not options name the file to open. Returns the exit code.
int run_window(int argc, char** argv);

}  // namespace roundwright::app
