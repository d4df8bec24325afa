#include "app/files/end_signals.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <sys/socket.h>
#include <unistd.h>
#include <utility>

#include <QSocketNotifier>

namespace roundwright::app {
namespace {

constexpr std::array ends{SIGTERM, SIGHUP, SIGINT};
constexpr int shell_adds = 128;  // exit status of what a signal ended, as shells tell it

std::array<int, 2> ways{-1, -1};  // written by the handler, read by the event loop

void hand_on(int number) {
    const int before = errno;
    const auto byte = static_cast<char>(number);
    [[maybe_unused]] const auto written = ::write(ways[0], &byte, 1);
    errno = before;
}

void set_handler(int number, void (*handler)(int)) {
    struct ::sigaction before {};
    if (::sigaction(number, nullptr, &before) != 0 || before.sa_handler == SIG_IGN) return;
    struct ::sigaction action {};
    action.sa_handler = handler;
    action.sa_flags = SA_RESTART;
    ::sigaction(number, &action, nullptr);
}

}  // namespace

EndSignals::EndSignals(QObject* parent) : QObject(parent) {
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC | SOCK_NONBLOCK, 0, ways.data()) != 0) return;
    notifier_ = new QSocketNotifier(ways[1], QSocketNotifier::Read, this);
    connect(notifier_, &QSocketNotifier::activated, this, &EndSignals::tell);
    for (const int number : ends) set_handler(number, hand_on);
}

EndSignals::~EndSignals() {
    if (!notifier_) return;
    for (const int number : ends) set_handler(number, SIG_DFL);
    notifier_->setEnabled(false);
    for (int& way : ways) ::close(std::exchange(way, -1));
}

void EndSignals::tell() {
    char number = 0;
    if (::read(ways[1], &number, 1) == 1) Q_EMIT asked_to_end(number);
}

void EndSignals::end_by(int number) {
    std::signal(number, SIG_DFL);
    std::raise(number);
    std::_Exit(shell_adds + number);
}

}  // namespace roundwright::app
