#include "app/work_along/round_clock.h"

#include <chrono>
#include <utility>

namespace roundwright::app {

RoundClock::RoundClock(std::function<double()> seconds_now) : now_(std::move(seconds_now)) {
    if (now_) return;
    now_ = [] {
        return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
    };
}

void RoundClock::run() {
    if (running_) return;
    running_ = true;
    since_ = now_();
}

void RoundClock::pause() {
    before_ = seconds();
    running_ = false;
}

void RoundClock::restart() {
    before_ = 0;
    since_ = now_();
}

double RoundClock::seconds() const { return before_ + (running_ ? now_() - since_ : 0); }

}  // namespace roundwright::app
