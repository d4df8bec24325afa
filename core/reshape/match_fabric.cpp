#include "core/reshape/match_fabric.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstddef>

namespace roundwright {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int most_knots = 5;
constexpr int most_steps = 4;
constexpr int most_dampings = 4;
constexpr double difference = 0.02;    // of an unknown, for the slope
constexpr double most_change = 0.7;    // of an unknown: a factor of two
constexpr double too_little = 1e-2;    // of the cost, for one more step
constexpr double along_weight = 0.25;  // of a slip along the outline, against one off it
constexpr double height_weight = 0.5;  // of the height missed, against the whole outline
constexpr double unknown_mm = 1;       // a factor e everywhere costs as much as so far off everywhere
constexpr double ruffle_mm = 20;       // and so do rounds that grow twice as fast as flat

/// Knots spread over what was moved.
class Knots {
  public:
    Knots(const Silhouette& outline, const std::vector<bool>& moved) {
        const auto first = std::find(moved.begin(), moved.end(), true);
        if (first == moved.end()) return;
        const auto end = std::find(moved.rbegin(), moved.rend(), true).base();
        const auto begin_point = static_cast<std::size_t>(first - moved.begin());
        const auto end_point = static_cast<std::size_t>(end - moved.begin());
        const auto along = arc_lengths(outline);
        const double length = along[end_point] - along[begin_point];
        if (!(length > 0)) return;
        for (const double s : along) at_.push_back((s - along[begin_point]) / length);
        number_ = std::clamp(static_cast<int>(end_point - begin_point) / 2, 1, most_knots);
        from_start_ = begin_point == 0;
        to_end_ = end_point == moved.size();
    }

    [[nodiscard]] int number() const { return number_; }

    /// The sum of values at the knots at a point of the outline, or between two.
    template <class Values>
    [[nodiscard]] double sum(const Values& values, std::size_t point, std::size_t next) const {
        const double t = (at_[point] + at_[next]) / 2;
        double sum = 0;
        for (int k = 0; k < number_; ++k) sum += values[k] * hat(k, t);
        return sum;
    }

  private:
    // Up to an end of the piece nothing holds what was moved in its place.
    [[nodiscard]] double hat(int knot, double t) const {
        const double width = 1.0 / (number_ + 1);
        const double middle = (knot + 1) * width;
        if (from_start_ && knot == 0 && t < middle) return 1;
        if (to_end_ && knot + 1 == number_ && t > middle) return 1;
        return std::max(0.0, 1 - std::abs(t - middle) / width);
    }

    int number_ = 0;
    bool from_start_ = false;
    bool to_end_ = false;
    std::vector<double> at_;  // 0..1 over what was moved, one a point of the outline
};

/// Where along an outline a part of its rounds has been worked, and which way it goes there.
class Stations {
  public:
    struct Station {
        Vec2 point;
        Vec2 along;
    };

    Stations(const Silhouette& outline, const FabricAlong& fabric) : outline_(outline), at_{0.0} {
        for (std::size_t i = 0; i + 1 < outline.points.size(); ++i)
            at_.push_back(at_.back() +
                          (outline.points[i + 1] - outline.points[i]).norm() / fabric.round_mm[i]);
    }

    [[nodiscard]] Station at(double part) const {
        const double rounds = part * at_.back();
        const auto above = std::upper_bound(at_.begin() + 1, at_.end() - 1, rounds);
        const auto i = static_cast<std::size_t>(above - at_.begin());
        const Vec2 span = outline_.points[i] - outline_.points[i - 1];
        const double stretch = at_[i] - at_[i - 1];
        const double t = stretch > 0 ? (rounds - at_[i - 1]) / stretch : 0;
        const double length = span.norm();
        return {outline_.points[i - 1] + t * span, length > 0 ? Vec2(span / length) : Vec2(1, 0)};
    }

  private:
    const Silhouette& outline_;
    std::vector<double> at_;
};

// How fast the fabric's relaxed circles grow or close along a stretch, flat being 1.
double growth(const Silhouette& outline, const FabricAlong& fabric, std::size_t i, double round_height_mm) {
    const double here = outline.points[i].x() / (1 + fabric.course_stretch[i]);
    const double next = outline.points[i + 1].x() / (1 + fabric.course_stretch[i + 1]);
    const double rounds = (outline.points[i + 1] - outline.points[i]).norm() / fabric.round_mm[i];
    return rounds > 0 ? std::abs(next - here) / (rounds * round_height_mm) : 0;
}

class Matcher {
  public:
    Matcher(const Silhouette& outline, const FabricAlong& first, const std::vector<bool>& moved,
            double round_height_mm, const TryFabric& attempt)
        : outline_(outline),
          first_(first),
          knots_(outline, moved),
          h_(round_height_mm),
          attempt_(attempt),
          x_(VectorXd::Zero(2 * knots_.number())) {
        for (std::size_t i = 0; i < first.round_mm.size(); ++i)
            most_growth_.push_back(std::max(1.0, growth(outline, first, i, h_)));
    }

    FabricAlong run() {
        if (knots_.number() == 0) return first_;
        auto off = residuals(x_);
        for (int step = 0; off && step < most_steps; ++step) {
            const double before = off->squaredNorm();
            off = stepped(*off);
            if (off && before - off->squaredNorm() < too_little * before) break;
        }
        return fabric(x_);
    }

  private:
    [[nodiscard]] FabricAlong fabric(const VectorXd& x) const {
        const auto stitches = x.head(knots_.number());
        const auto rounds = x.tail(knots_.number());
        FabricAlong made = first_;
        for (std::size_t i = 0; i < made.course_stretch.size(); ++i)
            made.course_stretch[i] = (1 + made.course_stretch[i]) * std::exp(-knots_.sum(stitches, i, i)) - 1;
        for (std::size_t i = 0; i < made.round_mm.size(); ++i)
            made.round_mm[i] *= std::exp(-knots_.sum(rounds, i, i + 1));
        return made;
    }

    [[nodiscard]] std::optional<VectorXd> residuals(const VectorXd& x) const {
        const FabricAlong tried = fabric(x);
        const auto shape = attempt_(tried);
        if (!shape) return std::nullopt;
        const VectorXd off = off_outline(*shape, tried);
        const VectorXd ruffled = ruffles(tried);
        VectorXd all(off.size() + ruffled.size() + x.size() + 1);
        all << off, ruffled, unknown_mm * x, height_weight * (height_mm(shape->made) - height_mm(outline_));
        return all;
    }

    [[nodiscard]] VectorXd off_outline(const TriedFabric& shape, const FabricAlong& tried) const {
        const Stations stations(outline_, tried);
        const std::size_t n = shape.made.points.size();
        std::vector<Stations::Station> wanted;
        double raised = 0;
        for (std::size_t i = 0; i < n; ++i) {
            wanted.push_back(stations.at(shape.part[i]));
            raised += (shape.made.points[i] - wanted.back().point).y() / double(n);
        }
        VectorXd off(static_cast<Index>(2 * n));
        for (std::size_t i = 0; i < n; ++i) {
            const Vec2& along = wanted[i].along;
            const Vec2 d = shape.made.points[i] - Vec2(0, raised) - wanted[i].point;
            off[static_cast<Index>(2 * i)] = d.x() * along.y() - d.y() * along.x();
            off[static_cast<Index>(2 * i + 1)] = along_weight * d.dot(along);
        }
        return off / std::sqrt(double(n));
    }

    [[nodiscard]] VectorXd ruffles(const FabricAlong& tried) const {
        const auto stretches = static_cast<Index>(tried.round_mm.size());
        VectorXd ruffled(stretches);
        for (Index i = 0; i < stretches; ++i) {
            const auto at = static_cast<std::size_t>(i);
            ruffled[i] = std::max(0.0, growth(outline_, tried, at, h_) - most_growth_[at]);
        }
        return ruffle_mm / std::sqrt(double(stretches)) * ruffled;
    }

    // Moves the unknowns; returns what is then left, or nothing if nothing is better.
    std::optional<VectorXd> stepped(const VectorXd& off) {
        MatrixXd slope(off.size(), x_.size());
        for (Index k = 0; k < x_.size(); ++k) {
            VectorXd moved = x_;
            moved[k] += difference;
            const auto there = residuals(moved);
            if (!there || there->size() != off.size()) return std::nullopt;
            slope.col(k) = (*there - off) / difference;
        }
        const MatrixXd normal = slope.transpose() * slope;
        const VectorXd downhill = -slope.transpose() * off;
        for (int i = 0; i < most_dampings; ++i) {
            MatrixXd damped = normal;
            damped.diagonal() *= 1 + damping_;
            const VectorXd next =
                (x_ + damped.ldlt().solve(downhill)).cwiseMax(-most_change).cwiseMin(most_change);
            auto there = residuals(next);
            if (there && there->squaredNorm() < off.squaredNorm()) {
                x_ = next;
                damping_ /= 4;
                return there;
            }
            damping_ = 8 * damping_ + 1e-2;
        }
        return std::nullopt;
    }

    const Silhouette& outline_;
    const FabricAlong& first_;
    Knots knots_;
    double h_;
    const TryFabric& attempt_;
    VectorXd x_;  // of the stitches, knot by knot, and then of the rounds
    double damping_ = 1e-2;
    std::vector<double> most_growth_;  // of each stretch, flat being 1
};

}  // namespace

FabricAlong matched_fabric(const Silhouette& outline, const FabricAlong& first,
                           const std::vector<bool>& moved, double round_height_mm, const TryFabric& attempt) {
    return Matcher(outline, first, moved, round_height_mm, attempt).run();
}

}  // namespace roundwright
