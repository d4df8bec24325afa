#pragma once

#include "core/gauge/yarn_standard.h"

namespace roundwright {

/// How thick a fabric of single crochet is, between the fingers but not pressed, mm. The error is a half
/// width of the range in which the true value is believed to lie.
struct FabricThickness {
    double mm = 0;
    double error_mm = 0;

    friend bool operator==(const FabricThickness&, const FabricThickness&) = default;
};

/// As thick as one wrap of the yarn around a ruler is wide (an inch over the wraps per inch of the Craft Yarn
/// Council's table): two strands lie on each other in single crochet, and each is pressed to about half of
/// its loose thickness. The half is a guess of our own; it gives the 2 to 3 mm that makers find in worsted.
/// The error is that of the table's range and a quarter for the guess. Where the yarn cannot belong to the
/// stitch (two strands held together, a weight that nobody set), the stitch bounds it: between a quarter and
/// three fifths of its width. Nothing where the stitch has no width.
[[nodiscard]] FabricThickness fabric_thickness(YarnWeight weight, double stitch_width_mm);

/// The same in stitch widths where only the stitch is known: the light to super bulky weights, each with the
/// hook that toys in it are usually worked with, give about this.
inline constexpr double fabric_thickness_in_stitches = 0.35;
[[nodiscard]] FabricThickness fabric_thickness(double stitch_width_mm);

/// Where neither is known: of light yarn (1.95 by the table).
inline constexpr double usual_fabric_mm = 2;

}  // namespace roundwright
