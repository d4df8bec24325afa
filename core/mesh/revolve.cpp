#include "core/mesh/revolve.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/mesh/fabric_topology.h"
#include "core/mesh/laid_meridian.h"
#include "core/mesh/revolved_surface.h"
#include "core/mesh/stitch_layout.h"
#include "core/mesh/stitch_patches.h"
#include "core/mesh/stitch_relief.h"
#include "core/mesh/vertex_normals.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr double fabric_thickness_in_stitches = 0.35;
constexpr float light_inside = 0.7F;

/// A regular polygon of `corners` corners has the area of its circle if its corners stand this much further
/// out.
double polygon_factor(std::size_t corners) {
    const double step = two_pi / static_cast<double>(corners);
    return corners < 3 ? 1 : std::sqrt(step / std::sin(step));
}

FabricEnds ends_of(const LaidMeridian& meridian) {
    return {meridian.starts_in_a_point(), meridian.pole_below.has_value(), meridian.pole_above.has_value()};
}

ReliefGrid grid_for(const std::vector<LaidRound>& rounds, bool closed, const RevolveOptions& options) {
    std::size_t cells = 0, fewest = rounds.front().cells.size();
    for (const auto& round : rounds) {
        cells += round.cells.size();
        fewest = std::min(fewest, round.cells.size());
    }
    fewest = std::min(fewest, static_cast<std::size_t>(std::max(1, rounds.front().loops_below)));
    ReliefGrid found = finest_relief(cells, options.most_triangles, !closed);
    if (!options.relief) found = {std::min(found.columns, 4), std::min(found.rows, 2)};
    // A loop needs three vertices to go around.
    found.columns = std::max(found.columns, static_cast<int>((2 + fewest) / fewest));
    return found;
}

/// Puts the vertices of a piece's fabric in their places.
class VertexPlacer {
  public:
    VertexPlacer(const Toy& toy, const StitchGraph& graph, const std::vector<LaidRound>& rounds,
                 const RevolvedSurface& surface, const ReliefTable& relief, const FabricTopology& topology,
                 double stitch_width_mm, Mesh& mesh)
        : toy_(toy),
          graph_(graph),
          rounds_(rounds),
          surface_(surface),
          relief_(relief),
          topology_(topology),
          stitch_width_mm_(stitch_width_mm),
          mesh_(mesh) {
        mesh_.positions.resize(3u * topology.vertices);
        mesh_.colours.resize(3u * topology.vertices);
    }

    void place_all() {
        place_edge(topology_.lowest, 0, 0, groove_light());
        for (std::size_t i = 0; i < rounds_.size(); ++i) place_round(i);
        place_poles(topology_.pole_below, topology_.pole_above, 0, groove_light());
        if (!topology_.inner.empty()) place_inside();
    }

  private:
    [[nodiscard]] float groove_light() const { return relief_.light.back(); }

    void put(std::uint32_t vertex, const Vec3& place, Colour colour, float light) {
        for (std::uint32_t axis = 0; axis < 3; ++axis)
            mesh_.positions[3u * vertex + axis] = static_cast<float>(place[axis]);
        const std::uint8_t channels[] = {colour.red, colour.green, colour.blue};
        for (std::uint32_t k = 0; k < 3; ++k)
            mesh_.colours[3u * vertex + k] = static_cast<float>(channels[k]) / 255 * light;
    }

    /// The relief flattens where stitches are squeezed together, towards a pole above all.
    [[nodiscard]] double relief_mm(std::size_t i, double radius) const {
        return std::min(stitch_width_mm_, two_pi * radius / surface_.loop(i + 1).loops);
    }

    [[nodiscard]] double radius_at(std::size_t i, double v) const {
        return surface_.loop(i).radius_mm + v * (surface_.loop(i + 1).radius_mm - surface_.loop(i).radius_mm);
    }

    /// What a round's relief must be sunk by so that it holds no volume of its own. A lift d of a surface of
    /// mean curvature H holds (d + H d^2) per area to second order; rows count by their length.
    [[nodiscard]] double sinking(std::size_t i) const {
        const double curvature = (surface_.loop(i).mean_curvature + surface_.loop(i + 1).mean_curvature) / 2;
        double held = 0, length = 0;
        for (int j = 1; j <= relief_.grid.rows; ++j) {
            const double radius = radius_at(i, static_cast<double>(j) / relief_.grid.rows);
            const double scale = relief_mm(i, radius);
            const auto k = static_cast<std::size_t>(j - 1);
            held += radius *
                    (scale * relief_.row_mean[k] + curvature * scale * scale * relief_.row_mean_square[k]);
            length += radius;
        }
        return length > 0 ? held / length : 0;
    }

    void place_round(std::size_t i) {
        const int rows = relief_.grid.rows;
        const double sunk = sinking(i);
        for (int j = 1; j <= rows; ++j) {
            const double v = static_cast<double>(j) / rows;
            place_row(i, j, v, relief_mm(i, radius_at(i, v)), sunk);
        }
    }

    void place_row(std::size_t i, int j, double v, double relief_mm, double sunk) {
        const auto& below = surface_.loop(i);
        const auto& above = surface_.loop(i + 1);
        const auto& row = topology_.rows[i][static_cast<std::size_t>(j - 1)];
        const double factor = polygon_factor(row.size);
        const int columns = relief_.grid.columns;
        std::uint32_t vertex = row.first;
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const Colour colour = yarn_colour(toy_, graph_, cell);
            for (int q = 0; q < columns; ++q, ++vertex) {
                const double u = static_cast<double>(q) / columns;
                const double from = below.angle(cell.below_first + u * (cell.below_last - cell.below_first));
                const auto point =
                    RevolvedSurface::between(below, from, above, above.angle(static_cast<double>(c) + u), v);
                const std::size_t k = relief_.at(j, q);
                const double lift = relief_mm * static_cast<double>(relief_.height[k]) - sunk;
                put(vertex, surface_.place(point, lift, factor), colour, relief_.light[k]);
            }
        }
    }

    void place_pole(const VertexRow& row, const LaidLoop& pole, const LaidStitch& beside, double lift,
                    float light) {
        put(row.first, surface_.place({0, Vec2(0, pole.z_mm), pole.normal, 0}, lift),
            yarn_colour(toy_, graph_, beside), light);
    }

    void place_poles(const VertexRow& below, const VertexRow& above, double lift, float light) {
        const auto& meridian = surface_.meridian();
        if (meridian.pole_below)
            place_pole(below, *meridian.pole_below, rounds_.front().cells.front(), lift, light);
        if (meridian.pole_above)
            place_pole(above, *meridian.pole_above, rounds_.back().cells.back(), lift, light);
    }

    /// All vertices of an edge at one height over the mean surface.
    void place_edge(const VertexRow& row, std::size_t edge, double lift, float light) {
        const auto& cells = rounds_[edge == 0 ? 0 : edge - 1].cells;
        const double factor = polygon_factor(row.size);
        std::size_t c = 0;
        for (std::uint32_t k = 0; k < row.size; ++k) {
            const double along = static_cast<double>(k) / relief_.grid.columns;
            const auto reach = [&] { return edge == 0 ? cells[c].below_last : static_cast<double>(c + 1); };
            while (c + 1 < cells.size() && reach() <= along) ++c;
            put(row.first + k, surface_.place(surface_.on_loop(edge, along), lift, factor),
                yarn_colour(toy_, graph_, cells[c]), light);
        }
    }

    /// The inside is a plain skin one fabric thickness below the mean surface, less where that would reach
    /// the axis.
    void place_inside() {
        const double thickness = fabric_thickness_in_stitches * stitch_width_mm_;
        for (std::size_t edge = 0; edge < topology_.inner.size(); ++edge) {
            const auto& loop = surface_.loop(edge);
            const double towards_axis = loop.normal.x();
            const double least =
                loop.radius_mm > 0 && towards_axis > 0 ? loop.radius_mm / 2 / towards_axis : thickness;
            place_edge(topology_.inner[edge], edge, -std::min(thickness, least), light_inside);
        }
        place_poles(topology_.inner_pole_below, topology_.inner_pole_above, -thickness, light_inside);
    }

    const Toy& toy_;
    const StitchGraph& graph_;
    const std::vector<LaidRound>& rounds_;
    const RevolvedSurface& surface_;
    const ReliefTable& relief_;
    const FabricTopology& topology_;
    double stitch_width_mm_;
    Mesh& mesh_;
};

std::vector<LoopWaves> loop_waves(const std::vector<int>& waves, const std::vector<double>& height_mm,
                                  const std::vector<LaidRound>& rounds, const Shape& shape) {
    std::vector<LoopWaves> loops(rounds.size() + 1);
    std::vector<double> stitches(rounds.size() + 1, 0);
    for (std::size_t i = 0; i < rounds.size(); ++i)
        stitches[i + 1] = static_cast<double>(rounds[i].cells.size());
    stitches[0] = rounds.front().loops_below;
    const std::size_t given = std::min(waves.size(), height_mm.size());
    const std::size_t shift = given == rounds.size() ? 1 : 0;
    for (std::size_t i = 0; i < given && i + shift < loops.size(); ++i)
        loops[i + shift] = {std::max(0, waves[i]), std::max(0.0, height_mm[i] / 2)};
    return agreeing_waves(std::move(loops), shape.radius_mm, stitches);
}

}  // namespace

StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph, const Shape& shape,
                      const std::vector<int>& ruffle_waves, const std::vector<double>& ruffle_height_mm,
                      const RevolveOptions& options) {
    auto rounds = lay_stitches(graph);
    const auto empty = [](const LaidRound& round) { return round.cells.empty(); };
    rounds.erase(std::find_if(rounds.begin(), rounds.end(), empty), rounds.end());
    if (rounds.empty() || shape.radius_mm.size() <= rounds.size() || shape.z_mm.size() <= rounds.size())
        return {};
    const auto waves = loop_waves(ruffle_waves, ruffle_height_mm, rounds, shape);
    const RevolvedSurface revolved(lay_meridian(rounds, piece, shape, waves), piece.starts_at_top);
    const FabricEnds ends = ends_of(revolved.meridian());
    const ReliefTable relief(grid_for(rounds, ends.closed(), options), options.relief);

    StitchSurface surface;
    surface.first_stitch_of_round = first_stitches(graph);
    surface.stitches = stitch_patches(toy, graph, rounds, revolved);
    auto topology = fabric_topology(rounds, relief.grid, ends, surface.first_stitch_of_round);
    VertexPlacer(toy, graph, rounds, revolved, relief, topology, options.stitch_width_mm, surface.mesh)
        .place_all();
    surface.mesh.indices = std::move(topology.indices);
    surface.mesh.stitch_of_triangle = std::move(topology.stitch_of_triangle);
    set_vertex_normals(surface.mesh);
    return surface;
}

}  // namespace roundwright
