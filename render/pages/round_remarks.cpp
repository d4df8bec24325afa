#include "render/pages/round_remarks.h"

#include <algorithm>

#include "core/face/feature_fit.h"
#include "core/face/opening.h"
#include "render/pages/feature_words.h"
#include "render/pages/pattern_words.h"

namespace roundwright::render {
namespace {

double start_opening(const PieceStudy& study) {
    const std::vector<double>& loops = study.problem.rest_loop_mm;
    if (study.problem.first != MeridianEnd::open || loops.empty()) return 0;
    return openings_mm({0, loops.front()}).front();
}

void add_features(std::vector<RoundRemark>& remarks, const Piece& piece, const PieceStudy& study,
                  const std::vector<double>& openings) {
    for (const Feature& feature : piece.features) {
        if (!has_washer(feature.kind)) continue;
        const FittingTime time =
            fitting_time(feature.round, washer_diameter_mm(feature), openings, start_opening(study));
        const int last = static_cast<int>(openings.size()) - 1;
        const int after = std::min(time.recommended.value_or(time.earliest), last);
        remarks.push_back({after, fit_now_words(feature)});
    }
}

void add_stuffing(std::vector<RoundRemark>& remarks, const Piece& piece,
                  const std::vector<double>& openings) {
    const StuffingTime time = stuffing_time(piece, openings);
    if (!time.begin) return;
    const int last = static_cast<int>(openings.size()) - 1;
    if (piece.end == End::left_open && *time.begin == last) return;
    remarks.push_back({*time.begin, words("Begin to stuff, and go on as the piece closes.")});
    if (time.finish && *time.finish > *time.begin) {
        remarks.push_back({*time.finish, words("Finish stuffing now, while it still goes in.")});
    }
}

}  // namespace

std::vector<RoundRemark> round_remarks(const Piece& piece, const PieceStudy& study) {
    std::vector<RoundRemark> remarks;
    const std::vector<double> openings = openings_mm(study.problem.rest_loop_mm);
    if (openings.empty()) return remarks;
    add_features(remarks, piece, study, openings);
    add_stuffing(remarks, piece, openings);
    std::stable_sort(remarks.begin(), remarks.end(),
                     [](const RoundRemark& a, const RoundRemark& b) { return a.after < b.after; });
    return remarks;
}

std::vector<int> remarked_rounds(const std::vector<RoundRemark>& remarks) {
    std::vector<int> rounds;
    for (const RoundRemark& remark : remarks) {
        if (rounds.empty() || rounds.back() != remark.after) rounds.push_back(remark.after);
    }
    return rounds;
}

}  // namespace roundwright::render
