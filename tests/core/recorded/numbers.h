#pragma once

#include <cstdint>

namespace roundwright::test {

/// Numbers without an order to them, the same on every machine and with every compiler: Lehmer's generator
/// (S. K. Park, K. W. Miller, Random Number Generators: Good Ones Are Hard to Find, Comm. ACM 31 (1988)
/// 1192-1201), with the multiplier 48271.
class Numbers {
  public:
    explicit Numbers(std::uint64_t seed) : state_(seed) {}

    /// From low to high, both among them.
    int next(int low, int high) {
        state_ = state_ * 48271 % 2147483647;
        return low + static_cast<int>(state_ % static_cast<std::uint64_t>(high - low + 1));
    }

  private:
    std::uint64_t state_;
};

}  // namespace roundwright::test
