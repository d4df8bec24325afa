#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/shape/energy.h"
#include "core/shape/minimise_state.h"

namespace roundwright {

/// The search for one equilibrium; its steps are the member functions, its loop is `run`.
template <Energy E>
class NewtonSearch {
  public:
    NewtonSearch(const E& energy, double target_stretch, const MinimiseLimits& limits,
                 MinimiseWorkspace<E>& space, Equilibrium& state)
        : model_(energy), target_(target_stretch), limits_(limits), space_(space), state_(state) {
        space_.resize(energy.unknowns());
    }

    void run() {
        model_.take_elements(state_.x, space_.elements);
        energy_ = model_.energy(state_.x, space_.elements);
        for (state_.iterations = 0;; ++state_.iterations) {
            take_derivatives();
            if (converged()) return finish(Termination::converged);
            if (limits_.stop.stop_requested()) return finish(Termination::cancelled);
            if (state_.iterations >= limits_.max_iterations) return finish(Termination::iteration_limit);
            if (!take_step_direction()) return finish(Termination::line_search_failed);
            if (!search_along_step()) return finish(Termination::line_search_failed);
        }
    }

  private:
    using Vector = Eigen::Map<const Eigen::VectorXd>;
    static Vector view(const std::vector<double>& values) {
        return {values.data(), static_cast<Eigen::Index>(values.size())};
    }
    static Eigen::Map<Eigen::VectorXd> view(std::vector<double>& values) {
        return {values.data(), static_cast<Eigen::Index>(values.size())};
    }
    static double dot(const std::vector<double>& a, const std::vector<double>& b) {
        return view(a).dot(view(b));
    }

    [[nodiscard]] bool stuffed() const { return StuffedEnergy<E> && (target_ > 0 || state_.holds_stuffing); }
    [[nodiscard]] bool seeks_stretch() const { return target_ > 0 && !state_.holds_stuffing; }
    void finish(Termination termination) { state_.termination = termination; }

    void take_derivatives() {
        model_.energy_gradient(state_.x, space_.elements, space_.energy_gradient.data());
        if constexpr (StuffedEnergy<E>) {
            if (!stuffed()) return;
            volume_ = model_.volume(state_.x);
            pressure_ = state_.stuffing / volume_;
            model_.volume_gradient(state_.x, space_.volume_gradient.data());
            if (!seeks_stretch()) return;
            stretch_ = model_.area_stretch(state_.x, space_.elements);
            model_.area_stretch_gradient(state_.x, space_.elements, space_.stretch_gradient.data());
        }
    }

    [[nodiscard]] double volume_of(const Positions& x) const {
        if constexpr (StuffedEnergy<E>) return stuffed() ? model_.volume(x) : 0;
        return 0;
    }

    /// Size of the gradient of E - p V, its two parts given.
    [[nodiscard]] static double force_norm(const std::vector<double>& energy_gradient, double pressure,
                                           const std::vector<double>& volume_gradient) {
        return (view(energy_gradient) - pressure * view(volume_gradient)).norm();
    }

    /// Misfit alone may stretch the fabric more than the stuffing is meant to.
    [[nodiscard]] bool is_barely_stuffed() const {
        return stretch_ > target_ && state_.stuffing <= state_.least_stuffing;
    }

    bool converged() {
        state_.residual =
            force_norm(space_.energy_gradient, pressure_, space_.volume_gradient) / model_.force_scale();
        const double missed =
            seeks_stretch() && !is_barely_stuffed() ? std::abs(stretch_ - target_) / target_ : 0;
        return state_.residual <= limits_.relative_gradient && missed <= 10 * limits_.relative_gradient;
    }

    /// The Newton direction from the exact second derivatives where they lead down, else from their
    /// projection.
    bool take_step_direction() {
        const double stuffing = state_.stuffing;
        for (const Curvature curvature : {Curvature::exact, Curvature::projected}) {
            state_.stuffing = stuffing;
            if (!factor(curvature)) continue;
            if (seeks_stretch()) adjust_stuffing();
            combine_steps();
            if (slope() <= 0) return true;
        }
        return false;
    }

    /// False where the matrix, with the volume's stiffening, does not make a minimum.
    bool factor(Curvature curvature) {
        model_.hessian(state_.x, space_.elements, pressure_, curvature, space_.matrix);
        const double smallest = 1e-14 * space_.matrix.largest_diagonal();
        if (curvature == Curvature::projected)
            for (std::size_t i = 0; i < space_.matrix.size(); ++i)
                space_.matrix.add(i, i, 1e-6 * space_.matrix.diagonal(i) + smallest);
        const std::size_t negative = space_.matrix.factor(smallest);
        solve_for_steps();
        return negative == 0 || (negative == 1 && stuffed() && stiffening() < 0);
    }

    /// H^-1 of the force and of the volume gradient.
    void solve_for_steps() {
        view(space_.step) = pressure_ * view(space_.volume_gradient) - view(space_.energy_gradient);
        if (!stuffed()) return space_.matrix.solve(space_.step.data());
        space_.pressure_step = space_.volume_gradient;
        space_.matrix.solve(space_.step.data(), space_.pressure_step.data());
        volume_per_pressure_ = dot(space_.volume_gradient, space_.pressure_step);
    }

    /// 1 + c / V^2 dV' H^-1 dV, for the volume's own stiffening. By the matrix determinant lemma H with that
    /// added has the sign of det H times this: negative, it makes up for one negative eigenvalue.
    [[nodiscard]] double stiffening() const {
        return 1 + state_.stuffing / (volume_ * volume_) * volume_per_pressure_;
    }

    /// The bordered step: dp such that the stretch comes out, and the amount of stuffing that goes with it.
    void adjust_stuffing() {
        const double per_pressure = dot(space_.stretch_gradient, space_.pressure_step);
        const double rest = target_ - stretch_ - dot(space_.stretch_gradient, space_.step);
        // More stuffing must stretch more; beyond a balloon's peak both factors are negative.
        if (!(per_pressure * stiffening() > 0)) return;
        const double change = rest / per_pressure;
        const double volume_change = dot(space_.volume_gradient, space_.step) + change * volume_per_pressure_;
        const double wanted = (pressure_ + change) * (volume_ + volume_change);
        if (!std::isfinite(wanted)) return;
        state_.stuffing =
            std::max(state_.least_stuffing, std::clamp(wanted, state_.stuffing / 2, state_.stuffing * 2));
    }

    /// The Newton step of E - c ln V for the amount c as it now is (Sherman-Morrison for the rank one part).
    void combine_steps() {
        if (!stuffed()) return;
        const double change = state_.stuffing / volume_ - pressure_;
        const double kappa = state_.stuffing / (volume_ * volume_);
        const double along = dot(space_.volume_gradient, space_.step) + change * volume_per_pressure_;
        const double share = change - kappa * along / stiffening();
        view(space_.step) += share * view(space_.pressure_step);
    }

    /// E - c ln V, the volume taken by that of the positions.
    [[nodiscard]] double merit(double energy, double volume) const {
        if (!stuffed()) return energy;
        return volume > 0 ? energy - state_.stuffing * std::log(volume / volume_)
                          : std::numeric_limits<double>::infinity();
    }

    [[nodiscard]] double slope() const {
        const double pressure = stuffed() ? state_.stuffing / volume_ : 0;
        return (view(space_.energy_gradient) - pressure * view(space_.volume_gradient))
            .dot(view(space_.step));
    }

    /// Takes part of the step, within the energy's bounds. Gives the first-order change of the merit.
    double take_trial(double length) {
        const double pressure = stuffed() ? state_.stuffing / volume_ : 0;
        view(space_.trial) = view(state_.x) + length * view(space_.step);
        model_.keep_in_bounds(state_.x, space_.trial);
        return (view(space_.energy_gradient) - pressure * view(space_.volume_gradient))
            .dot(view(space_.trial) - view(state_.x));
    }

    /// Whether the trial has less force on it than the positions had, for the stuffing as it now is.
    [[nodiscard]] bool trial_is_calmer() {
        model_.energy_gradient(space_.trial, space_.trial_elements, space_.trial_energy_gradient.data());
        double before = 0;
        double after = 0;
        if constexpr (StuffedEnergy<E>) {
            if (stuffed()) {
                model_.volume_gradient(space_.trial, space_.trial_volume_gradient.data());
                before = state_.stuffing / volume_;
                after = state_.stuffing / model_.volume(space_.trial);
            }
        }
        return force_norm(space_.trial_energy_gradient, after, space_.trial_volume_gradient) <=
               force_norm(space_.energy_gradient, before, space_.volume_gradient);
    }

    /// Backtracking with Armijo's condition (Nocedal and Wright, Numerical Optimization, 3.1); where the
    /// change drowns in the rounding of the merit, the forces decide.
    bool search_along_step() {
        const double before = energy_;  // the volume's part is ln 1
        const double rounding = 1e-13 * std::max(std::abs(before), state_.stuffing);
        for (double length = 1; length > 1e-12; length /= 2) {
            const double change = std::min(take_trial(length), 0.0);
            model_.take_elements(space_.trial, space_.trial_elements);
            const double energy = model_.energy(space_.trial, space_.trial_elements);
            const double after = merit(energy, volume_of(space_.trial));
            const bool drowned = -change <= rounding && std::abs(after - before) <= rounding;
            if (drowned ? trial_is_calmer() : after <= before + 1e-4 * change) {
                state_.x.swap(space_.trial);
                std::swap(space_.elements, space_.trial_elements);
                energy_ = energy;
                return true;
            }
        }
        return false;
    }

    const E& model_;
    double target_;
    const MinimiseLimits& limits_;
    MinimiseWorkspace<E>& space_;
    Equilibrium& state_;
    double energy_ = 0;
    double volume_ = 0;
    double pressure_ = 0;
    double stretch_ = 0;
    double volume_per_pressure_ = 0;
};

}  // namespace roundwright
