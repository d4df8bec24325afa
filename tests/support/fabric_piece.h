#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <vector>

#include "core/shape/fabric/fabric_problem.h"
#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/solve_shape.h"

namespace roundwright::test {

/// A piece as cells, with positions to start from.
struct FabricPiece {
    FabricProblem problem;
    std::vector<Vec3> start;
    std::vector<std::vector<std::int32_t>> rings;  ///< the nodes along each round's top
    /// Nodes in the middle of a loop that is increased, each with the ends of that loop.
    std::vector<std::array<std::int32_t, 3>> middles;
};

struct FabricPieceOptions {
    double stitch_width_mm = 5;
    double round_height_mm = 5;
    double area_stretch = 0.04;
    bool staggered = true;  ///< increases of one round lie between those of the last
    bool drawn_closed = true;
};

/// Builds rounds of cells: each stitch a trapezoid on its share of the loops below.
class FabricPieceBuilder {
  public:
    explicit FabricPieceBuilder(const FabricPieceOptions& options) : options_(options) {
        piece_.problem.stitch_width_mm = options.stitch_width_mm;
        piece_.problem.round_height_mm = options.round_height_mm;
        piece_.problem.area_stretch = options.area_stretch;
    }

    std::int32_t add_node(const Vec3& at) {
        piece_.start.push_back(at);
        return piece_.problem.nodes++;
    }

    /// The loops below, as boundaries between them; the first is not repeated at the end.
    void begin(std::vector<std::int32_t> boundaries) { edge_ = std::move(boundaries); }

    /// One round. `loops[k]`: how many loops below stitch k takes: 0 (worked into a point), 1, 2 (a decrease)
    /// or -1 (each of the two of an increase takes half of one).
    void work(const std::vector<int>& loops, const std::vector<Vec3>& top) {
        const std::vector<std::int32_t> below = path_below(loops);
        std::vector<std::int32_t> made;
        for (const Vec3& at : top) made.push_back(add_node(at));
        std::size_t from = 0;
        bool second_half = false;
        for (std::size_t k = 0; k < loops.size(); ++k) {
            Cell cell;
            cell.top = {made[k], made[(k + 1) % made.size()]};
            if (loops[k] < 0) {
                cell.bottom = {below[from], below[from + 1]};
                cell.bottom_width = options_.stitch_width_mm / 2;
                ++from;
                second_half = !second_half;
            } else {
                for (int i = 0; i <= loops[k]; ++i)
                    cell.bottom.push_back(below[from + static_cast<std::size_t>(i)]);
                cell.bottom_width = loops[k] * options_.stitch_width_mm;
                from += static_cast<std::size_t>(loops[k]);
            }
            cell.height = options_.round_height_mm;
            cells_.push_back(cell);
        }
        last_cells_.resize(loops.size());
        for (std::size_t k = 0; k < loops.size(); ++k) last_cells_[k] = cells_.size() - loops.size() + k;
        edge_ = made;
        piece_.rings.push_back(std::move(made));
    }

    /// A fan of half a stitch's width from the last loops to a point.
    void draw_closed(const Vec3& at) {
        const std::int32_t pole = add_node(at);
        for (std::size_t k = 0; k < edge_.size(); ++k)
            cells_.push_back({{edge_[k], edge_[(k + 1) % edge_.size()]},
                              {pole},
                              options_.stitch_width_mm,
                              options_.stitch_width_mm / 2});
    }

    /// Sewn along a line: the first `sides` loops to its parts, the next `ends` to its far end, and back.
    void sew_to(const std::vector<std::int32_t>& line, std::size_t ends) {
        const double w = options_.stitch_width_mm;
        const std::size_t sides = line.size() - 1;
        for (std::size_t k = 0; k < edge_.size(); ++k) {
            const std::vector<std::int32_t> bottom{edge_[k], edge_[(k + 1) % edge_.size()]};
            const std::size_t half = k % (sides + ends);
            const bool forth = k < sides + ends;
            const std::size_t from = forth ? std::min(half, sides) : sides - std::min(half, sides);
            std::vector<std::int32_t> top{line[from]};
            if (half < sides) top.push_back(line[forth ? from + 1 : from - 1]);
            cells_.push_back({bottom, top, w, w / 2});
        }
    }

    FabricPiece finish() {
        for (const Cell& cell : cells_) add_triangles(cell);
        return std::move(piece_);
    }

    [[nodiscard]] const std::vector<std::int32_t>& edge() const { return edge_; }

  private:
    struct Cell {
        std::vector<std::int32_t> bottom, top;
        double bottom_width = 0;
        double height = 0;
    };

    /// Along the loops below, once around and back to the first, with a node in the middle of each that is
    /// increased.
    std::vector<std::int32_t> path_below(const std::vector<int>& loops) {
        std::vector<std::int32_t> path;
        std::size_t loop = 0;
        for (std::size_t k = 0; k < loops.size(); ++k) {
            if (loops[k] >= 0) {
                for (int i = 0; i < loops[k]; ++i) path.push_back(edge_[loop++]);
                continue;
            }
            const std::int32_t a = edge_[loop];
            const std::int32_t b = edge_[(loop + 1) % edge_.size()];
            const Vec3 middle =
                (piece_.start[static_cast<std::size_t>(a)] + piece_.start[static_cast<std::size_t>(b)]) / 2;
            const std::int32_t made = add_node(middle);
            piece_.middles.push_back({made, a, b});
            if (loop < last_cells_.size()) {
                auto& top = cells_[last_cells_[loop]].top;
                top.insert(top.begin() + 1, made);
            }
            path.push_back(a);
            path.push_back(made);
            ++loop;
            ++k;
        }
        path.push_back(edge_[loop % edge_.size()]);
        return path;
    }

    static Vec2 along(double width, double y, std::size_t i, std::size_t count) {
        const double share = count > 1 ? static_cast<double>(i) / static_cast<double>(count - 1) : 0.5;
        return {width * (share - 0.5), y};
    }

    // Bottom and top run the same way; every other cell takes the other diagonal.
    void add_triangles(const Cell& cell) {
        const double w = options_.stitch_width_mm;
        const auto low = [&](std::size_t i) { return along(cell.bottom_width, 0, i, cell.bottom.size()); };
        const auto high = [&](std::size_t i) { return along(w, cell.height, i, cell.top.size()); };
        const bool turned = ++count_ % 2 == 0;
        std::size_t i = 0;
        std::size_t j = 0;
        while (i + 1 < cell.bottom.size() || j + 1 < cell.top.size()) {
            const std::size_t left_below = cell.bottom.size() - 1 - i;
            const std::size_t left_above = cell.top.size() - 1 - j;
            const bool step_below =
                left_above == 0 ||
                (left_below > 0 && (left_below > left_above || (left_below == left_above && turned)));
            if (step_below) {
                add({cell.bottom[i], cell.bottom[i + 1], cell.top[j]}, {low(i), low(i + 1), high(j)});
                ++i;
            } else {
                add({cell.bottom[i], cell.top[j + 1], cell.top[j]}, {low(i), high(j + 1), high(j)});
                ++j;
            }
        }
    }

    void add(const std::array<std::int32_t, 3>& nodes, const std::array<Vec2, 3>& rest) {
        piece_.problem.triangles.push_back({nodes, rest});
    }

    FabricPieceOptions options_;
    FabricPiece piece_;
    std::vector<std::int32_t> edge_;
    std::vector<Cell> cells_;
    std::vector<std::size_t> last_cells_;
    int count_ = 0;
};

/// What each of `to` stitches takes of `from` loops, changes spread evenly from `offset` on.
inline std::vector<int> even_round(int from, int to, int offset) {
    std::vector<int> loops;
    if (to >= from) {
        const int more = to - from;
        for (int l = 0; l < from; ++l) {
            const bool doubled = more > 0 && ((l + offset) * more) % from < more;
            if (doubled) loops.push_back(-1);
            loops.push_back(doubled ? -1 : 1);
        }
    } else {
        const int fewer = from - to;
        for (int k = 0; k < to; ++k) loops.push_back(((k + offset) * fewer) % to < fewer ? 2 : 1);
    }
    return loops;
}

/// A round piece from a magic ring; it starts as the round solve has it.
inline FabricPiece round_piece(const std::vector<int>& counts, const FabricPieceOptions& options = {}) {
    ShapeProblem round;
    round.rest_loop_mm.push_back(0);
    for (const int count : counts) {
        round.rest_loop_mm.push_back(count * options.stitch_width_mm);
        round.rest_height_mm.push_back(options.round_height_mm);
    }
    round.last = options.drawn_closed ? MeridianEnd::drawn_closed : MeridianEnd::open;
    round.fan_height_mm = options.stitch_width_mm / 2;
    round.area_stretch = options.area_stretch;
    round.stitch_width_mm = options.stitch_width_mm;
    const Shape shape = solve_shape(round);
    FabricPieceBuilder builder(options);
    const auto ring = [&](std::size_t i, int count) {
        std::vector<Vec3> out;
        for (int k = 0; k < count; ++k) {
            const double angle = 2 * std::numbers::pi * k / count;
            out.emplace_back(shape.radius_mm[i] * std::cos(angle), shape.radius_mm[i] * std::sin(angle),
                             shape.z_mm[i]);
        }
        return out;
    };
    const std::int32_t pole = builder.add_node({0, 0, shape.first_pole_z_mm});
    builder.begin(std::vector<std::int32_t>(static_cast<std::size_t>(counts[0]), pole));
    builder.work(std::vector<int>(static_cast<std::size_t>(counts[0]), 0), ring(1, counts[0]));
    for (std::size_t i = 1; i < counts.size(); ++i)
        builder.work(even_round(counts[i - 1], counts[i],
                                options.staggered && i % 2 == 0 ? 1 + static_cast<int>(i) / 2 : 0),
                     ring(i + 1, counts[i]));
    if (options.drawn_closed) builder.draw_closed({0, 0, shape.last_pole_z_mm});
    return builder.finish();
}

/// n rounds of six increases, n even ones and n of six decreases.
inline std::vector<int> ball_counts(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 0; i < n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return counts;
}

inline int stitches_of(const std::vector<int>& counts) {
    int sum = 0;
    for (const int count : counts) sum += count;
    return sum;
}

/// A tube of rings, open at both ends.
inline FabricPiece tube_piece(int stitches, int rounds, const FabricPieceOptions& options = {}) {
    FabricPieceBuilder builder(options);
    const double radius = stitches * options.stitch_width_mm / (2 * std::numbers::pi);
    const auto ring = [&](int i) {
        std::vector<Vec3> out;
        for (int k = 0; k < stitches; ++k) {
            const double angle = 2 * std::numbers::pi * k / stitches;
            out.emplace_back(radius * std::cos(angle), radius * std::sin(angle), i * options.round_height_mm);
        }
        return out;
    };
    std::vector<std::int32_t> first;
    for (const Vec3& at : ring(0)) first.push_back(builder.add_node(at));
    builder.begin(first);
    for (int i = 1; i <= rounds; ++i)
        builder.work(std::vector<int>(static_cast<std::size_t>(stitches), 1), ring(i));
    FabricPiece piece = builder.finish();
    piece.rings.insert(piece.rings.begin(), first);
    return piece;
}

/// A flat sheet of rows.
inline FabricPiece sheet_piece(int stitches, int rows, const FabricPieceOptions& options = {}) {
    FabricPiece piece;
    FabricProblem& problem = piece.problem;
    problem.stitch_width_mm = options.stitch_width_mm;
    problem.round_height_mm = options.round_height_mm;
    const auto at = [&](int i, int k) {
        return Vec2(k * options.stitch_width_mm, i * options.round_height_mm);
    };
    const auto node = [&](int i, int k) { return static_cast<std::int32_t>(i * (stitches + 1) + k); };
    problem.nodes = (rows + 1) * (stitches + 1);
    for (int i = 0; i <= rows; ++i)
        for (int k = 0; k <= stitches; ++k) piece.start.emplace_back(at(i, k).x(), at(i, k).y(), 0);
    const auto add = [&](int i, int k, int j, int l, int m, int n) {
        problem.triangles.push_back({{node(i, k), node(j, l), node(m, n)}, {at(i, k), at(j, l), at(m, n)}});
    };
    for (int i = 0; i < rows; ++i)
        for (int k = 0; k < stitches; ++k) {
            if ((i + k) % 2 == 0) {
                add(i, k, i, k + 1, i + 1, k + 1);
                add(i, k, i + 1, k + 1, i + 1, k);
            } else {
                add(i, k, i, k + 1, i + 1, k);
                add(i, k + 1, i + 1, k + 1, i + 1, k);
            }
        }
    return piece;
}

/// A stadium at height z: node k of n lies around it in equal steps from the first end of the first side on.
inline std::vector<Vec3> stadium(int n, double half_mm, double radius, double z) {
    std::vector<Vec3> out;
    const double side = 2 * half_mm;
    const double end = std::numbers::pi * radius;
    for (int k = 0; k < n; ++k) {
        double s = 2 * (side + end) * k / n;
        if (s < side) {
            out.emplace_back(-half_mm + s, -radius, z);
        } else if (s -= side; s < end) {
            out.emplace_back(half_mm + radius * std::sin(s / radius), -radius * std::cos(s / radius), z);
        } else if (s -= end; s < side) {
            out.emplace_back(half_mm - s, radius, z);
        } else {
            s -= side;
            out.emplace_back(-half_mm - radius * std::sin(s / radius), radius * std::cos(s / radius), z);
        }
    }
    return out;
}

/// The loops that the stitches of an oval's round take, both of whose ends grow to `level` times `turn`
/// stitches: one loop of each is increased, the `shift`-th. -1: a share of the loop before.
inline std::vector<int> grown_oval(int chain, int turn, int level, int shift) {
    std::vector<int> loops;
    for (int side = 0; side < 2; ++side) {
        loops.insert(loops.end(), static_cast<std::size_t>(chain), 1);
        for (int k = 0; k < turn * level; ++k) {
            const bool doubled = k % level == shift % level;
            if (doubled) loops.push_back(-1);
            loops.push_back(doubled ? -1 : 1);
        }
    }
    return loops;
}

/// The same where both ends lose `turn` stitches, from `level` times as many.
inline std::vector<int> shrunk_oval(int chain, int turn, int level, int shift) {
    std::vector<int> loops;
    for (int side = 0; side < 2; ++side) {
        loops.insert(loops.end(), static_cast<std::size_t>(chain), 1);
        for (int k = 0; k < turn * (level - 1); ++k)
            loops.push_back(k % (level - 1) == shift % (level - 1) ? 2 : 1);
    }
    return loops;
}

/// An oval on a chain: a round of `chain` stitches on both sides and `turn` in each end, `grow` rounds that
/// have `turn` more at each end, `even` rounds, and as many back down. It is drawn to a point, or sewn along
/// a line as it began.
inline FabricPiece oval_piece(int chain, int turn, int grow, int even,
                              const FabricPieceOptions& options = {}) {
    FabricPieceBuilder builder(options);
    const double w = options.stitch_width_mm;
    const double h = options.round_height_mm;
    const double half = chain * w / 2;
    std::vector<std::int32_t> line;
    for (int k = 0; k <= chain; ++k) line.push_back(builder.add_node({-half + k * w, 0, 0}));
    std::vector<std::int32_t> edge(line.begin(), line.end() - 1);
    std::vector<int> first(static_cast<std::size_t>(chain), 1);
    // The ends are points: nothing is taken there, and the path goes on from the same node.
    for (int k = 0; k < turn; ++k) first.push_back(0);
    for (int k = chain; k >= 1; --k) edge.push_back(line[static_cast<std::size_t>(k)]);
    first.insert(first.end(), static_cast<std::size_t>(chain), 1);
    for (int k = 0; k < turn; ++k) first.push_back(0);
    builder.begin(edge);
    int count = 2 * chain + 2 * turn;
    double radius = h;
    builder.work(first, stadium(count, half, radius, h / 4));
    double z = h / 4;
    int number = 1;
    const auto shift = [&] { return options.staggered ? number : 0; };
    int level = 1;
    for (int i = 0; i < grow; ++i, ++number) {
        const std::vector<int> loops = grown_oval(chain, turn, level++, shift());
        radius += h * 0.8, z += h * 0.5;
        count = static_cast<int>(loops.size());
        builder.work(loops, stadium(count, half, radius, z));
    }
    for (int i = 0; i < even; ++i, ++number) {
        z += h;
        builder.work(std::vector<int>(static_cast<std::size_t>(count), 1), stadium(count, half, radius, z));
    }
    for (int i = 0; i < grow; ++i, ++number) {
        const std::vector<int> loops = shrunk_oval(chain, turn, level--, shift());
        radius -= h * 0.8, z += h * 0.5;
        count = static_cast<int>(loops.size());
        builder.work(loops, stadium(count, half, radius, z));
    }
    if (options.drawn_closed) {
        builder.draw_closed({0, 0, z + h / 4});
    } else {
        std::vector<std::int32_t> seam;
        for (int k = 0; k <= chain; ++k) seam.push_back(builder.add_node({-half + k * w, 0, z + h / 4}));
        builder.sew_to(seam, static_cast<std::size_t>(turn));
    }
    return builder.finish();
}

}  // namespace roundwright::test
