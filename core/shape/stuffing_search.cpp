#include "core/shape/stuffing_search.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace roundwright {

namespace {

/// Of the stretch and of the stuffing: below it two of them are one.
constexpr double same_share = 1e-9;
constexpr int most_doublings = 60;
constexpr int most_divisions = 200;

class StuffingSearch {
  public:
    StuffingSearch(const Membrane& membrane, double stretch, const MinimiseLimits& limits,
                   MinimiseWorkspace<Membrane>& workspace)
        : membrane_(membrane), stretch_(stretch), limits_(limits), workspace_(workspace) {}

    [[nodiscard]] Equilibrium run(Equilibrium start) {
        const double least = start.least_stuffing;
        Equilibrium low = held(std::move(start), least);
        if (!is_settled(low) || excess(low) >= -same_share) return low;
        Equilibrium high = low;
        for (int k = 0; k < most_doublings && is_settled(high) && excess(high) < 0; ++k) {
            low = high;
            high = held(std::move(high), 2 * low.stuffing);
        }
        return is_settled(high) && excess(high) >= 0 ? divided(low, std::move(high)) : high;
    }

  private:
    static bool is_settled(const Equilibrium& state) { return state.termination == Termination::converged; }

    [[nodiscard]] Equilibrium held(Equilibrium state, double stuffing) {
        MinimiseLimits left = limits_;
        left.max_iterations -= iterations_;
        state.stuffing = stuffing;
        state.holds_stuffing = true;
        minimise(membrane_, stretch_, left, workspace_, state);
        iterations_ += state.iterations;
        state.iterations = iterations_;
        return state;
    }

    /// Of the stretch asked for, by how much it is more.
    [[nodiscard]] double excess(const Equilibrium& state) {
        membrane_.take_elements(state.x, walls_);
        return membrane_.area_stretch(state.x, walls_) / stretch_ - 1;
    }

    /// False position with the old end's weight halved (Illinois; Dowell and Jarratt 1971), and where that
    /// hardly moves, the geometric mean.
    [[nodiscard]] Equilibrium divided(Equilibrium low, Equilibrium high) {
        double below = excess(low);
        double above = excess(high);
        for (int k = 0; k < most_divisions && high.stuffing > low.stuffing * (1 + same_share); ++k) {
            const double share = k % 3 == 2 ? 0.5 : std::clamp(below / (below - above), 0.01, 0.99);
            const double stuffing = low.stuffing * std::pow(high.stuffing / low.stuffing, share);
            Equilibrium middle = held(high, stuffing);
            if (!is_settled(middle)) return middle;
            const double found = excess(middle);
            if (std::abs(found) <= same_share) return middle;
            (found < 0 ? low : high) = std::move(middle);
            if (found < 0) {
                below = found;
                above /= 2;
            } else {
                above = found;
                below /= 2;
            }
        }
        return high;
    }

    const Membrane& membrane_;
    double stretch_;
    const MinimiseLimits& limits_;
    MinimiseWorkspace<Membrane>& workspace_;
    LyingWalls walls_;
    int iterations_ = 0;
};

}  // namespace

Equilibrium search_stuffing(const Membrane& membrane, double stretch, const MinimiseLimits& limits,
                            MinimiseWorkspace<Membrane>& workspace, Equilibrium start) {
    return StuffingSearch(membrane, stretch, limits, workspace).run(std::move(start));
}

}  // namespace roundwright
