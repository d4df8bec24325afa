#include "app/cli/command_line.h"
#include "app/window/run_window.h"

int main(int argc, char** argv) {
    if (const auto exit_code = roundwright::app::run_command_line(argc, argv)) return *exit_code;
    return roundwright::app::run_window(argc, argv);
}
