// The identical energy, from the identical start, by this program's solver and by general-purpose optimisers,
// in one run. Everyone gets the same value and gradient (core/shape/membrane.h).
//
// Stuffed: E - c ln V for the amount of stuffing c that a 4 % stretch takes. Unstuffed: E alone, which is a
// sum of squares, so that a least-squares solver with a sparse Cholesky factorization can be tried as well.
//
// All stop when their energy is within 1e-8 of the least, relatively (a second line has this solver go on to
// a relative gradient of 1e-9, and a third is the whole cold solve of the program, which also has to find c).
// A run of more than `patience` seconds is given up, and its ratio is then a lower bound.

#include <algorithm>
#include <ceres/ceres.h>
#include <cmath>
#include <cstdio>
#include <functional>
#include <limits>
#include <nlopt.h>
#include <string>
#include <time.h>
#include <vector>

#include "core/shape/cold_start.h"
#include "core/shape/minimise.h"
#include "tests/bench/shape_bench_piece.h"

namespace {

using namespace roundwright;

/// Processor time of this process, so that other work on the machine does not count. All run on one thread.
struct Clock {
    using time_point = double;
    static double now() {
        timespec time{};
        clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
        return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
    }
};

constexpr double patience = 10;
constexpr double relative_energy = 1e-8;

double seconds_since(Clock::time_point start) { return Clock::now() - start; }

/// One problem, its start and its solution.
struct Arena {
    explicit Arena(std::int64_t rounds, bool is_stuffed)
        : problem(bench::piece_of_rounds(rounds)),
          meridian(meridian_of(problem)),
          membrane(meridian, {}),
          stuffed(is_stuffed) {
        if (!stuffed) problem.area_stretch = 0;
        start = start_from_counts(meridian);
        const Shape shape = solve_shape(problem);
        stuffing = shape.pressure * shape.volume_mm3;
        reference_volume = shape.volume_mm3;
        least = shape.energy;
    }

    [[nodiscard]] double value(const Positions& x) const {
        const double energy = membrane.energy(x);
        if (!stuffed) return energy;
        const double volume = membrane.volume(x);
        if (!(volume > 0)) return std::numeric_limits<double>::infinity();
        return energy - stuffing * std::log(volume / reference_volume);
    }

    void gradient(const Positions& x, double* out) const {
        walls.resize(meridian.segments());
        membrane.take_walls(x, walls);
        membrane.energy_gradient(x, walls, out);
        if (!stuffed) return;
        volume_gradient.resize(x.size());
        membrane.volume_gradient(x, volume_gradient.data());
        const double pressure = stuffing / membrane.volume(x);
        for (std::size_t i = 0; i < x.size(); ++i) out[i] -= pressure * volume_gradient[i];
    }

    [[nodiscard]] double target() const { return least + relative_energy * std::abs(least); }

    ShapeProblem problem;
    Meridian meridian;
    Membrane membrane;
    bool stuffed;
    Positions start;
    double stuffing = 0;
    double reference_volume = 1;
    double least = 0;
    mutable std::vector<double> volume_gradient;
    mutable LyingWalls walls;
};

struct Run {
    std::string name;
    double seconds = 0;
    double energy = 0;
    long evaluations = 0;
    bool reached = false;
};

/// The median of enough runs to be read off a clock.
Run timed(const std::function<Run()>& once) {
    std::vector<Run> runs;
    double total = 0;
    while (runs.size() < 3 || (total < 0.2 && runs.size() < 200)) {
        runs.push_back(once());
        total += runs.back().seconds;
        if (total > patience) break;
    }
    std::sort(runs.begin(), runs.end(), [](const Run& a, const Run& b) { return a.seconds < b.seconds; });
    return runs[runs.size() / 2];
}

Run by_this_solver(const Arena& arena, double relative_gradient, const char* name) {
    const auto begin = Clock::now();
    MinimiseWorkspace workspace;
    Equilibrium state;
    state.x = arena.start;
    state.stuffing = arena.stuffing;
    state.holds_stuffing = arena.stuffed;
    minimise(arena.membrane, 0, {}, relative_gradient, 500, workspace, state);
    Run run{name, seconds_since(begin), arena.value(state.x), state.iterations, false};
    run.reached = run.energy <= arena.target();
    return run;
}

/// The coarsest relative gradient whose energy is within the others' tolerance.
double gradient_for_energy(const Arena& arena) {
    double gradient = 1;
    while (gradient > 1e-9 && !by_this_solver(arena, gradient, "").reached) gradient /= 10;
    return gradient;
}

/// As the program runs it: coarse to fine, with the stretch to find as well.
Run by_whole_solve(const Arena& arena) {
    const auto begin = Clock::now();
    const Shape shape = solve_shape(arena.problem);
    Run run{"this program's cold solve", seconds_since(begin), shape.energy, shape.iterations, false};
    run.reached = shape.termination == Termination::converged;
    return run;
}

class CeresFunction : public ceres::FirstOrderFunction {
  public:
    CeresFunction(const Arena& arena, long& evaluations) : arena_(arena), evaluations_(evaluations) {}
    bool Evaluate(const double* x, double* cost, double* gradient) const override {
        ++evaluations_;
        at_.assign(x, x + NumParameters());
        *cost = arena_.value(at_);
        if (!std::isfinite(*cost)) return false;
        if (gradient != nullptr) arena_.gradient(at_, gradient);
        return true;
    }
    int NumParameters() const override { return static_cast<int>(arena_.start.size()); }

  private:
    const Arena& arena_;
    long& evaluations_;
    mutable Positions at_;
};

class StopAtTarget : public ceres::IterationCallback {
  public:
    StopAtTarget(double target, Clock::time_point begin) : target_(target), begin_(begin) {}
    ceres::CallbackReturnType operator()(const ceres::IterationSummary& summary) override {
        if (summary.cost <= target_) return ceres::SOLVER_TERMINATE_SUCCESSFULLY;
        return seconds_since(begin_) > patience ? ceres::SOLVER_ABORT : ceres::SOLVER_CONTINUE;
    }

  private:
    double target_;
    Clock::time_point begin_;
};

Run by_ceres_lbfgs(const Arena& arena) {
    const auto begin = Clock::now();
    Run run{"Ceres L-BFGS"};
    ceres::GradientProblem problem(new CeresFunction(arena, run.evaluations));
    ceres::GradientProblemSolver::Options options;
    options.line_search_direction_type = ceres::LBFGS;
    options.max_lbfgs_rank = 20;
    options.max_num_iterations = 10'000'000;
    options.function_tolerance = 0;
    options.gradient_tolerance = 0;
    options.parameter_tolerance = 0;
    options.logging_type = ceres::SILENT;
    StopAtTarget stop(arena.target(), begin);
    options.callbacks.push_back(&stop);
    Positions x = arena.start;
    ceres::GradientProblemSolver::Summary summary;
    ceres::Solve(options, problem, x.data(), &summary);
    run.seconds = seconds_since(begin);
    run.energy = arena.value(x);
    run.reached = run.energy <= arena.target();
    return run;
}

/// One loop, wall or turn as the residual whose half square it is.
class LoopResidual : public ceres::SizedCostFunction<1, 2> {
  public:
    LoopResidual(double radius, double stiffness, double compression_factor)
        : radius_(radius),
          tension_(std::sqrt(stiffness)),
          compression_(std::sqrt(stiffness * compression_factor)) {}
    bool Evaluate(double const* const* x, double* residual, double** jacobian) const override {
        const double root = x[0][0] < radius_ ? compression_ : tension_;
        residual[0] = root * (x[0][0] - radius_);
        if (jacobian != nullptr && jacobian[0] != nullptr) {
            jacobian[0][0] = root;
            jacobian[0][1] = 0;
        }
        return true;
    }

  private:
    double radius_, tension_, compression_;
};

class WallResidual : public ceres::SizedCostFunction<1, 2, 2> {
  public:
    WallResidual(double height, double stiffness) : height_(height), root_(std::sqrt(stiffness)) {}
    bool Evaluate(double const* const* x, double* residual, double** jacobian) const override {
        const double r = x[1][0] - x[0][0];
        const double z = x[1][1] - x[0][1];
        const double length = std::sqrt(r * r + z * z + 1e-24);
        residual[0] = root_ * (length - height_);
        for (int end = 0; jacobian != nullptr && end < 2; ++end) {
            if (jacobian[end] == nullptr) continue;
            const double sign = end == 0 ? -root_ : root_;
            jacobian[end][0] = sign * r / length;
            jacobian[end][1] = sign * z / length;
        }
        return true;
    }

  private:
    double height_, root_;
};

struct TurnResidual {
    double root;
    template <class T>
    bool operator()(const T* a, const T* b, const T* c, T* residual) const {
        const T br = b[0] - a[0], bz = b[1] - a[1], cr = c[0] - b[0], cz = c[1] - b[1];
        const T bl = sqrt(br * br + bz * bz + 1e-24), cl = sqrt(cr * cr + cz * cz + 1e-24);
        residual[0] = root * (cr / cl - br / bl);
        residual[1] = root * (cz / cl - bz / bl);
        return true;
    }
};

/// Levenberg and Marquardt with a sparse Cholesky factorization, on the unstuffed piece.
Run by_ceres_least_squares(const Arena& arena) {
    const ShapeOptions constants;
    Positions x = arena.start;
    const auto begin = Clock::now();
    Run run{"Ceres least squares"};
    ceres::Problem problem;
    const auto node = [&](std::size_t i) { return x.data() + 2 * i; };
    const Meridian& m = arena.meridian;
    for (std::size_t i = 0; i < m.nodes(); ++i) {
        problem.AddParameterBlock(node(i), 2);
        const double below = i > 0 ? m.rest_height[i - 1] : 0;
        const double above = i < m.segments() ? m.rest_height[i] : 0;
        const double area = m.rest_loop[i] * (below + above) / 2;
        const double radius = m.rest_loop[i] / (2 * std::numbers::pi);
        if (radius > 0)
            problem.AddResidualBlock(
                new LoopResidual(radius, constants.course_stiffness * area / (radius * radius),
                                 constants.compression_factor),
                nullptr, node(i));
        if (below > 0 && above > 0)
            problem.AddResidualBlock(new ceres::AutoDiffCostFunction<TurnResidual, 2, 2, 2, 2>(
                                         new TurnResidual{std::sqrt(constants.bending_stiffness * area)}),
                                     nullptr, node(i - 1), node(i), node(i + 1));
    }
    for (std::size_t s = 0; s < m.segments(); ++s) {
        const double h = m.rest_height[s];
        const double area = (m.rest_loop[s] + m.rest_loop[s + 1]) / 2 * h;
        problem.AddResidualBlock(new WallResidual(h, constants.wale_stiffness * area / (h * h)), nullptr,
                                 node(s), node(s + 1));
    }
    if (m.first_on_axis)
        problem.SetParameterBlockConstant(node(0));
    else
        problem.SetManifold(node(0), new ceres::SubsetManifold(2, {1}));
    if (m.last_on_axis) problem.SetManifold(node(m.nodes() - 1), new ceres::SubsetManifold(2, {0}));
    ceres::Solver::Options options;
    options.linear_solver_type = ceres::SPARSE_NORMAL_CHOLESKY;
    options.max_num_iterations = 1'000'000;
    options.function_tolerance = 0;
    options.gradient_tolerance = 0;
    options.parameter_tolerance = 0;
    options.num_threads = 1;
    options.logging_type = ceres::SILENT;
    StopAtTarget stop(arena.target(), begin);
    options.callbacks.push_back(&stop);
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
    run.seconds = seconds_since(begin);
    run.evaluations = summary.num_successful_steps + summary.num_unsuccessful_steps;
    run.energy = arena.value(x);
    run.reached = run.energy <= arena.target();
    return run;
}

struct NloptState {
    const Arena* arena;
    nlopt_opt optimiser;
    Clock::time_point begin;
    long evaluations = 0;
    double best = std::numeric_limits<double>::infinity();
};

double nlopt_value(unsigned count, const double* x, double* gradient, void* data) {
    auto& state = *static_cast<NloptState*>(data);
    ++state.evaluations;
    const Positions at(x, x + count);
    const double value = state.arena->value(at);
    if (!std::isfinite(value)) return 1e30;
    if (gradient != nullptr) state.arena->gradient(at, gradient);
    state.best = std::min(state.best, value);
    if (value <= state.arena->target() || seconds_since(state.begin) > patience)
        nlopt_force_stop(state.optimiser);
    return value;
}

Run by_nlopt(const Arena& arena, nlopt_algorithm algorithm, const char* name) {
    Run run{name};
    nlopt_opt optimiser = nlopt_create(algorithm, static_cast<unsigned>(arena.start.size()));
    NloptState state{&arena, optimiser, Clock::now()};
    nlopt_set_min_objective(optimiser, nlopt_value, &state);
    Positions x = arena.start;
    double value = 0;
    // It gives up by itself now and then, short of the least; go on from where it stood.
    for (int again = 0; again < 50 && state.best > arena.target() && seconds_since(state.begin) < patience;
         ++again)
        nlopt_optimize(optimiser, x.data(), &value);
    run.seconds = seconds_since(state.begin);
    run.evaluations = state.evaluations;
    run.energy = state.best;
    run.reached = state.best <= arena.target();
    nlopt_destroy(optimiser);
    return run;
}

void compare(std::int64_t rounds, bool stuffed) {
    const Arena arena(rounds, stuffed);
    const double enough = gradient_for_energy(arena);
    std::vector<Run> runs{
        timed([&] { return by_this_solver(arena, enough, "this solver"); }),
        timed([&] { return by_this_solver(arena, 1e-9, "this solver, to 1e-9"); }),
        timed([&] { return by_whole_solve(arena); }),
        timed([&] { return by_ceres_lbfgs(arena); }),
        timed([&] { return by_nlopt(arena, NLOPT_LD_LBFGS, "NLopt L-BFGS"); }),
        timed([&] { return by_nlopt(arena, NLOPT_LD_TNEWTON_PRECOND_RESTART, "NLopt truncated Newton"); }),
        timed([&] { return by_nlopt(arena, NLOPT_LD_VAR2, "NLopt variable metric"); })};
    if (!stuffed) runs.push_back(timed([&] { return by_ceres_least_squares(arena); }));
    std::printf("\n%s, %ld rounds, least energy %.10g\n", stuffed ? "stuffed" : "unstuffed",
                static_cast<long>(rounds), arena.least);
    std::printf("  %-26s %12s %10s %14s %16s %12s\n", "", "time", "steps", "energy - least", "times this",
                "times cold");
    for (const Run& run : runs) {
        const char* bound = run.reached ? "" : ">";
        std::printf("  %-26s %9.3f ms %10ld %14.1e %15s%.1f %11s%.1f%s\n", run.name.c_str(),
                    1e3 * run.seconds, run.evaluations, (run.energy - arena.least) / std::abs(arena.least),
                    bound, run.seconds / runs[0].seconds, bound, run.seconds / runs[2].seconds,
                    run.reached ? "" : "   gave up");
    }
    std::fflush(stdout);
}

}  // namespace

int main(int count, char** arguments) {
    google::InitGoogleLogging(arguments[0]);
    std::vector<std::int64_t> rounds;
    for (int i = 1; i < count; ++i) rounds.push_back(std::atoll(arguments[i]));
    if (rounds.empty()) rounds = {15, 60, 300, 3000};
    for (const std::int64_t n : rounds)
        for (const bool stuffed : {true, false}) compare(n, stuffed);
}
