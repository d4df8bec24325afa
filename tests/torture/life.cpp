#include "tests/torture/life.h"

#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <linux/capability.h>
#include <poll.h>
#include <stdexcept>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <system_error>
#include <unistd.h>

#include "tests/torture/child_words.h"

namespace roundwright::torture {
namespace {

std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> list;
    for (auto& text : texts) list.push_back(text.data());
    list.push_back(nullptr);
    return list;
}

/// Rights of files mean nothing to root: its windows run without that privilege, as a maker's does.
void give_up_privileges() {
    for (const int privilege : {CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH, CAP_FOWNER, CAP_SYS_ADMIN})
        ::prctl(PR_CAPBSET_DROP, privilege, 0, 0, 0);
}

/// In the child, between fork and exec: nothing but calls of the system.
[[noreturn]] void become(const Start& start, char* const* arguments, char* const* environment, int journal,
                         int commands) {
    ::prctl(PR_SET_PDEATHSIG, SIGKILL);
    ::signal(SIGPIPE, SIG_DFL);
    const int said = ::open(start.said.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0600);
    const int nothing = ::open("/dev/null", O_RDONLY);
    ::dup2(nothing, 0);
    ::dup2(said, 1);
    ::dup2(said, 2);
    // The ends of the pipes are moved out of the way first, in case one has the number of the other's place.
    journal = ::fcntl(journal, F_DUPFD, 10);
    commands = ::fcntl(commands, F_DUPFD, 10);
    ::dup2(journal, journal_file);
    ::dup2(commands, commands_file);
    for (int file = commands_file + 1; file < 256; ++file) ::close(file);
    give_up_privileges();
    // Whoever runs this under nohup has it ignored, and a window would rightly ignore it too.
    static_cast<void>(::signal(SIGHUP, SIG_DFL));
    if (::chdir(start.folder.c_str()) == 0) ::execve("/proc/self/exe", arguments, environment);
    ::_exit(127);
}

/// What it waits for, as the system knows it: its state, and where in the kernel it sleeps.
std::string whereabouts(pid_t process) {
    const std::string folder = "/proc/" + std::to_string(process);
    std::string waits_in;
    std::getline(std::ifstream(folder + "/wchan"), waits_in);
    std::ifstream status(folder + "/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("State:")) return line + ' ' + waits_in;
    return "gone";
}

void make_pipe(int (&ends)[2]) {
    if (::pipe2(ends, O_CLOEXEC) != 0) throw std::system_error(errno, std::generic_category(), "pipe");
}

}  // namespace

Life::Life(const Start& start) {
    int journal[2];
    int commands[2];
    make_pipe(journal);
    make_pipe(commands);
    std::vector<std::string> arguments{"roundwright"};
    arguments.insert(arguments.end(), start.arguments.begin(), start.arguments.end());
    auto environment = start.environment;
    const auto argument_list = pointers(arguments);
    const auto environment_list = pointers(environment);
    pid_ = ::fork();
    if (pid_ < 0) throw std::system_error(errno, std::generic_category(), "fork");
    if (pid_ == 0) become(start, argument_list.data(), environment_list.data(), journal[1], commands[0]);
    ::close(journal[1]);
    ::close(commands[0]);
    journal_ = journal[0];
    commands_ = commands[1];
}

Life::~Life() {
    if (!is_over()) kill();
    ::close(journal_);
    ::close(commands_);
}

void Life::take_lines(const std::string& until, bool& found) {
    std::size_t end = 0;
    while ((end = unread_.find('\n')) != std::string::npos) {
        const auto entry = read_entry(std::string_view(unread_).substr(0, end));
        unread_.erase(0, end + 1);
        if (!entry) continue;
        heard(*entry);
        found = found || (!until.empty() && entry->kind == until);
    }
}

bool Life::read_some(int milliseconds, const std::string& until) {
    bool found = false;
    pollfd ready{journal_, POLLIN, 0};
    if (::poll(&ready, 1, milliseconds) <= 0) return false;
    char bytes[65'536];
    const ssize_t count = ::read(journal_, bytes, sizeof bytes);
    if (count > 0) {
        unread_.append(bytes, static_cast<std::size_t>(count));
        take_lines(until, found);
    } else {
        reap(0);
    }
    return found;
}

bool Life::reap(int options) {
    int status = 0;
    if (!is_over() && ::waitpid(pid_, &status, options) == pid_) status_ = status;
    return is_over();
}

/// A clock that stands while others have its processor.
std::int64_t Life::own_ns() const { return now_ns() - waited_ns(pid_); }

bool Life::listen(double seconds, const std::string& until) {
    const std::int64_t end = own_ns() + static_cast<std::int64_t>(seconds * 1e9);
    while (!is_over()) {
        const auto left_ms = (end - own_ns()) / 1'000'000;
        if (left_ms < 0) return false;
        if (read_some(static_cast<int>(left_ms) + 1, until)) return true;
    }
    return false;
}

bool Life::wait_for_end(double seconds) {
    listen(seconds);
    return is_over();
}

void Life::command(const std::string& words) {
    const std::string line = words + "\n";
    [[maybe_unused]] const auto count = ::write(commands_, line.data(), line.size());
}

void Life::signal(int number) const {
    if (!is_over()) ::kill(pid_, number);  // the number of one that is gone may be another's by now
}

std::int64_t Life::kill() {
    if (!is_over()) waited_ns_ = waited_ns(pid_);
    const std::int64_t ns = now_ns();
    signal(SIGKILL);
    while (!is_over()) read_some(-1, {});
    return ns;
}

bool Life::crashed() const {
    if (!status_) return false;
    if (WIFEXITED(*status_)) return WEXITSTATUS(*status_) == 127;
    const int number = WTERMSIG(*status_);
    return number != SIGKILL && number != SIGTERM && number != SIGHUP;
}

bool Life::has_left_with(int code) const {
    return status_ && WIFEXITED(*status_) && WEXITSTATUS(*status_) == code;
}

std::string Life::end_words() const {
    if (!status_) return "still running, " + whereabouts(pid_);
    if (WIFEXITED(*status_)) return "exit " + std::to_string(WEXITSTATUS(*status_));
    return "signal " + std::to_string(WTERMSIG(*status_));
}

}  // namespace roundwright::torture
