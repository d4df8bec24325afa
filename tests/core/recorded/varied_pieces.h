#pragma once

#include <string>
#include <vector>

#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::test {

/// A toy of one piece, with a name for messages.
struct VariedPiece {
    std::string name;
    Toy toy;
};

/// Nearly a hundred pieces that together show what makers work: every start, end, way of joining and
/// firmness, tall stitches, words, stripes, flat bases, ruffles, necks, faces, and pieces with something
/// wrong. Invented, and always the same: no random numbers.
[[nodiscard]] const std::vector<VariedPiece>& varied_pieces();

/// Their studies, made once.
[[nodiscard]] const std::vector<PieceStudy>& varied_studies();

/// The piece of this name.
[[nodiscard]] const VariedPiece& varied_piece(const std::string& name);

/// Rounds in a short hand of these tests, parted by blanks: `18` is a round of 18 single crochets, `18x3`
/// three of them. Before the count h, d, t, b, s make it half double, double, treble, bobble or slip stitch;
/// behind it ^ works into the back loops, v into the front loops, / staggers, _ means "lies flat", and :1
/// takes yarn 1. What stands in square brackets is a round in words.
[[nodiscard]] std::vector<Round> rounds_of(const std::string& shorthand);

}  // namespace roundwright::test
