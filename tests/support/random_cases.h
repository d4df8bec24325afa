#pragma once

#include <algorithm>
#include <cstdlib>

namespace roundwright::testing {

/// How many random cases a property test runs: `full`, or the share of it that
/// ROUNDWRIGHT_RANDOM_CASES_PERCENT says (sanitizer builds run a few of them), but at least one.
inline int random_cases(int full) {
    const char* percent = std::getenv("ROUNDWRIGHT_RANDOM_CASES_PERCENT");
    if (percent == nullptr) return full;
    return std::max(1, static_cast<int>(full * (std::atof(percent) / 100)));
}

}  // namespace roundwright::testing
