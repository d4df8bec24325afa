#include "core/mesh/fabric_topology.h"

#include <cmath>

namespace roundwright {
namespace {

class Builder {
  public:
    Builder(const std::vector<LaidRound>& rounds, const ReliefGrid& grid, const FabricEnds& ends,
            const std::vector<std::uint32_t>& first_stitch)
        : rounds_(rounds),
          columns_(static_cast<std::uint32_t>(grid.columns)),
          grid_(grid),
          ends_(ends),
          first_stitch_(first_stitch) {}

    FabricTopology build() {
        mesh_.outer = number_vertices(grid_);
        if (!ends_.closed()) mesh_.inner = number_vertices(grid_.inside());
        reserve();
        mesh_skin(mesh_.outer, true);
        if (ends_.closed()) return std::move(mesh_);
        mesh_skin(mesh_.inner, false);
        if (!ends_.fan_above) join_highest_rim();
        if (!ends_.fan_below && !ends_.point_below) join_lowest_rim();
        return std::move(mesh_);
    }

  private:
    VertexRow new_row(std::size_t size) {
        const VertexRow row{mesh_.vertices, static_cast<std::uint32_t>(size)};
        mesh_.vertices += row.size;
        return row;
    }

    FabricSkin number_vertices(const ReliefGrid& grid) {
        FabricSkin skin;
        const std::size_t lowest = static_cast<std::size_t>(rounds_.front().loops_below) * columns_;
        skin.lowest = new_row(ends_.point_below ? 1 : lowest);
        for (const auto& round : rounds_) {
            auto& rows = skin.rows.emplace_back();
            for (int j = 0; j < grid.rows; ++j) rows.push_back(new_row(round.cells.size() * columns_));
        }
        if (ends_.fan_below) skin.pole_below = new_row(1);
        if (ends_.fan_above) skin.pole_above = new_row(1);
        return skin;
    }

    void reserve() {
        std::size_t triangles = 0;
        for (const auto& round : rounds_)
            triangles += (round.cells.size() + 4) *
                         (grid_.triangles() + (ends_.closed() ? 0 : grid_.inside().triangles()));
        mesh_.indices.reserve(3 * triangles);
        mesh_.stitch_of_triangle.reserve(triangles);
    }

    std::int32_t owner(const LaidStitch& cell) const {
        return cell.stitch < 0
                   ? -1
                   : static_cast<std::int32_t>(first_stitch_[static_cast<std::size_t>(cell.round)]) +
                         cell.stitch;
    }

    void triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::int32_t stitch) {
        mesh_.indices.push_back(a);
        mesh_.indices.push_back(b);
        mesh_.indices.push_back(c);
        mesh_.stitch_of_triangle.push_back(stitch);
    }

    /// Triangles between vertices b0..b1 of one row and t0..t1 of the one above. Work goes to the left seen
    /// from outside. `outward` false turns them over.
    void zip(const VertexRow& below, std::uint32_t b0, std::uint32_t b1, const VertexRow& above,
             std::uint32_t t0, std::uint32_t t1, std::int32_t stitch, bool outward) {
        const std::uint32_t b_steps = below.size == 1 ? 0 : b1 - b0, t_steps = above.size == 1 ? 0 : t1 - t0;
        for (std::uint32_t b = 0, t = 0; b < b_steps || t < t_steps;) {
            // The next step is the one that lags behind, as shares of the way: (b + 1) / b_steps against
            // (t + 1) / t_steps.
            const bool step_below = t == t_steps || (b < b_steps && (b + 1) * t_steps <= (t + 1) * b_steps);
            const std::uint32_t from = below.at(b0 + b), to = above.at(t0 + t);
            const std::uint32_t next = step_below ? below.at(b0 + ++b) : above.at(t0 + ++t);
            if (outward)
                triangle(from, to, next, stitch);
            else
                triangle(to, from, next, stitch);
        }
    }

    /// What `zip` gives between two rows of the same vertices, without its asking at every step.
    void quads(const VertexRow& below, const VertexRow& above, std::uint32_t first, std::int32_t stitch,
               bool outward) {
        for (std::uint32_t k = first; k < first + columns_; ++k) {
            const std::uint32_t next = k + 1 == below.size ? 0 : k + 1;
            const std::uint32_t b0 = below.first + k, b1 = below.first + next;
            const std::uint32_t t0 = above.first + k, t1 = above.first + next;
            const std::uint32_t outwards[] = {b0, t0, b1, b1, t0, t1}, inwards[] = {t0, b0, b1, t0, b1, t1};
            const auto* const corners = outward ? outwards : inwards;
            mesh_.indices.insert(mesh_.indices.end(), corners, corners + 6);
            mesh_.stitch_of_triangle.push_back(stitch);
            mesh_.stitch_of_triangle.push_back(stitch);
        }
    }

    std::uint32_t column_below(double loops) const {
        return static_cast<std::uint32_t>(std::lround(loops * columns_));
    }

    void mesh_skin(const FabricSkin& skin, bool outward) {
        for (std::size_t i = 0; i < rounds_.size(); ++i) mesh_round(skin, i, outward);
        if (ends_.fan_below) fan_below(skin, outward);
        if (ends_.fan_above) fan_above(skin, outward);
    }

    void mesh_round(const FabricSkin& skin, std::size_t i, bool outward) {
        const auto& rows = skin.rows[i];
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(skin.edge(i), column_below(cell.below_first), column_below(cell.below_last), rows.front(), t0,
                t0 + columns_, owner(cell), outward);
            for (std::size_t j = 1; j < rows.size(); ++j)
                quads(rows[j - 1], rows[j], t0, owner(cell), outward);
        }
    }

    void fan_above(const FabricSkin& skin, bool outward) {
        const auto& cells = rounds_.back().cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(skin.edge(rounds_.size()), t0, t0 + columns_, skin.pole_above, 0, 0, owner(cells[c]),
                outward);
        }
    }

    void fan_below(const FabricSkin& skin, bool outward) {
        for (const auto& cell : rounds_.front().cells)
            zip(skin.pole_below, 0, 0, skin.lowest, column_below(cell.below_first),
                column_below(cell.below_last), owner(cell), outward);
    }

    void join_highest_rim() {
        const auto& cells = rounds_.back().cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(mesh_.outer.edge(rounds_.size()), t0, t0 + columns_, mesh_.inner.edge(rounds_.size()), t0,
                t0 + columns_, owner(cells[c]), true);
        }
    }

    void join_lowest_rim() {
        for (const auto& cell : rounds_.front().cells) {
            const auto b0 = column_below(cell.below_first), b1 = column_below(cell.below_last);
            zip(mesh_.inner.lowest, b0, b1, mesh_.outer.lowest, b0, b1, owner(cell), true);
        }
    }

    const std::vector<LaidRound>& rounds_;
    std::uint32_t columns_;
    ReliefGrid grid_;
    FabricEnds ends_;
    const std::vector<std::uint32_t>& first_stitch_;
    FabricTopology mesh_;
};

}  // namespace

FabricTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                               const FabricEnds& ends,
                               const std::vector<std::uint32_t>& first_stitch_of_round) {
    if (rounds.empty()) return {};
    return Builder(rounds, grid, ends, first_stitch_of_round).build();
}

}  // namespace roundwright
