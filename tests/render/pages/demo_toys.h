#pragma once

#include <string>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright::render::testing {

inline Round even_round(int stitches, std::size_t yarn = 0) {
    Round round;
    round.working = WorkedEvenly{stitches};
    round.yarn = yarn;
    return round;
}

inline Piece piece_of(const std::string& name, const std::vector<int>& counts, End end = End::drawn_closed) {
    Piece piece;
    piece.name = name;
    piece.end = end;
    for (const int count : counts) piece.rounds.push_back(even_round(count));
    return piece;
}

/// n rounds of six increases, n even rounds, n of six decreases.
inline std::vector<int> ball_counts(int n) {
    std::vector<int> counts;
    for (int i = 1; i <= n; ++i) counts.push_back(6 * i);
    for (int i = 0; i < n; ++i) counts.push_back(6 * n);
    for (int i = n - 1; i >= 1; --i) counts.push_back(6 * i);
    return counts;
}

inline Yarn yarn_of(const std::string& name, Colour colour) {
    Yarn yarn;
    yarn.name = name;
    yarn.colour = colour;
    yarn.metres_per_100_g = 210;
    yarn.ball_grams = 50;
    return yarn;
}

/// An invented puffin: a body of two colours and two wings.
inline Toy puffin() {
    Toy toy;
    toy.title = "Puffin of the outer mole";
    toy.designer = "Harbour Hooks (invented)";
    toy.text.level = Level::easy;
    toy.text.introduction =
        "A round little puffin who watches the boats come in. He is worked in one piece from the bottom up, "
        "with two "
        "small wings sewn on.";
    toy.text.assembly =
        "Pin the wings to the sides between rounds 9 and 14.\nSew them on with their own tails.";
    toy.text.finishing = "Weave in all ends.\nRub the body between your hands until it is round.";
    toy.text.copyright = "All names and numbers in this pattern are invented.";
    toy.text.notions = "Two safety eyes, 8 mm\nTapestry needle\nStitch marker";
    toy.hook_mm = 3.5;
    toy.gauge = GivenGauge{{5.0, 5.0, 0.2, 0.2}};
    toy.yarns = {yarn_of("Ink", {44, 52, 66}), yarn_of("Foam", {244, 241, 232}),
                 yarn_of("Sunset", {226, 118, 58})};
    Piece body = piece_of("Body", ball_counts(8));
    for (std::size_t i = 0; i < body.rounds.size(); ++i) body.rounds[i].yarn = i < 12 ? 1 : 0;
    body.rounds[15].note = "Fit the eyes between rounds 14 and 15, eight stitches apart.";
    Piece wing = piece_of("Wing", {6, 12, 12, 12, 12, 12, 6}, End::left_open);
    wing.make = 2;
    wing.area_stretch = 0;
    wing.rounds[6].yarn = 2;
    toy.pieces = {body, wing};
    return toy;
}

/// One piece of a single colour.
inline Toy ball(int n, double stitch_mm = 5) {
    Toy toy;
    toy.title = "Ball";
    toy.gauge = GivenGauge{{stitch_mm, stitch_mm, 0, 0}};
    toy.yarns = {yarn_of("Sand", {214, 190, 150})};
    toy.pieces = {piece_of("Ball", ball_counts(n))};
    return toy;
}

}  // namespace roundwright::render::testing
