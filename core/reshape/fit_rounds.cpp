#include "core/reshape/fit_rounds.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/base/limits.h"

namespace roundwright {
namespace {

using Eigen::Vector2d;
using std::numbers::pi;

constexpr int most_scale_steps = 8;
constexpr int corrections = 3;
constexpr int most_nudges = 8;
constexpr double near_enough = 0.6;  // of half a round: there and back is within a round then
constexpr std::size_t most_rounds_nudged = 80;

double whole(double value) { return std::floor(value + 0.5); }

std::vector<double> relative(const std::vector<double>& places, double rounds) {
    std::vector<double> parts;
    for (double place : places) parts.push_back(place / rounds);
    return parts;
}

Size size_of(const Shape& shape) { return {shape.width_mm, shape.height_mm}; }

Vector2d log_ratio(const Size& wanted, const Size& reached) {
    return {std::log(wanted.width_mm / reached.width_mm), std::log(wanted.height_mm / reached.height_mm)};
}

// Stitches more a round that lie flat.
double flat_growth(const Gauge& gauge) { return 2 * pi * gauge.round_height_mm / gauge.stitch_width_mm; }

// A chain that round 1 goes straight on from has the loops of round 1.
bool goes_straight_on(const StitchProfile& profile) {
    return std::abs(profile.stitches_at(1) - profile.stitches.front()) < 0.5;
}

int whole_foundation(const FitProblem& problem, const ProfileScale& scale) {
    const double loops = scale.around * problem.profile.stitches.front();
    if (problem.foundation == Foundation::loops_in_pairs) return 2 * std::max(1, int(whole(loops / 2)));
    return std::max(3, int(whole(loops)));
}

int foundation_loops(const FitProblem& problem, const ProfileScale& scale, const CountProblem& counts,
                     int first_round) {
    if (problem.foundation == Foundation::none) return 0;
    if (!problem.kept.empty()) return problem.kept_foundation;
    if (problem.foundation == Foundation::ring_of_chains) return whole_foundation(problem, scale);
    return counts.loops_below > 0 ? counts.loops_below : first_round;
}

// Loops that limit round 1; 0: none, or they follow it.
int loops_below_first(const FitProblem& problem, const ProfileScale& scale) {
    if (problem.foundation == Foundation::none || problem.foundation == Foundation::ring_of_chains) return 0;
    if (!problem.kept.empty()) return problem.kept_foundation;
    if (problem.foundation == Foundation::loops && goes_straight_on(problem.profile)) return 0;
    return whole_foundation(problem, scale);
}

class Fitter {
  public:
    explicit Fitter(const FitProblem& problem) : p_(problem), scale_(problem.scale) {}

    Fit run() {
        if (!p_.in_proportion) {
            consider(near(rounds_wanted(p_.profile, scale_, p_.fan_rounds)).front(), p_.tidiness, scale_);
            if (is_within()) return best_;
            find_scale();
        }
        const double rounds = rounds_wanted(p_.profile, scale_, p_.fan_rounds);
        for (double tidiness : {p_.tidiness, p_.tidiness / 2, p_.tidiness / 4, 0.0}) {
            for (int n : near(rounds)) correct(n, tidiness);
            if (!is_near()) nudge(runs_of_equal_counts());
            if (is_near()) return best_;
        }
        for (int i = 0; i < most_nudges && !is_within(); ++i)
            if (best_.counts.size() > most_rounds_nudged || !nudge(single_rounds())) break;
        return best_;
    }

    Fit cut(const Shape* warm) {
        if (warm != nullptr) warm_ = *warm;
        const double rounds = rounds_wanted(p_.profile, scale_, p_.fan_rounds);
        consider(near(rounds).front(), p_.tidiness, scale_);
        return best_;
    }

  private:
    // Nearest first; never so few that none is left after those kept.
    std::vector<int> near(double rounds) const {
        const int least = std::max<int>(1, static_cast<int>(p_.kept.size()));
        const double most = double(max_rounds_per_piece);
        const int n = static_cast<int>(whole(std::clamp(rounds, 1.0, most)));
        const int other = rounds > n ? n + 1 : n - 1;
        std::vector<int> numbers;
        for (int k : {n, other, 2 * n - other})
            if (k >= least && k <= int(max_rounds_per_piece)) numbers.push_back(k);
        if (numbers.empty()) numbers.push_back(least);
        return numbers;
    }

    Shape solve(const RoundsDraft& draft) {
        ShapeOptions options;
        options.stop = p_.stop;
        Shape shape = solve_shape(p_.problem_of(draft), options, warm_.usable() ? &warm_ : nullptr);
        if (shape.termination == Termination::converged) warm_ = shape;
        return shape;
    }

    // The size at a scale if stitches and rounds could be parted.
    std::optional<Size> size_at(const ProfileScale& scale) {
        const double wanted = rounds_wanted(p_.profile, scale, p_.fan_rounds);
        const int n = near(wanted).front();
        const auto places = places_of_rounds(p_.profile, scale, p_.fan_rounds, n, 0);
        RoundsDraft draft;
        draft.stitches = wanted_stitches(p_.profile, scale.around, places, flat_growth(p_.gauge));
        for (double& count : draft.stitches) count = std::max(count, 1.0);
        if (p_.foundation != Foundation::none)
            draft.foundation = std::max(scale.around * p_.profile.stitches.front(), 1.0);
        draft.ends_at = relative(places, p_.profile.rounds());
        draft.height_factor = std::max(wanted, 0.25) / n;
        const Shape shape = solve(draft);
        if (!shape.usable() || shape.height_mm <= 0) return std::nullopt;
        return size_of(shape);
    }

    void find_scale() {
        Eigen::Matrix2d inverse = Eigen::Matrix2d::Identity();
        Vector2d step = Vector2d::Zero();
        Vector2d before = Vector2d::Zero();
        double least = 1e300;
        ProfileScale scale = scale_;
        for (int i = 0; i < most_scale_steps && !p_.stop.stop_requested(); ++i) {
            const auto size = size_at(scale);
            if (!size) return;
            const Vector2d off = log_ratio(p_.wanted, *size);
            if (off.norm() < least) {
                least = off.norm();
                scale_ = scale;
            }
            if (off.norm() < 2e-3) return;
            if (i > 0) update(inverse, step, before - off);
            before = off;
            step = (inverse * off).cwiseMax(-0.4).cwiseMin(0.4);
            scale = {about(p_.scale.around, scale.around * std::exp(step[0])),
                     about(p_.scale.along, scale.along * std::exp(step[1]))};
        }
    }

    // A size that cannot be had would send the scale out of all proportion.
    static double about(double first, double scale) { return std::clamp(scale, first / 2, first * 2); }

    // Broyden's good update of the inverse Jacobian of (log size) over (log scale).
    static void update(Eigen::Matrix2d& inverse, const Vector2d& step, const Vector2d& change) {
        const Vector2d predicted = inverse * change;
        const double denominator = step.dot(predicted);
        if (std::abs(denominator) < 0.1 * step.squaredNorm()) return;
        inverse += (step - predicted) * (step.transpose() * inverse) / denominator;
    }

    void correct(int n, double tidiness) {
        ProfileScale scale = scale_;
        std::vector<int> counts;
        for (int i = 0; i < corrections && !p_.stop.stop_requested(); ++i) {
            const Fit fit = consider(n, tidiness, scale);
            if (!fit.found || fit.counts == counts) return;
            counts = fit.counts;
            scale.around *= p_.wanted.width_mm / fit.shape.width_mm;
        }
    }

    Fit consider(int n, double tidiness, const ProfileScale& scale) {
        const auto places = places_of_rounds(p_.profile, scale, p_.fan_rounds, n, int(p_.kept.size()));
        CountProblem counts = count_problem(p_, scale, places);
        counts.tidiness = tidiness;
        Fit fit;
        fit.scale = scale;
        fit.counts = choose_counts(counts).counts;
        fit.ends_at = relative(places, p_.profile.rounds());
        fit.foundation = foundation_loops(p_, scale, counts, fit.counts.front());
        counts.tidiness = p_.tidiness;
        confirm(fit, counts);
        return fit;
    }

    void confirm(Fit& fit, const CountProblem& counts) {
        RoundsDraft draft;
        draft.stitches.assign(fit.counts.begin(), fit.counts.end());
        draft.ends_at = fit.ends_at;
        draft.foundation = fit.foundation;
        fit.shape = solve(draft);
        fit.found = fit.shape.usable();
        if (!fit.found) return;
        fit.miss = size_miss(size_of(fit.shape), p_.wanted, p_.gauge);
        keep_better(fit, counts_cost(counts, fit.counts) / double(fit.counts.size()), counts);
    }

    // Of sizes within tolerance the nearer is better; the measure is half a round, whatever the size.
    double rounds_off(const Fit& fit) const {
        const double half = p_.gauge.round_height_mm / 2;
        return std::max(std::abs(fit.shape.width_mm - p_.wanted.width_mm),
                        std::abs(fit.shape.height_mm - p_.wanted.height_mm)) /
               half;
    }

    void keep_better(const Fit& fit, double mean_cost, const CountProblem& counts) {
        const double off = std::max(rounds_off(fit), fit.miss);
        const double merit = off * off + mean_cost + (fit.miss > 1 ? 1e6 * fit.miss : 0);
        if (best_.found && merit >= best_merit_) return;
        best_ = fit;
        best_merit_ = merit;
        best_problem_ = counts;
    }

    bool is_within() const { return best_.found && best_.miss <= 1; }
    bool is_near() const { return is_within() && rounds_off(best_) <= near_enough; }

    struct Run {
        std::size_t first = 0;
        std::size_t last = 0;
    };

    std::vector<Run> runs_of_equal_counts() const {
        std::vector<Run> runs;
        const auto& counts = best_.counts;
        for (std::size_t first = p_.kept.size(), last; first < counts.size(); first = last + 1) {
            last = first;
            while (last + 1 < counts.size() && counts[last + 1] == counts[first]) ++last;
            if (last > first) runs.push_back({first, last});
        }
        return runs;
    }

    std::vector<Run> single_rounds() const {
        std::vector<Run> runs;
        for (std::size_t i = p_.kept.size(); i < best_.counts.size(); ++i) runs.push_back({i, i});
        return runs;
    }

    // A few stitches more or fewer in one place; whether that brought the size nearer.
    bool nudge(const std::vector<Run>& runs) {
        const Fit from = best_;
        const CountProblem counts = best_problem_;
        for (const Run& run : runs) {
            for (int by : {-3, -2, -1, 1, 2, 3}) {
                if (p_.stop.stop_requested()) return false;
                Fit fit = from;
                for (std::size_t i = run.first; i <= run.last; ++i) fit.counts[i] += by;
                if (std::isfinite(counts_cost(counts, fit.counts))) confirm(fit, counts);
            }
        }
        return best_.counts != from.counts;
    }

    const FitProblem& p_;
    ProfileScale scale_;
    Shape warm_;
    Fit best_;
    double best_merit_ = 0;
    CountProblem best_problem_;
};

}  // namespace

double size_tolerance_mm(double wanted_mm, const Gauge& gauge) {
    return std::max(gauge.round_height_mm / 2, 0.02 * wanted_mm);
}

double size_miss(const Size& reached, const Size& wanted, const Gauge& gauge) {
    const auto over = [&](double r, double t) { return std::abs(r - t) / size_tolerance_mm(t, gauge); };
    const double height = reached.width_mm * wanted.height_mm / wanted.width_mm;
    const double allowed = std::max(gauge.round_height_mm / 2, 0.03 * height);
    return std::max({over(reached.width_mm, wanted.width_mm), over(reached.height_mm, wanted.height_mm),
                     std::abs(reached.height_mm - height) / allowed});
}

CountProblem count_problem(const FitProblem& problem, const ProfileScale& scale,
                           const std::vector<double>& places) {
    CountProblem counts;
    counts.flat_growth = flat_growth(problem.gauge);
    counts.half_round = counts.flat_growth / 4;
    counts.wanted = wanted_stitches(problem.profile, scale.around, places, counts.flat_growth);
    counts.kept = problem.kept;
    if (problem.accepted_at) counts.accepted = problem.accepted_at(places);
    counts.loops_below = loops_below_first(problem, scale);
    counts.start_count = problem.start_count;
    counts.tidiness = problem.tidiness;
    return counts;
}

Fit fit_rounds(const FitProblem& problem) { return Fitter(problem).run(); }

Fit cut_rounds(const FitProblem& problem, const Shape* warm) { return Fitter(problem).cut(warm); }

}  // namespace roundwright
