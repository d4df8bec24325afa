#include "core/face/feature_mesh.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/mesh/build_mesh.h"
#include "core/face/feature_fit.h"
#include "core/face/place_feature.h"
#include "core/face/thread_mesh.h"

namespace roundwright {

namespace {

using std::numbers::pi;

constexpr int around = 40;
constexpr double felt_thickness_mm = 1.2;
constexpr double washer_thickness_mm = 1.5;
constexpr double thread_mm = 1.1;

/// A frame on the surface: width along the round, height along the meridian, depth outwards.
struct Frame {
    Vec3 origin;
    Vec3 right;
    Vec3 up;
    Vec3 out;

    [[nodiscard]] Vec3 at(double x, double y, double z) const {
        return origin + x * right + y * up + z * out;
    }
};

Frame frame_at(const SurfacePoint& point) { return {point.point, point.right, point.up, point.normal}; }

/// One ring of a body of elliptic section: half width and half height as shares of the whole, its depth, and
/// the direction of its normal (share outwards along the ellipse, share along depth).
struct Ring {
    double share;
    double depth_mm;
    double normal_across;
    double normal_out;
};

/// A closed body built of elliptic rings from front to back. The first and last ring are closed with a fan.
Mesh ringed_body(const Frame& frame, double width_mm, double height_mm, const std::vector<Ring>& rings,
                 const Colour& colour) {
    Mesh mesh;
    for (const Ring& ring : rings) {
        for (int k = 0; k < around; ++k) {
            const double angle = 2 * pi * k / around;
            const double c = std::cos(angle);
            const double s = std::sin(angle);
            const Vec3 point =
                frame.at(width_mm / 2 * ring.share * c, height_mm / 2 * ring.share * s, ring.depth_mm);
            const Vec3 across =
                (c / width_mm * frame.right + s / height_mm * frame.up).normalized() * ring.normal_across;
            add_vertex(mesh, point, (across + ring.normal_out * frame.out).normalized(), colour);
        }
    }
    const auto index = [](std::size_t ring, int k) {
        return static_cast<std::uint32_t>(ring * around + static_cast<std::size_t>(k % around));
    };
    for (std::size_t ring = 0; ring + 1 < rings.size(); ++ring) {
        for (int k = 0; k < around; ++k) {
            add_triangle(mesh, index(ring, k), index(ring + 1, k), index(ring + 1, k + 1));
            add_triangle(mesh, index(ring, k), index(ring + 1, k + 1), index(ring, k + 1));
        }
    }
    const auto close = [&](std::size_t ring, double direction) {
        const auto centre = static_cast<std::uint32_t>(mesh.vertex_count());
        add_vertex(mesh, frame.at(0, 0, rings[ring].depth_mm), direction * frame.out, colour);
        for (int k = 0; k < around; ++k) {
            if (direction > 0)
                add_triangle(mesh, centre, index(ring, k), index(ring, k + 1));
            else
                add_triangle(mesh, centre, index(ring, k + 1), index(ring, k));
        }
    };
    close(0, 1);
    close(rings.size() - 1, -1);
    return mesh;
}

/// A half ellipsoid of this depth over a flat back.
std::vector<Ring> dome_rings(double depth_mm) {
    constexpr int rings = 10;
    std::vector<Ring> dome;
    for (int k = 1; k <= rings; ++k) {
        const double angle = pi / 2 * k / rings;
        dome.push_back({std::sin(angle), depth_mm * std::cos(angle), std::sin(angle), std::cos(angle)});
    }
    dome.push_back({1, 0, 0, -1});
    dome.push_back({0.01, 0, 0, -1});
    return dome;
}

std::vector<Ring> disc_rings(double front_mm, double back_mm) {
    return {
        {0.01, front_mm, 0, 1}, {0.94, front_mm, 0.2, 1}, {1, front_mm - (front_mm - back_mm) * 0.3, 1, 0.3},
        {1, back_mm, 1, 0},     {1, back_mm, 0, -1},      {0.01, back_mm, 0, -1}};
}

Colour lighter(const Colour& colour, double share) {
    const auto mixed = [share](std::uint8_t c) { return static_cast<std::uint8_t>(c + (255 - c) * share); };
    return {mixed(colour.red), mixed(colour.green), mixed(colour.blue)};
}

/// Satin stitch: threads side by side, from the lower rim of the outline to the upper.
Mesh satin_stitch(const Feature& feature, const Frame& frame) {
    const int threads = std::max(3, static_cast<int>(std::lround(feature.width_mm / thread_mm)));
    Mesh all;
    for (int k = 0; k < threads; ++k) {
        const double x = ((k + 0.5) / threads - 0.5) * feature.width_mm;
        const double half =
            feature.height_mm / 2 * std::sqrt(std::max(0.0, 1 - std::pow(2 * x / feature.width_mm, 2)));
        std::vector<SurfacePoint> way;
        for (int step = 0; step <= 6; ++step) {
            const double share = step / 3.0 - 1;
            SurfacePoint point;
            point.point = frame.at(x, half * share, 0.4 * (1 - share * share));
            point.normal = frame.out;
            way.push_back(point);
        }
        append(all, thread_mesh(way, thread_mm * 1.15,
                                k % 2 == 0 ? feature.colour : lighter(feature.colour, 0.08)));
    }
    return all;
}

/// A lid over the upper part of an eye: a larger dome, cut off below, in a felt of the colour of skin.
Mesh lid(const Feature& feature, const Frame& frame) {
    const Frame raised{frame.at(0, feature.height_mm * 0.22, 0.3), frame.right, frame.up, frame.out};
    const double depth = std::min(feature.width_mm, feature.height_mm) * 0.46;
    return ringed_body(raised, feature.width_mm * 1.12, feature.height_mm * 0.72, dome_rings(depth),
                       lighter(feature.colour, 0.7));
}

class PartMaker {
  public:
    PartMaker(const FaceSurface& surface, double fabric_mm, std::vector<FeaturePart>& parts)
        : surface_(surface), fabric_mm_(fabric_mm), parts_(parts) {}

    void add(int index, const Feature& feature, const PlacedFeature& placed) {
        for (std::size_t k = 0; k < placed.starts.size(); ++k) {
            if (feature.kind == FeatureKind::stitched_line) {
                const double thickness = std::max(thread_mm, feature.height_mm);
                keep(index,
                     thread_mesh(way_between(placed.starts[k], placed.ends[k], surface_), thickness,
                                 feature.colour),
                     Finish::yarn);
            } else {
                add_body(index, feature, surface_.at(placed.starts[k]));
            }
        }
    }

  private:
    void add_body(int index, const Feature& feature, const SurfacePoint& point) {
        const Frame frame = frame_at(point);
        const double w = feature.width_mm;
        const double h = feature.height_mm;
        if (w <= 0 || h <= 0) return;
        switch (feature.kind) {
            case FeatureKind::embroidered_eye:
                return keep(index, satin_stitch(feature, frame), Finish::yarn);
            case FeatureKind::felt_disc:
                return keep(index,
                            ringed_body(frame, w, h, disc_rings(0.3 + felt_thickness_mm, -1), feature.colour),
                            Finish::felt);
            default:
                break;
        }
        const Frame seated{frame.at(0, 0, 0.3), frame.right, frame.up, frame.out};
        keep(index, ringed_body(seated, w, h, dome_rings(std::min(w, h) * 0.42), feature.colour),
             Finish::glossy);
        if (feature.lids) keep(index, lid(feature, frame), Finish::felt);
        const double washer = washer_diameter_mm(feature);
        keep(index,
             ringed_body(frame, washer, washer, disc_rings(-fabric_mm_, -fabric_mm_ - washer_thickness_mm),
                         {0xE8, 0xE8, 0xE4}),
             Finish::glossy, true);
    }

    void keep(int index, Mesh mesh, Finish finish, bool inside = false) {
        parts_.push_back({std::move(mesh), finish, index, inside});
    }

    const FaceSurface& surface_;
    double fabric_mm_;
    std::vector<FeaturePart>& parts_;
};

}  // namespace

std::vector<FeaturePart> feature_parts(const std::vector<Feature>& features, const FaceSurface& surface,
                                       const std::vector<int>& counts, double fabric_mm) {
    std::vector<FeaturePart> parts;
    if (surface.empty()) return parts;
    PartMaker maker(surface, fabric_mm, parts);
    for (std::size_t k = 0; k < features.size(); ++k) {
        maker.add(static_cast<int>(k), features[k], place_feature(features[k], surface, counts));
    }
    return parts;
}

}  // namespace roundwright
