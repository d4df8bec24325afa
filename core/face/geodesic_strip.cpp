#include "core/face/geodesic_strip.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace roundwright {
namespace {

/// Twice the area of a triangle; positive where c is left of the way from a to b.
double area(const Vec2& a, const Vec2& b, const Vec2& c) {
    return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
}

double angle_between(const Vec2& a, const Vec2& b) {
    return std::abs(std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b)));
}

/// The third corner of a triangle on the edge from a to b, by its distances from both, to the left of the
/// edge (`side` 1) or to its right (-1).
Vec2 third_corner(const Vec2& a, const Vec2& b, double from_a, double from_b, double side) {
    const Vec2 way = b - a;
    const double length = std::max(way.norm(), 1e-300);
    const double along = (from_a * from_a - from_b * from_b + length * length) / (2 * length);
    const double across = std::sqrt(std::max(0.0, from_a * from_a - along * along));
    const Vec2 unit = way / length;
    return a + along * unit + side * across * Vec2(-unit.y(), unit.x());
}

constexpr double least_gain = 1e-9;

}  // namespace

double GeodesicStrip::straightened() {
    unfold();
    find_way();
    // Every way round a vertex shortens the way; the limit is for rounding alone.
    for (std::size_t turn = 0; turn < 200; ++turn) {
        const double before = length_;
        const auto kept = crossed_;
        bool led = false;
        // Two that share a face would cross the edge between them to and fro.
        std::size_t free_below = crossed_.size() + 1;
        for (auto bend = bends_.rbegin(); bend != bends_.rend(); ++bend) {
            if (bend->last + 1 >= free_below || !lead_around(*bend)) continue;
            free_below = bend->first;
            led = true;
        }
        if (!led) break;
        unfold();
        find_way();
        if (length_ < before * (1 - 1e-13)) continue;
        crossed_ = kept;
        length_ = std::min(length_, before);
        break;
    }
    return length_;
}

/// Leaving a face across its half-edge, the end of that is on the left.
void GeodesicStrip::unfold() {
    portals_.clear();
    const auto distance = [](const Vec3& a, const Vec3& b) { return (a - b).norm(); };
    const HalfEdge first = crossed_.front();
    const Vec3 right = mesh_.corner(first), left = mesh_.corner(mesh_.next(first));
    portals_.push_back({Vec2(distance(right, left), 0), Vec2(0, 0)});
    start_ =
        third_corner(portals_[0].right, portals_[0].left, distance(right, from_), distance(left, from_), 1);
    for (std::size_t k = 1; k <= crossed_.size(); ++k) {
        const HalfEdge entered = mesh_.twins_[crossed_[k - 1]];
        const Vec3 low = mesh_.corner(mesh_.next(entered)), high = mesh_.corner(entered);
        const bool at_end = k == crossed_.size();
        const Vec3 apex = at_end ? to_ : mesh_.corner(mesh_.next(mesh_.next(entered)));
        const Portal& before = portals_.back();
        const Vec2 flat =
            third_corner(before.right, before.left, distance(low, apex), distance(high, apex), -1);
        if (at_end) {
            end_ = flat;
            return;
        }
        // The next edge either keeps the left corner or the right one.
        const bool keeps_left = crossed_[k] == mesh_.next(mesh_.next(entered));
        portals_.push_back(keeps_left ? Portal{before.left, flat} : Portal{flat, before.right});
    }
}

std::uint32_t GeodesicStrip::vertex(std::size_t portal, Side side) const {
    const HalfEdge h = crossed_[portal];
    return mesh_.vertex(side == Side::left ? mesh_.next(h) : h);
}

GeodesicStrip::Bend GeodesicStrip::bend_at(std::size_t portal, Side side) const {
    Bend bend{side, portal, portal, {}, {}, {}};
    const std::uint32_t at = vertex(portal, side);
    while (bend.first > 0 && vertex(bend.first - 1, side) == at) --bend.first;
    while (bend.last + 1 < crossed_.size() && vertex(bend.last + 1, side) == at) ++bend.last;
    bend.at = side == Side::left ? portals_[portal].left : portals_[portal].right;
    return bend;
}

void GeodesicStrip::find_way() {
    bends_.clear();
    length_ = 0;
    Vec2 apex = start_, left = start_, right = start_;
    std::size_t left_portal = 0, right_portal = 0;
    const std::size_t last = crossed_.size();
    const auto turn_at = [&](std::size_t portal, Side side) {
        const Vec2 at = side == Side::left ? left : right;
        length_ += (at - apex).norm();
        bends_.push_back(bend_at(portal, side));
        bends_.back().before = apex;
        if (bends_.size() > 1) bends_[bends_.size() - 2].after = at;
        apex = left = right = at;
        left_portal = right_portal = portal;
        return portal + 1;
    };
    for (std::size_t k = 0; k <= last;) {
        const Portal to = k == last ? Portal{end_, end_} : portals_[k];
        if (area(apex, right, to.right) >= 0) {
            if (apex != right && area(apex, left, to.right) > 0) {
                k = turn_at(left_portal, Side::left);
                continue;
            }
            right = to.right;
            right_portal = k;
        }
        if (area(apex, left, to.left) <= 0) {
            if (apex != left && area(apex, right, to.left) < 0) {
                k = turn_at(right_portal, Side::right);
                continue;
            }
            left = to.left;
            left_portal = k;
        }
        ++k;
    }
    length_ += (end_ - apex).norm();
    if (!bends_.empty()) bends_.back().after = end_;
}

double GeodesicStrip::angle_in_strip(const Bend& bend) const {
    const auto across = [&](std::size_t k) {
        return Vec2((bend.side == Side::left ? portals_[k].right : portals_[k].left) - bend.at);
    };
    double sum = angle_between(bend.before - bend.at, across(bend.first)) +
                 angle_between(across(bend.last), bend.after - bend.at);
    for (std::size_t k = bend.first; k < bend.last; ++k) sum += angle_between(across(k), across(k + 1));
    return sum;
}

bool GeodesicStrip::lead_around(const Bend& bend) {
    const std::uint32_t at = vertex(bend.first, bend.side);
    const double other_side = mesh_.angles_[at] - angle_in_strip(bend);
    if (!(other_side < std::numbers::pi - least_gain)) return false;
    const std::uint32_t goal = mesh_.twins_[crossed_[bend.last]] / 3;
    std::vector<HalfEdge> around;
    // Of the two edges at the vertex, the one that the strip does not cross.
    HalfEdge out = crossed_[bend.first];
    out = mesh_.vertex(out) == at ? mesh_.next(mesh_.next(out)) : mesh_.next(out);
    for (;;) {
        const HalfEdge entered = mesh_.twins_[out];
        if (entered == MeshGeodesics::none || around.size() > mesh_.faces_.size()) return false;
        around.push_back(out);
        if (entered / 3 == goal) break;
        out = mesh_.vertex(entered) == at ? mesh_.next(mesh_.next(entered)) : mesh_.next(entered);
    }
    const auto first = crossed_.begin() + static_cast<std::ptrdiff_t>(bend.first);
    const auto end = crossed_.begin() + static_cast<std::ptrdiff_t>(bend.last) + 1;
    crossed_.insert(crossed_.erase(first, end), around.begin(), around.end());
    return true;
}

}  // namespace roundwright
