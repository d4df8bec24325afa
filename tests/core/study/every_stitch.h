#pragma once

#include <string>
#include <variant>

#include "core/study/fabric_stage.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {

inline constexpr double h = 5;

inline Toy with_spacing(Toy toy, Spacing spacing, Joining joining = Joining::joined) {
    toy.pieces[0].joining = joining;
    for (Round& round : toy.pieces[0].rounds) std::get<WorkedEvenly>(round.working).spacing = spacing;
    return toy;
}

inline void add(Toy& toy, const std::string& words, int times = 1) {
    for (int i = 0; i < times; ++i) toy.pieces[0].rounds.emplace_back().working = AsWritten{words};
}

/// A piece in the round and stitch by stitch.
struct Both {
    PieceStudy round;
    FabricStage fine;
    [[nodiscard]] const PieceMeasures& coarse() const { return round.measures(); }
    [[nodiscard]] const PieceMeasures& every() const { return fine.shape->measures; }
    [[nodiscard]] const SolvedStitches& solved() const { return *fine.shape->stitched; }
};

inline Both solved(const Toy& toy) {
    Both both{study_shape(toy, 0), {}};
    both.fine = fabric_stage(toy.pieces[0], both.round);
    return both;
}

inline Vec3 at(const SolvedStitches& solved, const EdgeNode& node) {
    return solved.shape.nodes[static_cast<std::size_t>(node.node)];
}

}  // namespace roundwright::test
