#include <gtest/gtest.h>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/study_solved.h"
#include "core/study/study_surface.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

/// A toy of twenty pieces and 10,000 stitches, all sewn to the first, worked out as the window does it: each
/// stage from the one before.
class TwentyPieces : public ::testing::Test {
  protected:
    static constexpr std::size_t pieces = 20;

    TwentyPieces() {
        toy.yarns.resize(1);
        toy.pieces.push_back(test::ball_piece(66));
        for (std::size_t i = 1; i < pieces; ++i) {
            toy.pieces.push_back(test::cup_piece(42, 8));
            const double right = 7.0 * static_cast<double>(i);
            toy.joins.push_back({.piece = {toy.pieces.id(i), 0},
                                 .onto = {toy.pieces.id(0), 0},
                                 .at = {.round = 4 + static_cast<int>(i), .stitches_right = right}});
        }
        work_out();
    }

    struct Done {
        std::size_t graphs = 0, shapes = 0, surfaces = 0, seams = 0, placed = 0;

        friend bool operator==(const Done&, const Done&) = default;
        friend std::ostream& operator<<(std::ostream& out, const Done& done) {
            return out << done.graphs << " graphs, " << done.shapes << " shapes, " << done.surfaces
                       << " surfaces, " << done.seams << " seams, " << done.placed << " placed";
        }
    };

    /// What had to be worked out anew.
    Done work_out() {
        Done done;
        std::vector<SolvedPiece> solved;
        std::vector<std::shared_ptr<const StitchSurface>> own;
        studies.resize(toy.pieces.size());
        surfaces.resize(toy.pieces.size());
        const auto seams = seam_lines_found();
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
            PieceStudy next = study_shape(toy, i, &studies[i]);
            done.graphs += next.stitches != studies[i].stitches;
            done.shapes += next.shape != studies[i].shape;
            studies[i] = std::move(next);
            auto surface = surface_stage(toy, i, studies[i], options, surfaces[i]);
            done.surfaces += surface != surfaces[i];
            surfaces[i] = std::move(surface);
            const bool old = i < together.solved.size();
            solved.push_back(solved_piece(toy, i, studies[i], old ? &together.solved[i] : nullptr));
            own.emplace_back(surfaces[i], &surfaces[i]->surface);
        }
        together = assemble(toy, std::move(solved), std::move(own), &together);
        done.seams = seam_lines_found() - seams;
        done.placed = together.placed_again;
        return done;
    }

    Toy toy;
    RevolveOptions options{.relief = Relief::shaded, .most_triangles = most_picture_triangles / 8};
    std::vector<PieceStudy> studies;
    std::vector<Shared<SurfaceStage>> surfaces;
    AssembledToy together;
};

TEST_F(TwentyPieces, HaveTenThousandStitches) {
    std::size_t stitches = 0;
    for (const auto& surface : surfaces) stitches += surface->surface.stitches.size();
    EXPECT_GE(stitches, 10'000u);
    EXPECT_TRUE(together.placed.problems.empty());
}

TEST_F(TwentyPieces, NothingIsWorkedOutTwice) { EXPECT_EQ(work_out(), Done{}); }

TEST_F(TwentyPieces, AJoinThatMovesSolvesNothingAndPlacesOnePiece) {
    toy.joins[3].at.stitches_right += 1;
    EXPECT_EQ(work_out(), (Done{.seams = 1, .placed = 1}));
    toy.joins[3].lean_degrees = 12;
    EXPECT_EQ(work_out(), (Done{.placed = 1}));
}

TEST_F(TwentyPieces, ARoundThatChangesSolvesItsOwnPieceAlone) {
    Piece changed = toy.pieces[5];
    changed.rounds.push_back(changed.rounds.back());
    toy.pieces[5] = changed;
    EXPECT_EQ(work_out(), (Done{.graphs = 1, .shapes = 1, .surfaces = 1, .seams = 1, .placed = 1}));
}

TEST_F(TwentyPieces, WhatAllAreSewnToIsSolvedOnceAndEverySeamFollows) {
    Piece changed = toy.pieces[0];
    changed.area_stretch = firm_stuffing_stretch;
    toy.pieces[0] = changed;
    EXPECT_EQ(work_out(), (Done{.shapes = 1, .surfaces = 1, .seams = pieces - 1, .placed = pieces}));
}

TEST_F(TwentyPieces, AnotherColourSolvesNothing) {
    toy.yarns.emplace_back().colour = {200, 80, 40};
    Piece changed = toy.pieces[7];
    for (Round& round : changed.rounds) round.yarn = 1;
    toy.pieces[7] = changed;
    const Done done = work_out();
    EXPECT_EQ(done.shapes, 0u);
    EXPECT_EQ(done.surfaces, 1u);
    EXPECT_EQ(done.seams, 0u);
    EXPECT_EQ(done.placed, 1u);
}

TEST_F(TwentyPieces, WordsNamesAndEyesChangeNothingOfThePicture) {
    toy.title = "Twenty";
    toy.text.assembly = "Sew all of them on.";
    toy.pieces[4].name = "Fin";
    EXPECT_EQ(work_out(), Done{});
}

}  // namespace
}  // namespace roundwright
