#pragma once

#include <cmath>
#include <limits>

#include "core/shape/fabric/fabric_energy.h"
#include "core/shape/fabric/solve_fabric.h"
#include "tests/bench/shape_arena.h"
#include "tests/support/fabric_piece.h"

namespace roundwright::bench {

inline Positions flat(const std::vector<Vec3>& nodes) {
    Positions x;
    x.reserve(3 * nodes.size());
    for (const Vec3& node : nodes) x.insert(x.end(), {node.x(), node.y(), node.z()});
    return x;
}

/// A ball of n rounds up, n even and n down (12 n^2 stitches), stuffed to 4 %, where the round solve has it;
/// and E - c ln V for the c that it takes.
struct FabricArena {
    explicit FabricArena(int rounds)
        : piece(test::round_piece(test::ball_counts(rounds))),
          stitches(test::stitches_of(test::ball_counts(rounds))),
          energy(piece.problem, *topology_of(piece.problem)),
          start(flat(piece.start)) {
        FabricOptions fine;
        fine.largest_move = fine.relative_gradient = fine.relative_stretch = 1e-6;
        const FabricShape shape = solve_fabric(piece.problem, piece.start, fine);
        stuffing = shape.pressure * shape.volume_mm3;
        reference_volume = shape.volume_mm3;
        least = shape.energy;
        const FabricShape usual = solve_fabric(piece.problem, piece.start);
        const double reached = value(flat(usual.nodes)) - least;
        enough = least + std::max(reached, 1e-6 * std::abs(least));
    }

    [[nodiscard]] double value(const Positions& x) const {
        const double volume = energy.volume(x);
        if (!(volume > 0)) return std::numeric_limits<double>::infinity();
        return energy.energy(x) - stuffing * std::log(volume / reference_volume);
    }
    void gradient(const Positions& x, double* out) const {
        volume_gradient.resize(x.size());
        energy.energy_gradient(x, out);
        energy.volume_gradient(x, volume_gradient.data());
        const double pressure = stuffing / energy.volume(x);
        for (std::size_t i = 0; i < x.size(); ++i) out[i] -= pressure * volume_gradient[i];
    }

    test::FabricPiece piece;
    int stitches;
    FabricEnergy energy;
    Positions start;
    double stuffing = 0;
    double reference_volume = 1;
    double least = 0;
    double enough = 0;  ///< what this program's usual tolerances reach: where all others may stop
    mutable std::vector<double> volume_gradient;
};

/// Takes a value that was met into the run; true once the search may stop.
inline bool note(const FabricArena& arena, double value, Clock::time_point begin, double patience, Run& run) {
    if (value < run.energy) run.energy = value;
    run.reached = run.energy <= arena.enough;
    ++run.evaluations;
    run.seconds = seconds_since(begin);
    return run.reached || run.seconds > patience;
}

enum class StockOrdering { minimum_degree, metis };

[[nodiscard]] Run fabric_by_ceres_lbfgs(const FabricArena& arena, double patience);
[[nodiscard]] Run fabric_by_nlopt_lbfgs(const FabricArena& arena, double patience);
[[nodiscard]] Run fabric_by_nlopt_truncated_newton(const FabricArena& arena, double patience);
/// Newton on the projected second derivatives, factored by Eigen's SimplicialLDLT at each step.
[[nodiscard]] Run fabric_by_stock_newton(const FabricArena& arena, StockOrdering ordering, double patience);
/// Whether this build has METIS.
[[nodiscard]] bool has_metis();

}  // namespace roundwright::bench
