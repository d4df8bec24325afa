#include "core/face/work_steps.h"

#include <algorithm>

#include "core/face/feature_fit.h"
#include "core/face/opening.h"

namespace roundwright {
namespace {

void add_features(const Piece& piece, const std::vector<double>& openings, double start_opening,
                  std::vector<WorkStep>& steps) {
    const int last = static_cast<int>(openings.size()) - 1;
    for (std::size_t k = 0; k < piece.features.size(); ++k) {
        const Feature& feature = piece.features[k];
        if (!has_washer(feature.kind)) continue;
        const FittingTime time =
            fitting_time(feature.round, washer_diameter_mm(feature), openings, start_opening);
        const int after = std::min(time.recommended.value_or(time.earliest), last);
        steps.push_back({after, StepKind::fit_feature, static_cast<int>(k)});
    }
}

void add_stuffing(const Piece& piece, const std::vector<double>& openings, std::vector<WorkStep>& steps) {
    const StuffingTime time = stuffing_time(piece, openings);
    if (!time.begin || !time.finish) return;
    if (*time.finish <= *time.begin) {
        steps.push_back({*time.begin, StepKind::stuff});
        return;
    }
    steps.push_back({*time.begin, StepKind::begin_stuffing});
    steps.push_back({*time.finish, StepKind::finish_stuffing});
}

}  // namespace

std::vector<WorkStep> work_steps(const Piece& piece, const std::vector<double>& rest_loop_mm,
                                 double fabric_mm) {
    std::vector<WorkStep> steps;
    if (piece.rounds.empty() || rest_loop_mm.size() != piece.rounds.size() + 1) return steps;
    const std::vector<double> openings = openings_mm(rest_loop_mm, fabric_mm);
    add_features(piece, openings, start_opening_mm(piece.start, rest_loop_mm, fabric_mm), steps);
    add_stuffing(piece, openings, steps);
    std::stable_sort(steps.begin(), steps.end(),
                     [](const WorkStep& a, const WorkStep& b) { return a.after_round < b.after_round; });
    return steps;
}

}  // namespace roundwright
