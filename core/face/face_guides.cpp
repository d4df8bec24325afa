#include "core/face/face_guides.h"

#include <cmath>
#include <numbers>

#include "core/mesh/build_mesh.h"
#include "core/face/thread_mesh.h"

namespace roundwright {

namespace {

using std::numbers::pi;

constexpr double line_mm = 0.7;
constexpr double half_sweep = pi * 0.42;

/// The way along the meridian whose height is nearest to a share of the piece's.
double along_at_height(const FaceSurface& surface, double share) {
    constexpr int samples = 400;
    const auto off = [&](double along) {
        return std::abs(surface.at({along, 0}).height_mm - share * surface.height_mm());
    };
    double best = 0;
    for (int k = 0; k <= samples; ++k) {
        const double along = surface.end_mm() * k / samples;
        if (off(along) < off(best)) best = along;
    }
    return best;
}

}  // namespace

Mesh face_guides(const FaceSurface& surface, const Colour& colour) {
    Mesh lines;
    if (surface.empty()) return lines;
    const auto add = [&](const SurfacePlace& from, const SurfacePlace& to, double thickness_mm) {
        append(lines, thread_mesh(way_between(from, to, surface), thickness_mm, colour));
    };
    add({surface.end_mm() * 0.04, 0}, {surface.end_mm() * 0.96, 0}, line_mm);
    for (double share : {1.0 / 3, 0.5, 2.0 / 3}) {
        const double along = along_at_height(surface, share);
        add({along, -half_sweep}, {along, half_sweep}, share == 0.5 ? 1.4 * line_mm : line_mm);
    }
    return lines;
}

}  // namespace roundwright
