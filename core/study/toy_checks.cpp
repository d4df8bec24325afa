#include "core/study/toy_checks.h"

#include <algorithm>

namespace roundwright {

std::vector<Check> checks_of_toy(std::span<const PieceStudy> studies) {
    std::vector<Check> all;
    for (const PieceStudy& study : studies) {
        for (const Check& check : study.checks()) {
            const auto same = [&check](const Check& other) {
                return other.piece == -1 && other.code == check.code;
            };
            if (check.piece != -1)
                all.push_back(check);
            else if (std::none_of(all.begin(), all.end(), same))
                all.insert(all.begin(), check);
        }
    }
    return all;
}

std::vector<Check> every_check(const Toy& toy, std::span<const PieceStudy> studies) {
    std::vector<Check> all = checks_of_toy(studies);
    for (Check& check : check_said_numbers(toy, counts_of_pieces(studies))) all.push_back(std::move(check));
    return all;
}

CountsOfPieces counts_of_pieces(std::span<const PieceStudy> studies) {
    CountsOfPieces counts;
    for (const PieceStudy& study : studies) counts.push_back(stitch_counts(study.graph().graph));
    return counts;
}

}  // namespace roundwright
