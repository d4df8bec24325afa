#include "core/shape/yield_flat.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "core/gauge/flat_limits.h"
#include "core/shape/growth.h"
#include "core/shape/meridian.h"

namespace roundwright {

using std::numbers::pi;

namespace {

constexpr double spare_stitches = 0.5;
constexpr double spare_stitches_in_ring = 2;
/// A round is judged with so many beside it: twelve more in every second round make a flat disc, too.
constexpr std::size_t judged_together = 3;
/// Of a round's height by which its loop may miss the table's circle and still lie down whatever grows about
/// it: its length is there.
constexpr double no_gap = 0.03;
constexpr double plane_error = 1e-9;

/// Loops as circles from the inside of a would-be disc outwards; everything in mm.
struct Rings {
    std::vector<double> radius;  ///< relaxed; 0 at a pole
    std::vector<double> height;  ///< of the round that ends in ring i, at [i - 1]
    std::vector<double> pushed;  ///< by how much the radius can be pushed in
    bool free_edge = true;
    double share = 1;  ///< of what each ring's part is by itself

    [[nodiscard]] std::size_t size() const { return radius.size(); }
};

/// From all of it at the first limit to nothing at the second.
double share_between(double value, double all_up_to, double none_from) {
    return std::clamp((none_from - value) / (none_from - all_up_to), 0.0, 1.0);
}

double part_at_strain(double strain) {
    return share_between(strain, pulled_flat_share, unpulled_above_share);
}

/// The fastest growth of up to three rounds in a row with this one among them.
double growth_about(const Rings& rings, std::size_t i) {
    double most = -std::numeric_limits<double>::infinity();
    for (std::size_t below = i - std::min(i, judged_together); below < i; ++below) {
        double height = 0;
        for (std::size_t k = below + 1; k < rings.size() && k <= below + judged_together; ++k) {
            height += rings.height[k - 1];
            if (k >= i) most = std::max(most, (rings.radius[k] - rings.radius[below]) / height);
        }
    }
    return most;
}

/// How far ring i takes part in lying flat, by itself: 0 to 1.
double part_of(const Rings& rings, std::size_t i, double reach) {
    const double rest = rings.radius[i];
    if (rest <= 0 || rest < rings.radius[i - 1] * (1 - plane_error)) return 0;
    const double strain = reach / rest - 1;
    const double growth = growth_about(rings, i);
    const double by_growth = growth > 0 ? part_at_strain(1 / growth - 1) : 0;
    const double gap = (reach - rest) / rings.height[i - 1];
    return std::min(part_at_strain(strain), std::max(by_growth, share_between(gap, 0, no_gap)));
}

/// The radius that ring i yields to, its table reaching so far.
double yielded(const Rings& rings, std::size_t i, double reach, double part) {
    const double rest = rings.radius[i];
    return rest + part * (std::max(reach, rest - rings.pushed[i]) - rest);
}

std::vector<double> own_parts(const Rings& rings) {
    std::vector<double> parts{1};
    double lies_at = rings.radius.front();
    for (std::size_t i = 1; i < rings.size(); ++i) {
        const double reach = lies_at + rings.height[i - 1];
        parts.push_back(rings.share * part_of(rings, i, reach));
        lies_at = std::min(reach, yielded(rings, i, reach, parts.back()));
    }
    return parts;
}

/// How far each ring takes part in a run of flat rounds; only runs from the start, or up to a free edge, lie
/// down. One entry more for what is beyond the edge.
struct Parts {
    std::vector<double> from_inside;
    std::vector<double> from_edge;

    [[nodiscard]] double of(std::size_t i) const { return std::max(from_inside[i], from_edge[i]); }
};

Parts parts_of(const Rings& rings) {
    const std::vector<double> own = own_parts(rings);
    const double beyond = rings.free_edge ? 1 : 0;
    Parts parts{own, own};
    for (std::size_t i = 1; i < own.size(); ++i)
        parts.from_inside[i] = std::min(parts.from_inside[i - 1], own[i]);
    parts.from_inside.push_back(0);
    parts.from_edge.push_back(beyond);
    for (std::size_t i = own.size(); i-- > 1;) parts.from_edge[i] = std::min(parts.from_edge[i + 1], own[i]);
    return parts;
}

/// Rounds within a wall fit into it as far as their heights can be pushed together.
void fit_into_walls(Rings& rings, const Parts& parts) {
    std::vector<double> too_wide(rings.size(), 0);
    double lies_at = rings.radius.front();
    for (std::size_t i = 1; i < rings.size(); ++i) {
        const double reach = lies_at + rings.height[i - 1];
        const double wall = std::max(0.0, parts.of(i) - parts.of(i + 1));
        too_wide[i] = wall * std::clamp(1 - rings.radius[i] / reach, 0.0, pushed_flat_share);
        lies_at = std::min(reach, yielded(rings, i, reach, parts.of(i)));
    }
    double less = 0;
    for (std::size_t i = rings.size(); i-- > 1;) {
        less = parts.of(i) * std::max(less, too_wide[i]);
        rings.height[i - 1] *= 1 - less;
    }
}

Parts lay_down(Rings& rings) {
    const Parts parts = parts_of(rings);
    fit_into_walls(rings, parts);
    double lies_at = rings.radius.front();
    for (std::size_t i = 1; i < rings.size(); ++i) {
        const double reach = lies_at + rings.height[i - 1];
        if (parts.of(i) > 0) rings.radius[i] = yielded(rings, i, reach, parts.of(i));
        lies_at = std::min(reach, rings.radius[i]);
    }
    return parts;
}

/// Loops from `inner` to `outer`, either of which may come first.
Rings rings_of(const ShapeProblem& problem, std::size_t inner, std::size_t outer) {
    Rings rings;
    const bool outwards = inner <= outer;
    for (std::size_t i = inner;; outwards ? ++i : --i) {
        rings.radius.push_back(rest_length_mm(problem, i) / (2 * pi));
        rings.pushed.push_back(pushed_together_mm(problem, i) / (2 * pi));
        if (i == outer) break;
        rings.height.push_back(problem.rest_height_mm[outwards ? i : i - 1]);
    }
    return rings;
}

/// What has not yielded keeps its last bit.
void put_back(const Rings& before, const Rings& rings, std::size_t inner, std::size_t outer,
              ShapeProblem& problem) {
    const bool outwards = inner <= outer;
    for (std::size_t k = 0; k < rings.size(); ++k) {
        const std::size_t i = outwards ? inner + k : inner - k;
        if (rings.radius[k] != before.radius[k]) problem.rest_loop_mm[i] = 2 * pi * rings.radius[k];
        if (k == 0) continue;
        if (rings.height[k - 1] != before.height[k - 1])
            problem.rest_height_mm[outwards ? i - 1 : i] = rings.height[k - 1];
    }
}

Parts lay_down(ShapeProblem& problem, std::size_t inner, std::size_t outer, bool free_edge,
               double share = 1) {
    Rings rings = rings_of(problem, inner, outer);
    rings.free_edge = free_edge;
    rings.share = share;
    const Rings before = rings;
    const Parts parts = lay_down(rings);
    put_back(before, rings, inner, outer, problem);
    return parts;
}

/// How far a drawn end's loop lies from its point; 0 at other ends.
double drawn_mm(const ShapeProblem& problem, std::size_t end) {
    if (end == 0 && problem.first == MeridianEnd::drawn_closed)
        return std::max(problem.first_fan_height_mm, problem.rest_height_mm.front());
    if (end > 0 && problem.last == MeridianEnd::drawn_closed)
        return std::max(problem.fan_height_mm, problem.rest_height_mm.back());
    return 0;
}

/// From an end, or from the point that it is drawn to, up to the edge.
void lay_disc(ShapeProblem& problem, std::size_t end, std::size_t edge) {
    Rings rings = rings_of(problem, end, edge);
    const Rings before = rings;
    const double drawn = drawn_mm(problem, end);
    if (drawn > 0) {
        for (auto* values : {&rings.radius, &rings.pushed}) values->insert(values->begin(), 0);
        rings.height.insert(rings.height.begin(), drawn);
    }
    lay_down(rings);
    if (drawn > 0)
        for (auto* values : {&rings.radius, &rings.pushed, &rings.height}) values->erase(values->begin());
    put_back(before, rings, end, edge, problem);
}

}  // namespace

double pushed_together_mm(const ShapeProblem& problem, std::size_t loop) {
    if (is_pole(problem, loop)) return 0;
    const bool in_ring = loop == 1 && problem.first == MeridianEnd::pole;
    const double least = problem.stitch_width_mm * (in_ring ? spare_stitches_in_ring : spare_stitches);
    return std::min(problem.rest_loop_mm[loop],
                    std::max(least, pushed_flat_share * problem.rest_loop_mm[loop]));
}

bool can_lie_flat(const ShapeProblem& problem) {
    if (problem.area_stretch > 0 || problem.last == MeridianEnd::drawn_closed) return false;
    const bool oval =
        problem.first == MeridianEnd::drawn_closed &&
        2 * pi * problem.first_fan_height_mm >= (1 - plane_error) * problem.rest_loop_mm.front();
    const bool is_open = problem.first == MeridianEnd::open || problem.last == MeridianEnd::open;
    return is_open && (oval || problem.first != MeridianEnd::drawn_closed);
}

YieldedFabric yielded_flat(const ShapeProblem& problem) {
    YieldedFabric fabric{problem, {}, {}};
    const std::size_t rounds = problem.rest_height_mm.size();
    const Parts out = lay_down(fabric.problem, 0, rounds, problem.last == MeridianEnd::open);
    double most = 0;
    for (std::size_t ring = 1; ring <= rounds; ++ring) most = std::max(most, out.of(ring));
    const Parts in = lay_down(fabric.problem, rounds, 0, problem.first == MeridianEnd::open, 1 - most);
    for (std::size_t round = 0; round < rounds; ++round) {
        fabric.from_start.push_back(std::max(out.from_inside[round + 1], in.from_edge[rounds - round]));
        fabric.from_end.push_back(std::max(out.from_edge[round + 1], in.from_inside[rounds - round]));
    }
    return fabric;
}

ShapeProblem yielded_on_face(const ShapeProblem& problem) {
    ShapeProblem lying = problem;
    const auto& loops = problem.rest_loop_mm;
    const double rim = (1 - plane_error) * *std::ranges::max_element(loops);
    const auto wide = [rim](double loop) { return loop >= rim; };
    const auto first = static_cast<std::size_t>(std::ranges::find_if(loops, wide) - loops.begin());
    const auto after =
        static_cast<std::size_t>(std::find_if(loops.rbegin(), loops.rend(), wide).base() - loops.begin());
    lay_disc(lying, 0, first);
    lay_disc(lying, loops.size() - 1, after - 1);
    return lying;
}

}  // namespace roundwright
