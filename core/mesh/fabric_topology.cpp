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

    SurfaceTopology build() {
        mesh_.outer = number_vertices(grid_);
        if (!ends_.closed()) mesh_.inner = number_vertices(grid_.inside());
        make_room(triangles_of_fabric(rounds_, grid_, ends_));
        mesh_skin(mesh_.outer, true);
        if (!ends_.closed()) {
            mesh_skin(mesh_.inner, false);
            if (!ends_.fan_above) join_highest_rim();
            if (!ends_.fan_below && !ends_.point_below) join_lowest_rim();
            if (ends_.rounds == RoundEnds::nowhere) join_sides();
            if (has_ledge()) join_ledge();
        }
        make_room(next_);
        return std::move(mesh_);
    }

  private:
    VertexRow new_row(std::size_t size) {
        const VertexRow row{mesh_.vertices, static_cast<std::uint32_t>(size), mesh_.vertices};
        mesh_.vertices += row.size;
        return row;
    }

    [[nodiscard]] bool climbs() const { return ends_.rounds == RoundEnds::in_the_next; }
    [[nodiscard]] bool has_ledge() const { return climbs() && !ends_.fan_above; }
    [[nodiscard]] bool is_last(std::size_t i) const { return i + 1 == rounds_.size(); }

    std::uint32_t new_end(FabricSkin& skin, std::size_t round, std::size_t row) {
        skin.row_ends.push_back({mesh_.vertices, round, row});
        return mesh_.vertices++;
    }

    void end_rows(FabricSkin& skin) {
        if (ends_.rounds == RoundEnds::nowhere) {
            if (skin.lowest.size > 1) skin.lowest.after = new_end(skin, 0, 0);
            for (std::size_t i = 0; i < rounds_.size(); ++i)
                for (std::size_t j = 0; j < skin.rows[i].size(); ++j)
                    skin.rows[i][j].after = new_end(skin, i, j + 1);
        } else if (climbs()) {
            for (std::size_t i = 0; i + 1 < rounds_.size(); ++i)
                for (std::size_t j = 0; j < skin.rows[i].size(); ++j)
                    skin.rows[i][j].after = skin.rows[i + 1][j].first;
            end_spiral(skin);
        }
    }

    /// The ledge of an open spiral. Of a closed one, the round before the last ends within the side before
    /// the last one's first stitch, and that one ends on the rest of it.
    void end_spiral(FabricSkin& skin) {
        const std::size_t last = rounds_.size() - 1, rows = skin.rows[last].size();
        for (std::size_t j = 0; j < rows; ++j) {
            const bool top = j + 1 == rows;
            if (has_ledge() || !top) skin.rows[last][j].after = new_end(skin, last, j + 1);
            if (has_ledge()) continue;
            if (top)
                skin.rows[last - 1][j].after = new_end(skin, last - 1, j + 1);
            else
                skin.row_ends.push_back({skin.rows[last][j].first, last - 1, j + 1});
        }
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
        end_rows(skin);
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
            auto t0 = static_cast<std::uint32_t>(c) * columns_, t1 = t0 + columns_;
            begin_cell(cell, outward);
            if (splits_before(i, c)) strip(before_last_round(skin), column_beside(skin, i, ++t0), outward);
            if (splits_after(i, c)) strip(column_beside(skin, i, --t1), after_first_round(skin), outward);
            zip({skin.edge(i), column_below(cell.below_first), column_below(cell.below_last), 0},
                {rows.front(), t0, t1, 1 / height}, outward);
            for (std::size_t j = 1; j < rows.size(); ++j)
                zip({rows[j - 1], t0, t1, static_cast<double>(j) / height},
                    {rows[j], t0, t1, static_cast<double>(j + 1) / height}, outward);
        }
    }

    // Sides of cells that meet others on more vertices than a cell has rows.

    [[nodiscard]] bool splits_after(std::size_t i, std::size_t c) const {
        return climbs() && i == 0 && c + 1 == rounds_[i].cells.size();
    }
    [[nodiscard]] bool splits_before(std::size_t i, std::size_t c) const {
        return climbs() && !has_ledge() && is_last(i) && c == 0;
    }

    /// Vertices up the side of a cell.
    using Side = std::vector<std::uint32_t>;

    /// Up a column of the first round or the last one, from where the side next to it begins.
    [[nodiscard]] Side column_beside(const FabricSkin& skin, std::size_t i, std::uint32_t column) const {
        const VertexRow& below = skin.edge(i);
        Side side{i == 0 ? below.at(below.size) : below.at(0)};
        for (const VertexRow& row : skin.rows[i]) side.push_back(row.at(column));
        return side;
    }

    [[nodiscard]] Side after_first_round(const FabricSkin& skin) const {
        Side side{skin.lowest.at(skin.lowest.size)};
        for (const VertexRow& row : skin.rows[0]) side.push_back(row.first);
        for (const VertexRow& row : skin.rows[0]) side.push_back(row.after);
        return side;
    }

    [[nodiscard]] Side before_last_round(const FabricSkin& skin) const {
        const std::size_t last = rounds_.size() - 1;
        Side side{skin.edge(last).at(0)};
        for (const VertexRow& row : skin.rows[last - 1]) side.push_back(row.after);
        for (const VertexRow& row : skin.rows[last]) side.push_back(row.after);
        return side;
    }

    /// Triangles between two sides, the one before and the one after it in the direction worked.
    void strip(const Side& before, const Side& after, bool outward) {
        const std::size_t b_steps = before.size() - 1, a_steps = after.size() - 1;
        const auto at = [&](const Side& side, std::size_t k) {
            return Corner{side[k], across(&side == &before ? 0 : 1),
                          up(static_cast<double>(k) / static_cast<double>(side.size() - 1))};
        };
        for (std::size_t b = 0, a = 0; b < b_steps || a < a_steps;) {
            const bool step_before = a == a_steps || (b < b_steps && (b + 1) * a_steps <= (a + 1) * b_steps);
            const Corner from = at(before, b), to = at(after, a);
            const Corner next = step_before ? at(before, b + 1) : at(after, a + 1);
            (step_before ? b : a) += 1;
            if (from.vertex == to.vertex || to.vertex == next.vertex || next.vertex == from.vertex) continue;
            if (outward)
                triangle(from, next, to);
            else
                triangle(next, from, to);
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

    /// Up the side of a sheet, from edge to edge.
    [[nodiscard]] Side side_of(const FabricSkin& skin, bool at_start) const {
        Side side{at_start ? skin.lowest.first : skin.lowest.at(skin.lowest.size)};
        for (const auto& rows : skin.rows)
            for (const VertexRow& row : rows) side.push_back(at_start ? row.first : row.after);
        return side;
    }

    [[nodiscard]] Side ledge_of(const FabricSkin& skin) const {
        Side side{skin.edge(rounds_.size()).first};
        for (const VertexRow& row : skin.rows.back()) side.push_back(row.after);
        return side;
    }

    void join_sides() {
        begin_cell(rounds_.back().cells.front(), true);
        strip(side_of(mesh_.inner, true), side_of(mesh_.outer, true), true);
        begin_cell(rounds_.back().cells.back(), true);
        strip(side_of(mesh_.outer, false), side_of(mesh_.inner, false), true);
    }

    void join_ledge() {
        begin_cell(rounds_.back().cells.back(), true);
        strip(ledge_of(mesh_.outer), ledge_of(mesh_.inner), true);
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
    SurfaceTopology mesh_;
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
    const bool climbs = ends.rounds == RoundEnds::in_the_next;
    const auto skin = [&](const ReliefGrid& of) {
        std::size_t triangles = (ends.fan_below ? lowest : 0) + (ends.fan_above ? highest : 0);
        for (std::size_t i = 0; i < rounds.size(); ++i) {
            const bool point = i == 0 && ends.point_below;
            const std::size_t above = columns * rounds[i].cells.size();
            const std::size_t below = point ? 0 : columns * static_cast<std::size_t>(rounds[i].loops_below);
            triangles += below + above + 2 * static_cast<std::size_t>(of.rows - 1) * above;
        }
        if (climbs) triangles += static_cast<std::size_t>(ends.fan_above ? 2 * of.rows : of.rows);
        return triangles;
    };
    if (ends.closed()) return skin(grid);
    const auto rows = static_cast<std::size_t>(grid.rows + grid.inside().rows);
    std::size_t sides = ends.rounds == RoundEnds::nowhere ? 2 * rounds.size() * rows : 0;
    if (climbs && !ends.fan_above) sides += rows;
    const std::size_t rims =
        (ends.fan_above ? 0 : 2 * highest) + (ends.fan_below || ends.point_below ? 0 : 2 * lowest);
    return skin(grid) + skin(grid.inside()) + rims + sides;
}

SurfaceTopology fabric_topology(const std::vector<LaidRound>& rounds, const ReliefGrid& grid,
                                const FabricEnds& ends, const FabricStitches& stitches) {
    if (rounds.empty()) return {};
    return Builder(rounds, grid, ends, stitches).build();
}

}  // namespace roundwright
