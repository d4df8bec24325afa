#pragma once

namespace roundwright {

/// What was measured on a finished piece. A circumference is the tape round the widest place, or round the
/// top of one round.
enum class MeasuredOf { width, height, circumference, circumference_of_round };

struct Measured {
    MeasuredOf of = MeasuredOf::width;
    double mm = 0;
    double error_mm = 2;  ///< half width of the range in which the true value is believed to lie
    int round = 0;        ///< from 0; of `circumference_of_round`

    friend bool operator==(const Measured&, const Measured&) = default;
};

}  // namespace roundwright
