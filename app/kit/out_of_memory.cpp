#include "app/kit/out_of_memory.h"

#include <cstdlib>
#include <exception>
#include <string>
#include <unistd.h>

#include "render/background/fault_words.h"

namespace roundwright::app {
namespace {

// Made while there is memory.
std::string last_words;
int last_exit_code = 1;
std::terminate_handler terminate_otherwise = nullptr;

bool is_out_of_memory_now() {
    try {
        if (const auto current = std::current_exception()) std::rethrow_exception(current);
    } catch (const std::exception& problem) {
        return render::is_out_of_memory(problem);
    } catch (...) {
    }
    return false;
}

void end() {
    if (!is_out_of_memory_now()) {
        if (terminate_otherwise != nullptr) terminate_otherwise();
        std::abort();
    }
    static_cast<void>(!write(STDERR_FILENO, last_words.data(), last_words.size()));
    _exit(last_exit_code);
}

}  // namespace

void end_in_words_without_memory(int exit_code) {
    last_words = "roundwright: " + render::not_enough_memory_words().toStdString() + '\n';
    last_exit_code = exit_code;
    terminate_otherwise = std::set_terminate(end);
}

}  // namespace roundwright::app
