#pragma once

#include <Eigen/Core>

#include "core/shape/fabric/block_factor.h"
#include "core/shape/fabric/block_matrix.h"
#include "core/shape/fabric/conjugate_gradients.h"
#include "core/shape/fabric/fabric_energy.h"
#include "core/shape/fabric/solve_fabric.h"
#include "core/shape/termination.h"

namespace roundwright {

/// What the search changes, and how far it has come.
struct FabricState {
    Positions x;
    double stuffing = 0;        ///< c = p V: held while positions move, as in the round solve
    double least_stuffing = 0;  ///< kept even if the fabric's misfit alone stretches it more than is wanted
    Termination termination = Termination::iteration_limit;
    int iterations = 0;
    int factorizations = 0;
    int cg_steps = 0;
    double residual = 0;
};

/// The search for the least E - c ln V, with the c at which the mean stretch is the one that is wanted.
/// Newton's method: each step by conjugate gradients on the exact second derivatives, prepared by the factor
/// of a simpler matrix, which is kept as long as it serves. Its steps are the member functions, its loop
/// `run`.
class FabricSearch {
  public:
    FabricSearch(const FabricProblem& problem, const FabricEnergy& energy, BlockFactor& factor,
                 const FabricOptions& options, FabricState& state);

    void run();

  private:
    using Vector = Eigen::VectorXd;

    [[nodiscard]] bool stuffed() const { return target_ > 0; }
    void finish(Termination termination) { state_.termination = termination; }
    void take_derivatives();
    [[nodiscard]] bool is_barely_stuffed() const;
    [[nodiscard]] double missed_stretch() const;
    bool converged();
    [[nodiscard]] bool refactor();
    void prepare_pressure();
    [[nodiscard]] ConjugateGradientEnd solve_for_direction();
    [[nodiscard]] bool is_near();
    void take_hessian(Curvature curvature);
    bool take_direction();
    [[nodiscard]] bool go_downhill(const Vector& downhill);
    bool leave_saddle();
    bool search_downhill();
    void adjust_stuffing();
    void shorten_direction();
    bool search_along_direction();
    void multiply(const Vector& v, Vector& out) const;
    void precondition(const Vector& v, Vector& out) const;
    [[nodiscard]] double merit(double energy, double volume) const;
    void report() const;

    const FabricProblem& problem_;
    const FabricEnergy& energy_;
    BlockFactor& factor_;
    const FabricOptions& options_;
    FabricState& state_;
    double target_;
    BlockMatrix hessian_;
    BlockMatrix one_ring_;
    Curvature curvature_ = Curvature::projected;
    int saddles_left_ = 3;     ///< how many are looked for
    int projected_steps_ = 0;  ///< still to be taken before the exact derivatives are tried again
    bool factor_is_fresh_ = false;
    bool factor_is_stale_ = true;
    double shift_share_;
    double value_ = 0;  ///< of the fabric's energy
    double volume_ = 0;
    double pressure_ = 0;
    double stretch_ = 0;
    double moved_;  ///< the largest move of the last step, mm
    double first_residual_ = 0;
    Vector gradient_;  ///< of E
    Vector volume_gradient_;
    Vector stretch_gradient_;
    Vector force_;         ///< p dV - dE
    Vector pressure_way_;  ///< factor^-1 dV
    double volume_per_pressure_ = 0;
    Vector direction_;
    Positions trial_;
};

}  // namespace roundwright
