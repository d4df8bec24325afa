#pragma once

#include <cstdint>

namespace roundwright::bench {

/// Prints the time of a cold and of a warm solve from 60 to 6,000 rounds, and the exponent by which it grows.
void report_growth();

/// Prints where the time of a Newton step goes, a node, beside what the arithmetic alone would take.
void report_profile(std::int64_t rounds);

}  // namespace roundwright::bench
