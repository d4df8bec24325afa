#include "app/kit/out_of_memory.h"

#include <array>
#include <csignal>
#include <cstdlib>
#include <exception>
#include <string>
#include <sys/mman.h>
#include <unistd.h>

#include "render/background/fault_words.h"

namespace roundwright::app {
namespace {

// AddressSanitizer says where a fault was; GCC tells by a macro that it is there, clang by a feature.
#if defined(__SANITIZE_ADDRESS__)
constexpr bool sanitizer_takes_faults = true;
#elif defined(__has_feature)
constexpr bool sanitizer_takes_faults = __has_feature(address_sanitizer);
#else
constexpr bool sanitizer_takes_faults = false;
#endif

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

[[noreturn]] void end_in_words() {
    static_cast<void>(!write(STDERR_FILENO, last_words.data(), last_words.size()));
    _exit(last_exit_code);
}

void end() {
    if (is_out_of_memory_now()) end_in_words();
    if (terminate_otherwise != nullptr) terminate_otherwise();
    std::abort();
}

/// Where no more than this is left, it is memory that Qt did not get.
constexpr std::size_t little_memory = std::size_t{256} << 20U;

/// A fault of the program's own happens again when this returns, and ends it as it would have. A signal that
/// somebody sent (kill(2), raise(3): no positive code, see sigaction(2)) does not, so it is sent once more.
void end_after_fault(int number, siginfo_t* info, void*) {
    if (info->si_code <= 0) {
        raise(number);
        return;
    }
    void* left = mmap(nullptr, little_memory, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (left == MAP_FAILED) end_in_words();
    munmap(left, little_memory);
}

/// Qt's drawing (6.4) takes the null of a failed malloc for memory, and a stack that cannot grow is a fault
/// too: hence a stack of its own for the words.
void take_faults() {
    static std::array<char, std::size_t{64} << 10U> room;
    stack_t stack{};
    stack.ss_sp = room.data();
    stack.ss_size = room.size();
    sigaltstack(&stack, nullptr);
    struct sigaction action {};
    action.sa_sigaction = end_after_fault;
    action.sa_flags = SA_SIGINFO | SA_ONSTACK | static_cast<int>(SA_RESETHAND);
    sigaction(SIGSEGV, &action, nullptr);
}

}  // namespace

void end_in_words_without_memory(int exit_code) {
    last_words = "roundwright: " + render::not_enough_memory_words().toStdString() + '\n';
    last_exit_code = exit_code;
    terminate_otherwise = std::set_terminate(end);
    if (!sanitizer_takes_faults) take_faults();
}

}  // namespace roundwright::app
