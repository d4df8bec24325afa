#include <ceres/ceres.h>
#include <cmath>
#include <numbers>

#include "tests/bench/shape_optimisers.h"

namespace roundwright::bench {

namespace {

class Energy : public ceres::FirstOrderFunction {
  public:
    Energy(const Arena& arena, Clock::time_point begin, Run& run) : arena_(arena), begin_(begin), run_(run) {}
    bool Evaluate(const double* x, double* cost, double* gradient) const override {
        at_.assign(x, x + NumParameters());
        *cost = arena_.value(at_);
        if (!std::isfinite(*cost)) return false;
        note_value(arena_, *cost, begin_, run_);
        if (gradient != nullptr) arena_.gradient(at_, gradient);
        return true;
    }
    int NumParameters() const override { return static_cast<int>(arena_.start.size()); }

  private:
    const Arena& arena_;
    Clock::time_point begin_;
    Run& run_;
    mutable Positions at_;
};

class StopAtTarget : public ceres::IterationCallback {
  public:
    StopAtTarget(const Arena& arena, Clock::time_point begin) : arena_(arena), begin_(begin) {}
    ceres::CallbackReturnType operator()(const ceres::IterationSummary& summary) override {
        if (summary.cost <= arena_.target()) return ceres::SOLVER_TERMINATE_SUCCESSFULLY;
        return seconds_since(begin_) > patience_seconds ? ceres::SOLVER_ABORT : ceres::SOLVER_CONTINUE;
    }

  private:
    const Arena& arena_;
    Clock::time_point begin_;
};

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

void add_loops_and_turns(const Arena& arena, Positions& x, ceres::Problem& problem) {
    const ShapeOptions constants;
    const Meridian& m = arena.meridian;
    const auto node = [&](std::size_t i) { return x.data() + 2 * i; };
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
}

void add_walls(const Arena& arena, Positions& x, ceres::Problem& problem) {
    const ShapeOptions constants;
    const Meridian& m = arena.meridian;
    const auto node = [&](std::size_t i) { return x.data() + 2 * i; };
    for (std::size_t s = 0; s < m.segments(); ++s) {
        const double h = m.rest_height[s];
        const double area = (m.rest_loop[s] + m.rest_loop[s + 1]) / 2 * h;
        problem.AddResidualBlock(new WallResidual(h, constants.wale_stiffness * area / (h * h)), nullptr,
                                 node(s), node(s + 1));
    }
}

void fix_ends(const Arena& arena, Positions& x, ceres::Problem& problem) {
    const Meridian& m = arena.meridian;
    double* last = x.data() + 2 * (m.nodes() - 1);
    if (m.first_on_axis)
        problem.SetParameterBlockConstant(x.data());
    else
        problem.SetManifold(x.data(), new ceres::SubsetManifold(2, {1}));
    if (m.last_on_axis) problem.SetManifold(last, new ceres::SubsetManifold(2, {0}));
}

template <class Options>
Options without_tolerances() {
    Options options;
    options.max_num_iterations = 10'000'000;
    options.function_tolerance = 0;
    options.gradient_tolerance = 0;
    options.parameter_tolerance = 0;
    options.logging_type = ceres::SILENT;
    return options;
}

void finish(const Arena& arena, const Positions& x, Clock::time_point begin, Run& run) {
    run.seconds = seconds_since(begin);
    run.energy = arena.value(x);
    run.reached = run.energy <= arena.target();
}

}  // namespace

void run_ceres_lbfgs(const Arena& arena, Run& run) {
    const auto begin = Clock::now();
    ceres::GradientProblem problem(new Energy(arena, begin, run));
    auto options = without_tolerances<ceres::GradientProblemSolver::Options>();
    options.line_search_direction_type = ceres::LBFGS;
    options.max_lbfgs_rank = 20;
    StopAtTarget stop(arena, begin);
    options.callbacks.push_back(&stop);
    Positions x = arena.start;
    ceres::GradientProblemSolver::Summary summary;
    ceres::Solve(options, problem, x.data(), &summary);
    finish(arena, x, begin, run);
}

void run_ceres_least_squares(const Arena& arena, Run& run) {
    Positions x = arena.start;
    const auto begin = Clock::now();
    ceres::Problem problem;
    add_loops_and_turns(arena, x, problem);
    add_walls(arena, x, problem);
    fix_ends(arena, x, problem);
    auto options = without_tolerances<ceres::Solver::Options>();
    options.linear_solver_type = ceres::SPARSE_NORMAL_CHOLESKY;
    options.num_threads = 1;
    StopAtTarget stop(arena, begin);
    options.callbacks.push_back(&stop);
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
    run.evaluations = summary.num_successful_steps + summary.num_unsuccessful_steps;
    finish(arena, x, begin, run);
}

}  // namespace roundwright::bench
