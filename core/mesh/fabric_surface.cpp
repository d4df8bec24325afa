#include "core/mesh/fabric_surface.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/mesh/coarse_fabric.h"
#include "core/mesh/fabric_colours.h"
#include "core/mesh/fabric_topology.h"
#include "core/mesh/fabric_vertices.h"
#include "core/mesh/stitch_patches.h"
#include "core/mesh/stitch_relief.h"
#include "core/mesh/vertex_normals.h"

namespace roundwright {
namespace {

/// Finer cords than these are left to shading.
constexpr int most_shaded_columns = 6;
/// Cells around a round: a picture has 8,000 pixels a side at most, and slivers take as long to draw as all
/// the tiles that they cross.
constexpr double most_cells_around = 5'000;

/// A loop needs three vertices to go around.
int fewest_columns(const std::vector<LaidRound>& rounds) {
    auto fewest = static_cast<std::size_t>(std::max(1, rounds.front().loops_below));
    for (const auto& round : rounds) fewest = std::min(fewest, round.cells.size());
    return static_cast<int>((2 + fewest) / fewest);
}

/// Whoever shades a brushed fabric needs most of its triangles for the fibres.
std::size_t most_for_fabric(const FabricStitches& stitches, const SurfaceOptions& options) {
    const bool brushed = options.relief == Relief::shaded &&
                         std::count(stitches.faces.begin(), stitches.faces.end(), StitchFace::pile) > 0;
    return brushed ? options.most_triangles / 3 : options.most_triangles;
}

double most_loops(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry) {
    double most = 0;
    for (std::size_t edge = 0; edge <= rounds.size(); ++edge) most = std::max(most, geometry.loops(edge));
    return most;
}

/// The finest grid of so many triangles; none: even one face a stitch is too many.
std::optional<ReliefGrid> grid_for(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry,
                                   const SurfaceOptions& options, std::size_t most) {
    if (most_loops(rounds, geometry) > most_cells_around) return {};
    const FabricEnds ends = geometry.ends();
    const int fewest = fewest_columns(rounds);
    for (ReliefGrid grid : relief_grids()) {
        if (options.relief == Relief::shaded && grid.columns > most_shaded_columns) continue;
        if (options.relief == Relief::none) grid = {std::min(grid.columns, 4), std::min(grid.rows, 2)};
        grid.columns = std::max(grid.columns, fewest);
        if (triangles_of_fabric(rounds, grid, ends) <= most) return grid;
    }
    return {};
}

Mesh fabric_mesh(const SurfaceMaterial& material, const FabricGeometry& geometry, const ReliefGrid& grid,
                 Relief relief) {
    Mesh mesh;
    auto topology = fabric_topology(material.rounds, grid, geometry.ends(), material.stitches);
    const Reliefs reliefs(grid, relief != Relief::none, material.stitches.faces);
    place_fabric(topology, material, geometry, reliefs, relief == Relief::shaded, mesh);
    mesh.indices = std::move(topology.indices);
    mesh.stitch_of_triangle = std::move(topology.stitch_of_triangle);
    mesh.places = std::move(topology.places);
    mesh.faces = std::move(topology.faces);
    if (relief != Relief::shaded) set_vertex_normals(mesh);
    return mesh;
}

/// Cells as many rounds high as they are stitches wide, or a little higher, while there are so many rounds.
CoarseFabric coarse_enough(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry,
                           std::size_t most_triangles) {
    const FabricEnds ends = geometry.ends();
    const double too_many = static_cast<double>(triangles_of_fabric(rounds, {1, 1}, ends)) /
                            static_cast<double>(std::max<std::size_t>(1, most_triangles));
    const double loops = most_loops(rounds, geometry);
    const double thinnest = std::max(1.0, loops / most_cells_around);
    for (double cell = std::max(1.0, too_many);; cell *= 1.1) {
        const auto up = std::min(rounds.size(), static_cast<std::size_t>(std::ceil(std::sqrt(cell))));
        const double across = std::max(thinnest, cell / static_cast<double>(up));
        auto coarse = coarse_fabric(rounds, geometry, up, across);
        const bool coarsest = up == rounds.size() && across >= loops;
        if (coarsest || triangles_of_fabric(coarse.rounds, {1, 1}, ends) <= most_triangles) return coarse;
    }
}

std::optional<Vec3> place_of(const std::optional<FabricPoint>& pole) {
    if (!pole) return {};
    return pole->place;
}

}  // namespace

std::size_t fabric_triangles(const std::vector<LaidRound>& rounds, const FabricGeometry& geometry,
                             const SurfaceOptions& options) {
    if (rounds.empty()) return 0;
    if (const auto grid = grid_for(rounds, geometry, options, options.most_triangles))
        return triangles_of_fabric(rounds, *grid, geometry.ends());
    return options.most_triangles;
}

std::vector<LaidRound> lay_fabric(const Piece& piece, const StitchGraph& graph) {
    auto rounds = lay_stitches(graph, piece.joining == Joining::rows);
    const auto empty = [](const LaidRound& round) { return round.cells.empty(); };
    rounds.erase(std::find_if(rounds.begin(), rounds.end(), empty), rounds.end());
    return rounds;
}

StitchSurface fabric_surface(const Toy& toy, const StitchGraph& graph, const std::vector<LaidRound>& rounds,
                             const FabricGeometry& geometry, const SurfaceOptions& options) {
    StitchSurface surface;
    if (rounds.empty()) return surface;
    surface.first_stitch_of_round = first_stitches(graph);
    surface.first_pole = place_of(geometry.pole_below());
    surface.last_pole = place_of(geometry.pole_above());
    surface.stitches = stitch_patches(toy, graph, rounds, geometry);
    const FabricStitches stitches{surface.first_stitch_of_round, faces_of_stitches(toy, graph)};
    const std::size_t most = most_for_fabric(stitches, options);
    if (const auto grid = grid_for(rounds, geometry, options, most)) {
        const SurfaceMaterial material{toy, graph, stitches, rounds, options.stitch_width_mm};
        surface.mesh = fabric_mesh(material, geometry, *grid, options.relief);
    } else {
        const auto coarse = coarse_enough(rounds, geometry, options.most_triangles);
        const SurfaceMaterial material{toy, graph, stitches, coarse.rounds, options.stitch_width_mm};
        surface.mesh = fabric_mesh(material, *coarse.geometry, {1, 1}, options.relief);
    }
    return surface;
}

}  // namespace roundwright
