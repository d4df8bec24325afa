#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <random>

namespace roundwright::torture {

/// Random numbers that every compiler and library makes alike, so that a toy is known by its number.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}

    /// In [0, 1).
    double share() { return std::ldexp(static_cast<double>(engine_() >> 11), -53); }
    double real(double least, double most) { return least + (most - least) * share(); }
    /// As many at each power of ten.
    double magnitude(double least, double most) { return std::exp(real(std::log(least), std::log(most))); }
    int whole(int least, int most) {
        return least + static_cast<int>(share() * (static_cast<double>(most) - least + 1));
    }
    bool chance(double of) { return share() < of; }
    template <class T>
    T one_of(std::initializer_list<T> all) {
        return all.begin()[whole(0, static_cast<int>(all.size()) - 1)];
    }

  private:
    std::mt19937_64 engine_;
};

}  // namespace roundwright::torture
