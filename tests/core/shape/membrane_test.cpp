#include "core/shape/membrane.h"

#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/shape/cold_start.h"
#include "tests/core/shape/shape_tables.h"

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

template <class Function>
double central_difference(const Function& f, Positions x, std::size_t i, double step) {
    x[i] += step;
    const double above = f(x);
    x[i] -= 2 * step;
    return (above - f(x)) / (2 * step);
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
    for (std::size_t i = 0; i < c.x.size(); ++i) {
        if (is_fixed(c, i)) {
            EXPECT_EQ(energy[i], 0);
            EXPECT_EQ(volume[i], 0);
            EXPECT_EQ(stretch[i], 0);
            continue;
        }
        const double step = 1e-5;
        const auto e = [&](const Positions& x) { return membrane.energy(x); };
        const auto v = [&](const Positions& x) { return membrane.volume(x); };
        const auto s = [&](const Positions& x) { return membrane.area_stretch(x, walls_of(membrane, x)); };
        EXPECT_NEAR(energy[i], central_difference(e, c.x, i, step), 1e-6 * (1 + std::abs(energy[i])));
        EXPECT_NEAR(volume[i], central_difference(v, c.x, i, step), 1e-6 * (1 + std::abs(volume[i])));
        EXPECT_NEAR(stretch[i], central_difference(s, c.x, i, step), 1e-8);
    }
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
    std::vector<double> energy(membrane.unknowns());
    std::vector<double> volume(membrane.unknowns());
    for (std::size_t i = 0; i < c.x.size(); ++i)
        for (std::size_t j = 0; j < c.x.size(); ++j) {
            if (is_fixed(c, i) || is_fixed(c, j)) {
                EXPECT_EQ(hessian.entry(i, j), i == j ? 1 : 0);
                continue;
            }
            const auto force = [&](const Positions& x) {
                membrane.energy_gradient(x, walls_of(membrane, x), energy.data());
                membrane.volume_gradient(x, volume.data());
                return energy[i] - pressure * volume[i];
            };
            const double expected = central_difference(force, c.x, j, 1e-5);
            EXPECT_NEAR(hessian.entry(i, j), expected, 1e-6 * (1 + std::abs(expected)))
                << "at " << i << ", " << j;
        }
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
