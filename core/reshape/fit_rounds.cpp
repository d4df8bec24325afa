#include "core/reshape/fit_rounds.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "core/reshape/count_cost.h"
#include "core/reshape/draft_solver.h"
#include "core/reshape/fabric_flaws.h"
#include "core/reshape/find_scale.h"
#include "core/reshape/trim_counts.h"

namespace roundwright {
namespace {

constexpr int most_corrections = 3;
constexpr int most_trims = 4;
constexpr std::size_t most_rounds_trimmed = 120;
constexpr int most_passes = 4;
constexpr double more_unlike = 2;  // stitches a round off here and there, no edge yet
constexpr std::size_t most_rounds_polished = 60;
constexpr int most_recuts = 5;
constexpr std::size_t most_rounds_compared = 120;  // with an outline, point by point

// What one awkward round (`awkward_rounds`) is worth at a tidiness of 1/2: half a half round of size or of
// outline. So three rounds of 28 give way to 30 where that is nearly a half round off, which is one or two
// millimetres in the usual yarns.
constexpr double worth_of_tidy = 0.25;
constexpr double most_worth = 1e3;
constexpr double very_tidy = 0.85;

struct Candidate {
    RoundsCut cut;
    Shape shape;
    FabricFlaws flaws;
    double miss = 0;
    double off = 0;  // half rounds, or over what is allowed if that is more
    double merit = 0;

    bool found() const { return shape.usable(); }
};

class Fitter {
  public:
    explicit Fitter(const FitProblem& problem) : p_(problem), solver_(problem), scale_(problem.scale) {}

    Fit run() {
        if (!p_.in_proportion) {
            try_cut(cut_profile(p_, scale_, nearest_numbers_of_rounds(p_, scale_).front(), p_.tidiness));
            if (is_within()) {
                try_tidy(nearest_numbers_of_rounds(p_, scale_));
                return fit();
            }
            scale_ = find_scale(p_, solver_);
        }
        const auto numbers = nearest_numbers_of_rounds(p_, scale_);
        try_tidy(numbers);
        for (double tidiness : {p_.tidiness, p_.tidiness / 2, p_.tidiness / 4, 0.0}) {
            std::vector<Candidate> made;
            for (int n : numbers) made.push_back(correct(n, tidiness));
            if (is_near()) return fit();
            if (tidiness < p_.tidiness) continue;
            for (const Candidate& candidate : made) widen_runs(candidate);
            if (is_near()) return fit();
        }
        trim_all(numbers, Trim::lightly);
        if (!is_within()) trim_all(numbers, Trim::hard);
        polish(best_);
        for (int n : numbers)
            if (!is_near()) polish(correct(n, 0));
        return fit();
    }

    Fit cut(int rounds, const Shape* warm) {
        if (warm != nullptr) solver_.start_from(*warm);
        try_cut(cut_profile(p_, scale_, rounds, p_.tidiness));
        return fit();
    }

  private:
    // A cut; if its fabric has flaws, cuts that are held back from them.
    Candidate try_cut(RoundsCut cut) {
        Candidate made = consider(std::move(cut));
        for (int i = 0; i < most_recuts && made.found() && made.flaws.rounds() > 0; ++i) {
            if (p_.stop.stop_requested()) break;
            made = consider(recut_without(made.flaws, p_, made.cut, i));
        }
        return made;
    }

    // Tidy counts at the sizes at which the widest round is a tidy one, if those are a round or so off.
    void try_tidy(const std::vector<int>& numbers) {
        if (!(p_.tidiness > 0)) return;
        for (const double scale : tidy_scales())
            for (const int n : numbers)
                for (const double tidiness : {1.0, very_tidy, p_.tidiness}) {
                    if (p_.stop.stop_requested()) return;
                    try_cut(cut_profile(p_, {scale, scale_.along}, n, tidiness));
                }
    }

    std::vector<double> tidy_scales() const {
        const auto& stitches = p_.profile.stitches;
        const double widest = scale_.around * *std::max_element(stitches.begin(), stitches.end());
        CountProblem start;
        start.start_count = p_.start_count;
        const int unit = tidy_unit(start);
        const double most_off = 1.5 * p_.gauge.round_height_mm / p_.wanted.width_mm;
        std::vector<double> scales{scale_.around};
        for (const double times : {std::floor(widest / unit), std::ceil(widest / unit)}) {
            const double by = times * unit / widest;
            if (std::abs(by - 1) <= most_off) scales.push_back(scale_.around * by);
        }
        return scales;
    }

    // Cuts into so many rounds, as much wider each time as the shape is too narrow.
    Candidate correct(int rounds, double tidiness) {
        ProfileScale scale = scale_;
        Candidate best;
        std::vector<int> before;
        for (int i = 0; i < most_corrections && !p_.stop.stop_requested(); ++i) {
            const Candidate made = try_cut(cut_profile(p_, scale, rounds, tidiness));
            if (!made.found() || made.cut.counts == before) break;
            if (!best.found() || made.merit < best.merit) best = made;
            before = made.cut.counts;
            scale.around *= p_.wanted.width_mm / made.shape.width_mm;
        }
        return best;
    }

    // Every run of equal rounds a stitch or two wider or narrower, before single rounds are.
    void widen_runs(const Candidate& from) {
        if (!from.found() || from.cut.counts.size() > most_rounds_polished) return;
        const auto& counts = from.cut.counts;
        for (std::size_t first = p_.kept.size(), last; first < counts.size(); first = last + 1) {
            last = first;
            while (last + 1 < counts.size() && counts[last + 1] == counts[first]) ++last;
            for (const int by : {-2, -1, 1, 2}) {
                if (last == first || p_.stop.stop_requested()) break;
                RoundsCut cut = from.cut;
                for (std::size_t i = first; i <= last; ++i) cut.counts[i] += by;
                if (std::isfinite(unlikeness(cut))) consider(std::move(cut));
            }
        }
    }

    // Whether a tidy shape counts for more than a size that is near.
    enum class Trim { lightly, hard };

    void trim_all(const std::vector<int>& numbers, Trim how) {
        trim(best_, how);
        for (int n : numbers)
            if (!is_near()) trim(correct(n, 0), how);
    }

    // A few stitches more or fewer where that brings the size nearer.
    void trim(Candidate from, Trim how) {
        const double rounds = double(from.cut.counts.size());
        const double cost_weight = 1 / (how == Trim::lightly ? std::sqrt(rounds) : rounds);
        if (!from.found() || from.cut.counts.size() > most_rounds_trimmed) return;
        for (int i = 0; i < most_trims && from.off > p_.near_enough && !p_.stop.stop_requested(); ++i) {
            const auto slope = size_slope(from.cut.draft(), from.shape, p_.kept.size(), solver_);
            const Size missing{p_.wanted.width_mm - from.shape.width_mm,
                               p_.wanted.height_mm - from.shape.height_mm};
            RoundsCut cut = from.cut;
            cut.counts =
                trimmed_counts(cut.problem, cut.counts, slope, missing, allowed_mm() / 2, cost_weight);
            if (cut.counts == from.cut.counts) return;
            from = consider(std::move(cut));
            if (!from.found()) return;
        }
    }

    // What the slopes do not see: every round in turn with a stitch more or fewer, solved, kept where it is
    // better and the outline hardly less like. Not for those who would rather have tidy rounds.
    void polish(Candidate from) {
        if (!from.found() || p_.tidiness > 0.5 || from.cut.counts.size() > most_rounds_polished) return;
        const double most_unlike = unlikeness(from.cut) + more_unlike;
        for (int pass = 0; pass < most_passes; ++pass) {
            const double before = from.merit;
            for (std::size_t round = p_.kept.size(); round < from.cut.counts.size(); ++round) {
                if (is_near() || p_.stop.stop_requested()) return;
                from = better_with(std::move(from), round, most_unlike);
            }
            if (from.merit >= before) return;
        }
    }

    Candidate better_with(Candidate from, std::size_t round, double most_unlike) {
        for (const int by : {-1, 1}) {
            RoundsCut cut = from.cut;
            cut.counts[round] += by;
            if (!(unlikeness(cut) <= most_unlike)) continue;
            Candidate made = consider(std::move(cut));
            if (made.found() && made.merit < from.merit) return made;
        }
        return from;
    }

    // The cost of counts but for their tidiness; infinite where they cannot be worked.
    static double unlikeness(const RoundsCut& cut) {
        CountProblem problem = cut.problem;
        problem.tidiness = 0;
        return counts_cost(problem, cut.counts);
    }

    double allowed_mm() const { return p_.near_enough * p_.gauge.round_height_mm / 2; }

    struct Solved {
        Shape shape;
        FabricFlaws flaws;
    };

    // Different scales often come to the same counts.
    const Solved& solve(const RoundsCut& cut) {
        const auto [at, is_new] = solved_.try_emplace({cut.foundation, cut.counts});
        if (!is_new) return at->second;
        const RoundsDraft draft = cut.draft();
        at->second.shape = solver_.solve(draft);
        if (at->second.shape.usable()) at->second.flaws = fabric_flaws(p_, draft, at->second.shape);
        return at->second;
    }

    Candidate consider(RoundsCut cut) {
        Candidate made{std::move(cut), {}, {}, 0, 0, 0};
        const Solved& solved = solve(made.cut);
        made.shape = solved.shape;
        made.flaws = solved.flaws;
        if (!made.found()) return made;
        const Size size = size_of(made.shape);
        made.miss = size_miss(size, p_.wanted, p_.gauge);
        made.off = std::max(half_rounds_off(size, p_.wanted, p_.gauge), made.miss);
        made.merit = merit(made);
        if (!best_.found() || made.merit < best_.merit) best_ = made;
        return made;
    }

    // Fabric that neither ruffles nor gathers before any size, within tolerance before out of it, without
    // gaps, near enough before further off; and then, in half rounds, the nearer in size and outline, with
    // what awkward rounds are worth on top.
    double merit(const Candidate& made) const {
        const double cost = counts_cost(made.cut.problem, made.cut.counts) / double(made.cut.counts.size());
        const double too_far = std::max(0.0, made.off - p_.near_enough);
        const double apart = half_rounds_apart(made.shape);
        return made.off * made.off + apart * apart + cost + untidiness(made.cut) + 1e3 * too_far +
               (made.flaws.gaps ? 1e5 : 0) + (made.miss > 1 ? 1e6 * made.miss : 0) +
               1e9 * double(made.flaws.rounds());
    }

    double untidiness(const RoundsCut& cut) const {
        const double t = std::clamp(p_.tidiness, 0.0, 1.0);
        const double worth = t < 1 ? std::min(worth_of_tidy * t / (1 - t), most_worth) : most_worth;
        return worth * awkward_rounds(cut.problem, cut.counts);
    }

    double half_rounds_apart(const Shape& shape) const {
        if (p_.outline.points.empty() || shape.radius_mm.size() > most_rounds_compared) return 0;
        const auto last = p_.profile.drawn_closed ? MeridianEnd::drawn_closed : MeridianEnd::open;
        return distance_mm(silhouette_of(shape, last), p_.outline) / (p_.gauge.round_height_mm / 2);
    }

    bool is_sound() const { return best_.found() && best_.flaws.rounds() == 0; }
    bool is_within() const { return is_sound() && best_.miss <= 1; }
    bool is_near() const { return is_sound() && best_.off <= p_.near_enough; }

    Fit fit() const {
        const RoundsCut& cut = best_.cut;
        Fit fit{cut.counts, cut.foundation, cut.ends_at, cut.scale, best_.shape};
        fit.miss = best_.miss;
        fit.flaws = best_.flaws.rounds();
        fit.found = best_.found();
        return fit;
    }

    const FitProblem& p_;
    DraftSolver solver_;
    ProfileScale scale_;
    Candidate best_;
    std::map<std::pair<int, std::vector<int>>, Solved> solved_;
};

}  // namespace

Fit fit_rounds(const FitProblem& problem) { return Fitter(problem).run(); }

Fit cut_rounds(const FitProblem& problem, int rounds, const Shape* warm) {
    return Fitter(problem).cut(rounds, warm);
}

}  // namespace roundwright
