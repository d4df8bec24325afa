#include "tests/torture/display.h"

#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace roundwright::torture {
namespace {

constexpr int said_in_child = 3;
constexpr int most_start_ms = 10'000;

[[noreturn]] void become_server(int said) {
    ::prctl(PR_SET_PDEATHSIG, SIGKILL);
    const int nothing = ::open("/dev/null", O_RDWR);
    for (const int file : {0, 1, 2}) ::dup2(nothing, file);
    ::dup2(said, said_in_child);
    ::execlp("Xvfb", "Xvfb", "-displayfd", "3", "-screen", "0", "1280x800x24", "-nolisten", "tcp", "-noreset",
             static_cast<char*>(nullptr));
    ::_exit(127);
}

/// The number of the display, which the server writes as soon as it can be used.
std::string number_from(int file) {
    std::string number;
    pollfd ready{file, POLLIN, 0};
    while (::poll(&ready, 1, most_start_ms) > 0) {
        char digit = 0;
        if (::read(file, &digit, 1) != 1) return {};
        if (digit == '\n') return number;
        number += digit;
    }
    return {};
}

}  // namespace

bool Display::start() {
    stop();
    int ends[2];
    if (::pipe2(ends, O_CLOEXEC) != 0) return false;
    pid_ = ::fork();
    if (pid_ == 0) become_server(ends[1]);
    ::close(ends[1]);
    const std::string number = pid_ > 0 ? number_from(ends[0]) : std::string();
    ::close(ends[0]);
    name_ = ':' + number;
    if (number.empty()) stop();
    return is_there();
}

void Display::stop() {
    if (pid_ <= 0) return;
    ::kill(pid_, SIGKILL);
    ::waitpid(pid_, nullptr, 0);
    pid_ = -1;
}

}  // namespace roundwright::torture
