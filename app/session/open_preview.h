#pragma once

#include <cstdint>
#include <optional>
#include <utility>

#include "core/toy/toy.h"

namespace roundwright::app {

/// What is shown in the toy's place while a change is being made. Each new preview takes over from the one
/// before, whose ticket is void from then on; what that one showed stays until the new one shows something.
class OpenPreview {
  public:
    [[nodiscard]] std::uint64_t begin() {
        open_ = true;
        return ++ticket_;
    }
    [[nodiscard]] bool is_of(std::uint64_t ticket) const { return open_ && ticket == ticket_; }
    void show(Toy toy) { toy_ = std::move(toy); }
    /// Null: nothing is shown yet, or no preview is open.
    [[nodiscard]] const Toy* toy() const { return toy_ ? &*toy_ : nullptr; }
    void end() {
        open_ = false;
        toy_.reset();
    }

  private:
    bool open_ = false;
    std::uint64_t ticket_ = 0;
    std::optional<Toy> toy_;
};

}  // namespace roundwright::app
