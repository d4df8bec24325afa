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
        number_vertices();
        reserve();
        for (std::size_t i = 0; i < rounds_.size(); ++i) mesh_round(i);
        if (ends_.pole_above) close_above();
        if (ends_.inside) mesh_inside();
        return std::move(mesh_);
    }

  private:
    VertexRow new_row(std::size_t size) {
        const VertexRow row{mesh_.vertices, static_cast<std::uint32_t>(size)};
        mesh_.vertices += row.size;
        return row;
    }

    void number_vertices() {
        const std::size_t lowest = static_cast<std::size_t>(rounds_.front().loops_below) * columns_;
        mesh_.lowest = new_row(ends_.pole_below ? 1 : lowest);
        for (const auto& round : rounds_) {
            auto& rows = mesh_.rows.emplace_back();
            for (int j = 0; j < grid_.rows; ++j) rows.push_back(new_row(round.cells.size() * columns_));
        }
        if (ends_.pole_above) mesh_.apex = new_row(1);
        if (!ends_.inside) return;
        for (std::size_t i = 0; i <= rounds_.size(); ++i) mesh_.inner.push_back(new_row(mesh_.edge(i).size));
        if (ends_.pole_above) mesh_.inner.push_back(new_row(1));
    }

    void reserve() {
        std::size_t triangles = 0;
        for (const auto& round : rounds_)
            triangles +=
                round.cells.size() * (grid_.triangles() + (ends_.inside ? 2 * columns_ : 0)) + 4 * columns_;
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

    std::uint32_t column_below(double loops) const {
        return static_cast<std::uint32_t>(std::lround(loops * columns_));
    }

    void mesh_round(std::size_t i) {
        const auto& edge = mesh_.edge(i);
        const auto& rows = mesh_.rows[i];
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(edge, column_below(cell.below_first), column_below(cell.below_last), rows.front(), t0,
                t0 + columns_, owner(cell), true);
            for (std::size_t j = 1; j < rows.size(); ++j)
                zip(rows[j - 1], t0, t0 + columns_, rows[j], t0, t0 + columns_, owner(cell), true);
        }
    }

    void close_above() {
        const auto& cells = rounds_.back().cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(mesh_.rows.back().back(), t0, t0 + columns_, mesh_.apex, 0, 0, owner(cells[c]), true);
        }
    }

    void mesh_inside() {
        for (std::size_t i = 0; i < rounds_.size(); ++i) mesh_inner_round(i);
        const std::size_t top = rounds_.size();
        const auto& cells = rounds_.back().cells;
        if (ends_.pole_above)
            for (std::size_t c = 0; c < cells.size(); ++c) {
                const auto t0 = static_cast<std::uint32_t>(c) * columns_;
                zip(mesh_.inner[top], t0, t0 + columns_, mesh_.inner[top + 1], 0, 0, owner(cells[c]), false);
            }
        else
            join_rim(mesh_.edge(top), mesh_.inner[top], cells);
        if (!ends_.pole_below) join_lowest_rim();
    }

    void mesh_inner_round(std::size_t i) {
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(mesh_.inner[i], column_below(cell.below_first), column_below(cell.below_last),
                mesh_.inner[i + 1], t0, t0 + columns_, owner(cell), false);
        }
    }

    void join_rim(const VertexRow& outer, const VertexRow& inner, const std::vector<LaidStitch>& cells) {
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            zip(outer, t0, t0 + columns_, inner, t0, t0 + columns_, owner(cells[c]), true);
        }
    }

    void join_lowest_rim() {
        for (const auto& cell : rounds_.front().cells) {
            const auto b0 = column_below(cell.below_first), b1 = column_below(cell.below_last);
            zip(mesh_.inner[0], b0, b1, mesh_.lowest, b0, b1, owner(cell), true);
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
