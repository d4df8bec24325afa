#include "render/illustration/visible_stitches.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace roundwright::render {
namespace {

constexpr double rim_facing = 0.3, inside_facing = -0.5;

/// A stitch's corners in the drawing's plane, drawn in towards its middle so that neighbours do not overlap.
struct Quad {
    std::array<QPointF, 4> corners;
    QPointF middle;
    double depth = 0;
    double size = 0;
};

Quad quad_of(const StitchPatch& patch, const Projection& projection) {
    constexpr double drawn_in = 0.75;
    Quad quad;
    std::array<Vec3, 4> places;
    Vec3 middle = Vec3::Zero();
    for (std::size_t k = 0; k < 4; ++k) {
        places[k] = projection(patch.corners[k]);
        middle += places[k] / 4;
    }
    quad.middle = {middle.x(), middle.y()};
    quad.depth = middle.z();
    for (std::size_t k = 0; k < 4; ++k) {
        quad.corners[k] = quad.middle + drawn_in * (QPointF(places[k].x(), places[k].y()) - quad.middle);
        quad.size = std::max(quad.size, (places[k] - middle).norm());
    }
    return quad;
}

double cross(const QPointF& a, const QPointF& b) { return a.x() * b.y() - a.y() * b.x(); }

/// Whether a side of one lies between the two (the separating axis theorem, for convex quads).
bool side_separates(const Quad& one, const Quad& other) {
    const double turn = cross(one.corners[2] - one.corners[0], one.corners[3] - one.corners[1]) >= 0 ? 1 : -1;
    for (std::size_t k = 0; k < 4; ++k) {
        const QPointF from = one.corners[k], along = one.corners[(k + 1) % 4] - from;
        const auto outside = [&](const QPointF& p) { return turn * cross(along, p - from) <= 0; };
        if (std::all_of(other.corners.begin(), other.corners.end(), outside)) return true;
    }
    return false;
}

bool overlap(const Quad& one, const Quad& other) {
    return !side_separates(one, other) && !side_separates(other, one);
}

/// Quads by the squares of a grid they lie in.
class QuadGrid {
  public:
    explicit QuadGrid(double square) : square_(std::max(square, 1e-6)) {}
    void add(const Quad& quad, std::size_t number) {
        for_squares(quad, [&](std::pair<int, int> square) { squares_[square].push_back(number); });
    }
    template <typename Use>
    void for_near(const Quad& quad, const Use& use) const {
        for_squares(quad, [&](std::pair<int, int> square) {
            const auto found = squares_.find(square);
            if (found != squares_.end())
                for (const auto number : found->second) use(number);
        });
    }

  private:
    template <typename Use>
    void for_squares(const Quad& quad, const Use& use) const {
        double left = quad.middle.x(), right = left, low = quad.middle.y(), high = low;
        for (const auto& corner : quad.corners) {
            left = std::min(left, corner.x());
            right = std::max(right, corner.x());
            low = std::min(low, corner.y());
            high = std::max(high, corner.y());
        }
        const auto square = [&](double x) { return static_cast<int>(std::floor(x / square_)); };
        for (int i = square(left); i <= square(right); ++i)
            for (int j = square(low); j <= square(high); ++j) use(std::pair{i, j});
    }

    double square_;
    std::map<std::pair<int, int>, std::vector<std::size_t>> squares_;
};

/// Farthest first, each stitch goes over the layers of those it covers.
void lay_in_layers(std::vector<VisibleStitch>& visible, const StitchSurface& surface,
                   const Projection& projection) {
    std::vector<Quad> quads;
    double size = 0;
    for (const auto& stitch : visible) {
        quads.push_back(quad_of(surface.stitches[stitch.stitch], projection));
        size += 2 * quads.back().size / static_cast<double>(visible.size());
    }
    std::vector<std::size_t> order(visible.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return quads[a].depth != quads[b].depth ? quads[a].depth < quads[b].depth : a < b;
    });
    QuadGrid grid(size);
    for (const auto number : order) {
        grid.for_near(quads[number], [&](std::size_t other) {
            if (visible[other].layer >= visible[number].layer && overlap(quads[number], quads[other]))
                visible[number].layer = visible[other].layer + 1;
        });
        grid.add(quads[number], number);
    }
}

/// Whether a triangle faces the way its stitch stands, as the rim's do.
bool faces_up_or_down(const StitchPatch& patch, const Vec3& across) {
    const Vec3 up = patch.corners[2] + patch.corners[3] - patch.corners[0] - patch.corners[1];
    return std::abs(across.dot(up)) > 0.8 * across.norm() * up.norm();
}

}  // namespace

std::vector<FabricSide> sides_of_triangles(const StitchSurface& surface) {
    const Mesh& mesh = surface.mesh;
    const auto vertex = [&](std::size_t corner) {
        const float* p = &mesh.positions[3u * mesh.indices[corner]];
        return Vec3(p[0], p[1], p[2]);
    };
    std::vector<FabricSide> sides(mesh.triangle_count(), FabricSide::outside);
    bool open = false;
    for (std::size_t t = 0; t < sides.size(); ++t) {
        const std::int32_t stitch = t < mesh.stitch_of_triangle.size() ? mesh.stitch_of_triangle[t] : -1;
        if (stitch < 0) continue;
        const Vec3 a = vertex(3 * t), across = (vertex(3 * t + 1) - a).cross(vertex(3 * t + 2) - a);
        const double facing = across.dot(surface.stitches[static_cast<std::size_t>(stitch)].normal) /
                              std::max(across.norm(), 1e-12);
        if (facing < inside_facing) {
            sides[t] = FabricSide::inside;
            open = true;
        } else if (facing < rim_facing &&
                   faces_up_or_down(surface.stitches[static_cast<std::size_t>(stitch)], across)) {
            sides[t] = FabricSide::rim;
        }
    }
    const auto is_last_round = [&](std::size_t t) {
        const std::int32_t stitch = t < mesh.stitch_of_triangle.size() ? mesh.stitch_of_triangle[t] : -1;
        if (stitch < 0) return true;
        const int round = surface.stitches[static_cast<std::size_t>(stitch)].round;
        return round == 0 || round + 2 == static_cast<int>(surface.first_stitch_of_round.size());
    };
    // Steep sides of the relief look like a rim; a rim is only at the ends of an open piece.
    for (std::size_t t = 0; t < sides.size(); ++t)
        if (sides[t] == FabricSide::rim && !(open && is_last_round(t))) sides[t] = FabricSide::outside;
    return sides;
}

std::vector<VisibleStitch> visible_stitches(const StitchSurface& surface, const ItemBuffer& seen,
                                            const std::vector<FabricSide>& sides,
                                            const Projection& projection) {
    std::vector<std::uint32_t> outside(surface.stitches.size(), 0), inside(outside);
    for (int row = 0; row < seen.height(); ++row) {
        for (int column = 0; column < seen.width(); ++column) {
            const std::uint32_t triangle = seen.at(column, row);
            if (triangle >= sides.size()) continue;
            const std::int32_t stitch = surface.mesh.stitch_of_triangle[triangle];
            if (stitch < 0 || sides[triangle] == FabricSide::rim) continue;
            (sides[triangle] == FabricSide::inside ? inside : outside)[static_cast<std::size_t>(stitch)] += 1;
        }
    }
    std::vector<VisibleStitch> visible;
    for (std::uint32_t s = 0; s < surface.stitches.size(); ++s) {
        const bool faces = projection(surface.stitches[s].normal).z() > 0;
        if (faces && outside[s] > 0) visible.push_back({s, false, 0});
        if (!faces && inside[s] > 0) visible.push_back({s, true, 0});
    }
    lay_in_layers(visible, surface, projection);
    return visible;
}

}  // namespace roundwright::render
