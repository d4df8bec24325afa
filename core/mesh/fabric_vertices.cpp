#include "core/mesh/fabric_vertices.h"

#include <cstdint>

#include "core/mesh/fabric_colours.h"
#include "core/mesh/relief_lift.h"

namespace roundwright {
namespace {

constexpr float light_inside = 0.86F;

/// One skin of a fabric.
class SkinPlacer {
  public:
    SkinPlacer(const FabricSkin& skin, const SurfaceMaterial& material, const FabricGeometry& geometry,
               const Reliefs& reliefs, bool shaded, bool inside, Mesh& mesh)
        : skin_(skin),
          material_(material),
          geometry_(geometry),
          reliefs_(reliefs),
          lift_(geometry, material.stitch_width_mm, inside),
          shaded_(shaded),
          inside_(inside),
          mesh_(mesh) {
        const auto columns = static_cast<std::size_t>(reliefs.grid().columns);
        lifts_.resize(columns);
        places_.resize(columns);
        if (shaded) normals_.resize(columns);
    }

    void place() {
        const auto& rounds = material_.rounds;
        place_lowest();
        for (std::size_t i = 0; i < rounds.size(); ++i) place_round(i);
        for (const RowEnd& end : skin_.row_ends) place_end(end);
        const double sunk = -lift_.depth_of_pole();
        if (const auto pole = geometry_.pole_below(sunk))
            place_pole(skin_.pole_below, *pole, rounds.front().cells.front());
        if (const auto pole = geometry_.pole_above(sunk))
            place_pole(skin_.pole_above, *pole, rounds.back().cells.back());
    }

  private:
    /// How one cell is shown: its table, with the colour of its yarn.
    struct Face {
        const ReliefTable* relief;
        Colour colour;
    };

    [[nodiscard]] Face face(const LaidStitch& cell) const {
        const Colour colour = yarn_colour(material_.toy, material_.graph, cell);
        if (inside_) return {&reliefs_.of(StitchFace::inside), colour};
        return {&reliefs_.of(material_.stitches.face_of(cell)), colour};
    }

    void put(std::uint32_t vertex, const Vec3& place, Colour colour, float light) {
        if (shaded_) light = 1;
        if (inside_) light *= light_inside;
        for (std::uint32_t axis = 0; axis < 3; ++axis)
            mesh_.positions[3u * vertex + axis] = static_cast<float>(place[axis]);
        const std::uint8_t channels[] = {colour.red, colour.green, colour.blue};
        for (std::uint32_t k = 0; k < 3; ++k)
            mesh_.colours[3u * vertex + k] = static_cast<float>(channels[k]) / 255 * light;
    }

    void put_normal(std::uint32_t vertex, const Vec3& normal) {
        for (std::uint32_t axis = 0; axis < 3; ++axis)
            mesh_.normals[3u * vertex + axis] = static_cast<float>(inside_ ? -normal[axis] : normal[axis]);
    }

    void put(std::uint32_t vertex, const FabricPoint& point, const Face& shown) {
        put(vertex, point.place, shown.colour, shown.relief->light.back());
        if (shaded_) put_normal(vertex, point.normal);
    }

    void place_round(std::size_t i) {
        const auto rows = static_cast<int>(skin_.rows[i].size());
        for (std::size_t c = 0; c < material_.rounds[i].cells.size(); ++c) {
            const Face shown = face(material_.rounds[i].cells[c]);
            const double sunk = lift_.sinking(i, *shown.relief);
            for (int j = 1; j <= rows; ++j) place_cell_row(i, c, j, shown, sunk);
        }
    }

    void place_cell_row(std::size_t i, std::size_t c, int j, const Face& shown, double sunk) {
        const auto& cell = material_.rounds[i].cells[c];
        const VertexRow& vertices = skin_.rows[i][static_cast<std::size_t>(j - 1)];
        const std::size_t rows = skin_.rows[i].size();
        CellRow row;
        row.round = i;
        row.below_first = cell.below_first;
        row.below_last = cell.below_last;
        row.above_first = static_cast<double>(c);
        row.above_last = static_cast<double>(c) + 1;
        row.up = static_cast<double>(j) / static_cast<double>(rows);
        row.columns = static_cast<std::size_t>(shown.relief->grid.columns);
        row.corners = vertices.size;
        lift_.lifts(i, j, rows, *shown.relief, sunk, lifts_.data());
        geometry_.place_row(row, lifts_.data(), places_.data(), shaded_ ? normals_.data() : nullptr);
        const float* light = &shown.relief->light[shown.relief->at(j, 0)];
        auto vertex = vertices.first + static_cast<std::uint32_t>(c * row.columns);
        for (std::size_t q = 0; q < row.columns; ++q, ++vertex) {
            put(vertex, places_[q], shown.colour, light[q]);
            if (shaded_) put_normal(vertex, normals_[q]);
        }
    }

    void place_end(const RowEnd& end) {
        const auto& cells = material_.rounds[end.round].cells;
        const LaidStitch& cell = cells.back();
        const Face shown = face(cell);
        if (end.row == 0) {
            put(end.vertex, geometry_.on_edge(0, cell.below_last, -lift_.depth(0)), shown);
            return;
        }
        const std::size_t rows = skin_.rows[end.round].size();
        CellRow row;
        row.round = end.round;
        row.below_first = row.below_last = cell.below_last;
        row.above_first = row.above_last = static_cast<double>(cells.size());
        row.up = static_cast<double>(end.row) / static_cast<double>(rows);
        const auto j = static_cast<int>(end.row);
        lift_.lifts(end.round, j, rows, *shown.relief, lift_.sinking(end.round, *shown.relief),
                    lifts_.data());
        geometry_.place_row(row, lifts_.data(), places_.data(), shaded_ ? normals_.data() : nullptr);
        put(end.vertex, places_.front(), shown.colour, shown.relief->light[shown.relief->at(j, 0)]);
        if (shaded_) put_normal(end.vertex, normals_.front());
    }

    void place_pole(const VertexRow& row, const FabricPoint& pole, const LaidStitch& beside) {
        put(row.first, pole, face(beside));
    }

    void place_lowest() {
        const VertexRow& row = skin_.lowest;
        const auto& cells = material_.rounds.front().cells;
        const double sink = lift_.depth(0);
        const double columns = reliefs_.grid().columns;
        std::size_t c = 0;
        for (std::uint32_t k = 0; k < row.size; ++k) {
            const double along = k / columns;
            while (c + 1 < cells.size() && cells[c].below_last <= along) ++c;
            put(row.first + k, geometry_.on_edge(0, along, -sink, row.size), face(cells[c]));
        }
    }

    const FabricSkin& skin_;
    const SurfaceMaterial& material_;
    const FabricGeometry& geometry_;
    const Reliefs& reliefs_;
    ReliefLift lift_;
    bool shaded_;
    bool inside_;
    Mesh& mesh_;
    std::vector<double> lifts_;
    std::vector<Vec3> places_, normals_;
};

}  // namespace

void place_fabric(const SurfaceTopology& topology, const SurfaceMaterial& material,
                  const FabricGeometry& geometry, const Reliefs& reliefs, bool shaded, Mesh& mesh) {
    mesh.positions.resize(3u * topology.vertices);
    mesh.colours.resize(3u * topology.vertices);
    if (shaded) mesh.normals.resize(3u * topology.vertices);
    const auto place = [&](const FabricSkin& skin, bool inside) {
        SkinPlacer(skin, material, geometry, reliefs, shaded, inside, mesh).place();
    };
    place(topology.outer, false);
    if (!topology.inner.rows.empty()) place(topology.inner, true);
}

}  // namespace roundwright
