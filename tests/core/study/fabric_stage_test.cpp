#include "core/study/fabric_stage.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <gtest/gtest.h>
#include <numbers>
#include <random>
#include <string>

#include "core/face/face_surface.h"
#include "core/shape/fabric/cells_start.h"
#include "core/shape/fabric/settle_ruffle.h"
#include "core/study/study_surface.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/core/shape/random_toy.h"
#include "tests/core/study/every_stitch.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

/// The largest distance from the middle of an edge over the smallest, across the piece.
double out_of_round(const SolvedStitches& solved, std::size_t edge) {
    const auto& nodes = solved.cells.edges[edge].nodes;
    Vec3 middle = Vec3::Zero();
    for (std::size_t k = 1; k < nodes.size(); ++k)
        middle += at(solved, nodes[k]) / static_cast<double>(nodes.size() - 1);
    double least = 1e9, most = 0;
    for (const EdgeNode& node : nodes) {
        const Vec3 way = at(solved, node) - middle;
        const double out = std::hypot(way.x(), way.z());
        least = std::min(least, out);
        most = std::max(most, out);
    }
    return most / least;
}

/// Normal of the plane that an edge lies in.
Vec3 facing(const SolvedStitches& solved, std::size_t edge) {
    const auto& nodes = solved.cells.edges[edge].nodes;
    Vec3 sum = Vec3::Zero();
    for (std::size_t k = 1; k < nodes.size(); ++k)
        sum += at(solved, nodes[k - 1]).cross(at(solved, nodes[k]));
    return sum.normalized();
}

// Of pieces that start with five stitches the ends come out flatter; DEVELOPERS.md says why. Upright: the
// round solve knows no slant.
TEST(EveryStitch, AgreesWithTheRoundSolveWhereIncreasesAreStaggered) {
    std::mt19937 random(77);
    for (int number = 0; number < testing::random_cases(40); ++number) {
        const std::vector<int> counts = random_toy_counts(random);
        SCOPED_TRACE(::testing::Message() << number << ": " << ::testing::PrintToString(counts));
        const Toy toy = with_spacing(stuffed_toy_of(counts), Spacing::staggered);
        const PieceStudy round = study_shape(toy, 0);
        const auto upright = fabric_stage(toy.pieces[0], round, nullptr, {}, 0).shape;
        const PieceMeasures &every = upright->measures, &coarse = round.measures();
        ASSERT_TRUE(every.converged());
        EXPECT_EQ(every.fidelity, Fidelity::every_stitch);
        EXPECT_NEAR(every.area_stretch, medium_stuffing_stretch, 1e-3);
        EXPECT_NEAR(every.width_mm / coarse.width_mm, 1, 0.022);
        EXPECT_NEAR(every.depth_mm / coarse.width_mm, 1, 0.022);
        EXPECT_NEAR(every.height_mm / coarse.height_mm, 1, counts[0] == 5 ? 0.07 : 0.04);
        // A slant takes a little of the width and adds it to the height.
        const auto leaning = fabric_stage(toy.pieces[0], round).shape;
        ASSERT_TRUE(leaning->measures.converged());
        EXPECT_NEAR(
            (leaning->measures.width_mm + leaning->measures.depth_mm) / (every.width_mm + every.depth_mm), 1,
            0.015);
        EXPECT_NEAR(leaning->measures.height_mm / every.height_mm, 1, 0.03);
    }
}

TEST(EveryStitch, StackedIncreasesMakeCorners) {
    const Both stacked = solved(with_spacing(stuffed_toy_of(ball(6)), Spacing::stacked));
    const Both staggered = solved(with_spacing(stuffed_toy_of(ball(6)), Spacing::staggered));
    EXPECT_GT(out_of_round(stacked.solved(), 4), 1.03) << "at the shoulder";
    EXPECT_LT(out_of_round(stacked.solved(), 4), 1.07);
    EXPECT_LT(out_of_round(staggered.solved(), 4), 1.02);
    EXPECT_LT(out_of_round(staggered.solved(), 8), 1.014) << "at the widest round";
    const Both disc_of_six = solved(with_spacing(toy_of(disc(6, 10)), Spacing::stacked));
    EXPECT_LT(disc_of_six.every().height_mm, 0.1) << "it lies flat";
    EXPECT_LT(out_of_round(solved(with_spacing(toy_of(disc(6, 10)), Spacing::staggered)).solved(), 10), 1.03);
    // Six corners where increases stand: the sharp hexagon's is 2 / sqrt 3.
    EXPECT_GT(out_of_round(disc_of_six.solved(), 10), 1.05);
    EXPECT_LT(out_of_round(disc_of_six.solved(), 10), 2 / std::numbers::sqrt3);
}

TEST(EveryStitch, ShortRowsBendATube) {
    for (const int rows : {1, 3}) {
        Toy toy = stuffed_toy_of({});
        toy.pieces[0].start = OpenTube{36};
        toy.pieces[0].joining = Joining::joined;
        toy.pieces[0].end = End::left_open;
        add(toy, "sc in each st around", 6);
        for (int i = 0; i < rows; ++i) {
            add(toy, "starting in 10th st, sc in next 18, leave rem sts unworked");
            add(toy, "sc in each st around", 2);
        }
        add(toy, "sc in each st around", 4);
        const Both both = solved(toy);
        ASSERT_TRUE(both.every().converged());
        const double bend =
            std::acos(facing(both.solved(), 0).dot(facing(both.solved(), both.every().rounds())));
        const double diameter = both.every().loops[3].radius_mm * 2;
        EXPECT_NEAR(bend / (rows * h / diameter), 1, 0.25) << rows;
    }
}

Toy oval(int growing, int even) {
    Toy toy = stuffed_toy_of({});
    toy.pieces[0].start = OvalChain{8};
    toy.pieces[0].joining = Joining::joined;
    add(toy, "3 sc in next st, sc 6, 2 sc in next st, 3 sc in next st, sc 6, 2 sc in next st");
    add(toy, "inc x 2, sc 8, inc x 3, sc 8, inc");
    for (int m = 1; m < growing - 1; ++m) {
        const std::string group = "(sc " + std::to_string(m) + ", inc) x ";
        add(toy, group + "2, sc 8, " + group + "3, sc 8, sc " + std::to_string(m) + ", inc");
    }
    add(toy, "sc in each st around", even);
    for (int m = growing - 2; m >= 1; --m) {
        const std::string group = "(sc " + std::to_string(m) + ", dec) x ";
        add(toy, group + "2, sc 8, " + group + "3, sc 8, sc " + std::to_string(m) + ", dec");
    }
    add(toy, "dec x 2, sc 8, dec x 3, sc 8, dec");
    return toy;
}

TEST(EveryStitch, AnOvalIsOneFromManyStarts) {
    const Both both = solved(oval(6, 6));
    ASSERT_TRUE(both.every().converged());
    const SolvedStitches& found = both.solved();
    EXPECT_GT(both.every().width_mm, 1.15 * both.every().depth_mm);
    const std::vector<Vec3> start = scaled_start(found.cells);
    std::mt19937 random(5);
    std::uniform_real_distribution<double> off(-1.5, 1.5);
    std::vector<Vec3> disturbed = start, squashed = start;
    for (Vec3& node : disturbed) node += Vec3(off(random), off(random), off(random));
    for (Vec3& node : squashed) node = Vec3(1.2 * node.x(), 0.7 * node.y(), node.z());
    for (const auto& from : {disturbed, squashed}) {
        const FabricShape again = solve_fabric(found.cells.problem, from);
        ASSERT_EQ(again.termination, Termination::converged);
        EXPECT_NEAR(again.energy / found.shape.energy, 1, 0.01);
        EXPECT_NEAR(again.volume_mm3 / found.shape.volume_mm3, 1, 0.01);
    }
}

/// Worked around a chain, so many more stitches at each end every round, not stuffed and left open.
Toy sole(int chain, int at_an_end, int rounds) {
    Toy toy = toy_of({});
    toy.pieces[0].start = OvalChain{chain};
    toy.pieces[0].joining = Joining::joined;
    const std::string side = "sc " + std::to_string(chain - 2) + ", ";
    const int before = (at_an_end + 1) / 2;
    const auto in_one = [](int stitches) {
        return stitches == 1 ? std::string("sc in next st, ") : std::to_string(stitches) + " sc in next st, ";
    };
    const std::string first = in_one(1 + at_an_end - before), last = in_one(1 + before);
    add(toy, first + side + last + first + side + last.substr(0, last.size() - 2));
    for (int m = 0; m < rounds - 1; ++m) {
        const auto groups = [&](int times) {
            return (m == 0 ? std::string("inc x ") : "(sc " + std::to_string(m) + ", inc) x ") +
                   std::to_string(times) + ", ";
        };
        const std::string along = "sc " + std::to_string(chain) + ", ";
        const std::string start = at_an_end > before ? groups(at_an_end - before) : std::string();
        const std::string end = groups(before);
        add(toy, start + along + groups(at_an_end) + along + end.substr(0, end.size() - 2));
    }
    return toy;
}

// Common practice: three more at each end every round make a flat sole.
TEST(EveryStitch, ASoleOfSixMoreARoundLiesFlat) {
    for (const int chain : {4, 6, 8, 12, 20})
        for (const int rounds : {1, 3, 5, 9}) {
            SCOPED_TRACE(::testing::Message() << chain << " chains, " << rounds << " rounds");
            const Both both = solved(sole(chain, 3, rounds));
            ASSERT_TRUE(both.every().converged());
            EXPECT_LT(both.every().height_mm, 1);
            EXPECT_NEAR(both.every().width_mm, h * (chain + 2 * rounds), 0.03 * h * (chain + 2 * rounds));
            EXPECT_NEAR(both.every().depth_mm, h * 2 * rounds, 4) << "corners stand out";
            for (const RoundLie& lie : both.fine.shape->lies) EXPECT_EQ(lie.lie, Lie::lies_flat);
        }
}

// As discs of so many increases a round do by the round solve.
TEST(EveryStitch, ASoleOfFewerCupsAndOfMoreRuffles) {
    for (const int at_an_end : {1, 2, 4, 5}) {
        SCOPED_TRACE(at_an_end);
        const Both both = solved(sole(8, at_an_end, 7));
        ASSERT_TRUE(both.every().converged());
        EXPECT_GT(both.every().height_mm, 5);
        EXPECT_EQ(both.fine.shape->lies.back().lie, at_an_end < 3 ? Lie::cups : Lie::ruffles);
    }
}

TEST(EveryStitch, AnOpenSpiralEndsInALedgeOfOneRound) {
    Toy toy = with_spacing(stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 30, 30}), Spacing::staggered,
                           Joining::spiral);
    toy.pieces[0].end = End::left_open;
    const Both both = solved(toy);
    ASSERT_TRUE(both.every().converged());
    const auto& last = both.solved().cells.edges.back().nodes;
    const Vec3 ledge = at(both.solved(), last.back()) - at(both.solved(), last.front());
    EXPECT_NEAR(ledge.norm(), h, 0.2 * h);
    EXPECT_GT(ledge.y(), 0.9 * ledge.norm());
}

TEST(EveryStitch, ManyIncreasesRuffleInAFewWaves) {
    const Both both = solved(with_spacing(toy_of(disc(8, 9)), Spacing::staggered));
    ASSERT_TRUE(both.every().usable());
    EXPECT_GT(both.every().height_mm, 15);
    const RoundLie& edge = both.fine.shape->lies.back();
    EXPECT_EQ(edge.lie, Lie::ruffles);
    EXPECT_GE(edge.waves, 2);
    EXPECT_LE(edge.waves, 6);
    EXPECT_NEAR(edge.wave_height_mm, both.every().height_mm, 0.3 * both.every().height_mm);
}

// Seven more a round are so little too many that the piece may also be smoothed flat, and stays so.
TEST(EveryStitch, ARuffleTellsHowElseItCouldLie) {
    const Both both = solved(with_spacing(toy_of(disc(7, 9)), Spacing::staggered));
    ASSERT_TRUE(both.every().converged());
    EXPECT_GT(both.every().height_mm, 2 * h);
    const auto& others = both.solved().others;
    ASSERT_FALSE(others.empty());
    EXPECT_EQ(others.back().waves, 0);
    double before = 0;
    for (const OtherBalance& other : others) {
        EXPECT_GE(other.more_energy, before);
        EXPECT_LE(other.more_energy, nearly_the_same_energy);
        before = other.more_energy;
    }
    EXPECT_TRUE(solved(toy_of(disc(6, 6))).solved().others.empty());
}

TEST(EveryStitch, AnEarThatIsSewnStraightIsFlatAtItsSeam) {
    Toy ear = with_spacing(stuffed_toy_of({6, 9, 12, 15, 18, 18, 18, 18, 16, 14}), Spacing::staggered);
    ear.pieces[0].end = End::sewn_straight;
    const Both both = solved(ear);
    ASSERT_TRUE(both.every().converged());
    EXPECT_LT(both.every().loops.back().depth_mm, 0.3 * both.every().loops.back().width_mm);
    EXPECT_LT(both.every().loops.back().width_mm, 7 * 5);
    EXPECT_GT(both.every().loops.back().width_mm, 0.7 * 7 * 5) << "the stuffing draws it in";
}

TEST(EveryStitch, TheStageStaysWhileItsInputsDo) {
    Toy toy = with_spacing(stuffed_toy_of(ball(4)), Spacing::staggered);
    const Both both = solved(toy);
    PieceStudy fine = with_shape(both.round, both.fine.shape);
    EXPECT_EQ(fine.measures().fidelity, Fidelity::every_stitch);
    EXPECT_EQ(fabric_stage(toy.pieces[0], both.round, fine.shape).shape, fine.shape);
    EXPECT_EQ(study_shape(toy, 0, &fine).shape, fine.shape);
    // The round solver's problem is the same, the stitches are not.
    toy = with_spacing(toy, Spacing::stacked);
    const PieceStudy other = study_shape(toy, 0, &fine);
    EXPECT_EQ(other.problem(), fine.problem());
    EXPECT_EQ(other.measures().fidelity, Fidelity::round);
    const FabricStage next = fabric_stage(toy.pieces[0], other, fine.shape);
    ASSERT_TRUE(next.shape->measures.converged());
    EXPECT_NE(next.shape, fine.shape);
    EXPECT_TRUE(takes_the_place_of(*next.shape, *fine.shape));
    EXPECT_LT(next.shape->stitched->shape.iterations, 25);
}

TEST(EveryStitch, SurfaceFaceAndSizesComeFromIt) {
    Toy toy = with_spacing(stuffed_toy_of(ball(5)), Spacing::staggered, Joining::spiral);
    toy.yarns.emplace_back();
    const Both both = solved(toy);
    const PieceStudy fine = with_sizes(with_shape(both.round, both.fine.shape), toy, 0);
    const StitchSurface surface = study_surface(toy, 0, fine);
    const MeshMeasures mesh = measure(surface.mesh);
    EXPECT_EQ(mesh.odd_edges, 0U);
    EXPECT_EQ(mesh.euler_characteristic, 2);
    EXPECT_NEAR(mesh.volume_mm3 / fine.measures().volume_mm3, 1, 0.05);
    EXPECT_LE(surface.mesh.triangle_count(), surface_triangles(toy.pieces[0], fine, {}));
    const FaceSurface face(toy.pieces[0],
                           std::shared_ptr<const FabricGeometry>(study_fabric(toy.pieces[0], fine)));
    EXPECT_NEAR(face.width_mm(), fine.measures().width_mm, 1);
    EXPECT_GT(face.at({face.along_of_loop(7), 0}).normal.z(), 0.8);
    EXPECT_EQ(fine.lies().size(), toy.pieces[0].rounds.size());
    EXPECT_LT(fine.size().width_mm.low, fine.measures().width_mm);
}

TEST(EveryStitch, WhatLiesLimpIsRefused) {
    Toy toy = toy_of(ball(4));
    toy.pieces[0].end = End::drawn_closed;
    EXPECT_EQ(solved(toy).fine.refusal, EveryStitchRefusal::lies_limp);
    EXPECT_EQ(solved(toy_of({})).fine.cells, CellsRefusal::no_rounds);
}

TEST(EveryStitch, StopsWhenItIsTold) {
    const Toy toy = with_spacing(stuffed_toy_of(ball(8)), Spacing::staggered);
    const PieceStudy round = study_shape(toy, 0);
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(fabric_stage(toy.pieces[0], round, nullptr, stop.get_token()).shape->measures.converged());
}

}  // namespace
}  // namespace roundwright::test
