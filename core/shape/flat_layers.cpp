#include "core/shape/flat_layers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/shape/band_matrix.h"
#include "core/shape/fabric_thickness.h"
#include "core/shape/meridian.h"

namespace roundwright {

namespace {

using std::numbers::pi;

constexpr double shear_stiffness = 0.1;  ///< of the course stiffness
/// Beyond half a turn a layer would come to lie on itself.
constexpr double most_bend = pi;
/// Of its height that a round keeps between loops that bend against each other.
constexpr double least_rise = 0.1;
/// Over a half loop, with u from 0 in its middle to 1/2 at the fold: the variance of u^2 / 2, and the mean of
/// u^2.
constexpr double wale_moment = 1.0 / 720;
constexpr double shear_moment = 1.0 / 12;

/// Gauss-Legendre on [0, 1/2], from the middle of the layer to its fold (Abramowitz and Stegun, table 25.4).
struct Column {
    double share;
    double weight;
};
constexpr std::array<Column, 4> columns{{{0.5 * 0.06943184420297371, 0.17392742256872693},
                                         {0.5 * 0.33000947820757187, 0.32607257743127307},
                                         {0.5 * 0.66999052179242813, 0.32607257743127307},
                                         {0.5 * 0.93056815579702629, 0.17392742256872693}}};

/// Half loops and the rounds between them, the point that a drawn end is closed to among them.
struct Layer {
    std::vector<double> length;     ///< of the half loops, mm; 0 at a point
    std::vector<double> height;     ///< of the rounds, at [i - 1]
    std::vector<bool> is_straight;  ///< held straight: a seam, or the chain of an oval
    std::vector<double> bend;
    std::vector<double> y;

    [[nodiscard]] bool bends(std::size_t i) const { return length[i] > 0 && !is_straight[i]; }
};

/// No loop differs from the next by more than those of a folded disc do.
void hold_to_disc(Layer& layer) {
    auto& length = layer.length;
    for (std::size_t i = 1; i < length.size(); ++i)
        length[i] = std::min(length[i], length[i - 1] + pi * layer.height[i - 1]);
    for (std::size_t i = length.size() - 1; i-- > 0;)
        length[i] = std::min(length[i], length[i + 1] + pi * layer.height[i]);
}

/// A drawn end's loop turns in to a point: no nearer than the fan is high, no farther than a round.
double closing_height(const ShapeProblem& problem) {
    const double round = std::max(problem.rest_height_mm.back(), problem.fan_height_mm);
    return std::clamp(problem.rest_loop_mm.back() / 2 / pi, problem.fan_height_mm, round);
}

Layer layer_of(const ShapeProblem& problem) {
    Layer layer;
    for (std::size_t i = 0; i < problem.rest_loop_mm.size(); ++i)
        layer.length.push_back(rest_length_mm(problem, i) / 2);
    layer.height = problem.rest_height_mm;
    layer.is_straight.assign(layer.length.size(), false);
    layer.is_straight.front() = problem.first == MeridianEnd::drawn_closed;
    layer.is_straight.back() = problem.sewn_straight;
    if (problem.last == MeridianEnd::drawn_closed) {
        layer.height.push_back(closing_height(problem));
        layer.length.push_back(0);
        layer.is_straight.push_back(false);
    }
    hold_to_disc(layer);
    return layer;
}

LoopSection line_of(const Layer& layer, std::size_t i) { return {layer.length[i] / 2, 0, layer.bend[i]}; }

/// The bends by their normal equations, a tridiagonal system.
class Bends {
  public:
    Bends(const Layer& layer, const ShapeOptions& options) : layer_(layer), options_(options) {
        matrix_.resize(layer.length.size());
        matrix_.set_zero();
        bend_.assign(layer.length.size(), 0);
        for (std::size_t i = 1; i < layer.length.size(); ++i) add_round(i);
    }

    [[nodiscard]] std::vector<double> solve() {
        const double least = 1e-12 * matrix_.largest_diagonal();
        for (std::size_t i = 0; i < bend_.size(); ++i) {
            if (layer_.bends(i)) continue;
            matrix_.fix(i);
            bend_[i] = 0;
        }
        matrix_.factor(least);
        matrix_.solve(bend_.data());
        for (double& bend : bend_) bend = std::clamp(bend, -most_bend, most_bend);
        return bend_;
    }

  private:
    void add_round(std::size_t i) {
        const double below = layer_.length[i - 1];
        const double above = layer_.length[i];
        const double h = layer_.height[i - 1];
        const double area = (below + above) / 2 * h;
        const double slope = (above - below) / h;
        add(i, options_.wale_stiffness * area * wale_moment, -below / h, above / h, slope * slope);
        const double share = below > 0 && above > 0 ? 0.5 : 1;
        add(i, shear_stiffness * options_.course_stiffness * area * shear_moment, below > 0 ? share : 0,
            above > 0 ? share : 0, slope);
    }

    /// weight (a bend[i - 1] + b bend[i] - wanted)^2 / 2
    void add(std::size_t i, double weight, double a, double b, double wanted) {
        matrix_.add(i - 1, i - 1, weight * a * a);
        matrix_.add(i, i - 1, weight * a * b);
        matrix_.add(i, i, weight * b * b);
        bend_[i - 1] += weight * a * wanted;
        bend_[i] += weight * b * wanted;
    }

    const Layer& layer_;
    const ShapeOptions& options_;
    BandMatrix matrix_;
    std::vector<double> bend_;
};

/// The columns of a round between two bent loops, when the middle of the upper stands so far above the
/// lower's.
class Columns {
  public:
    Columns(const Layer& layer, std::size_t i) : height_(layer.height[i - 1]) {
        const LoopSection below = line_of(layer, i - 1);
        const LoopSection above = line_of(layer, i);
        for (std::size_t k = 0; k < columns.size(); ++k)
            way_[k] = above.on_line(2 * columns[k].share) - below.on_line(2 * columns[k].share);
        least_ = std::max(least_rise * height_, rise_without_turning(below, above));
    }

    /// At which the columns are, on the whole, nearest to their rest height: by Gauss-Newton.
    [[nodiscard]] double rise() const {
        constexpr int most_steps = 30;
        double rise = std::max(height_, least_);
        for (int step = 0; step < most_steps; ++step) {
            double slope = 0;
            double square = 1e-12;
            for (std::size_t k = 0; k < columns.size(); ++k) {
                const Vec2 d = way_[k] + Vec2(0, rise);
                const double length = std::max(d.norm(), 1e-9 * height_);
                const double up = d.y() / length;
                slope += columns[k].weight * (length - height_) * up;
                square += columns[k].weight * up * up;
            }
            const double next = std::max(least_, rise - slope / square);
            if (std::abs(next - rise) < 1e-12 * height_) return next;
            rise = next;
        }
        return rise;
    }

    [[nodiscard]] double mean_stretch(double rise) const {
        double sum = 0;
        for (std::size_t k = 0; k < columns.size(); ++k)
            sum += columns[k].weight * ((way_[k] + Vec2(0, rise)).norm() / height_ - 1);
        return sum;
    }

  private:
    /// So far up that no column crosses either loop from above, where the layer would fold back on itself.
    /// Where a loop runs nearly upright, rising does not help.
    [[nodiscard]] double rise_without_turning(const LoopSection& below, const LoopSection& above) const {
        constexpr int steps = 16;
        constexpr double upright = 0.2;
        double least = 0;
        for (int k = 1; k <= steps; ++k) {
            const double share = static_cast<double>(k) / steps;
            const Vec2 way = above.on_line(share) - below.on_line(share);
            for (const LoopSection* loop : {&below, &above}) {
                const double turn = share * loop->bend / 2;
                const Vec2 up(std::sin(turn), std::cos(turn));
                if (up.y() < upright || !(loop->half_width_mm > 0)) continue;
                least = std::max(least, (least_rise * height_ - way.dot(up)) / up.y());
            }
        }
        return least;
    }

    double height_;
    double least_ = 0;
    std::array<Vec2, columns.size()> way_;
};

/// Area of one layer between two loops.
double layer_area(const Layer& layer, std::size_t i) {
    constexpr int strips = 16;
    const LoopSection below = line_of(layer, i - 1);
    const LoopSection above = line_of(layer, i);
    const Vec2 rise(0, layer.y[i] - layer.y[i - 1]);
    double sum = 0;
    for (int k = 0; k < strips; ++k) {
        const double from = static_cast<double>(k) / strips;
        const double to = static_cast<double>(k + 1) / strips;
        const Vec2 a = rise + above.on_line(to) - below.on_line(from);
        const Vec2 b = rise + above.on_line(from) - below.on_line(to);
        sum += std::abs(a.x() * b.y() - a.y() * b.x());
    }
    return sum;
}

LoopSection section_of(const Layer& layer, std::size_t i, double thickness_mm) {
    return {layer.length[i] / 2, pressed_half_depth_mm(thickness_mm, layer.length[i] / pi), layer.bend[i]};
}

/// How much of the box around it a section fills.
double filling(const LoopSection& section) {
    const double box = 4 * section.half_width_mm * section.half_depth_mm;
    return box > 0 ? section.area_mm2() / box : 1;
}

void measure(const Layer& layer, double thickness_mm, Shape& shape) {
    double low = 0;
    double high = 0;
    for (std::size_t i = 0; i < layer.length.size(); ++i) {
        const LoopSection section = section_of(layer, i, thickness_mm);
        shape.width_mm = std::max(shape.width_mm, 2 * section.reach_mm());
        low = std::min(low, layer.y[i] + section.lowest_mm());
        high = std::max(high, layer.y[i] + section.highest_mm());
        if (i == 0) continue;
        const LoopSection before = section_of(layer, i - 1, thickness_mm);
        const double area = layer_area(layer, i);
        shape.surface_mm2 += 2 * area;
        shape.volume_mm3 +=
            area * (before.half_depth_mm + section.half_depth_mm) * (filling(before) + filling(section)) / 2;
    }
    shape.height_mm = high - low;
    shape.depth_mm = 2 * thickness_mm;
    for (double& z : shape.z_mm) z -= low;
    shape.first_pole_z_mm = layer.y.front() - low;
    shape.last_pole_z_mm = layer.y.back() - low;
}

}  // namespace

Shape lay_flat(const ShapeProblem& problem, const ShapeOptions& options) {
    Layer layer = layer_of(problem);
    layer.bend = Bends(layer, options).solve();
    layer.y.assign(layer.length.size(), 0);
    const double thickness = fabric_thickness_mm(problem);
    Shape shape;
    shape.termination = Termination::converged;
    shape.iterations = 1;
    for (std::size_t i = 0; i < layer.length.size(); ++i) {
        if (i > 0) {
            const Columns stand(layer, i);
            layer.y[i] = layer.y[i - 1] + stand.rise();
            shape.wale_stretch.push_back(stand.mean_stretch(layer.y[i] - layer.y[i - 1]));
        }
        if (i == problem.rest_loop_mm.size()) break;
        const double rest = problem.rest_loop_mm[i];
        shape.radius_mm.push_back(layer.length[i] / pi);
        shape.z_mm.push_back(layer.y[i]);
        shape.course_stretch.push_back(layer.length[i] > 0 ? 2 * layer.length[i] / rest - 1 : 0);
        shape.sections.push_back(section_of(layer, i, thickness));
    }
    shape.wale_stretch.resize(problem.rest_height_mm.size());
    measure(layer, thickness, shape);
    return shape;
}

}  // namespace roundwright
