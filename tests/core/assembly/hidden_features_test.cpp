#include "core/assembly/hidden_features.h"

#include <gtest/gtest.h>

#include "core/assembly/placed_surface.h"
#include "core/assembly/study_solved.h"
#include "core/study/study_surface.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

struct HiddenFeatures : ::testing::Test {
    HiddenFeatures() {
        toy.yarns.emplace_back();
        Piece head = test::ball_piece(48);
        head.features.push_back({.name = {}, .round = 11, .stitches_apart = 8});
        toy.pieces = PieceList{head, test::ball_piece(18)};
    }

    /// The patch's middle on the head so many stitches to the right.
    std::vector<HiddenFeature> with_patch(double right, double sink_mm = 0) {
        Join join;
        join.piece = {toy.pieces.id(1), 0};
        join.onto = {toy.pieces.id(0), 0};
        join.at = {11, right, false};
        join.sink_mm = sink_mm;
        toy.joins = {join};
        std::vector<SolvedPiece> solved;
        std::vector<StitchSurface> surfaces;
        for (std::size_t i = 0; i < 2; ++i) {
            const PieceStudy study = study_shape(toy, i);
            solved.push_back(solved_piece(toy, i, study));
            surfaces.push_back(study_surface(toy, i, study));
        }
        const PlacedToy placed = place_toy(toy, solved);
        std::vector<const StitchSurface*> seen;
        for (const PlacedPiece& piece : placed.pieces) {
            surfaces[piece.solved] = placed_surface(surfaces[piece.solved], PlacedForm(piece.pose));
            seen.push_back(&surfaces[piece.solved]);
        }
        return hidden_features(placed, solved, seen);
    }

    Toy toy;
};

TEST_F(HiddenFeatures, AnEyeThatAPieceIsSewnOverIsNamedWithIt) {
    const std::vector<HiddenFeature> expected{{0, 0, 1}};
    EXPECT_EQ(with_patch(4), expected);
    EXPECT_EQ(with_patch(-4, 2), expected);
}

TEST_F(HiddenFeatures, AnEyeBesideOrBehindAPieceIsSeen) {
    EXPECT_TRUE(with_patch(12).empty());
    EXPECT_TRUE(with_patch(24).empty());
}

}  // namespace
}  // namespace roundwright
