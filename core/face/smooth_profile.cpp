#include "core/face/smooth_profile.h"

#include <algorithm>
#include <cmath>

namespace roundwright {

namespace {

/// Derivative of the parabola through three points with these spacings, at the middle one.
Vec2 middle_tangent(const Vec2& a, const Vec2& b, const Vec2& c, double before, double after) {
    return ((b - a) / before * after + (c - b) / after * before) / (before + after);
}

/// A pole's neighbour on the other side of the axis.
Vec2 mirrored(const Vec2& loop) { return {-loop.x(), loop.y()}; }

}  // namespace

SmoothProfile::SmoothProfile(std::vector<Vec2> loops, bool pole_first, bool pole_last) {
    // Loops that coincide carry no direction.
    for (const Vec2& loop : loops) {
        if (!loops_.empty() && (loop - loops_.back()).norm() <= 0) continue;
        along_.push_back(loops_.empty() ? 0 : along_.back() + (loop - loops_.back()).norm());
        loops_.push_back(loop);
    }
    if (empty()) return;
    const std::size_t last = loops_.size() - 1;
    const auto gap = [this](std::size_t k) { return along_[k + 1] - along_[k]; };
    tangents_.resize(loops_.size());
    for (std::size_t k = 1; k < last; ++k) {
        tangents_[k] = middle_tangent(loops_[k - 1], loops_[k], loops_[k + 1], gap(k - 1), gap(k));
    }
    tangents_.front() = pole_first ? middle_tangent(mirrored(loops_[1]), loops_[0], loops_[1], gap(0), gap(0))
                                   : Vec2((loops_[1] - loops_[0]) / gap(0));
    tangents_.back() = pole_last ? middle_tangent(loops_[last - 1], loops_[last], mirrored(loops_[last - 1]),
                                                  gap(last - 1), gap(last - 1))
                                 : Vec2((loops_[last] - loops_[last - 1]) / gap(last - 1));
}

// Cubic Hermite basis on [0, 1], scaled to the segment's length.
SmoothProfile::Sample SmoothProfile::at(double along) const {
    const double s = std::clamp(along, 0.0, along_.back());
    const auto above = std::upper_bound(along_.begin() + 1, along_.end() - 1, s);
    const auto k = static_cast<std::size_t>(above - along_.begin()) - 1;
    const double h = along_[k + 1] - along_[k];
    const double t = (s - along_[k]) / h;
    const Vec2 p0 = loops_[k];
    const Vec2 p1 = loops_[k + 1];
    const Vec2 m0 = tangents_[k] * h;
    const Vec2 m1 = tangents_[k + 1] * h;
    const double t2 = t * t;
    const double t3 = t2 * t;
    return {(2 * t3 - 3 * t2 + 1) * p0 + (t3 - 2 * t2 + t) * m0 + (3 * t2 - 2 * t3) * p1 + (t3 - t2) * m1,
            ((6 * t2 - 6 * t) * (p0 - p1) + (3 * t2 - 4 * t + 1) * m0 + (3 * t2 - 2 * t) * m1) / h,
            ((12 * t - 6) * (p0 - p1) + (6 * t - 4) * m0 + (6 * t - 2) * m1) / (h * h)};
}

double SmoothProfile::length_mm(double from, double to) const {
    constexpr int parts_per_loop = 8;
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    const int parts =
        std::max(1, static_cast<int>(std::ceil((high - low) / end() * parts_per_loop * loops())));
    double length = 0;
    Vec2 before = at(low).point;
    for (int k = 1; k <= parts; ++k) {
        const Vec2 here = at(low + (high - low) * k / parts).point;
        length += (here - before).norm();
        before = here;
    }
    return length;
}

}  // namespace roundwright
