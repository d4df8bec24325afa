#pragma once

#include <cstdint>
#include <string_view>

namespace roundwright::testing {

/// Which share of all inputs an input belongs to, by its bytes: so that dear work is done for some of them,
/// and for the same ones in every run. A byte of the input that said it would not do: inputs that do more
/// reach more, fill the corpus, and make nearly all runs dear.
class Share {
  public:
    explicit Share(std::string_view input) {
        // Fowler, Noll and Vo's hash FNV-1a, 32 bits; its low bits alone would follow the last byte's.
        for (const char c : input) hash_ = (hash_ ^ static_cast<unsigned char>(c)) * 16'777'619u;
        hash_ ^= hash_ >> 15;
    }
    [[nodiscard]] bool is_first_of(std::uint32_t shares) const { return hash_ % shares == 0; }
    [[nodiscard]] bool is_second_of(std::uint32_t shares) const { return hash_ % shares == 1; }
    [[nodiscard]] bool is_third_of(std::uint32_t shares) const { return hash_ % shares == 2; }

  private:
    std::uint32_t hash_ = 2'166'136'261u;
};

}  // namespace roundwright::testing
