#include <ceres/ceres.h>
#include <cmath>

#include "tests/bench/fabric_arena.h"

namespace roundwright::bench {

namespace {

class Energy : public ceres::FirstOrderFunction {
  public:
    explicit Energy(const FabricArena& arena) : arena_(arena) {}
    bool Evaluate(const double* x, double* cost, double* gradient) const override {
        at_.assign(x, x + NumParameters());
        *cost = arena_.value(at_);
        if (!std::isfinite(*cost)) return false;
        if (gradient != nullptr) arena_.gradient(at_, gradient);
        return true;
    }
    int NumParameters() const override { return static_cast<int>(arena_.start.size()); }

  private:
    const FabricArena& arena_;
    mutable Positions at_;
};

class Watch : public ceres::IterationCallback {
  public:
    Watch(const FabricArena& arena, double begin, double patience, Run& run)
        : arena_(arena), begin_(begin), patience_(patience), run_(run) {}
    ceres::CallbackReturnType operator()(const ceres::IterationSummary& summary) override {
        return note(arena_, summary.cost, begin_, patience_, run_) ? ceres::SOLVER_TERMINATE_SUCCESSFULLY
                                                                   : ceres::SOLVER_CONTINUE;
    }

  private:
    const FabricArena& arena_;
    double begin_;
    double patience_;
    Run& run_;
};

}  // namespace

Run fabric_by_ceres_lbfgs(const FabricArena& arena, double patience) {
    Run run;
    const auto begin = Clock::now();
    ceres::GradientProblem problem(new Energy(arena));
    ceres::GradientProblemSolver::Options options;
    options.line_search_direction_type = ceres::LBFGS;
    options.max_lbfgs_rank = 20;
    options.max_num_iterations = 10'000'000;
    options.function_tolerance = options.gradient_tolerance = options.parameter_tolerance = 0;
    options.logging_type = ceres::SILENT;
    Watch watch(arena, begin, patience, run);
    options.callbacks.push_back(&watch);
    Positions x = arena.start;
    ceres::GradientProblemSolver::Summary summary;
    ceres::Solve(options, problem, x.data(), &summary);
    return run;
}

}  // namespace roundwright::bench
