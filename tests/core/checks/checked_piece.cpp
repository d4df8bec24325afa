#include "tests/core/checks/checked_piece.h"

#include "core/toy/edits.h"

namespace roundwright::test {

Toy toy_of(const std::vector<int>& counts) {
    Toy toy;
    toy.gauge = GivenGauge{{5, 5, 0, 0}};
    Piece& piece = toy.pieces.emplace_back();
    piece.area_stretch = unstuffed_stretch;
    for (const int count : counts) piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    return toy;
}

Toy stuffed_toy_of(const std::vector<int>& counts) {
    Toy toy = toy_of(counts);
    toy.pieces[0].area_stretch = medium_stuffing_stretch;
    toy.pieces[0].end = End::drawn_closed;
    return toy;
}

std::vector<int> ball(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 1; i <= n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return counts;
}

std::vector<int> disc(int increases, int rounds) {
    std::vector<int> counts;
    for (int i = 1; i <= rounds; ++i) counts.push_back(increases * i);
    return counts;
}

std::vector<Check> checks_of(const Toy& toy) { return study_piece(toy, 0).checks(); }

std::vector<Check> checks_of(const Toy& toy, CheckCode code) {
    std::vector<Check> checks = checks_of(toy);
    std::erase_if(checks, [code](const Check& check) { return check.code != code; });
    return checks;
}

Toy cured(const Toy& toy, const Cure& cure) {
    Toy edited = toy;
    edited.pieces[0] = replace_rounds(toy.pieces[0], static_cast<std::size_t>(cure.first),
                                      static_cast<std::size_t>(cure.replaced), cure.rounds)
                           .value;
    return edited;
}

std::vector<int> counts_of(const std::vector<Round>& rounds) {
    std::vector<int> counts;
    for (const Round& round : rounds) counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    return counts;
}

std::string named(const std::vector<Check>& checks) {
    std::string names;
    for (const Check& check : checks) {
        names +=
            std::string(check_code_name(check.code)) + " round " + std::to_string(check.round + 1) + "; ";
    }
    return names;
}

}  // namespace roundwright::test
