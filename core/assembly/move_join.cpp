#include "core/assembly/move_join.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

using std::numbers::pi;

/// At an end there is no round to count stitches around.
bool has_stitches(int round, std::size_t rounds) {
    return round >= 0 && static_cast<std::size_t>(round) + 1 < rounds;
}

/// The same place by the shorter way from the middle.
double wrapped(double stitches_right, int around) {
    return std::remainder(stitches_right, static_cast<double>(std::max(1, around)));
}

}  // namespace

JoinPlace place_near(const SolvedPiece& piece, const Vec3& point) {
    JoinPlace place{-1, 0, false};
    if (piece.surface.empty()) return place;
    const SurfacePlace nearest = piece.surface.nearest(point);
    const auto off = [&](int round) {
        return std::abs(piece.surface.along_of_loop(round + 1) - nearest.along_mm);
    };
    const int rounds = std::min(piece.surface.loops() - 1, static_cast<int>(piece.stitches.size()));
    for (int round = 0; round < rounds; ++round)
        if (off(round) < off(place.round)) place.round = round;
    if (!has_stitches(place.round, piece.stitches.size())) return place;
    const int around = piece.stitches[static_cast<std::size_t>(place.round)];
    place.stitches_right = wrapped(std::round(2 * nearest.angle / (2 * pi) * around) / 2, around);
    return place;
}

JoinPlace nudged(JoinPlace place, int rounds, double stitches_right, std::span<const int> stitches) {
    const int before = place.round;
    place.round = std::clamp(place.round + rounds, -1, static_cast<int>(stitches.size()) - 1);
    if (!has_stitches(place.round, stitches.size())) return place;
    const int around = stitches[static_cast<std::size_t>(place.round)];
    // Up or down the table it keeps its direction from the axis, to the nearest half stitch.
    if (place.round != before && has_stitches(before, stitches.size())) {
        const double share = place.stitches_right / std::max(1, stitches[static_cast<std::size_t>(before)]);
        place.stitches_right = std::round(2 * share * around) / 2;
    }
    if (stitches_right != 0) place.stitches_right = wrapped(place.stitches_right + stitches_right, around);
    return place;
}

bool hangs_on(const PlacedToy& placed, std::size_t copy, std::size_t ancestor) {
    std::optional<std::size_t> at = copy;
    while (at && *at != ancestor) at = placed.pieces[*at].onto;
    return at.has_value();
}

}  // namespace roundwright
