#include "core/differences/align.h"

#include <algorithm>
#include <cstdint>

namespace roundwright {
namespace {

enum class Step : std::uint8_t { both, only_before, only_after };

/// The part of two lists between what both begin with and what both end with.
struct Middle {
    std::size_t begin = 0;
    std::size_t before = 0;  ///< items
    std::size_t after = 0;
};

Middle middle_of(std::size_t before, std::size_t after, const AlignmentCosts& costs) {
    Middle middle;
    const std::size_t shorter = std::min(before, after);
    while (middle.begin < shorter && costs.change(middle.begin, middle.begin) == 0) ++middle.begin;
    std::size_t end = 0;
    while (end < shorter - middle.begin && costs.change(before - end - 1, after - end - 1) == 0) ++end;
    middle.before = before - middle.begin - end;
    middle.after = after - middle.begin - end;
    return middle;
}

/// The first step of the cheapest way from each pair of places to the end, row by row.
class StepTable {
  public:
    StepTable(const Middle& middle, const AlignmentCosts& costs)
        : middle_(middle), columns_(middle.after + 1), steps_((middle.before + 1) * columns_) {
        std::vector<int> below(columns_);
        for (std::size_t k = 0; k < columns_; ++k) {
            below[k] = static_cast<int>(middle.after - k) * costs.gap;
            at(middle.before, k) = Step::only_after;
        }
        for (std::size_t i = middle.before; i-- > 0;) fill_row(i, below, costs);
    }

    [[nodiscard]] Step step(std::size_t i, std::size_t k) const { return steps_[i * columns_ + k]; }

  private:
    Step& at(std::size_t i, std::size_t k) { return steps_[i * columns_ + k]; }

    void fill_row(std::size_t i, std::vector<int>& below, const AlignmentCosts& costs) {
        int diagonal = below.back();
        below.back() += costs.gap;
        at(i, middle_.after) = Step::only_before;
        for (std::size_t k = middle_.after; k-- > 0;) {
            const int both = diagonal + costs.change(middle_.begin + i, middle_.begin + k);
            const int only_before = below[k] + costs.gap;
            const int only_after = below[k + 1] + costs.gap;
            const int least = std::min({both, only_before, only_after});
            at(i, k) = least == both          ? Step::both
                       : least == only_before ? Step::only_before
                                              : Step::only_after;
            diagonal = below[k];
            below[k] = least;
        }
    }

    Middle middle_;
    std::size_t columns_;
    std::vector<Step> steps_;
};

}  // namespace

std::vector<AlignedPair> align(std::size_t before, std::size_t after, const AlignmentCosts& costs) {
    const Middle middle = middle_of(before, after, costs);
    const StepTable table(middle, costs);
    std::vector<AlignedPair> pairs;
    for (std::size_t i = 0; i < middle.begin; ++i) pairs.push_back({i, i});
    std::size_t i = 0;
    std::size_t k = 0;
    while (i < middle.before || k < middle.after) {
        AlignedPair pair;
        const Step step = table.step(i, k);
        if (step != Step::only_after) pair.before = middle.begin + i++;
        if (step != Step::only_before) pair.after = middle.begin + k++;
        pairs.push_back(pair);
    }
    for (std::size_t b = middle.begin + middle.before; b < before; ++b)
        pairs.push_back({b, b - middle.before + middle.after});
    return pairs;
}

}  // namespace roundwright
