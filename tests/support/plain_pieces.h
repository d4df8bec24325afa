#pragma once

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright::test {

/// Rounds worked evenly, one for each count.
inline void add_rounds(Piece& piece, const std::vector<int>& counts) {
    for (const int stitches : counts)
        piece.rounds.emplace_back().working = WorkedEvenly{.stitches = stitches};
}

/// From a magic ring six more each round to `most`, then `walls` rounds of that; open.
inline Piece cup_piece(int most, int walls) {
    Piece piece;
    for (int stitches = 6; stitches <= most; stitches += 6) add_rounds(piece, {stitches});
    add_rounds(piece, std::vector<int>(static_cast<std::size_t>(walls), most));
    return piece;
}

/// The same with most / 6 - 1 walls, and as many rounds back to six, drawn closed: about as tall as wide.
inline Piece ball_piece(int most) {
    Piece piece = cup_piece(most, most / 6 - 1);
    for (int stitches = most - 6; stitches > 0; stitches -= 6) add_rounds(piece, {stitches});
    piece.end = End::drawn_closed;
    return piece;
}

/// So many rounds of as many stitches each.
inline Piece even_piece(const std::string& name, int rounds, int stitches, End end = End::left_open,
                        int make = 1) {
    Piece piece;
    piece.name = name;
    add_rounds(piece, std::vector<int>(static_cast<std::size_t>(rounds), stitches));
    piece.end = end;
    piece.make = make;
    return piece;
}

/// Stitches of every round of every piece, all worked evenly.
inline std::vector<std::vector<int>> counts_of(const Toy& toy) {
    std::vector<std::vector<int>> all;
    for (const Piece& piece : toy.pieces) {
        std::vector<int>& counts = all.emplace_back();
        for (const Round& round : piece.rounds)
            counts.push_back(std::get<WorkedEvenly>(round.working).stitches);
    }
    return all;
}

}  // namespace roundwright::test
