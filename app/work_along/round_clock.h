#pragma once

#include <functional>

namespace roundwright::app {

/// Time spent on the round in hand, with pauses left out.
class RoundClock {
  public:
    /// `seconds_now`: any clock that only goes forward; empty: the machine's.
    explicit RoundClock(std::function<double()> seconds_now = {});

    [[nodiscard]] bool running() const { return running_; }
    void run();
    void pause();
    /// Starts the next round from nothing, running or not as before.
    void restart();
    [[nodiscard]] double seconds() const;

  private:
    std::function<double()> now_;
    double before_ = 0;
    double since_ = 0;
    bool running_ = false;
};

}  // namespace roundwright::app
