#include "tests/core/recorded/made_up_pieces.h"

#include <algorithm>
#include <vector>

namespace roundwright::test {
namespace {

/// A run of rounds that change by the same number of stitches.
void add_run(Numbers& numbers, std::vector<int>& counts) {
    constexpr int changes[] = {6, 6, 6, 0, 0, -6, -6, 3, -3, 8, -5, 2};
    const int change = changes[numbers.next(0, 11)];
    for (int rounds = numbers.next(1, 7); rounds > 0; --rounds)
        counts.push_back(
            std::clamp(counts.back() + change, std::max(4, (counts.back() + 1) / 2), 2 * counts.back()));
}

}  // namespace

Piece made_up_piece(Numbers& numbers) {
    std::vector<int> counts{numbers.next(4, 8)};
    Piece piece;
    if (numbers.next(0, 3) == 0) {
        counts = {numbers.next(9, 30)};
        piece.start = OpenTube{counts[0]};
    }
    for (int runs = numbers.next(2, 6); runs > 0; --runs) add_run(numbers, counts);
    piece.end = numbers.next(0, 2) > 0 ? End::drawn_closed : End::left_open;
    while (piece.end == End::drawn_closed && counts.back() > 9)
        counts.push_back(std::max((counts.back() + 1) / 2, counts.back() - 6));
    std::size_t yarn = 0;
    for (const int count : counts) {
        Round& round = piece.rounds.emplace_back();
        WorkedEvenly even;
        even.stitches = count;
        if (numbers.next(0, 9) == 0) even.kind = StitchKind::half_double_crochet;
        if (numbers.next(0, 9) == 0) even.part = LoopPart::back;
        round.working = even;
        if (numbers.next(0, 4) == 0) yarn = static_cast<std::size_t>(numbers.next(0, 2));
        round.yarn = yarn;
        round.lies_flat = numbers.next(0, 8) == 0;
        if (numbers.next(0, 8) == 0) round.note = "n" + std::to_string(piece.rounds.size());
    }
    constexpr double stretches[] = {unstuffed_stretch, light_stuffing_stretch, medium_stuffing_stretch,
                                    medium_stuffing_stretch, firm_stuffing_stretch};
    piece.area_stretch = stretches[numbers.next(0, 4)];
    Feature& eyes = piece.features.emplace_back();
    eyes.round = numbers.next(0, static_cast<int>(counts.size()) - 1);
    eyes.stitches_apart = numbers.next(1, 12);
    eyes.stitches_right = 0.5 * numbers.next(-9, 9);
    eyes.end_round = numbers.next(0, static_cast<int>(counts.size()));
    eyes.end_stitches_right = 0.5 * numbers.next(-9, 9);
    return piece;
}

Feature made_up_feature(Numbers& numbers, int rounds) {
    Feature feature;
    feature.kind = static_cast<FeatureKind>(numbers.next(0, 4));
    feature.pair = numbers.next(0, 1) == 0;
    feature.round = numbers.next(0, rounds - 1);
    feature.stitches_apart = numbers.next(1, 14);
    feature.stitches_right = 0.5 * numbers.next(-8, 8);
    feature.width_mm = numbers.next(3, 26);
    feature.height_mm = numbers.next(0, 1) == 0 ? feature.width_mm : numbers.next(3, 18);
    if (numbers.next(0, 2) == 0) feature.washer_mm = numbers.next(6, 24);
    feature.lids = numbers.next(0, 3) == 0;
    feature.end_round = numbers.next(0, rounds - 1);
    feature.end_stitches_right = 0.5 * numbers.next(-8, 8);
    return feature;
}

}  // namespace roundwright::test
