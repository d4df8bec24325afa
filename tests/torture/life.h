#pragma once

#include <csignal>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <sys/types.h>
#include <vector>

#include "tests/torture/journal.h"

namespace roundwright::torture {

/// How a window is started.
struct Start {
    std::vector<std::string> arguments;    ///< as on the command line of `roundwright`
    std::vector<std::string> environment;  ///< NAME=value, all of it
    std::string folder;                    ///< to start in
    std::string said;                      ///< file for what it says on the terminal
};

/// A running window under torture: a process with the program's real window, and a maker in it who types,
/// answers dialogs, and tells on a pipe what the window holds.
class Life {
  public:
    explicit Life(const Start& start);
    ~Life();
    Life(const Life&) = delete;
    Life& operator=(const Life&) = delete;

    /// Called for each entry as it is read.
    std::function<void(const Entry&)> heard = [](const Entry&) {};

    /// Reads what it says for so long, or until it says something of this kind (true), or until it ends. Time
    /// in which it was ready to run and had no processor is not counted.
    bool listen(double seconds, const std::string& until = {});
    /// Reads on until it is gone; false: it is still there after so long.
    bool wait_for_end(double seconds);
    /// Tells the maker what to do, see Maker.
    void command(const std::string& words);
    void signal(int number) const;
    /// Kills it (kill -9) at once, reads what it had said before, and gives the time of the kill.
    std::int64_t kill();

    /// See waited_ns; of one that is over, what it was before the kill.
    [[nodiscard]] std::int64_t waited() const { return waited_ns_; }
    [[nodiscard]] bool is_over() const { return status_.has_value(); }
    /// Ended by a signal of its own, or aborted: nobody did that to it.
    [[nodiscard]] bool crashed() const;
    /// Ended by exit, with this code.
    [[nodiscard]] bool has_left_with(int code) const;
    [[nodiscard]] std::string end_words() const;

  private:
    bool read_some(int milliseconds, const std::string& until);
    void take_lines(const std::string& until, bool& found);
    bool reap(int options);
    [[nodiscard]] std::int64_t own_ns() const;

    pid_t pid_ = -1;
    int journal_ = -1;
    int commands_ = -1;
    std::string unread_;
    std::optional<int> status_;
    std::int64_t waited_ns_ = 0;
};

}  // namespace roundwright::torture
