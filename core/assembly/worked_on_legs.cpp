#include "core/assembly/worked_on_legs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/assembly/seam_line.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// Points of a leg's edge, as many as are near enough to its circle.
constexpr int points_around_leg = 48;

struct LegEdge {
    Vec2 middle;  ///< to the right of the body's front, and to the front
    double radius = 0;
    double height = 0;
    [[nodiscard]] double angle() const { return std::atan2(middle.x(), middle.y()); }
};

double angle_towards(const LegEdge& from, const LegEdge& to) {
    const Vec2 way = to.middle - from.middle;
    return std::atan2(way.x(), way.y());
}

double positive(double angle) { return angle > 0 ? angle : angle + 2 * pi; }

/// Along the outside of every leg in turn, from the one to the next in a straight line. In the body's frame,
/// turned so that it faces the front.
std::vector<Vec3> path_around(std::vector<LegEdge> legs) {
    std::ranges::sort(legs, {}, [](const LegEdge& leg) { return positive(leg.angle()); });
    std::vector<Vec3> path;
    for (std::size_t i = 0; i < legs.size(); ++i) {
        const LegEdge& leg = legs[i];
        const double entry = angle_towards(leg, legs[(i + legs.size() - 1) % legs.size()]);
        double turn = std::remainder(angle_towards(leg, legs[(i + 1) % legs.size()]) - entry, 2 * pi);
        if (turn < 1e-9) turn += 2 * pi;
        for (int k = 0; k <= points_around_leg; ++k) {
            const double angle = entry + turn * k / points_around_leg;
            path.emplace_back(leg.middle.x() + leg.radius * std::sin(angle), leg.height,
                              leg.middle.y() + leg.radius * std::cos(angle));
        }
    }
    // It begins in the middle of the way from the last leg to the first, which is its front.
    path.insert(path.begin(), (path.front() + path.back()) / 2);
    return path;
}

/// Points at equal parts of the way along a closed path, the first at its beginning.
std::vector<Vec3> equally_spaced(std::vector<Vec3> path, std::size_t points) {
    path.push_back(path.front());
    std::vector<double> travelled{0};
    for (std::size_t k = 1; k < path.size(); ++k)
        travelled.push_back(travelled.back() + (path[k] - path[k - 1]).norm());
    std::vector<Vec3> found;
    std::size_t k = 1;
    for (std::size_t point = 0; point < points; ++point) {
        const double wanted = travelled.back() * static_cast<double>(point) / static_cast<double>(points);
        while (k + 1 < path.size() && travelled[k] < wanted) ++k;
        const double way = travelled[k] - travelled[k - 1];
        const double share = way > 0 ? (wanted - travelled[k - 1]) / way : 0;
        found.push_back(path[k - 1] + share * (path[k] - path[k - 1]));
    }
    return found;
}

}  // namespace

std::vector<LegPlace> leg_places(const std::vector<double>& edge_radius_mm, const std::vector<bool>& pairs,
                                 double gap_mm) {
    std::size_t legs = 0;
    double widest = 0;
    for (std::size_t i = 0; i < pairs.size(); ++i) {
        legs += pairs[i] ? 2 : 1;
        widest = std::max(widest, edge_radius_mm[i]);
    }
    if (legs == 0) return {};
    const double apart = 2 * widest + gap_mm;
    const double radius = legs < 2 ? 0 : apart / (2 * std::sin(pi / static_cast<double>(legs)));
    const auto angle = [&](std::size_t slot) {
        return pi * (2 * static_cast<double>(slot) + 1) / static_cast<double>(legs);
    };
    std::vector<bool> taken(legs, false);
    std::vector<LegPlace> places;
    for (const bool pair : pairs) {
        // Pairs may leave single places between them only in the middle, where a slot is its own mirror.
        std::size_t slot = 0;
        while (slot + 1 < legs && (taken[slot] || (pair && taken[legs - 1 - slot]))) ++slot;
        taken[slot] = true;
        if (pair) taken[legs - 1 - slot] = true;
        places.push_back({angle(slot), radius});
    }
    return places;
}

std::vector<Vec3> loop_around_legs(const Toy& toy, const PlacedToy& placed,
                                   std::span<const SolvedPiece> solved, std::size_t body) {
    const PlacedPiece& onto = placed.pieces[body];
    const double face = solved[onto.solved].piece->face_degrees * pi / 180;
    const Vec3 front(std::sin(face), 0, std::cos(face)), right(std::cos(face), 0, -std::sin(face));
    std::vector<LegEdge> legs;
    for (const PlacedPiece& leg : placed.pieces) {
        if (!leg.join || leg.onto != body) continue;
        const Join& join = toy.joins[*leg.join];
        if (join.seam != Seam::worked_on || join.at.round != -1) continue;
        const SewnEdge edge = sewn_edge(solved[leg.solved], join.end);
        const Vec3 middle = onto.pose.inverse() * (leg.pose * edge.middle);
        legs.push_back({{middle.dot(right), middle.dot(front)}, edge.radius_mm, middle.y()});
    }
    if (legs.size() < 2) return {};
    std::vector<Vec3> loop = equally_spaced(path_around(std::move(legs)), points_of_seam);
    for (Vec3& point : loop)
        point = onto.pose * Vec3(point.x() * right + point.y() * Vec3::UnitY() + point.z() * front);
    return loop;
}

}  // namespace roundwright
