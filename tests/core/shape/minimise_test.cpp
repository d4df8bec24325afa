#include "core/shape/minimise.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <array>
#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/base/vec.h"
#include "core/shape/band_matrix.h"
#include "tests/support/derivative_check.h"

namespace roundwright::test {
namespace {

/// Half k (length - rest)^2 with its derivatives by the vector along it.
template <int dimensions>
struct Spring {
    using Vector = Eigen::Matrix<double, dimensions, 1>;
    using Square = Eigen::Matrix<double, dimensions, dimensions>;

    static double energy(const Vector& along, double rest) {
        return (along.norm() - rest) * (along.norm() - rest) / 2;
    }
    static Vector force(const Vector& along, double rest) { return (1 - rest / along.norm()) * along; }
    static Square stiffness(const Vector& along, double rest, Curvature curvature) {
        const double length = along.norm(), across = 1 - rest / length;
        const Square outer = along * along.transpose() / (length * length);
        const double kept = curvature == Curvature::projected ? std::max(0.0, across) : across;
        return outer + kept * (Square::Identity() - outer);
    }
};

/// A chain of springs of length 1 and stiffness 1 hung up by both ends, with a weight on every node.
struct HangingChain {
    using Matrix = BandMatrix;
    struct Elements {};
    static constexpr std::size_t nodes = 12;
    static constexpr double weight = 0.15;

    [[nodiscard]] static std::size_t unknowns() { return 2 * nodes; }
    [[nodiscard]] static double force_scale() { return weight; }
    static void take_elements(const Positions&, Elements&) {}
    static void keep_in_bounds(const Positions&, Positions&) {}
    [[nodiscard]] static bool is_fixed(std::size_t i) { return i < 2 || i >= 2 * nodes - 2; }
    [[nodiscard]] static Vec2 along(const Positions& x, std::size_t link) {
        return {x[2 * link + 2] - x[2 * link], x[2 * link + 3] - x[2 * link + 1]};
    }

    [[nodiscard]] static double energy(const Positions& x, const Elements&) {
        double sum = 0;
        for (std::size_t k = 0; k < nodes; ++k) sum += weight * x[2 * k + 1];
        for (std::size_t k = 0; k + 1 < nodes; ++k) sum += Spring<2>::energy(along(x, k), 1);
        return sum;
    }
    static void energy_gradient(const Positions& x, const Elements&, double* out) {
        for (std::size_t i = 0; i < unknowns(); ++i) out[i] = i % 2 == 1 ? weight : 0;
        for (std::size_t k = 0; k + 1 < nodes; ++k) {
            const Vec2 force = Spring<2>::force(along(x, k), 1);
            for (std::size_t axis = 0; axis < 2; ++axis) {
                out[2 * k + axis] -= force[static_cast<int>(axis)];
                out[2 * k + 2 + axis] += force[static_cast<int>(axis)];
            }
        }
        for (std::size_t i = 0; i < unknowns(); ++i)
            if (is_fixed(i)) out[i] = 0;
    }
    static void hessian(const Positions& x, const Elements&, double, Curvature curvature, BandMatrix& out) {
        out.set_zero();
        for (std::size_t k = 0; k + 1 < nodes; ++k) {
            const auto stiffness = Spring<2>::stiffness(along(x, k), 1, curvature);
            for (std::size_t a = 0; a < 4; ++a)
                for (std::size_t b = 0; b <= a; ++b)
                    out.add(2 * k + a, 2 * k + b,
                            (a / 2 == b / 2 ? 1 : -1) *
                                stiffness(static_cast<int>(a % 2), static_cast<int>(b % 2)));
        }
        for (std::size_t i = 0; i < unknowns(); ++i)
            if (is_fixed(i)) out.fix(i);
    }
};
static_assert(Energy<HangingChain> && !StuffedEnergy<HangingChain>);

/// A full matrix of a few unknowns.
class FullMatrix {
  public:
    void resize(std::size_t size) { entries_.setZero(index(size), index(size)); }
    void set_zero() { entries_.setZero(); }
    [[nodiscard]] std::size_t size() const { return static_cast<std::size_t>(entries_.rows()); }
    [[nodiscard]] double diagonal(std::size_t i) const { return entry(i, i); }
    [[nodiscard]] double entry(std::size_t i, std::size_t j) const { return entries_(index(i), index(j)); }
    [[nodiscard]] double largest_diagonal() const { return entries_.diagonal().cwiseAbs().maxCoeff(); }
    void add(std::size_t i, std::size_t j, double value) { entries_(index(i), index(j)) += value; }
    void fix(std::size_t i) {
        entries_.row(index(i)).setZero();
        entries_.col(index(i)).setZero();
        entries_(index(i), index(i)) = 1;
    }
    std::size_t factor(double) {
        factors_.compute(entries_);
        return static_cast<std::size_t>((factors_.vectorD().array() < 0).count());
    }
    void solve(double* side) const {
        Eigen::Map<Eigen::VectorXd> right(side, entries_.rows());
        right = factors_.solve(right).eval();
    }
    void solve(double* side, double* another) const {
        solve(side);
        solve(another);
    }

  private:
    static Eigen::Index index(std::size_t i) { return static_cast<Eigen::Index>(i); }
    Eigen::MatrixXd entries_;
    Eigen::LDLT<Eigen::MatrixXd> factors_;
};

/// A stuffed net in space, stitch by stitch as it were: an octahedron of springs of length 10, its first node
/// held, its second led along an axis and its third in a plane.
struct StuffedNet {
    using Matrix = FullMatrix;
    using Elements = std::vector<Vec3>;  ///< along every edge
    static constexpr double rest = 10;
    static constexpr std::array<std::array<std::size_t, 2>, 12> edges = {
        {{0, 2}, {0, 3}, {0, 4}, {0, 5}, {1, 2}, {1, 3}, {1, 4}, {1, 5}, {2, 4}, {2, 5}, {3, 4}, {3, 5}}};
    static constexpr std::array<std::array<std::size_t, 3>, 8> faces = {
        {{2, 0, 4}, {1, 2, 4}, {3, 1, 4}, {0, 3, 4}, {0, 2, 5}, {2, 1, 5}, {1, 3, 5}, {3, 0, 5}}};

    [[nodiscard]] static std::size_t unknowns() { return 18; }
    [[nodiscard]] static double force_scale() { return 0.01 * rest; }
    [[nodiscard]] static bool is_fixed(std::size_t i) {
        return i < 3 || i == 4 || i == 5 || i == 8;  // 0: wholly, 1: but for x, 2: but for x and y
    }
    [[nodiscard]] static Vec3 node(const Positions& x, std::size_t n) {
        return {x[3 * n], x[3 * n + 1], x[3 * n + 2]};
    }
    static void take_elements(const Positions& x, Elements& out) {
        out.clear();
        for (const auto& [a, b] : edges) out.push_back(node(x, b) - node(x, a));
    }
    static void keep_in_bounds(const Positions&, Positions&) {}

    [[nodiscard]] static double energy(const Positions&, const Elements& along) {
        double sum = 0;
        for (const Vec3& edge : along) sum += Spring<3>::energy(edge, rest);
        return sum;
    }
    static void energy_gradient(const Positions&, const Elements& along, double* out) {
        spread(along, out, [](const Vec3& edge) { return Spring<3>::force(edge, rest); });
    }
    [[nodiscard]] static double area_stretch(const Positions&, const Elements& along) {
        double sum = 0;
        for (const Vec3& edge : along) sum += 2 * (edge.norm() / rest - 1) / edges.size();
        return sum;
    }
    static void area_stretch_gradient(const Positions&, const Elements& along, double* out) {
        spread(along, out,
               [](const Vec3& edge) { return Vec3(2 / rest / edges.size() * edge.normalized()); });
    }
    [[nodiscard]] static double volume(const Positions& x) {
        double sum = 0;
        for (const auto& [a, b, c] : faces) sum += node(x, a).dot(node(x, b).cross(node(x, c))) / 6;
        return sum;
    }
    static void volume_gradient(const Positions& x, double* out) {
        std::fill_n(out, unknowns(), 0.0);
        for (const auto& [a, b, c] : faces) {
            add(out, a, node(x, b).cross(node(x, c)) / 6);
            add(out, b, node(x, c).cross(node(x, a)) / 6);
            add(out, c, node(x, a).cross(node(x, b)) / 6);
        }
        hold(out);
    }
    static void hessian(const Positions& x, const Elements& along, double pressure, Curvature curvature,
                        FullMatrix& out) {
        out.set_zero();
        for (std::size_t k = 0; k < edges.size(); ++k) {
            const auto stiffness = Spring<3>::stiffness(along[k], rest, curvature);
            const auto& [a, b] = edges[k];
            for (const auto& [row, column] : {std::pair{a, a}, {b, b}, {a, b}, {b, a}})
                add_block(out, row, column, (row == column ? 1 : -1) * stiffness);
        }
        if (curvature == Curvature::exact)
            for (const auto& face : faces)
                for (std::size_t k = 0; k < 3; ++k) {
                    const std::size_t a = face[k], b = face[(k + 1) % 3], c = face[(k + 2) % 3];
                    // d/db of (b x c) / 6 and d/dc of it, as matrices on the right of a cross product.
                    add_block(out, a, b, pressure / 6 * cross_matrix(node(x, c)));
                    add_block(out, a, c, -pressure / 6 * cross_matrix(node(x, b)));
                }
        for (std::size_t i = 0; i < unknowns(); ++i)
            if (is_fixed(i)) out.fix(i);
    }

  private:
    static Eigen::Matrix3d cross_matrix(const Vec3& v) {
        Eigen::Matrix3d m;
        m << 0, -v.z(), v.y(), v.z(), 0, -v.x(), -v.y(), v.x(), 0;
        return m;
    }
    static void add_block(FullMatrix& out, std::size_t row, std::size_t column,
                          const Eigen::Matrix3d& block) {
        for (std::size_t i = 0; i < 3; ++i)
            for (std::size_t j = 0; j < 3; ++j)
                out.add(3 * row + i, 3 * column + j, block(static_cast<int>(i), static_cast<int>(j)));
    }
    static void add(double* out, std::size_t n, const Vec3& vector) {
        for (std::size_t axis = 0; axis < 3; ++axis) out[3 * n + axis] += vector[static_cast<int>(axis)];
    }
    static void hold(double* out) {
        for (std::size_t i = 0; i < unknowns(); ++i)
            if (is_fixed(i)) out[i] = 0;
    }
    template <class ByEdge>
    static void spread(const Elements& along, double* out, const ByEdge& by_edge) {
        std::fill_n(out, unknowns(), 0.0);
        for (std::size_t k = 0; k < edges.size(); ++k) {
            add(out, edges[k][0], -by_edge(along[k]));
            add(out, edges[k][1], by_edge(along[k]));
        }
        hold(out);
    }
};
static_assert(StuffedEnergy<StuffedNet>);

Positions level_chain() {
    Positions x;
    for (std::size_t k = 0; k < HangingChain::nodes; ++k) {
        x.push_back(0.9 * static_cast<double>(k));
        x.push_back(0.02 * static_cast<double>(k % 3));
    }
    x.back() = x[1] = 0;
    return x;
}

/// The octahedron with corners on the axes, its first one at the origin, pushed out of shape.
Positions uneven_net() {
    const double r = StuffedNet::rest / std::sqrt(2.0);
    Positions x = {0, 0, 0, 2 * r, 0, 0, r, r, 0, r, -r, 0, r, 0, r, r, 0, -r};
    std::mt19937 random(7);
    std::uniform_real_distribution<double> shift(-1.5, 1.5);
    for (std::size_t i = 0; i < x.size(); ++i)
        if (!StuffedNet::is_fixed(i)) x[i] += shift(random);
    return x;
}

template <class E>
typename E::Elements elements_of(const Positions& x) {
    typename E::Elements elements;
    E::take_elements(x, elements);
    return elements;
}

template <class E>
void expect_derivatives(const Positions& x, double pressure) {
    DerivativeCheck check;
    check.is_fixed = [](std::size_t i) { return E::is_fixed(i); };
    const auto value = [&](const Positions& at) {
        double sum = E::energy(at, elements_of<E>(at));
        if constexpr (StuffedEnergy<E>) sum -= pressure * E::volume(at);
        return sum;
    };
    const auto gradient = [&](const Positions& at) {
        std::vector<double> all(E::unknowns()), volume(E::unknowns());
        E::energy_gradient(at, elements_of<E>(at), all.data());
        if constexpr (StuffedEnergy<E>) E::volume_gradient(at, volume.data());
        for (std::size_t i = 0; i < all.size(); ++i) all[i] -= pressure * volume[i];
        return all;
    };
    EXPECT_TRUE(is_gradient(gradient(x), value, x, check));
    typename E::Matrix hessian;
    hessian.resize(E::unknowns());
    E::hessian(x, elements_of<E>(x), pressure, Curvature::exact, hessian);
    EXPECT_TRUE(
        is_hessian([&](std::size_t i, std::size_t j) { return hessian.entry(i, j); }, gradient, x, check));
}

TEST(Minimise, TestEnergiesHaveTheirDerivatives) {
    expect_derivatives<HangingChain>(level_chain(), 0);
    expect_derivatives<StuffedNet>(uneven_net(), 0.3);
    const Positions x = uneven_net();
    std::vector<double> stretch(StuffedNet::unknowns());
    StuffedNet::area_stretch_gradient(x, elements_of<StuffedNet>(x), stretch.data());
    DerivativeCheck check;
    check.is_fixed = StuffedNet::is_fixed;
    const auto value = [](const Positions& at) {
        return StuffedNet::area_stretch(at, elements_of<StuffedNet>(at));
    };
    EXPECT_TRUE(is_gradient(stretch, value, x, check));
}

TEST(DerivativeCheck, FindsAWrongSignAFactorAndAWrongPlace) {
    const std::vector<double> x = {1, -2, 0.5};
    const auto value = [](const std::vector<double>& at) {
        return at[0] * at[0] + at[1] * at[1] * at[1] + 2 * at[2];
    };
    const auto gradient = [](const std::vector<double>& at) {
        return std::vector<double>{2 * at[0], 3 * at[1] * at[1], 2};
    };
    EXPECT_TRUE(is_gradient(gradient(x), value, x));
    EXPECT_FALSE(is_gradient({2, -12, 2}, value, x));
    EXPECT_FALSE(is_gradient({2, 12, 2.00001}, value, x));
    EXPECT_FALSE(is_gradient({2, 12}, value, x));
    const auto entry = [](std::size_t i, std::size_t j) {
        return i != j ? 0.0 : i == 0 ? 2 : i == 1 ? -12 : 0;
    };
    EXPECT_TRUE(is_hessian(entry, gradient, x));
    EXPECT_FALSE(is_hessian([&](std::size_t i, std::size_t j) { return entry(2 - i, 2 - j); }, gradient, x));
    DerivativeCheck fixed;
    fixed.is_fixed = [](std::size_t i) { return i == 1; };
    EXPECT_FALSE(is_gradient(gradient(x), value, x, fixed));
    EXPECT_TRUE(is_gradient({2, 0, 2}, value, x, fixed));
}

// Equal weights: the horizontal pull is the same in every link, and the vertical one changes by a weight from
// link to link.
TEST(Minimise, AChainHangsInEquilibrium) {
    Equilibrium state;
    state.x = level_chain();
    MinimiseWorkspace<HangingChain> workspace;
    minimise(HangingChain{}, MinimiseLimits{}, workspace, state);
    ASSERT_EQ(state.termination, Termination::converged);
    EXPECT_LT(state.iterations, 30);
    const Vec2 first = Spring<2>::force(HangingChain::along(state.x, 0), 1);
    for (std::size_t k = 1; k + 1 < HangingChain::nodes; ++k) {
        const Vec2 force = Spring<2>::force(HangingChain::along(state.x, k), 1);
        EXPECT_NEAR(force.x(), first.x(), 1e-9);
        EXPECT_NEAR(force.y() - first.y(), HangingChain::weight * static_cast<double>(k), 1e-9);
    }
    const double middle = state.x[2 * (HangingChain::nodes / 2) + 1];
    EXPECT_LT(middle, -1) << "it hangs down";
}

TEST(Minimise, AChainThatIsStoppedOrHasNoTimeSaysSo) {
    std::stop_source stop;
    stop.request_stop();
    MinimiseWorkspace<HangingChain> workspace;
    Equilibrium state;
    state.x = level_chain();
    minimise(HangingChain{}, {1e-9, 200, stop.get_token()}, workspace, state);
    EXPECT_EQ(state.termination, Termination::cancelled);
    state.x = level_chain();
    minimise(HangingChain{}, {1e-9, 1, {}}, workspace, state);
    EXPECT_EQ(state.termination, Termination::iteration_limit);
}

// Of all nets with equal springs the regular one holds most, so it is what stuffing makes.
TEST(Minimise, AStuffedNetBecomesRegularAtTheStretchAskedFor) {
    for (const double stretch : {0.02, 0.08, 0.2}) {
        Equilibrium state;
        state.x = uneven_net();
        state.stuffing = 1;
        MinimiseWorkspace<StuffedNet> workspace;
        minimise(StuffedNet{}, stretch, {1e-9, 200, {}}, workspace, state);
        ASSERT_EQ(state.termination, Termination::converged) << stretch;
        const double edge = StuffedNet::rest * (1 + stretch / 2);
        for (const Vec3& along : elements_of<StuffedNet>(state.x)) EXPECT_NEAR(along.norm(), edge, 1e-6);
        const double volume = std::sqrt(2.0) / 3 * edge * edge * edge;
        EXPECT_NEAR(StuffedNet::volume(state.x), volume, 1e-5 * volume);
        // Twelve springs and the stuffing in balance when all grows alike: 3 p V = sum of force times length.
        EXPECT_NEAR(3 * state.stuffing, 12 * (edge - StuffedNet::rest) * edge, 1e-5 * state.stuffing);
    }
}

}  // namespace
}  // namespace roundwright::test
