#include "core/shape/curled_strip.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>

#include "core/base/vec.h"
#include "core/shape/size_reach.h"

namespace roundwright {
namespace {

using std::numbers::pi;

constexpr double fewest_a_chain = 2;

/// From side to side and from front to back, of the outer edge alone: the inner one lies within.
Vec2 across_mm(const Coil& coil) {
    constexpr int points_a_turn = 360;
    const int points =
        1 + static_cast<int>(std::ceil(std::min(coil.radians / (2 * pi), 1.0) * points_a_turn));
    Vec2 least = Vec2::Constant(std::numeric_limits<double>::infinity()), most = -least;
    for (int k = 0; k <= points; ++k) {
        const double angle = std::min(coil.radians, 2 * pi) * k / points + pi;
        for (const double radius : {coil.inner_radius_mm, coil.outer_radius_mm()}) {
            const Vec2 at = radius * Vec2(std::sin(angle), std::cos(angle));
            least = least.cwiseMin(at);
            most = most.cwiseMax(at);
        }
    }
    return most - least;
}

LoopMeasures edge_measures(const Coil& coil, const ShapeProblem& problem, std::size_t edge) {
    LoopMeasures loop;
    loop.width_mm = loop.depth_mm = 2 * coil.radii_mm[edge];
    loop.height_mm = coil.length_mm() / 2;
    loop.radius_mm = coil.edge_mm(edge) / (2 * pi);
    loop.course_stretch = coil.edge_mm(edge) / problem.rest_loop_mm[edge] - 1;
    return loop;
}

/// Of the corkscrew between its edges, by Simpson's rule: theta times the integral of sqrt(rho^2 + q^2).
double area_mm2(const Coil& coil) {
    const double q = coil.climb_mm;
    const auto arc = [&](double radius) { return std::hypot(radius, q); };
    const double r = coil.inner_radius_mm, h = coil.height_mm;
    return coil.radians * h / 6 * (arc(r) + 4 * arc(r + h / 2) + arc(r + h));
}

}  // namespace

std::optional<CurledStrip> curled_strip(double inner_mm, double outer_mm, double height_mm,
                                        double fabric_mm) {
    if (!(inner_mm > 0) || !(outer_mm > inner_mm) || !(height_mm > 0)) return std::nullopt;
    CurledStrip strip;
    strip.stitches_a_chain = outer_mm / inner_mm;
    strip.inner_mm = inner_mm;
    strip.outer_mm = outer_mm;
    strip.height_mm = height_mm;
    strip.inner_radius_mm = height_mm / (strip.stitches_a_chain - 1);
    strip.outer_radius_mm = strip.inner_radius_mm + height_mm;
    strip.turns = strip.inner_mm / (2 * pi * strip.inner_radius_mm);
    strip.length_mm = strip.turns * fabric_mm;
    return strip;
}

bool curls(const Piece& piece, const std::vector<int>& stitches) {
    const auto* chain = std::get_if<OpenTube>(&piece.start);
    return piece.joining == Joining::rows && chain && chain->chains > 0 && !stitches.empty() &&
           stitches.back() >= fewest_a_chain * chain->chains;
}

std::optional<CurledStrip> curled_strip(const Piece& piece, const ShapeProblem& problem, double fabric_mm) {
    if (piece.joining != Joining::rows || !std::holds_alternative<OpenTube>(piece.start)) return std::nullopt;
    if (problem.rest_height_mm.empty()) return std::nullopt;
    const double inner = problem.rest_loop_mm.front(), outer = problem.rest_loop_mm.back();
    if (!(outer >= fewest_a_chain * inner * (1 - 1e-9))) return std::nullopt;
    const double height = std::accumulate(problem.rest_height_mm.begin(), problem.rest_height_mm.end(), 0.0);
    return curled_strip(inner, outer, height, fabric_mm);
}

double Coil::edge_mm(std::size_t edge) const { return radians * std::hypot(radii_mm[edge], climb_mm); }

Coil coil_of(const CurledStrip& strip, const std::vector<double>& row_heights_mm, double fabric_mm) {
    const double h = strip.height_mm, k = strip.stitches_a_chain, squares = k * k - 1;
    Coil coil;
    coil.height_mm = h;
    coil.climb_mm = std::clamp(fabric_mm / (2 * pi), 0.0, k * h / squares);
    const double spread = squares * coil.climb_mm;
    coil.inner_radius_mm = (h + std::sqrt(std::max(0.0, k * k * h * h - spread * spread))) / squares;
    coil.radians = strip.inner_mm / std::hypot(coil.inner_radius_mm, coil.climb_mm);
    coil.radii_mm = {coil.inner_radius_mm};
    for (const double row : row_heights_mm) coil.radii_mm.push_back(coil.radii_mm.back() + row);
    return coil;
}

std::optional<Coil> coil_of(const Piece& piece, const ShapeProblem& problem, double fabric_mm) {
    const auto strip = curled_strip(piece, problem, fabric_mm);
    if (!strip) return std::nullopt;
    const Coil coil = coil_of(*strip, problem.rest_height_mm, fabric_mm);
    return std::isfinite(coil.radians) ? std::optional(coil) : std::nullopt;
}

PieceMeasures coil_measures(const Coil& coil, const ShapeProblem& problem) {
    PieceMeasures measures;
    measures.fidelity = Fidelity::every_stitch;
    measures.termination = Termination::converged;
    const Vec2 across = across_mm(coil);
    measures.width_mm = across.x();
    measures.depth_mm = across.y();
    measures.height_mm = coil.length_mm();
    measures.surface_mm2 = area_mm2(coil);
    for (std::size_t edge = 0; edge < coil.radii_mm.size(); ++edge)
        measures.loops.push_back(edge_measures(coil, problem, edge));
    return measures;
}

SizeRange coil_size_range(const Piece& piece, const ShapeProblem& problem, const Gauge& gauge,
                          double fabric_mm) {
    return size_range_of(problem, gauge, 0, [&](const ShapeProblem& posed) -> std::optional<PieceSizes> {
        const auto coil = coil_of(piece, posed, fabric_mm);
        if (!coil) return std::nullopt;
        const PieceMeasures measures = coil_measures(*coil, posed);
        return PieceSizes{measures.width_mm, measures.height_mm, 0};
    });
}

}  // namespace roundwright
