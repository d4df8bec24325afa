#include "core/face/geodesic.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace roundwright {

namespace {

/// The way as a chain of points at equal steps of angle; the unknowns are how far along the meridian each one
/// is.
class Way {
  public:
    Way(const SmoothProfile& profile, double from, double to, double angle, int parts)
        : profile_(profile),
          angle_(angle / parts),
          cosine_(std::cos(angle_)),
          along_(static_cast<std::size_t>(parts) + 1) {
        for (int k = 0; k <= parts; ++k) along_[static_cast<std::size_t>(k)] = from + (to - from) * k / parts;
    }

    /// Length of the way laid on the surface, each link followed in small parts rather than cut across.
    [[nodiscard]] double laid_length() const {
        constexpr int per_link = 8;
        const double part = std::cos(angle_ / per_link);
        double length = 0;
        for (std::size_t k = 0; k + 1 < along_.size(); ++k) {
            Sample before = profile_.at(along_[k]);
            for (int j = 1; j <= per_link; ++j) {
                const Sample here = profile_.at(along_[k] + (along_[k + 1] - along_[k]) * j / per_link);
                length += std::sqrt(std::max(0.0, squared(before, here, part)));
                before = here;
            }
        }
        return length;
    }

    /// One damped Gauss-Newton step on the length; false when it gains no more.
    bool improve() {
        const std::vector<double> step = direction();
        const double now = length_of(along_);
        for (double share = 1; share > 1e-4; share /= 2) {
            std::vector<double> tried = along_;
            for (std::size_t k = 1; k + 1 < tried.size(); ++k) {
                tried[k] = std::clamp(tried[k] - share * step[k], 0.0, profile_.end());
            }
            const double then = length_of(tried);
            if (then >= now) continue;
            along_ = std::move(tried);
            return now - then > 1e-13 * now;
        }
        return false;
    }

  private:
    using Sample = SmoothProfile::Sample;

    // |P2 - P1|^2 = r1^2 + r2^2 - 2 r1 r2 cos(step) + (y2 - y1)^2
    [[nodiscard]] static double squared(const Sample& a, const Sample& b, double cosine) {
        const double rise = b.point.y() - a.point.y();
        return a.point.x() * a.point.x() + b.point.x() * b.point.x() -
               2 * a.point.x() * b.point.x() * cosine + rise * rise;
    }

    [[nodiscard]] double length_of(const std::vector<double>& along) const {
        double length = 0;
        Sample before = profile_.at(along[0]);
        for (std::size_t k = 1; k < along.size(); ++k) {
            const Sample here = profile_.at(along[k]);
            length += std::sqrt(std::max(0.0, squared(before, here, cosine_)));
            before = here;
        }
        return length;
    }

    // Gradient and tridiagonal Gauss-Newton matrix of the sum of chord lengths, solved by the Thomas
    // algorithm.
    [[nodiscard]] std::vector<double> direction() const {
        const std::size_t n = along_.size();
        std::vector<double> gradient(n);
        std::vector<double> diagonal(n);
        std::vector<double> beside(n - 1);
        Sample a = profile_.at(along_[0]);
        for (std::size_t k = 0; k + 1 < n; ++k) {
            const Sample b = profile_.at(along_[k + 1]);
            const double length = std::max(std::sqrt(std::max(0.0, squared(a, b, cosine_))), 1e-12);
            const double rise = b.point.y() - a.point.y();
            const double da = (a.point.x() - b.point.x() * cosine_) * a.tangent.x() - rise * a.tangent.y();
            const double db = (b.point.x() - a.point.x() * cosine_) * b.tangent.x() + rise * b.tangent.y();
            const double ab = -cosine_ * a.tangent.x() * b.tangent.x() - a.tangent.y() * b.tangent.y();
            gradient[k] += da / length;
            gradient[k + 1] += db / length;
            diagonal[k] += (a.tangent.squaredNorm() - da * da / (length * length)) / length;
            diagonal[k + 1] += (b.tangent.squaredNorm() - db * db / (length * length)) / length;
            beside[k] = (ab - da * db / (length * length)) / length;
            a = b;
        }
        return solve(gradient, diagonal, beside);
    }

    static std::vector<double> solve(std::vector<double> right, std::vector<double> diagonal,
                                     const std::vector<double>& beside) {
        const std::size_t n = right.size();
        for (double& d : diagonal) d += 1e-9 + 1e-6 * d;
        for (std::size_t k = 2; k + 1 < n; ++k) {
            const double factor = beside[k - 1] / diagonal[k - 1];
            diagonal[k] -= factor * beside[k - 1];
            right[k] -= factor * right[k - 1];
        }
        right.front() = right.back() = 0;
        for (std::size_t k = n - 2; k >= 1; --k) {
            const double above = k + 2 < n ? beside[k] * right[k + 1] : 0;
            right[k] = (right[k] - above) / diagonal[k];
        }
        return right;
    }

    const SmoothProfile& profile_;
    double angle_;  ///< of one link
    double cosine_;
    std::vector<double> along_;
};

}  // namespace

double geodesic_length_mm(const SmoothProfile& profile, double from, double to, double angle) {
    if (profile.empty()) return 0;
    if (std::abs(angle) < 1e-9) return profile.length_mm(from, to);
    constexpr int parts = 96;
    constexpr int most_steps = 200;
    Way way(profile, from, to, angle, parts);
    for (int step = 0; step < most_steps && way.improve(); ++step) {
    }
    return way.laid_length();
}

}  // namespace roundwright
