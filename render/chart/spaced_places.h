#pragma once

#include <vector>

namespace roundwright::render {

/// Places in order along a line, as near by least squares to the wished ones as they can be when each is at
/// least `apart` after the one before it and all are within [low, high]. Where there is not so much room they
/// stand evenly. Isotonic regression by pooling adjacent violators. Source: M. Ayer, H. D. Brunk, G. M.
/// Ewing, W. T. Reid and E. Silverman, An empirical distribution function for sampling with incomplete
/// information, Ann. Math. Statist. 26 (1955) 641-647.
[[nodiscard]] std::vector<double> spaced_places(const std::vector<double>& wished, double apart, double low,
                                                double high);

}  // namespace roundwright::render
