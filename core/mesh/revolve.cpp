#include "core/mesh/revolve.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/mesh/fabric_topology.h"
#include "core/mesh/meridian.h"
#include "core/mesh/stitch_layout.h"
#include "core/mesh/stitch_relief.h"
#include "core/mesh/vertex_normals.h"

namespace roundwright {
namespace {

constexpr double two_pi = 2 * std::numbers::pi;
constexpr Colour no_yarn_colour{205, 198, 188};
constexpr double fabric_thickness_in_stitches = 0.35;

Colour colour_of(const Toy& toy, const Stitch& stitch) {
    return stitch.yarn < toy.yarns.size() ? toy.yarns[stitch.yarn].colour : no_yarn_colour;
}

/// A regular polygon of `corners` corners has the area of its circle if its corners stand this much further
/// out.
double polygon_factor(std::size_t corners) {
    const double step = two_pi / static_cast<double>(corners);
    return corners < 3 ? 1 : std::sqrt(step / std::sin(step));
}

/// A point of the mean surface between two loops, and its outward normal.
struct SurfacePoint {
    double angle = 0;
    Vec2 place;       ///< radius, z
    Vec2 normal;      ///< radial, z
    double tilt = 0;  ///< of the normal around the axis, where the loop waves
};

class Revolver {
  public:
    Revolver(const Toy& toy, const StitchGraph& graph, std::vector<LaidRound> rounds, Meridian meridian,
             const RevolveOptions& options, bool turned_over)
        : toy_(toy),
          graph_(graph),
          rounds_(std::move(rounds)),
          meridian_(std::move(meridian)),
          options_(options),
          turned_over_(turned_over),
          relief_(grid(), options.relief) {
        for (const auto& loop : meridian_.loops) top_z_ = std::max(top_z_, loop.z_mm);
    }

    StitchSurface surface() {
        lay_patches();
        const FabricEnds ends{meridian_.closed_below, meridian_.closed_above,
                              !meridian_.closed_below || !meridian_.closed_above};
        topology_ = fabric_topology(rounds_, relief_.grid, ends, result_.first_stitch_of_round);
        result_.mesh.positions.resize(3u * topology_.vertices);
        result_.mesh.colours.resize(3u * topology_.vertices);
        place_lowest();
        for (std::size_t i = 0; i < rounds_.size(); ++i) place_round(i);
        if (topology_.apex.size > 0)
            place_pole(topology_.apex, meridian_.loops.back(), rounds_.back().cells.back());
        if (ends.inside) place_inside();
        result_.mesh.indices = std::move(topology_.indices);
        result_.mesh.stitch_of_triangle = std::move(topology_.stitch_of_triangle);
        set_vertex_normals(result_.mesh);
        return std::move(result_);
    }

  private:
    ReliefGrid grid() const {
        std::size_t cells = 0, fewest = rounds_.front().cells.size();
        for (const auto& round : rounds_) {
            cells += round.cells.size();
            fewest = std::min(fewest, round.cells.size());
        }
        const bool open = !meridian_.closed_below || !meridian_.closed_above;
        ReliefGrid found = finest_relief(cells, options_.most_triangles, open);
        if (!options_.relief) found = {std::min(found.columns, 4), std::min(found.rows, 2)};
        found.columns = std::max(found.columns, static_cast<int>((2 + fewest) / fewest));
        return found;
    }

    // ---- the stitches' corners

    void lay_patches() {
        auto& first = result_.first_stitch_of_round;
        first.assign(1, 0);
        for (const auto& round : graph_.rounds)
            first.push_back(first.back() + static_cast<std::uint32_t>(round.stitches.size()));
        result_.stitches.resize(first.back());
        for (std::size_t i = 0; i < graph_.rounds.size(); ++i) {
            for (std::size_t s = 0; s < graph_.rounds[i].stitches.size(); ++s) lay_unworked(i, s);
            if (i >= rounds_.size()) continue;
            for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c)
                if (!rounds_[i].cells[c].carried) lay_patch(i, c);
        }
    }

    StitchPatch& patch(std::size_t round, int stitch) {
        return result_.stitches[result_.first_stitch_of_round[round] + static_cast<std::uint32_t>(stitch)];
    }

    /// A skipped loop has no height: its patch is the loop itself.
    void lay_unworked(std::size_t round, std::size_t stitch) {
        const auto& worked = graph_.rounds[round].stitches[stitch];
        auto& laid = patch(round, static_cast<int>(stitch));
        laid.round = static_cast<int>(round);
        laid.stitch = static_cast<int>(stitch);
        laid.colour = colour_of(toy_, worked.stitch);
        const std::size_t edge = std::min(round, rounds_.size());
        const double from = graph_.rounds[round].first_below + worked.first_foot;
        const Vec3 right = corner(edge, from), left = corner(edge, from + worked.stitch.feet);
        laid.corners = {left, right, right, left};
        laid.normal = flipped(meridian_normal(edge, from));
    }

    void lay_patch(std::size_t round, std::size_t c) {
        const auto& cell = rounds_[round].cells[c];
        auto& laid = patch(round, cell.stitch);
        const auto above = static_cast<double>(c);
        laid.corners = {corner(round, cell.below_last), corner(round, cell.below_first),
                        corner(round + 1, above), corner(round + 1, above + 1)};
        const Vec3 across = (laid.corners[2] - laid.corners[0]).cross(laid.corners[3] - laid.corners[1]);
        if (across.norm() > 1e-9) laid.normal = across.normalized();
    }

    Vec3 corner(std::size_t edge, double along) const {
        const auto& loop = meridian_.loops[edge];
        const double angle = loop.angle(along);
        const Vec2 place = Vec2(loop.radius_mm, loop.z_mm) + wave(loop, angle) * loop.normal;
        return flipped(revolved(angle, place.x(), place.y())) + Vec3(0, turned_over_ ? top_z_ : 0, 0);
    }

    Vec3 meridian_normal(std::size_t edge, double along) const {
        const auto& loop = meridian_.loops[edge];
        return revolved(loop.angle(along), loop.normal.x(), loop.normal.y());
    }

    static double wave(const MeridianLoop& loop, double angle) {
        return loop.waves.waves == 0 ? 0 : loop.waves.amplitude_mm * std::cos(loop.waves.waves * angle);
    }

    /// A piece that starts at the top is turned over about the axis to the viewer.
    Vec3 flipped(const Vec3& point) const {
        return turned_over_ ? Vec3(-point.x(), -point.y(), point.z()) : point;
    }

    // ---- the mesh's vertices

    SurfacePoint between(const MeridianLoop& below, double angle_below, const MeridianLoop& above,
                         double angle_above, double v) const {
        SurfacePoint point;
        point.angle = angle_below + v * (angle_above - angle_below);
        point.place = Vec2(below.radius_mm + v * (above.radius_mm - below.radius_mm),
                           below.z_mm + v * (above.z_mm - below.z_mm));
        point.normal = ((1 - v) * below.normal + v * above.normal);
        const double length = point.normal.norm();
        point.normal = length > 1e-9 ? Vec2(point.normal / length) : above.normal;
        if (below.waves.waves != 0 || above.waves.waves != 0) add_waves(point, below, above, v);
        return point;
    }

    /// Moves a point by the waves of the loops beside it and tilts its normal by their slope along the loop
    /// and along the meridian.
    static void add_waves(SurfacePoint& point, const MeridianLoop& below, const MeridianLoop& above,
                          double v) {
        const int waves = std::max(below.waves.waves, above.waves.waves);
        const double amplitude = (1 - v) * below.waves.amplitude_mm + v * above.waves.amplitude_mm;
        const Vec2 along(above.radius_mm - below.radius_mm, above.z_mm - below.z_mm);
        const double length = std::max(along.norm(), 1e-9);
        const double radius = std::max(point.place.x(), 1e-9);
        const double crest = std::cos(waves * point.angle);
        point.place += amplitude * crest * point.normal;
        point.tilt = amplitude * waves * std::sin(waves * point.angle) / radius;
        point.normal -=
            (above.waves.amplitude_mm - below.waves.amplitude_mm) * crest / (length * length) * along;
        const double scale = std::sqrt(point.normal.squaredNorm() + point.tilt * point.tilt);
        point.normal /= scale;
        point.tilt /= scale;
    }

    void place(std::uint32_t vertex, const SurfacePoint& point, double factor, double lift, Colour colour,
               float light) {
        const double radial = factor * (point.place.x() + lift * point.normal.x());
        const double sine = std::sin(point.angle), cosine = std::cos(point.angle), tilt = lift * point.tilt;
        const double side = turned_over_ ? -1 : 1, lowest = turned_over_ ? top_z_ : 0;
        float* at = &result_.mesh.positions[3u * vertex];
        at[0] = static_cast<float>(side * (radial * sine + tilt * cosine));
        at[1] = static_cast<float>(lowest + side * (point.place.y() + lift * point.normal.y()));
        at[2] = static_cast<float>(radial * cosine - tilt * sine);
        float* shade = &result_.mesh.colours[3u * vertex];
        shade[0] = static_cast<float>(colour.red) / 255 * light;
        shade[1] = static_cast<float>(colour.green) / 255 * light;
        shade[2] = static_cast<float>(colour.blue) / 255 * light;
    }

    Colour colour_of_cell(const LaidStitch& cell) const {
        return cell.stitch < 0 ? no_yarn_colour
                               : colour_of(toy_, graph_.rounds[static_cast<std::size_t>(cell.round)]
                                                     .stitches[static_cast<std::size_t>(cell.stitch)]
                                                     .stitch);
    }

    /// The relief flattens where stitches are squeezed together, towards a pole above all.
    double relief_scale(double radius, double loops) const {
        return std::min(options_.stitch_width_mm, two_pi * radius / loops);
    }

    void place_round(std::size_t i) {
        const auto& below = meridian_.loops[i];
        const auto& above = meridian_.loops[i + 1];
        const double factor = polygon_factor(topology_.rows[i].front().size);
        const int rows = relief_.grid.rows;
        for (int j = 1; j <= rows; ++j) {
            const double v = static_cast<double>(j) / rows;
            const double scale =
                relief_scale(below.radius_mm + v * (above.radius_mm - below.radius_mm), above.loops);
            place_row(i, j, v, factor, scale);
        }
    }

    void place_row(std::size_t i, int j, double v, double factor, double scale) {
        const auto& below = meridian_.loops[i];
        const auto& above = meridian_.loops[i + 1];
        const int columns = relief_.grid.columns;
        std::uint32_t vertex = topology_.rows[i][static_cast<std::size_t>(j - 1)].first;
        for (std::size_t c = 0; c < rounds_[i].cells.size(); ++c) {
            const auto& cell = rounds_[i].cells[c];
            const Colour colour = colour_of_cell(cell);
            for (int q = 0; q < columns; ++q, ++vertex) {
                const double u = static_cast<double>(q) / columns;
                const double from = below.angle(cell.below_first + u * (cell.below_last - cell.below_first));
                const auto point = between(below, from, above, above.angle(static_cast<double>(c) + u), v);
                const std::size_t k = relief_.at(j, q);
                place(vertex, point, factor, scale * static_cast<double>(relief_.height[k]), colour,
                      relief_.light[k]);
            }
        }
    }

    void place_pole(const VertexRow& row, const MeridianLoop& loop, const LaidStitch& cell) {
        SurfacePoint point;
        point.place = Vec2(0, loop.z_mm);
        point.normal = Vec2(0, loop.normal.y());
        place(row.first, point, 1, 0, colour_of_cell(cell), relief_.light.back());
    }

    void place_lowest() {
        const auto& row = topology_.lowest;
        const auto& cells = rounds_.front().cells;
        if (row.size == 1) return place_pole(row, meridian_.loops.front(), cells.front());
        std::size_t c = 0;
        for (std::uint32_t k = 0; k < row.size; ++k) {
            const double along = static_cast<double>(k) / relief_.grid.columns;
            while (c + 1 < cells.size() && cells[c].below_last <= along) ++c;
            place(row.first + k, on_loop(0, along), polygon_factor(row.size), 0, colour_of_cell(cells[c]),
                  relief_.light.back());
        }
    }

    SurfacePoint on_loop(std::size_t edge, double along) const {
        const auto& loop = meridian_.loops[edge];
        return between(loop, loop.angle(along), loop, loop.angle(along), 1);
    }

    /// The inside is a plain skin one fabric thickness below the mean surface.
    void place_inside() {
        for (std::size_t edge = 0; edge < topology_.inner.size(); ++edge) {
            const auto& row = topology_.inner[edge];
            const auto& loop = meridian_.loops[edge];
            const auto& cells = rounds_[edge == 0 ? 0 : std::min(edge, rounds_.size()) - 1].cells;
            const double thickness =
                std::min(fabric_thickness_in_stitches * options_.stitch_width_mm,
                         loop.normal.x() > 0 && loop.radius_mm > 0 ? loop.radius_mm / 2 / loop.normal.x()
                                                                   : options_.stitch_width_mm);
            for (std::uint32_t k = 0; k < row.size; ++k) {
                const double along = static_cast<double>(k) / relief_.grid.columns;
                const auto cell = std::min(cells.size() - 1, static_cast<std::size_t>(along));
                place(row.first + k, on_loop(edge, along), polygon_factor(row.size), -thickness,
                      colour_of_cell(cells[cell]), 0.7F);
            }
        }
    }

    const Toy& toy_;
    const StitchGraph& graph_;
    std::vector<LaidRound> rounds_;
    Meridian meridian_;
    RevolveOptions options_;
    bool turned_over_;
    double top_z_ = 0;
    ReliefTable relief_;
    FabricTopology topology_;
    StitchSurface result_;
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
    auto meridian = lay_meridian(rounds, piece, shape, waves);
    return Revolver(toy, graph, std::move(rounds), std::move(meridian), options, piece.starts_at_top)
        .surface();
}

}  // namespace roundwright
