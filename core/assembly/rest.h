#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/assembly/placed_toy.h"

namespace roundwright {

/// Fabric gives under a toy's weight: what is no more than this above the table touches it. A starting value
/// of our own, mm.
inline constexpr double fabric_gives_mm = 1;

/// How a toy rests on a table.
struct Rest {
    /// From the toy's frame to the table's: y up, the table at y = 0. Turns and shifts only.
    Pose pose = Pose::Identity();
    std::vector<Vec2> support;  ///< convex, anticlockwise seen from above (to the right, to the back): where
                                ///< it touches
    Vec3 centre_of_mass = Vec3::Zero();  ///< on the table
    /// How far the table may be tilted, the worst way, before it tips over: the angle at the centre of mass
    /// between straight down and the nearest edge of the support. Below 0: it tips over by itself.
    double stable_degrees = 0;

    [[nodiscard]] bool stands() const { return stable_degrees > 0; }
};

/// A toy of these points with this centre of mass, as it is set down: standing, as it is built; sitting, set
/// down so and let go until it meets the table on enough sides to rest; lying, the same from its back.
[[nodiscard]] Rest rest_of(std::span<const Vec3> points, const Vec3& centre_of_mass, Stance stance);

/// The same pose with another centre of mass.
[[nodiscard]] double stable_degrees(const Rest& rest, const Vec3& centre_of_mass_on_table);

/// Pellets of plastic as they are poured, kg/m3 (polypropylene and polyethylene: 500 to 600), from memory.
inline constexpr double pellets_kg_per_m3 = 560;
/// Radius of a bag of pellets, as a ball.
[[nodiscard]] double pellet_bag_radius_mm(double grams);

/// Grams of pellets, in a bag on the middle of the support, that make a toy of so many grams stable by these
/// degrees; 0: none needed; nothing where 2 kg would not.
[[nodiscard]] std::optional<double> weight_to_hold_g(const Rest& rest, double toy_grams, double degrees);

/// The corners of the smallest convex polygon around points, anticlockwise (A. M. Andrew, Another efficient
/// algorithm for convex hulls in two dimensions, Inf. Process. Lett. 9 (1979) 216-219).
[[nodiscard]] std::vector<Vec2> convex_hull(std::vector<Vec2> points);

}  // namespace roundwright
