#include <Eigen/Sparse>
#include <Eigen/SparseCholesky>
#ifdef ROUNDWRIGHT_METIS
// Eigen 3.4 uses std::cerr there without including it.
// clang-format off
#include <iostream>
#include <Eigen/MetisSupport>
// clang-format on
#endif
#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/bench/fabric_arena.h"

namespace roundwright::bench {

namespace {

using Sparse = Eigen::SparseMatrix<double>;
using Eigen::Map;
using Eigen::VectorXd;

/// The lower triangle, with a slight shift for the motions of the whole.
Sparse sparse(const BlockMatrix& matrix, double shift) {
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(9 * matrix.pairs().size() + 6 * matrix.nodes());
    for (std::size_t i = 0; i < matrix.nodes(); ++i)
        for (int c = 0; c < 3; ++c)
            for (int r = c; r < 3; ++r)
                entries.emplace_back(3 * static_cast<int>(i) + r, 3 * static_cast<int>(i) + c,
                                     matrix.diagonal(i)(r, c) + (r == c ? shift : 0));
    for (std::size_t k = 0; k < matrix.pairs().size(); ++k)
        for (int r = 0; r < 3; ++r)
            for (int c = 0; c < 3;
                 ++c)  // the pair's first node is the lower one: rows and columns change places
                entries.emplace_back(3 * matrix.pairs()[k][1] + c, 3 * matrix.pairs()[k][0] + r,
                                     matrix.beside(k)(r, c));
    const auto size = static_cast<Eigen::Index>(3 * matrix.nodes());
    Sparse out(size, size);
    out.setFromTriplets(entries.begin(), entries.end());
    return out;
}

double largest_move(const VectorXd& d) {
    double squared = 0;
    for (Eigen::Index i = 0; i < d.size(); i += 3) squared = std::max(squared, d.segment<3>(i).squaredNorm());
    return std::sqrt(squared);
}

template <class Ordering>
Run by_newton(const FabricArena& arena, double patience) {
    Run run;
    const auto begin = Clock::now();
    Eigen::SimplicialLDLT<Sparse, Eigen::Lower, Ordering> factor;
    BlockMatrix matrix = arena.energy.hessian_matrix();
    Positions x = arena.start;
    Positions trial(x.size());
    VectorXd force(x.size());
    VectorXd volume_gradient(x.size());
    double value = arena.value(x);
    while (!note(arena, value, begin, patience, run)) {
        const double volume = arena.energy.volume(x);
        arena.energy.energy_gradient(x, force.data());
        arena.energy.volume_gradient(x, volume_gradient.data());
        force = arena.stuffing / volume * volume_gradient - force;
        arena.energy.hessian(x, 0, Curvature::projected, matrix);
        const Sparse lower = sparse(matrix, 1e-6 * matrix.mean_diagonal());
        if (run.evaluations == 1) factor.analyzePattern(lower);
        factor.factorize(lower);
        VectorXd d = factor.solve(force);
        const VectorXd way = factor.solve(volume_gradient);
        const double kappa = arena.stuffing / (volume * volume);
        d -= kappa * volume_gradient.dot(d) / (1 + kappa * volume_gradient.dot(way)) * way;
        const double move = largest_move(d);
        const double width = arena.piece.problem.stitch_width_mm;
        if (move > width) d *= width / move;
        const double slope = -force.dot(d);
        double length = 1;
        double after = value;
        for (; length > 1e-9; length /= 2) {
            Map<VectorXd>(trial.data(), d.size()) = Map<VectorXd>(x.data(), d.size()) + length * d;
            after = arena.value(trial);
            if (after <= value + 1e-4 * length * slope) break;
        }
        if (!(after < value)) break;
        x.swap(trial);
        value = after;
    }
    return run;
}

}  // namespace

Run fabric_by_stock_newton(const FabricArena& arena, StockOrdering ordering, double patience) {
#ifdef ROUNDWRIGHT_METIS
    if (ordering == StockOrdering::metis) return by_newton<Eigen::MetisOrdering<int>>(arena, patience);
#endif
    (void)ordering;
    return by_newton<Eigen::AMDOrdering<int>>(arena, patience);
}

bool has_metis() {
#ifdef ROUNDWRIGHT_METIS
    return true;
#else
    return false;
#endif
}

}  // namespace roundwright::bench
