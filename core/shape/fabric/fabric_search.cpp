#include "core/shape/fabric/fabric_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace roundwright {

namespace {

/// More steps than this in one solve, and the factor is made again for the next.
constexpr int many_cg_steps = 20;
/// By so much softer or stiffer than the factor says, and it is made again too.
constexpr double other_stiffness = 4;
constexpr double first_shift = 1e-5;  ///< of the mean diagonal: keeps rigid motions from being singular
constexpr double largest_shift = 10;
/// A step moves no node by more stitch widths.
constexpr double longest_step = 1;
/// The exact second derivatives are taken after a step of no more stitch widths.
constexpr double near_move = 0.5;
/// A step along negative curvature goes so many stitch widths.
constexpr double downhill_step = 0.5;
/// A wave that is tried starts with this much of a stitch width.
constexpr double seeded_wave = 0.2;
constexpr int steps_after_negative_curvature = 3;
/// The stuffing follows once steps are shorter than this, in stitch widths.
constexpr double settling_step = 0.5;

double largest_move(const Eigen::VectorXd& direction) {
    double squared = 0;
    for (Eigen::Index i = 0; i < direction.size(); i += 3)
        squared = std::max(squared, direction.segment<3>(i).squaredNorm());
    return std::sqrt(squared);
}

}  // namespace

FabricSearch::FabricSearch(const FabricProblem& problem, const FabricEnergy& energy, BlockFactor& factor,
                           const FabricOptions& options, FabricState& state)
    : problem_(problem),
      energy_(energy),
      factor_(factor),
      options_(options),
      state_(state),
      target_(problem.area_stretch),
      hessian_(energy.hessian_matrix()),
      one_ring_(energy.one_ring_matrix()),
      shift_share_(first_shift),
      moved_(std::numeric_limits<double>::infinity()),
      gradient_(energy.unknowns()),
      volume_gradient_(Vector::Zero(static_cast<Eigen::Index>(energy.unknowns()))),
      stretch_gradient_(energy.unknowns()),
      trial_(energy.unknowns()) {}

void FabricSearch::run() {
    value_ = energy_.energy(state_.x);
    for (state_.iterations = 0;; ++state_.iterations) {
        take_derivatives();
        if (converged() && !leave_saddle()) return finish(Termination::converged);
        if (options_.stop.stop_requested()) return finish(Termination::cancelled);
        if (state_.iterations >= options_.max_iterations) return finish(Termination::iteration_limit);
        report();
        take_hessian(is_near() ? Curvature::exact : Curvature::projected);
        while (!take_direction() || !search_along_direction()) {
            if (options_.stop.stop_requested()) return finish(Termination::cancelled);
            if (factor_is_fresh_) shift_share_ *= 10;
            if (shift_share_ > largest_shift) return finish(Termination::line_search_failed);
            factor_is_stale_ = true;
        }
        shift_share_ = std::max(first_shift, shift_share_ / 10);
    }
}

void FabricSearch::take_derivatives() {
    energy_.energy_gradient(state_.x, gradient_.data());
    if (stuffed()) {
        volume_ = energy_.volume(state_.x);
        pressure_ = state_.stuffing / volume_;
        energy_.volume_gradient(state_.x, volume_gradient_.data());
        stretch_ = energy_.area_stretch(state_.x);
        energy_.area_stretch_gradient(state_.x, stretch_gradient_.data());
    }
    force_ = pressure_ * volume_gradient_ - gradient_;
    state_.residual = force_.norm() / energy_.force_scale();
    if (state_.iterations == 0) first_residual_ = state_.residual;
}

/// Misfit alone may stretch the fabric more than the stuffing is meant to.
bool FabricSearch::is_barely_stuffed() const {
    return stretch_ > target_ && state_.stuffing <= state_.least_stuffing;
}

double FabricSearch::missed_stretch() const {
    return stuffed() && !is_barely_stuffed() ? std::abs(stretch_ / target_ - 1) : 0;
}

bool FabricSearch::converged() {
    const bool lies_still = moved_ <= options_.largest_move * problem_.stitch_width_mm;
    return lies_still && state_.residual <= options_.relative_gradient &&
           missed_stretch() <= options_.relative_stretch;
}

bool FabricSearch::refactor() {
    energy_.one_ring_majorant(state_.x, one_ring_);
    ++state_.factorizations;
    factor_is_fresh_ = true;
    factor_is_stale_ = false;
    return factor_.factor(one_ring_, shift_share_ * one_ring_.mean_diagonal());
}

void FabricSearch::prepare_pressure() {
    if (!stuffed()) return;
    pressure_way_.resize(volume_gradient_.size());
    factor_.solve(volume_gradient_.data(), pressure_way_.data());
    volume_per_pressure_ = volume_gradient_.dot(pressure_way_);
}

/// The second derivatives of E - c ln V: of E - p V, and c / V^2 dV dV^T.
void FabricSearch::multiply(const Vector& v, Vector& out) const {
    hessian_.multiply(v.data(), out.data());
    if (!stuffed()) return;
    if (curvature_ == Curvature::exact) energy_.add_fans_product(state_.x, pressure_, v.data(), out.data());
    for (std::size_t i = 0; i < energy_.nodes(); ++i)
        if (energy_.is_fixed(i)) out.segment<3>(3 * static_cast<Eigen::Index>(i)).setZero();
    out += pressure_ / volume_ * volume_gradient_.dot(v) * volume_gradient_;
}

/// The factor, with the rank one part by Sherman and Morrison.
void FabricSearch::precondition(const Vector& v, Vector& out) const {
    factor_.solve(v.data(), out.data());
    if (!stuffed()) return;
    const double kappa = pressure_ / volume_;
    out -= kappa * volume_gradient_.dot(out) / (1 + kappa * volume_per_pressure_) * pressure_way_;
}

/// Far from the end, and for some steps after negative curvature, each term is made positive semidefinite.
bool FabricSearch::is_near() {
    if (projected_steps_ > 0) return --projected_steps_ == 0;
    return moved_ < near_move * problem_.stitch_width_mm;
}

void FabricSearch::take_hessian(Curvature curvature) {
    curvature_ = curvature;
    energy_.hessian(state_.x, pressure_, curvature, hessian_);
}

ConjugateGradientEnd FabricSearch::solve_for_direction() {
    const ConjugateGradientEnd end = conjugate_gradients(
        force_, [&](const Vector& v, Vector& out) { multiply(v, out); },
        [&](const Vector& v, Vector& out) { precondition(v, out); }, {}, direction_);
    state_.cg_steps += end.steps;
    return end;
}

/// On along the direction of negative curvature, as far as a step may go (Steihaug's way to the edge of a
/// trust region). The next steps are projected, since the derivatives say little of what comes.
bool FabricSearch::go_downhill(const Vector& downhill) {
    const double left = downhill_step * problem_.stitch_width_mm - largest_move(direction_);
    if (left > 0) direction_ += left / largest_move(downhill) * downhill;
    projected_steps_ = steps_after_negative_curvature;
    factor_is_stale_ = !factor_is_fresh_;
    shorten_direction();
    return direction_.allFinite();
}

/// Fabric that lies flat or even balances as it is, although waves would take less energy: a force from
/// everywhere finds the direction in which they grow. Stuffing irons such waves out.
bool FabricSearch::leave_saddle() {
    if (stuffed() || !options_.seeks_waves || saddles_left_ == 0) return false;
    --saddles_left_;
    take_hessian(Curvature::exact);
    if (!refactor()) return false;
    Vector everywhere(gradient_.size());
    std::minstd_rand random(1);
    for (Eigen::Index i = 0; i < everywhere.size(); ++i)
        everywhere[i] = energy_.is_fixed(static_cast<std::size_t>(i / 3))
                            ? 0
                            : static_cast<double>(random()) / std::minstd_rand::max() - 0.5;
    Vector unused;
    const ConjugateGradientEnd end = conjugate_gradients(
        everywhere, [&](const Vector& v, Vector& out) { multiply(v, out); },
        [&](const Vector& v, Vector& out) { precondition(v, out); }, {}, unused);
    state_.cg_steps += end.steps;
    if (!end.negative_curvature) return false;
    direction_ = seeded_wave / largest_move(end.downhill) * problem_.stitch_width_mm * end.downhill;
    return search_downhill();
}

/// The way of less energy along a direction that has no slope: one of both, as far as it goes down.
bool FabricSearch::search_downhill() {
    const Eigen::Map<const Vector> x(state_.x.data(), direction_.size());
    for (double length = 1; length > 1e-3; length /= 2) {
        for (const double way : {length, -length}) {
            Eigen::Map<Vector>(trial_.data(), direction_.size()) = x + way * direction_;
            const double energy = energy_.energy(trial_);
            if (!(energy < value_ * (1 - 1e-9))) continue;
            state_.x.swap(trial_);
            value_ = energy;
            moved_ = length * largest_move(direction_);
            energy_.energy_gradient(state_.x, gradient_.data());
            force_ = -gradient_;
            return true;
        }
    }
    return false;
}

/// False where there is no factor, or where an old one no longer serves.
bool FabricSearch::take_direction() {
    if (!factor_is_stale_) factor_is_fresh_ = false;
    if (factor_is_stale_ && !refactor()) return false;
    prepare_pressure();
    const ConjugateGradientEnd end = solve_for_direction();
    if (end.negative_curvature) return go_downhill(end.downhill);
    if (!end.reached && !factor_is_fresh_) {
        factor_is_stale_ = true;
        return false;
    }
    factor_is_stale_ = end.steps > many_cg_steps || end.first_length < 1 / other_stiffness ||
                       end.first_length > other_stiffness;
    if (!direction_.allFinite()) return false;
    if (stuffed() && largest_move(direction_) < settling_step * problem_.stitch_width_mm) adjust_stuffing();
    shorten_direction();
    return true;
}

/// More stuffing, dc, moves the nodes on by about dc / V (M + kappa dV dV^T)^-1 dV, M factored. What the
/// stretch will still miss after the step sets dc.
void FabricSearch::adjust_stuffing() {
    const double kappa = pressure_ / volume_;
    const double per_pressure = stretch_gradient_.dot(pressure_way_) / (1 + kappa * volume_per_pressure_);
    const double rest = target_ - stretch_ - stretch_gradient_.dot(direction_);
    if (!(per_pressure > 0)) return;
    const double wanted = state_.stuffing + volume_ * rest / per_pressure;
    const double stuffing =
        std::max(state_.least_stuffing, std::clamp(wanted, state_.stuffing / 2, state_.stuffing * 2));
    const double change = (stuffing - state_.stuffing) / volume_;
    direction_ += change / (1 + kappa * volume_per_pressure_) * pressure_way_;
    force_ += change * volume_gradient_;
    state_.stuffing = stuffing;
}

void FabricSearch::shorten_direction() {
    const double longest = longest_step * problem_.stitch_width_mm;
    const double move = largest_move(direction_);
    if (move > longest) direction_ *= longest / move;
}

/// E - c ln V, the volume taken by that of the positions.
double FabricSearch::merit(double energy, double volume) const {
    if (!stuffed()) return energy;
    return volume > 0 ? energy - state_.stuffing * std::log(volume / volume_)
                      : std::numeric_limits<double>::infinity();
}

/// Backtracking with Armijo's condition (Nocedal and Wright, 3.1). A change that drowns in the rounding of
/// the merit is taken as it is.
bool FabricSearch::search_along_direction() {
    const double slope = -force_.dot(direction_);
    if (!(slope <= 0)) return false;
    const double rounding = 1e-13 * std::max(std::abs(value_), state_.stuffing);
    const Eigen::Map<const Vector> x(state_.x.data(), direction_.size());
    for (double length = 1; length > 1e-3; length /= 2) {
        Eigen::Map<Vector>(trial_.data(), direction_.size()) = x + length * direction_;
        const double energy = energy_.energy(trial_);
        const double after = merit(energy, stuffed() ? energy_.volume(trial_) : 0);
        if (after <= value_ + std::max(1e-4 * length * slope, -rounding) + rounding) {
            state_.x.swap(trial_);
            value_ = energy;
            moved_ = length * largest_move(direction_);
            return true;
        }
    }
    return false;
}

/// Newton's steps shrink the residual by about one factor each.
void FabricSearch::report() const {
    if (!options_.progress || state_.iterations == 0) return;
    const double whole = std::log(first_residual_ / options_.relative_gradient);
    const double done = std::log(first_residual_ / std::max(state_.residual, options_.relative_gradient));
    options_.progress(whole > 0 ? std::clamp(done / whole, 0.0, 1.0) : 1.0);
}

}  // namespace roundwright
