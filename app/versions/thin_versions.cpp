#include "app/versions/thin_versions.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace roundwright::app {
namespace {

constexpr double soonest_s = 60;  // below it, ages do not differ for anyone

/// Ages that never fall towards older versions: a clock that jumped made them.
std::vector<double> rising_ages(std::span<const AgedVersion> versions) {
    std::vector<double> ages;
    double age = 0;
    for (const AgedVersion& version : versions) {
        age = std::max(age, static_cast<double>(version.age_s));
        ages.push_back(age);
    }
    return ages;
}

/// The versions that are left while one after the other goes.
class Thinning {
  public:
    explicit Thinning(std::span<const AgedVersion> versions)
        : versions_(versions), ages_(rising_ages(versions)), left_(versions.size()) {
        std::iota(left_.begin(), left_.end(), std::size_t{0});
        for (const AgedVersion& version : versions) bytes_ += version.bytes;
    }

    [[nodiscard]] std::size_t count() const { return left_.size(); }
    [[nodiscard]] std::int64_t bytes() const { return bytes_; }

    /// Drops the one that is missed least; neither the newest so many nor, unless it is all there is besides,
    /// the oldest.
    void drop_one(std::size_t newest) {
        std::size_t least = left_.size() - 1;
        double least_gap = INFINITY;
        for (std::size_t at = newest; at + 1 < left_.size(); ++at) {
            const double gap = gap_without(at);
            if (gap >= least_gap) continue;
            least = at;
            least_gap = gap;
        }
        gone_.push_back(left_[least]);
        bytes_ -= versions_[left_[least]].bytes;
        left_.erase(left_.begin() + static_cast<std::ptrdiff_t>(least));
    }

    [[nodiscard]] std::vector<std::size_t> gone() && {
        std::ranges::sort(gone_);
        return std::move(gone_);
    }

  private:
    [[nodiscard]] double gap_without(std::size_t at) const {
        return std::log((ages_[left_[at + 1]] + soonest_s) / (ages_[left_[at - 1]] + soonest_s));
    }

    std::span<const AgedVersion> versions_;
    std::vector<double> ages_;
    std::vector<std::size_t> left_;
    std::vector<std::size_t> gone_;
    std::int64_t bytes_ = 0;
};

}  // namespace

std::vector<std::size_t> superfluous_versions(std::span<const AgedVersion> versions,
                                              const VersionLimits& limits) {
    Thinning thinning(versions);
    while (thinning.count() > std::max<std::size_t>(limits.most, 1))
        thinning.drop_one(std::max<std::size_t>(std::min(limits.newest, limits.most - 1), 1));
    while (thinning.bytes() > limits.bytes && thinning.count() > 1) thinning.drop_one(1);
    return std::move(thinning).gone();
}

}  // namespace roundwright::app
