#pragma once

#include <string>
#include <vector>

#include "core/study/piece_study.h"
#include "core/study/study_surface.h"
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

/// What the program computes from a piece, taken out of its study in one place.
struct VariedStudy {
    PieceStudy study;
    PieceGraph graph;
    Gauge gauge;
    bool gauge_known = true;
    ShapeProblem problem;
    Shape shape;
    SizeRange size;
    std::vector<RoundLie> lies;
    std::vector<Check> checks;
};

/// Of a toy's first piece.
[[nodiscard]] VariedStudy studied(const Toy& toy);
/// Its checks with every cure, before the cures are tried out.
[[nodiscard]] std::vector<Check> checks_with_all_cures(const Toy& toy, const VariedStudy& study);
[[nodiscard]] StitchSurface surface_of(const Toy& toy, const VariedStudy& study,
                                       const RevolveOptions& options);

/// Their studies, made once.
[[nodiscard]] const std::vector<VariedStudy>& varied_studies();

/// The piece of this name.
[[nodiscard]] const VariedPiece& varied_piece(const std::string& name);

/// Rounds in a short hand of these tests, parted by blanks: `18` is a round of 18 single crochets, `18x3`
/// three of them. Before the count h, d, t, b, s make it half double, double, treble, bobble or slip stitch;
/// behind it ^ works into the back loops, v into the front loops, / staggers, _ means "lies flat", and :1
/// takes yarn 1. What stands in square brackets is a round in words.
[[nodiscard]] std::vector<Round> rounds_of(const std::string& shorthand);

}  // namespace roundwright::test
