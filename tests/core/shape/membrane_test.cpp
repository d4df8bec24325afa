#include "core/shape/membrane.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/shape/cold_start.h"
#include "tests/core/shape/shape_tables.h"
#include "tests/support/derivative_check.h"

namespace roundwright::test {
namespace {

struct Case {
    Meridian meridian;
    Positions x;
};

/// A piece bent out of shape, with loops and walls both stretched and in compression.
Case disturbed(MeridianEnd first, MeridianEnd last, unsigned number) {
    std::mt19937 random(number);
    std::uniform_real_distribution<double> shift(-1.5, 1.5);
    ShapeProblem problem = piece_of({6, 12, 18, 18, 24, 12, 9}, 0.04, last);
    problem.first = first;
    problem.rest_loop_mm.front() = first == MeridianEnd::pole ? 0 : 40;
    problem.first_fan_height_mm = 4;
    Case c{meridian_of(problem), {}};
    c.x = start_from_counts(c.meridian);
    for (std::size_t i = 0; i < c.x.size(); ++i)
        if (i != 1 && (i % 2 == 1 || !c.meridian.on_axis(i / 2))) c.x[i] += shift(random);
    return c;
}

LyingWalls walls_of(const Membrane& membrane, const Positions& x) {
    LyingWalls walls(membrane.nodes() - 1);
    membrane.take_walls(x, walls);
    return walls;
}

bool is_fixed(const Case& c, std::size_t i) { return i == 1 || (i % 2 == 0 && c.meridian.on_axis(i / 2)); }

DerivativeCheck check_of(const Case& c) {
    DerivativeCheck check;
    check.is_fixed = [&c](std::size_t i) { return is_fixed(c, i); };
    return check;
}

class MembraneDerivatives : public testing::TestWithParam<std::tuple<MeridianEnd, MeridianEnd, unsigned>> {};

// Gradients against central differences (no source needed: the definition of a derivative).
TEST_P(MembraneDerivatives, GradientsAgreeWithDifferences) {
    const Case c = std::apply(disturbed, GetParam());
    const Membrane membrane(c.meridian, {});
    std::vector<double> energy(membrane.unknowns());
    std::vector<double> volume(membrane.unknowns());
    std::vector<double> stretch(membrane.unknowns());
    membrane.energy_gradient(c.x, walls_of(membrane, c.x), energy.data());
    membrane.volume_gradient(c.x, volume.data());
    membrane.area_stretch_gradient(c.x, walls_of(membrane, c.x), stretch.data());
    const auto e = [&](const Positions& x) { return membrane.energy(x); };
    const auto v = [&](const Positions& x) { return membrane.volume(x); };
    const auto s = [&](const Positions& x) { return membrane.area_stretch(x, walls_of(membrane, x)); };
    DerivativeCheck check = check_of(c);
    EXPECT_TRUE(is_gradient(energy, e, c.x, check)) << "of the energy";
    EXPECT_TRUE(is_gradient(volume, v, c.x, check)) << "of the volume";
    check.relative = 1e-8;
    EXPECT_TRUE(is_gradient(stretch, s, c.x, check)) << "of the stretch";
}

TEST_P(MembraneDerivatives, HessianAgreesWithDifferencesOfGradients) {
    const Case c = std::apply(disturbed, GetParam());
    ShapeOptions options;
    options.bending_stiffness = 0.3;  // large enough for its part to be seen
    const Membrane membrane(c.meridian, options);
    const double pressure = 0.02;
    BandMatrix hessian;
    hessian.resize(membrane.unknowns());
    membrane.hessian(c.x, walls_of(membrane, c.x), pressure, Curvature::exact, hessian);
    const auto gradient = [&](const Positions& x) {
        std::vector<double> force(membrane.unknowns()), volume(membrane.unknowns());
        membrane.energy_gradient(x, walls_of(membrane, x), force.data());
        membrane.volume_gradient(x, volume.data());
        for (std::size_t i = 0; i < force.size(); ++i) force[i] -= pressure * volume[i];
        return force;
    };
    const auto entry = [&](std::size_t i, std::size_t j) { return hessian.entry(i, j); };
    EXPECT_TRUE(is_hessian(entry, gradient, c.x, check_of(c)));
}

TEST_P(MembraneDerivatives, ProjectedHessianHasNoNegativeEigenvalue) {
    const Case c = std::apply(disturbed, GetParam());
    const Membrane membrane(c.meridian, {});
    BandMatrix hessian;
    hessian.resize(membrane.unknowns());
    membrane.hessian(c.x, walls_of(membrane, c.x), 0.02, Curvature::projected, hessian);
    EXPECT_EQ(hessian.factor(1e-12), 0u);
}

INSTANTIATE_TEST_SUITE_P(
    Pieces, MembraneDerivatives,
    testing::Combine(testing::Values(MeridianEnd::pole, MeridianEnd::open, MeridianEnd::drawn_closed),
                     testing::Values(MeridianEnd::open, MeridianEnd::drawn_closed), testing::Range(1u, 6u)));

}  // namespace
}  // namespace roundwright::test
