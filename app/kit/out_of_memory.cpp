#include "app/kit/out_of_memory.h"

#include <cstdlib>
#include <new>
#include <stdexcept>
#include <string>
#include <system_error>
#include <unistd.h>

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct OutOfMemoryText {
    Q_DECLARE_TR_FUNCTIONS(OutOfMemory)
};

// Made while there is memory.
std::string last_words;
int last_exit_code = 1;
std::terminate_handler terminate_otherwise = nullptr;

bool is_out_of_memory_now() {
    try {
        if (const auto current = std::current_exception()) std::rethrow_exception(current);
    } catch (const std::exception& problem) {
        return is_out_of_memory(problem);
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

bool is_out_of_memory(const std::exception& problem) {
    if (dynamic_cast<const std::bad_alloc*>(&problem) != nullptr) return true;
    if (dynamic_cast<const std::length_error*>(&problem) != nullptr) return true;
    const auto* system = dynamic_cast<const std::system_error*>(&problem);
    return system != nullptr && (system->code() == std::errc::resource_unavailable_try_again ||
                                 system->code() == std::errc::not_enough_memory);
}

QString not_enough_memory_words() { return OutOfMemoryText::tr("There is not enough memory for this."); }

void end_in_words_without_memory(int exit_code) {
    last_words = "roundwright: " + not_enough_memory_words().toStdString() + '\n';
    last_exit_code = exit_code;
    terminate_otherwise = std::set_terminate(end);
}

}  // namespace roundwright::app
