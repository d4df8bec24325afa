#pragma once

#include <functional>

#include <QString>

namespace roundwright::app {

class Autosave;

/// The end of a program whose display is gone (the X server or the compositor has stopped, the connection to
/// a distant one is lost). Qt warns of it and calls exit(), which destroys what other threads are still at
/// work on. Where one of these is in place, the program keeps what is not saved, says so on the terminal and
/// ends at once, with `exit_code`; so it does wherever else a library calls exit(), and in words of its own
/// where there is no display to begin with, for which Qt aborts. One at a time.
class DisplayGone {
  public:
    static constexpr int exit_code = 1;

    DisplayGone();
    ~DisplayGone();
    DisplayGone(const DisplayGone&) = delete;
    DisplayGone& operator=(const DisplayGone&) = delete;

    /// Puts what is not saved in safety and gives back what is to be said of it. Called once at most, in the
    /// window's thread; empty: there is nothing to keep.
    void keep_by(std::function<QString()> keep);
    [[noreturn]] void end();
    /// There was no display from the beginning.
    [[noreturn]] static void end_without();

  private:
    std::function<QString()> keep_;
};

/// Keeps at once what is not saved, and says whether it is safe.
[[nodiscard]] QString keep_and_say(Autosave& autosave);

}  // namespace roundwright::app
