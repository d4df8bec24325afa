#include "core/mesh/revolve.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>

#include "core/mesh/coarse_fabric.h"
#include "core/mesh/fabric_topology.h"
#include "core/mesh/laid_meridian.h"
#include "core/mesh/revolved_surface.h"
#include "core/mesh/stitch_layout.h"
#include "core/mesh/stitch_patches.h"
#include "core/mesh/stitch_relief.h"
#include "core/mesh/vertex_normals.h"
#include "core/shape/fabric_thickness.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr float light_inside = 0.86F;

/// Of the half depth of a flattened piece that its inside is sunk by, so that the layers do not touch.
constexpr double fabric_between_layers = 0.8;
/// Of that, how deep the grooves of the outside may be.
constexpr double groove_in_layer = 0.85;

/// A regular polygon of `corners` corners has the area of its circle if its corners stand this much further
/// out.
double polygon_factor(std::size_t corners) {
    const double step = two_pi / static_cast<double>(corners);
    return corners < 3 ? 1 : std::sqrt(step / std::sin(step));
}

FabricEnds ends_of(const LaidMeridian& meridian) {
    return {meridian.starts_in_a_point(), meridian.pole_below.has_value(), meridian.pole_above.has_value()};
}

std::optional<Vec3> pole_of(const RevolvedSurface& surface, const std::optional<LaidLoop>& pole) {
    if (!pole) return {};
    return surface.place({0, Vec2(0, pole->z_mm), pole->normal, 0});
}

/// Finer cords than these are left to shading.
constexpr int most_shaded_columns = 6;

/// A loop needs three vertices to go around.
int fewest_columns(const std::vector<LaidRound>& rounds) {
    auto fewest = static_cast<std::size_t>(std::max(1, rounds.front().loops_below));
    for (const auto& round : rounds) fewest = std::min(fewest, round.cells.size());
    return static_cast<int>((2 + fewest) / fewest);
}

/// The finest grid within the triangles allowed, of which whoever shades a brushed fabric needs most for its
/// fibres; none: even one face a stitch is too many.
std::optional<ReliefGrid> grid_for(const std::vector<LaidRound>& rounds, const FabricEnds& ends,
                                   const FabricStitches& stitches, const RevolveOptions& options) {
    const int fewest = fewest_columns(rounds);
    const bool brushed = options.relief == Relief::shaded &&
                         std::count(stitches.faces.begin(), stitches.faces.end(), StitchFace::pile) > 0;
    const std::size_t most = brushed ? options.most_triangles / 3 : options.most_triangles;
    for (ReliefGrid grid : relief_grids()) {
        if (options.relief == Relief::shaded && grid.columns > most_shaded_columns) continue;
        if (options.relief == Relief::none) grid = {std::min(grid.columns, 4), std::min(grid.rows, 2)};
        grid.columns = std::max(grid.columns, fewest);
        if (triangles_of_fabric(rounds, grid, ends) <= most) return grid;
    }
    return {};
}

/// Sine and cosine of an angle that grows by equal steps, by their addition theorems.
struct Turn {
    double sine, cosine;
    double step_sine, step_cosine;

    Turn(double angle, double step)
        : sine(std::sin(angle)),
          cosine(std::cos(angle)),
          step_sine(std::sin(step)),
          step_cosine(std::cos(step)) {}
    void step() {
        const double next = sine * step_cosine + cosine * step_sine;
        cosine = cosine * step_cosine - sine * step_sine;
        sine = next;
    }
};

/// Puts the vertices of a piece's fabric in their places.
class VertexPlacer {
  public:
    VertexPlacer(const Toy& toy, const StitchGraph& graph, const FabricStitches& stitches,
                 const std::vector<LaidRound>& rounds, const RevolvedSurface& surface, const Reliefs& reliefs,
                 const RevolveOptions& options, Mesh& mesh)
        : toy_(toy),
          graph_(graph),
          stitches_(stitches),
          rounds_(rounds),
          surface_(surface),
          reliefs_(reliefs),
          stitch_width_mm_(options.stitch_width_mm),
          shaded_(options.relief == Relief::shaded),
          mesh_(mesh) {}

    void place(const FabricTopology& topology) {
        mesh_.positions.resize(3u * topology.vertices);
        mesh_.colours.resize(3u * topology.vertices);
        if (shaded_) mesh_.normals.resize(3u * topology.vertices);
        place_skin(topology.outer, false);
        if (!topology.inner.rows.empty()) place_skin(topology.inner, true);
    }

  private:
    /// How one cell is shown: its table, with the colour of its yarn.
    struct Face {
        const ReliefTable* relief;
        Colour colour;
    };

    void place_skin(const FabricSkin& skin, bool inside) {
        inside_ = inside;
        place_lowest(skin.lowest);
        for (std::size_t i = 0; i < rounds_.size(); ++i) place_round(skin, i);
        const auto& meridian = surface_.meridian();
        if (meridian.pole_below)
            place_pole(skin.pole_below, *meridian.pole_below, rounds_.front().cells.front());
        if (meridian.pole_above)
            place_pole(skin.pole_above, *meridian.pole_above, rounds_.back().cells.back());
    }

    [[nodiscard]] Face face(const LaidStitch& cell) const {
        const Colour colour = yarn_colour(toy_, graph_, cell);
        if (inside_) return {&reliefs_.of(StitchFace::inside), colour};
        return {&reliefs_.of(stitches_.face_of(cell)), colour};
    }

    /// The inside is a skin one fabric thickness below the mean surface, less where that would reach the
    /// axis.
    [[nodiscard]] double depth(const LaidLoop& loop) const { return inside_ ? skin_depth(loop) : 0; }

    [[nodiscard]] double skin_depth(const LaidLoop& loop) const {
        const double thickness = fabric_thickness_in_stitches * stitch_width_mm_;
        if (loop.section) return std::min(thickness, fabric_between_layers * loop.section->half_depth_mm);
        const double towards_axis = loop.normal.x();
        return loop.radius_mm > 0 && towards_axis > 0 ? std::min(thickness, loop.radius_mm / 2 / towards_axis)
                                                      : thickness;
    }

    /// The grooves of a thin layer's outside end short of its inside.
    [[nodiscard]] double least_lift(const LaidLoop& below, const LaidLoop& above) const {
        if (inside_ || (!below.section && !above.section)) return -std::numeric_limits<double>::infinity();
        return -groove_in_layer * std::min(skin_depth(below), skin_depth(above));
    }

    void put(std::uint32_t vertex, const Vec3& place, const Vec3& normal, Colour colour, float light) {
        if (shaded_) {
            light = 1;
            for (std::uint32_t axis = 0; axis < 3; ++axis)
                mesh_.normals[3u * vertex + axis] =
                    static_cast<float>(inside_ ? -normal[axis] : normal[axis]);
        }
        if (inside_) light *= light_inside;
        for (std::uint32_t axis = 0; axis < 3; ++axis)
            mesh_.positions[3u * vertex + axis] = static_cast<float>(place[axis]);
        const std::uint8_t channels[] = {colour.red, colour.green, colour.blue};
        for (std::uint32_t k = 0; k < 3; ++k)
            mesh_.colours[3u * vertex + k] = static_cast<float>(channels[k]) / 255 * light;
    }

    /// The relief flattens where stitches are squeezed together, towards a pole above all. Between two layers
    /// there is no room for it.
    [[nodiscard]] double relief_mm(std::size_t i, double radius) const {
        if (inside_ && surface_.loop(i + 1).section) return 0;
        return std::min(stitch_width_mm_, two_pi * radius / surface_.loop(i + 1).loops);
    }

    [[nodiscard]] double radius_at(std::size_t i, double v) const {
        return surface_.loop(i).radius_mm + v * (surface_.loop(i + 1).radius_mm - surface_.loop(i).radius_mm);
    }

    /// What a round's relief must be sunk by so that it holds no volume of its own. A lift d of a surface of
    /// mean curvature H holds (d + H d^2) per area to second order; rows count by their length.
    [[nodiscard]] double sinking(std::size_t i, const ReliefTable& relief) const {
        const double curvature = (surface_.loop(i).mean_curvature + surface_.loop(i + 1).mean_curvature) / 2;
        double held = 0, length = 0;
        for (int j = 1; j <= relief.grid.rows; ++j) {
            const double radius = radius_at(i, static_cast<double>(j) / relief.grid.rows);
            const double scale = relief_mm(i, radius);
            const auto k = static_cast<std::size_t>(j - 1);
            held +=
                radius * (scale * relief.row_mean[k] + curvature * scale * scale * relief.row_mean_square[k]);
            length += radius;
        }
        return length > 0 ? held / length : 0;
    }

    void place_round(const FabricSkin& skin, std::size_t i) {
        const auto rows = static_cast<int>(skin.rows[i].size());
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const Face shown = face(rounds_[i].cells[c]);
            const double sunk = inside_ ? 0 : sinking(i, *shown.relief);
            for (int j = 1; j <= rows; ++j) place_cell_row(skin, i, c, j, shown, sunk);
        }
    }

    void place_cell_row(const FabricSkin& skin, std::size_t i, std::size_t c, int j, const Face& shown,
                        double sunk) {
        const auto& below = surface_.loop(i);
        const auto& above = surface_.loop(i + 1);
        const auto& cell = rounds_[i].cells[c];
        const auto& row = skin.rows[i][static_cast<std::size_t>(j - 1)];
        const int columns = shown.relief->grid.columns;
        const double v = static_cast<double>(j) / static_cast<double>(skin.rows[i].size());
        const double factor = polygon_factor(row.size), scale = relief_mm(i, radius_at(i, v));
        const double sink = sunk + (1 - v) * depth(below) + v * depth(above);
        const double first =
            (1 - v) * below.angle(cell.below_first) + v * above.angle(static_cast<double>(c));
        const double last =
            (1 - v) * below.angle(cell.below_last) + v * above.angle(static_cast<double>(c) + 1);
        const bool round = RevolvedSurface::is_round(below, above);
        const double least = least_lift(below, above);
        auto point = RevolvedSurface::between(below, first, above, first, v);
        Turn turn(first, (last - first) / columns);
        std::uint32_t vertex =
            row.first + static_cast<std::uint32_t>(c) * static_cast<std::uint32_t>(columns);
        for (int q = 0; q < columns; ++q, ++vertex, turn.step()) {
            const double angle = first + (last - first) * q / columns;
            if (!round) point = RevolvedSurface::between(below, angle, above, angle, v);
            const std::size_t k = shown.relief->at(j, q);
            const double lift = std::max(
                (inside_ ? -scale : scale) * static_cast<double>(shown.relief->height[k]) - sink, least);
            put(vertex, surface_.place(point, lift, factor, turn.sine, turn.cosine),
                surface_.normal(point, turn.sine, turn.cosine), shown.colour, shown.relief->light[k]);
        }
    }

    void place_pole(const VertexRow& row, const LaidLoop& pole, const LaidStitch& beside) {
        const Face shown = face(beside);
        const RevolvedPoint point{0, Vec2(0, pole.z_mm), pole.normal, 0};
        put(row.first, surface_.place(point, -depth(pole)), surface_.normal(point), shown.colour,
            shown.relief->light.back());
    }

    void place_lowest(const VertexRow& row) {
        const auto& cells = rounds_.front().cells;
        const double factor = polygon_factor(row.size), sink = depth(surface_.loop(0));
        const double columns = reliefs_.grid().columns;
        std::size_t c = 0;
        for (std::uint32_t k = 0; k < row.size; ++k) {
            const double along = k / columns;
            while (c + 1 < cells.size() && cells[c].below_last <= along) ++c;
            const Face shown = face(cells[c]);
            const RevolvedPoint point = surface_.on_loop(0, along);
            put(row.first + k, surface_.place(point, -sink, factor), surface_.normal(point), shown.colour,
                shown.relief->light.back());
        }
    }

    const Toy& toy_;
    const StitchGraph& graph_;
    const FabricStitches& stitches_;
    const std::vector<LaidRound>& rounds_;
    const RevolvedSurface& surface_;
    const Reliefs& reliefs_;
    double stitch_width_mm_;
    bool shaded_;
    Mesh& mesh_;
    bool inside_ = false;
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

Mesh fabric_mesh(const Toy& toy, const StitchGraph& graph, const FabricStitches& stitches,
                 const std::vector<LaidRound>& rounds, const RevolvedSurface& surface, const ReliefGrid& grid,
                 const RevolveOptions& options) {
    Mesh mesh;
    auto topology = fabric_topology(rounds, grid, ends_of(surface.meridian()), stitches);
    const Reliefs reliefs(grid, options.relief != Relief::none, stitches.faces);
    VertexPlacer(toy, graph, stitches, rounds, surface, reliefs, options, mesh).place(topology);
    mesh.indices = std::move(topology.indices);
    mesh.stitch_of_triangle = std::move(topology.stitch_of_triangle);
    mesh.places = std::move(topology.places);
    mesh.faces = std::move(topology.faces);
    if (options.relief != Relief::shaded) set_vertex_normals(mesh);
    return mesh;
}

/// Cells as many rounds high as they are stitches wide, or a little higher.
CoarseFabric coarse_enough(const std::vector<LaidRound>& rounds, const LaidMeridian& meridian,
                           std::size_t most_triangles) {
    const FabricEnds ends = ends_of(meridian);
    const double too_many = static_cast<double>(triangles_of_fabric(rounds, {1, 1}, ends)) /
                            static_cast<double>(std::max<std::size_t>(1, most_triangles));
    for (double cell = std::max(1.0, too_many);; cell *= 1.1) {
        const auto up = static_cast<std::size_t>(std::ceil(std::sqrt(cell)));
        auto coarse = coarse_fabric(rounds, meridian, up, std::max(1.0, cell / static_cast<double>(up)));
        const bool coarsest = up >= rounds.size();
        if (coarsest || triangles_of_fabric(coarse.rounds, {1, 1}, ends) <= most_triangles) return coarse;
    }
}

}  // namespace

StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph, const Shape& shape,
                      const std::vector<int>& ruffle_waves, const std::vector<double>& ruffle_height_mm,
                      const RevolveOptions& options) {
    auto rounds = lay_stitches(graph, piece.joining == Joining::rows);
    const auto empty = [](const LaidRound& round) { return round.cells.empty(); };
    rounds.erase(std::find_if(rounds.begin(), rounds.end(), empty), rounds.end());
    if (rounds.empty() || shape.radius_mm.size() <= rounds.size() || shape.z_mm.size() <= rounds.size())
        return {};
    const auto waves = loop_waves(ruffle_waves, ruffle_height_mm, rounds, shape);
    const auto meridian = lay_meridian(rounds, piece, shape, waves);
    const RevolvedSurface revolved(meridian, piece.starts_at_top);
    StitchSurface surface;
    surface.first_stitch_of_round = first_stitches(graph);
    surface.first_pole = pole_of(revolved, meridian.pole_below);
    surface.last_pole = pole_of(revolved, meridian.pole_above);
    surface.stitches = stitch_patches(toy, graph, rounds, revolved);
    const FabricStitches stitches{surface.first_stitch_of_round, faces_of_stitches(toy, graph)};
    if (const auto grid = grid_for(rounds, ends_of(meridian), stitches, options)) {
        surface.mesh = fabric_mesh(toy, graph, stitches, rounds, revolved, *grid, options);
    } else {
        const auto coarse = coarse_enough(rounds, meridian, options.most_triangles);
        const RevolvedSurface simpler(coarse.meridian, piece.starts_at_top);
        surface.mesh = fabric_mesh(toy, graph, stitches, coarse.rounds, simpler, {1, 1}, options);
    }
    return surface;
}

}  // namespace roundwright
