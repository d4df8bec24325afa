#include "core/assembly/fabric_profile.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace roundwright {

FabricProfile::FabricProfile(const SolvedPiece& piece, JoinedEnd from, double reach_mm) {
    const auto& loops = piece.measures.loops;
    const bool turned = piece.piece->starts_at_top;
    outwards_ = (from == JoinedEnd::start) == turned ? -1 : 1;
    for (std::size_t k = 0; k < loops.size(); ++k) {
        const LoopMeasures& loop = loops[from == JoinedEnd::start ? k : loops.size() - 1 - k];
        const double height = turned ? piece.measures.height_mm - loop.height_mm : loop.height_mm;
        const double way = levels_.empty()
                               ? 0
                               : levels_.back().distance + std::hypot(loop.radius_mm - levels_.back().radius,
                                                                      height - levels_.back().height);
        levels_.push_back({loop.radius_mm, height, way});
        if (way >= reach_mm) break;
    }
}

FabricProfile::Spot FabricProfile::nearest(const Vec3& point) const {
    // It is asked for every point of a picture: what lies further up or down than the nearest is passed over.
    const Vec2 at(std::sqrt(point.x() * point.x() + point.z() * point.z()), point.y());
    double least = std::numeric_limits<double>::infinity(), share = 0;
    std::size_t nearest = 0;
    Vec2 off = Vec2::Zero();
    for (std::size_t k = 1; k < levels_.size(); ++k) {
        const Level& a = levels_[k - 1];
        const Level& b = levels_[k];
        const double beyond =
            std::max(std::min(a.height, b.height) - at.y(), at.y() - std::max(a.height, b.height));
        if (beyond > 0 && beyond * beyond >= least) continue;
        const Vec2 from(a.radius, a.height), way(b.radius - a.radius, b.height - a.height);
        const double squared = way.squaredNorm();
        const double along = squared > 0 ? std::clamp((at - from).dot(way) / squared, 0.0, 1.0) : 0;
        const Vec2 aside = at - from - along * way;
        if (aside.squaredNorm() >= least) continue;
        least = aside.squaredNorm();
        nearest = k;
        share = along;
        off = aside;
    }
    if (nearest == 0) return {};
    const Level& a = levels_[nearest - 1];
    const Level& b = levels_[nearest];
    const double side = outwards_ * (off.x() * (b.height - a.height) - off.y() * (b.radius - a.radius));
    Spot found{a.distance + share * (b.distance - a.distance), std::copysign(std::sqrt(least), side)};
    const Vec2 way(b.radius - a.radius, b.height - a.height);
    if (share > 0 && share < 1) found.along = (b.distance - a.distance) / way.squaredNorm() * way;
    return found;
}

}  // namespace roundwright
