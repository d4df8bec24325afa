#include "render/illustration/smooth_patches.h"

#include <cstddef>
#include <cstdint>

namespace roundwright::render {
namespace {

// Corners: 0 lower left, 1 lower right, 2 upper right, 3 upper left; work goes to the left.

bool same(const Vec3& a, const Vec3& b) { return (a - b).squaredNorm() < 1e-12; }

/// A corner beyond an edge, or the mirror image of the near one where there is no neighbour.
struct Loop {
    Vec3 before, from, to, after;

    /// Catmull-Rom between `from` (0) and `to` (1).
    [[nodiscard]] Vec3 at(double u) const {
        const Vec3 a = 0.5 * (to - before), b = 0.5 * (after - from), chord = to - from;
        return from + u * a + u * u * (3 * chord - 2 * a - b) + u * u * u * (a + b - 2 * chord);
    }
};

class Neighbours {
  public:
    explicit Neighbours(const StitchSurface& surface) : surface_(surface) {}

    /// The edge between two of a stitch's corners, right to left, with those of the stitches beside it.
    [[nodiscard]] Loop loop(std::size_t round, std::size_t stitch, std::size_t right,
                            std::size_t left) const {
        const auto first = surface_.first_stitch_of_round[round];
        const std::size_t many = surface_.first_stitch_of_round[round + 1] - first;
        const auto& patch = surface_.stitches[first + stitch];
        const auto& before = surface_.stitches[first + (stitch + many - 1) % many];
        const auto& after = surface_.stitches[first + (stitch + 1) % many];
        Loop found{patch.corners[right], patch.corners[right], patch.corners[left], patch.corners[left]};
        if (many > 2 && same(before.corners[left], found.from)) found.before = before.corners[right];
        if (many > 2 && same(after.corners[right], found.to)) found.after = after.corners[left];
        // Halves of a loop are no measure of its bend: only neighbours of like width count.
        const double width = (found.to - found.from).norm();
        const auto like = [&](const Vec3& a, const Vec3& b) {
            return (a - b).norm() > 0.6 * width && (a - b).norm() < 1.6 * width;
        };
        if (!like(found.before, found.from)) found.before = 2 * found.from - found.to;
        if (!like(found.after, found.to)) found.after = 2 * found.to - found.from;
        return found;
    }

  private:
    const StitchSurface& surface_;
};

/// The fan from an edge's curve to its pole.
void add_fan(Mesh& mesh, const Loop& edge, const Vec3& pole, int steps, bool above, std::int32_t stitch) {
    const auto first = static_cast<std::uint32_t>(mesh.vertex_count());
    const auto add = [&](const Vec3& place) {
        for (const double x : {place.x(), place.y(), place.z()})
            mesh.positions.push_back(static_cast<float>(x));
    };
    add(pole);
    for (int q = 0; q <= steps; ++q) add(edge.at(static_cast<double>(q) / steps));
    for (std::uint32_t q = 1; q <= static_cast<std::uint32_t>(steps); ++q) {
        const std::uint32_t right = first + q, left = first + q + 1;
        for (const auto k : {above ? right : left, first, above ? left : right}) mesh.indices.push_back(k);
        mesh.stitch_of_triangle.push_back(stitch);
    }
}

void add_patch(Mesh& mesh, const Loop& below, const Loop& above, int steps, std::int32_t stitch) {
    const auto first = static_cast<std::uint32_t>(mesh.vertex_count());
    const auto row = static_cast<std::uint32_t>(steps + 1);
    for (int j = 0; j <= steps; ++j) {
        for (int q = 0; q <= steps; ++q) {
            const double u = static_cast<double>(q) / steps, v = static_cast<double>(j) / steps;
            const Vec3 place = (1 - v) * below.at(u) + v * above.at(u);
            for (const double x : {place.x(), place.y(), place.z()})
                mesh.positions.push_back(static_cast<float>(x));
        }
    }
    for (std::uint32_t j = 0; j + 1 < row; ++j) {
        for (std::uint32_t q = 0; q + 1 < row; ++q) {
            const std::uint32_t right = first + j * row + q;
            for (const auto k : {right, right + row, right + 1, right + 1, right + row, right + row + 1})
                mesh.indices.push_back(k);
            mesh.stitch_of_triangle.insert(mesh.stitch_of_triangle.end(), 2, stitch);
        }
    }
}

}  // namespace

Mesh smooth_patches(const StitchSurface& surface, int steps) {
    Mesh mesh;
    const Neighbours neighbours(surface);
    const std::size_t rounds =
        surface.first_stitch_of_round.empty() ? 0 : surface.first_stitch_of_round.size() - 1;
    for (std::size_t round = 0; round < rounds; ++round) {
        const auto first = surface.first_stitch_of_round[round];
        for (std::size_t s = 0; first + s < surface.first_stitch_of_round[round + 1]; ++s) {
            const auto below = neighbours.loop(round, s, 1, 0), above = neighbours.loop(round, s, 2, 3);
            const auto number = static_cast<std::int32_t>(first + s);
            add_patch(mesh, below, above, steps, number);
            if (round == 0 && surface.first_pole)
                add_fan(mesh, below, *surface.first_pole, steps, false, number);
            if (round + 1 == rounds && surface.last_pole)
                add_fan(mesh, above, *surface.last_pole, steps, true, number);
        }
    }
    return mesh;
}

}  // namespace roundwright::render
