#include "core/mesh/fabric_topology.h"

#include <cmath>

#include "core/mesh/stitch_surface.h"

namespace roundwright {
namespace {

/// Fans and rims wear what lies beside the upper edge of a face.
constexpr double fan_height = 0.4, rim_height = 0.2;

class Builder {
  public:
    Builder(const std::vector<LaidRound>& rounds, const ReliefGrid& grid, const FabricEnds& ends,
            const FabricStitches& stitches)
        : rounds_(rounds),
          columns_(static_cast<std::uint32_t>(grid.columns)),
          grid_(grid),
          ends_(ends),
          stitches_(stitches) {}

    FabricTopology build() {
        mesh_.outer = number_vertices(grid_);
        if (!ends_.closed()) mesh_.inner = number_vertices(grid_.inside());
        make_room(triangles_of_fabric(rounds_, grid_, ends_));
        mesh_skin(mesh_.outer, true);
        if (!ends_.closed()) {
            mesh_skin(mesh_.inner, false);
            if (!ends_.fan_above) join_highest_rim();
            if (!ends_.fan_below && !ends_.point_below) join_lowest_rim();
        }
        make_room(next_);
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

    void make_room(std::size_t triangles) {
        mesh_.indices.resize(3 * triangles);
        mesh_.places.resize(6 * triangles);
        mesh_.stitch_of_triangle.resize(triangles);
        mesh_.faces.resize(triangles);
    }

    /// A vertex with its place on the face of the stitch at hand.
    struct Corner {
        std::uint32_t vertex;
        std::uint16_t u, v;
    };

    static std::uint16_t units(double place) {
        return static_cast<std::uint16_t>(place * Mesh::place_units + 0.5);
    }

    /// What the triangles to come belong to.
    void begin_cell(const LaidStitch& cell, bool outer) {
        stitch_ = stitches_.number_of(cell);
        face_ = static_cast<std::uint8_t>(outer ? stitches_.face_of(cell) : StitchFace::inside);
        cell_ = &cell;
    }

    [[nodiscard]] std::uint16_t across(double share) const {
        return units(cell_->face_first + share * cell_->face_across);
    }
    [[nodiscard]] std::uint16_t up(double share) const { return units(share * cell_->face_up); }

    void triangle(const Corner& a, const Corner& b, const Corner& c) {
        if (next_ == mesh_.faces.size()) make_room(2 * next_ + 1);
        std::uint32_t* index = &mesh_.indices[3 * next_];
        std::uint16_t* place = &mesh_.places[6 * next_];
        for (const Corner& corner : {a, b, c}) {
            *index++ = corner.vertex;
            *place++ = corner.u;
            *place++ = corner.v;
        }
        mesh_.stitch_of_triangle[next_] = stitch_;
        mesh_.faces[next_++] = face_;
    }

    /// The vertices of a row that belong to the cell at hand, at one height of its face.
    struct Span {
        const VertexRow& row;
        std::uint32_t first, last;
        double v;

        [[nodiscard]] std::uint32_t steps() const { return row.size == 1 ? 0 : last - first; }
    };

    [[nodiscard]] Corner corner(const Span& span, std::uint32_t step, double share) const {
        return {span.row.at(span.first + step), across(share), up(span.v)};
    }

    /// Triangles between the vertices of one row and those of the one above. Work goes to the left seen from
    /// outside. `outward` false turns them over.
    void zip(const Span& below, const Span& above, bool outward) {
        const std::uint32_t b_steps = below.steps(), t_steps = above.steps();
        if (b_steps == columns_ && t_steps == columns_) return quads(below, above, outward);
        const auto share = [](std::uint32_t step, std::uint32_t steps, double without) {
            return steps == 0 ? without : static_cast<double>(step) / steps;
        };
        for (std::uint32_t b = 0, t = 0; b < b_steps || t < t_steps;) {
            // The next step is the one that lags behind, as shares of the way: (b + 1) / b_steps against
            // (t + 1) / t_steps.
            const bool step_below = t == t_steps || (b < b_steps && (b + 1) * t_steps <= (t + 1) * b_steps);
            const double b_share = share(b, b_steps, share(t, t_steps, 0));
            const double t_share = share(t, t_steps, share(b, b_steps, 0));
            const Corner from = corner(below, b, b_share), to = corner(above, t, t_share);
            const Corner next = step_below ? corner(below, b + 1, share(b + 1, b_steps, 0))
                                           : corner(above, t + 1, share(t + 1, t_steps, 0));
            (step_below ? b : t) += 1;
            if (outward)
                triangle(from, to, next);
            else
                triangle(to, from, next);
        }
    }

    /// What `zip` gives between as many vertices as the grid has columns, without its asking at every step.
    void quads(const Span& below, const Span& above, bool outward) {
        const std::uint16_t low = up(below.v), high = up(above.v);
        Corner b0{below.row.at(below.first), across(0), low}, t0{above.row.at(above.first), b0.u, high};
        for (std::uint32_t q = 1; q <= columns_; ++q) {
            const Corner b1{below.row.at(below.first + q), across(q * column_share_), low};
            const Corner t1{above.row.at(above.first + q), b1.u, high};
            if (outward) {
                triangle(b0, t0, b1);
                triangle(b1, t0, t1);
            } else {
                triangle(t0, b0, b1);
                triangle(t0, b1, t1);
            }
            b0 = b1;
            t0 = t1;
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
        const auto height = static_cast<double>(rows.size());
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            begin_cell(cell, outward);
            zip({skin.edge(i), column_below(cell.below_first), column_below(cell.below_last), 0},
                {rows.front(), t0, t0 + columns_, 1 / height}, outward);
            for (std::size_t j = 1; j < rows.size(); ++j)
                quads({rows[j - 1], t0, t0 + columns_, static_cast<double>(j) / height},
                      {rows[j], t0, t0 + columns_, static_cast<double>(j + 1) / height}, outward);
        }
    }

    void fan_above(const FabricSkin& skin, bool outward) {
        const auto& cells = rounds_.back().cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            begin_cell(cells[c], outward);
            zip({skin.edge(rounds_.size()), t0, t0 + columns_, 0}, {skin.pole_above, 0, 0, fan_height},
                outward);
        }
    }

    void fan_below(const FabricSkin& skin, bool outward) {
        for (const auto& cell : rounds_.front().cells) {
            begin_cell(cell, outward);
            zip({skin.pole_below, 0, 0, 0},
                {skin.lowest, column_below(cell.below_first), column_below(cell.below_last), fan_height},
                outward);
        }
    }

    void join_highest_rim() {
        const auto& cells = rounds_.back().cells;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto t0 = static_cast<std::uint32_t>(c) * columns_;
            begin_cell(cells[c], true);
            zip({mesh_.outer.edge(rounds_.size()), t0, t0 + columns_, 0},
                {mesh_.inner.edge(rounds_.size()), t0, t0 + columns_, rim_height}, true);
        }
    }

    void join_lowest_rim() {
        for (const auto& cell : rounds_.front().cells) {
            const auto b0 = column_below(cell.below_first), b1 = column_below(cell.below_last);
            begin_cell(cell, true);
            zip({mesh_.inner.lowest, b0, b1, 0}, {mesh_.outer.lowest, b0, b1, rim_height}, true);
        }
    }

    const std::vector<LaidRound>& rounds_;
    std::uint32_t columns_;
    double column_share_ = 1.0 / columns_;
    ReliefGrid grid_;
    FabricEnds ends_;
    const FabricStitches& stitches_;
    const LaidStitch* cell_ = nullptr;
    std::int32_t stitch_ = -1;
    std::uint8_t face_ = 0;
    std::size_t next_ = 0;
    FabricTopology mesh_;
};

}  // namespace

std::int32_t FabricStitches::number_of(const LaidStitch& cell) const {
    if (cell.stitch < 0) return -1;
    return static_cast<std::int32_t>(first_of_round[static_cast<std::size_t>(cell.round)]) + cell.stitch;
}

StitchFace FabricStitches::face_of(const LaidStitch& cell) const {
    if (cell.stitch < 0 || cell.carried) return StitchFace::single;
    return faces[static_cast<std::size_t>(number_of(cell))];
}

std::size_t triangles_of_fabric(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                const FabricEnds& ends) {
    if (rounds.empty()) return 0;
    const auto columns = static_cast<std::size_t>(grid.columns);
    const std::size_t lowest = columns * static_cast<std::size_t>(rounds.front().loops_below);
    const std::size_t highest = columns * rounds.back().cells.size();
    const auto skin = [&](const ReliefGrid& of) {
        std::size_t triangles = (ends.fan_below ? lowest : 0) + (ends.fan_above ? highest : 0);
        for (std::size_t i = 0; i < rounds.size(); ++i) {
            const bool point = i == 0 && ends.point_below;
            const std::size_t above = columns * rounds[i].cells.size();
            const std::size_t below = point ? 0 : columns * static_cast<std::size_t>(rounds[i].loops_below);
            triangles += below + above + 2 * static_cast<std::size_t>(of.rows - 1) * above;
        }
        return triangles;
    };
    if (ends.closed()) return skin(grid);
    const std::size_t rims =
        (ends.fan_above ? 0 : 2 * highest) + (ends.fan_below || ends.point_below ? 0 : 2 * lowest);
    return skin(grid) + skin(grid.inside()) + rims;
}

FabricTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                               const FabricEnds& ends, const FabricStitches& stitches) {
    if (rounds.empty()) return {};
    return Builder(rounds, grid, ends, stitches).build();
}

}  // namespace roundwright
