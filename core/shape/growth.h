#pragma once

namespace roundwright {

/// What counts alone say of a round: its loop's relaxed length, that of the loop below, and its height, mm.

/// (L - L below) / (2 pi h): 1 grows as a flat disc does; between 0 and 1 a cone of half angle asin g; above
/// 1 there is length to spare; below 0 it closes.
[[nodiscard]] double growth_ratio(double loop_below_mm, double loop_mm, double height_mm);

/// Stitches more a round that make a flat disc: 2 pi h / w.
[[nodiscard]] double flat_increase(double height_mm, double stitch_width_mm);

/// Radius of the hyperbolic plane on which circles grow from loop to loop as fast as these far from their
/// centre: rho = h / ln(L / L below), since a circle of radius s is 2 pi rho sinh(s / rho) long (Henderson
/// and Taimina, Crocheting the Hyperbolic Plane, Math. Intelligencer 23(2) (2001) 17-28). Infinite for a
/// round that does not grow.
[[nodiscard]] double hyperbolic_radius_mm(double loop_below_mm, double loop_mm, double height_mm);

}  // namespace roundwright
