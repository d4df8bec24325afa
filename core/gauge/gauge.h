#pragma once

namespace roundwright {

/// The size of one relaxed single crochet as this maker works it, mm. The errors are half widths of the
/// range in which the true value is believed to lie: two standard deviations. With their correlation they are
/// a normal distribution of both sizes; core/gauge/gauge_belief.h takes it apart into the size that is common
/// to both and the ratio h / w, and loses nothing either way.
struct Gauge {
    double stitch_width_mm = 0;
    double round_height_mm = 0;
    double stitch_width_error_mm = 0;
    double round_height_error_mm = 0;
    double error_correlation = 0;  ///< of the two errors, -1 to 1; 1: one figure gave both

    friend bool operator==(const Gauge&, const Gauge&) = default;
};

}  // namespace roundwright
