#include "core/study/fabric_stage.h"

#include <cstdio>
#include <gtest/gtest.h>
#include <random>

#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/measure_stitches.h"
#include "core/study/study_surface.h"
#include "tests/core/checks/checked_piece.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

Toy with_spacing(Toy toy, Spacing spacing, Joining joining = Joining::joined) {
    Piece& piece = toy.pieces[0];
    piece.joining = joining;
    for (Round& round : piece.rounds) std::get<WorkedEvenly>(round.working).spacing = spacing;
    return toy;
}

struct Both {
    PieceStudy round;
    FabricStage fine;
    [[nodiscard]] const PieceMeasures& coarse() const { return round.measures(); }
    [[nodiscard]] const PieceMeasures& every() const { return fine.shape->measures; }
};

Both solved(const Toy& toy) {
    Both both{study_shape(toy, 0), {}};
    both.fine = fabric_stage(toy.pieces[0], both.round);
    return both;
}

void print(const char* what, const Both& both) {
    const PieceMeasures &a = both.coarse(), &b = both.every();
    const FabricShape none;
    const FabricShape& s = both.fine.shape->stitched ? both.fine.shape->stitched->shape : none;
    std::printf("%-26s refusal %d/%d term %d it %d fact %d cg %d | round %.1f x %.1f vol %.0f | every %.1f x %.1f x %.1f vol %.0f stretch %.4f\n", what,
                static_cast<int>(both.fine.refusal), static_cast<int>(both.fine.cells),
                static_cast<int>(b.termination), s.iterations, s.factorizations, s.cg_steps, a.width_mm, a.height_mm,
                a.volume_mm3 / 1000, b.width_mm, b.depth_mm, b.height_mm, b.volume_mm3 / 1000, b.area_stretch);
}

TEST(FabricStage, Trial) {
    for (const int n : {3, 4, 6, 8}) {
        print("ball staggered", solved(with_spacing(stuffed_toy_of(ball(n)), Spacing::staggered)));
        print("ball stacked", solved(with_spacing(stuffed_toy_of(ball(n)), Spacing::stacked)));
        print("ball staggered spiral", solved(with_spacing(stuffed_toy_of(ball(n)), Spacing::staggered, Joining::spiral)));
    }
    Toy oval = stuffed_toy_of({});
    oval.pieces[0].start = OvalChain{8};
    oval.pieces[0].joining = Joining::joined;
    const auto say = [&](const char* words) { oval.pieces[0].rounds.push_back({AsWritten{words}, 0, false, ""}); };
    say("4 sc in next st, sc 6, 4 sc in next st, 4 sc in next st, sc 6, 4 sc in next st");
    for (int i = 0; i < 8; ++i) say("sc in each st around");
    print("oval tube", solved(oval));
    Toy disc_toy = with_spacing(toy_of(disc(6, 8)), Spacing::stacked);
    print("disc stacked", solved(disc_toy));
    print("disc staggered", solved(with_spacing(toy_of(disc(6, 8)), Spacing::staggered)));
}

}  // namespace
}  // namespace roundwright::test
