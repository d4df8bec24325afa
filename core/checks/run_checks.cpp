#include "core/checks/run_checks.h"

#include <algorithm>

#include "core/checks/check_said_numbers.h"
#include "core/checks/families.h"

namespace roundwright {

std::vector<Check> run_checks(const Toy& toy, std::size_t piece, const PieceStudy& study) {
    const CheckInput input{toy.pieces[piece], static_cast<int>(piece), study};
    std::vector<Check> checks;
    for (const auto family :
         {check_limits, check_gauge, check_counts, check_words, check_fabric, check_flat_marks, check_solver,
          check_corners, check_signs, check_seam, check_features}) {
        family(input, checks);
    }
    std::stable_sort(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
        return a.round != b.round ? a.round < b.round : a.severity > b.severity;
    });
    return checks;
}

std::vector<Check> checks_of_toy(std::span<const PieceStudy> studies) {
    std::vector<Check> all;
    for (const PieceStudy& study : studies) {
        for (const Check& check : study.checks) {
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

}  // namespace roundwright
