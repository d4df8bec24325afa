#pragma once

#include <concepts>
#include <cstddef>
#include <vector>

namespace roundwright {

/// The unknowns of an energy, in its own order: of a meridian r_0, z_0, r_1, z_1, ... in mm.
using Positions = std::vector<double>;

/// How the second derivatives of an energy are taken.
enum class Curvature {
    exact,
    projected,  ///< element by element positive semidefinite: what is indefinite is left out
};

/// A symmetric matrix that is factored in place as L D L^T, so that the signs of D are those of its
/// eigenvalues (Sylvester's law of inertia).
template <class M>
concept FactoredMatrix = requires(M& matrix, const M& known, std::size_t i, double value, double* side) {
    matrix.resize(i);
    { known.size() } -> std::convertible_to<std::size_t>;
    { known.diagonal(i) } -> std::convertible_to<double>;
    { known.largest_diagonal() } -> std::convertible_to<double>;
    matrix.add(i, i, value);
    /// A pivot nearer to zero than the value is replaced by it. Gives the number of negative pivots.
    { matrix.factor(value) } -> std::convertible_to<std::size_t>;
    known.solve(side);  ///< in place; one right side, or two at once
    known.solve(side, side);
};

/// What `minimise` asks of an energy E(x) with derivatives. `Elements` is what all of them share at one set
/// of positions (lengths, directions, strains), taken once; it may be empty.
template <class E>
concept Energy = FactoredMatrix<typename E::Matrix> &&
    requires(const E& energy, const Positions& x, Positions& trial, typename E::Elements& elements,
             const typename E::Elements& taken, double* out, double pressure, typename E::Matrix& matrix) {
    { energy.unknowns() } -> std::convertible_to<std::size_t>;
    /// Size of forces that count as large: residuals are measured by it.
    { energy.force_scale() } -> std::convertible_to<double>;
    energy.take_elements(x, elements);
    { energy.energy(x, taken) } -> std::convertible_to<double>;
    /// Fixed unknowns have 0.
    energy.energy_gradient(x, taken, out);
    /// Of E - p V; of E where there is no volume.
    energy.hessian(x, taken, pressure, Curvature::exact, matrix);
    /// Takes a trial back to where the energy has a meaning, seen from the positions `x`.
    energy.keep_in_bounds(x, trial);
};

/// An energy whose positions enclose a volume that can be stuffed until the fabric has a mean area stretch.
template <class E>
concept StuffedEnergy = Energy<E> &&
    requires(const E& energy, const Positions& x, const typename E::Elements& taken, double* out) {
    { energy.volume(x) } -> std::convertible_to<double>;
    energy.volume_gradient(x, out);
    { energy.area_stretch(x, taken) } -> std::convertible_to<double>;
    energy.area_stretch_gradient(x, taken, out);
};

}  // namespace roundwright
