#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/check_joins.h"
#include "core/assembly/first_joins.h"
#include "core/assembly/join_frames.h"
#include "core/assembly/sewing_steps.h"
#include "core/assembly/study_solved.h"
#include "core/assembly/toy_measures.h"
#include "core/reshape/reshape_toy.h"
#include "core/study/coil_stage.h"
#include "core/study/fabric_stage.h"
#include "core/study/study_surface.h"
#include "core/study/toy_checks.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/support/plain_pieces.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// A tail of 24 chains with three stitches in each.
Piece curled_tail(int chains = 24, int stitches = 72) {
    Piece tail;
    tail.name = "Tail";
    tail.start = OpenTube{chains};
    tail.joining = Joining::rows;
    tail.rounds = {{.working = WorkedEvenly{.stitches = stitches}, .note = {}}};
    return tail;
}

struct CurledTail : ::testing::Test {
    Toy toy;
    CurledTail() {
        toy.hook_mm = 3.5;
        toy.yarns.resize(1);
        toy.pieces = PieceList{curled_tail()};
    }
    [[nodiscard]] PieceStudy study(std::size_t piece = 0) const { return study_piece(toy, piece); }
    [[nodiscard]] Coil coil(const PieceStudy& of) const { return *study_coil(toy.pieces[0], of); }
};

double length_of(const FabricGeometry& fabric, std::size_t edge) {
    constexpr int steps = 20'000;
    double length = 0;
    Vec3 before = fabric.on_edge(edge, 0, 0, 0).place;
    for (int k = 1; k <= steps; ++k) {
        const Vec3 here = fabric.on_edge(edge, fabric.loops(edge) * k / steps, 0, 0).place;
        length += (here - before).norm();
        before = here;
    }
    return length;
}

TEST_F(CurledTail, IsShownAsACoilOfItsOwnLengthAndRadius) {
    const PieceStudy found = study();
    ASSERT_TRUE(is_coil(found));
    ASSERT_TRUE(found.measures().converged());
    const auto fabric = study_fabric(toy.pieces[0], found);
    ASSERT_TRUE(fabric);
    const double w = found.gauge.stitch_width_mm, h = found.gauge.round_height_mm;
    EXPECT_NEAR(length_of(*fabric, 0), 24 * w, 1e-3);
    EXPECT_NEAR(length_of(*fabric, 1), 72 * w, 1e-3);
    // r = h / (k - 1), with k = 3.
    EXPECT_NEAR(coil(found).inner_radius_mm, h / 2, 0.04 * h);
    EXPECT_NEAR(coil(found).radians / (2 * pi), 24 * w / (pi * h), 0.3);
    const Vec3 inner = fabric->on_edge(0, 3, 0, 0).place, outer = fabric->on_edge(1, 9, 0, 0).place;
    EXPECT_NEAR((outer - inner).norm(), h, 1e-9);
    EXPECT_NEAR(std::hypot(inner.x(), inner.z()), coil(found).inner_radius_mm, 1e-9);
}

TEST_F(CurledTail, TurnsLieOnEachOther) {
    const PieceStudy found = study();
    const auto fabric = study_fabric(toy.pieces[0], found);
    const double a_turn = 72 * 2 * pi / coil(found).radians;
    const Vec3 below = fabric->on_edge(1, 5, 0, 0).place, above = fabric->on_edge(1, 5 + a_turn, 0, 0).place;
    EXPECT_NEAR((above - below).norm(), found.fabric.mm, 1e-9);
    EXPECT_NEAR((above - below).y(), found.fabric.mm, 1e-9);
}

TEST_F(CurledTail, ItsSurfaceIsOneClosedSkinOfItsSizeHoweverItIsDrawn) {
    const PieceStudy found = study();
    const PieceMeasures& measures = found.measures();
    for (const Relief relief : {Relief::none, Relief::solid, Relief::shaded}) {
        for (const std::size_t most : {std::size_t{200'000}, std::size_t{2'000}}) {
            const StitchSurface surface =
                study_surface(toy, 0, found, {.relief = relief, .most_triangles = most});
            EXPECT_EQ(surface.stitches.size(), 72u);
            const test::MeshMeasures mesh = test::measure(surface.mesh);
            EXPECT_TRUE(mesh.finite && mesh.unit_normals);
            EXPECT_EQ(mesh.odd_edges, 0u);
            float low = 1e9F, high = -low, side = 0;
            for (std::size_t k = 0; k + 2 < surface.mesh.positions.size(); k += 3) {
                low = std::min(low, surface.mesh.positions[k + 1]);
                high = std::max(high, surface.mesh.positions[k + 1]);
                side = std::max(side, std::abs(surface.mesh.positions[k]));
            }
            const double room = 0.6 * found.gauge.stitch_width_mm;
            EXPECT_NEAR(high - low, measures.height_mm, 2 * room);
            EXPECT_NEAR(side, measures.width_mm / 2, room);
        }
    }
}

TEST_F(CurledTail, StartsAtTheTopWhereItIsSaidTo) {
    const auto start = [&] { return study_fabric(toy.pieces[0], study())->on_edge(0, 0, 0, 0).place.y(); };
    EXPECT_NEAR(start(), 0, 1e-9);
    toy.pieces[0].starts_at_top = true;
    EXPECT_NEAR(start(), study().measures().height_mm, 1e-9);
}

TEST_F(CurledTail, HasARangeOfSizesAndNoFalseAlarms) {
    const PieceStudy found = study();
    EXPECT_LT(found.size().width_mm.low, found.measures().width_mm);
    EXPECT_GT(found.size().width_mm.high, found.measures().width_mm);
    for (const Check& check : found.checks()) {
        EXPECT_NE(check.code, CheckCode::ruffles);
        EXPECT_NE(check.code, CheckCode::not_converged);
    }
}

TEST_F(CurledTail, IsSharedWhileItStaysAndGoesWhenItsStitchesDo) {
    const PieceStudy before = study();
    toy.pieces[0].name = "Curl";
    EXPECT_EQ(study_piece(toy, 0, &before).shape, before.shape);
    EXPECT_EQ(study_piece(toy, 0, &before).sizes, before.sizes);
    toy.pieces[0] = curled_tail(24, 24);
    const PieceStudy straight = study_piece(toy, 0, &before);
    EXPECT_FALSE(is_coil(straight));
    EXPECT_TRUE(straight.revolved().usable());
    toy.pieces[0] = curled_tail();
    const PieceStudy again = study_piece(toy, 0, &straight);
    EXPECT_TRUE(is_coil(again));
    EXPECT_EQ(again.measures(), before.measures());
    // A thicker yarn makes a longer coil.
    toy.yarns[0].weight = YarnWeight::bulky;
    EXPECT_GT(study_piece(toy, 0, &before).measures().height_mm, before.measures().height_mm);
}

TEST_F(CurledTail, AsARingOfTheSameLoopsIsNoCoil) {
    const PieceStudy before = study();
    toy.pieces[0].start = ChainRing{24};
    EXPECT_FALSE(is_coil(study_piece(toy, 0, &before)));
}

TEST_F(CurledTail, EveryStitchHasItsPlaceAlready) {
    const PieceStudy found = study();
    EXPECT_EQ(fabric_stage(toy.pieces[0], found).shape, found.shape);
}

TEST_F(CurledTail, HoldsNoStuffing) {
    const PieceStudy found = study();
    const SolvedPiece solved = solved_piece(toy, 0, found);
    EXPECT_FALSE(solved.stuffed);
    ASSERT_TRUE(solved.solid);
    // A sheet of the edges' mean length, h wide, as thick as the fabric.
    const double area = found.measures().surface_mm2;
    EXPECT_NEAR(measure_volume(*solved.solid).volume_mm3, area * found.fabric.mm,
                0.03 * area * found.fabric.mm);
    EXPECT_NEAR(measure_area(*solved.solid).area_mm2, area, 0.03 * area);
}

TEST_F(CurledTail, IsNotResizedAsARoundPieceWouldBe) {
    toy.pieces.push_back(test::ball_piece(36));
    Target larger;
    larger.scale = 1.5;
    const ReshapedToy made = reshape_toy(toy, toy, all_pieces(toy), larger, {});
    ASSERT_EQ(made.pieces.size(), 2u);
    EXPECT_EQ(made.pieces[0].made.code, ReshapeCode::not_of_revolution);
    EXPECT_EQ(made.toy.pieces[0], toy.pieces[0]);
    EXPECT_GT(made.toy.pieces[1].rounds.size(), toy.pieces[1].rounds.size());
}

struct CurledTailOnABody : CurledTail {
    CurledTailOnABody() {
        toy.pieces = PieceList{test::ball_piece(48), curled_tail()};
        toy.joins = {{.piece = {toy.pieces.id(1), 0},
                      .onto = {toy.pieces.id(0), 0},
                      .end = JoinedEnd::start,
                      .seam = Seam::closed,
                      .at = {.round = 8, .stitches_right = 24}}};
    }
    [[nodiscard]] std::vector<PieceStudy> studies() const { return {study(0), study(1)}; }
};

TEST_F(CurledTailOnABody, IsSewnByItsEndAndStandsOutFromThere) {
    for (const Seam seam : {Seam::closed, Seam::edge, Seam::straight}) {
        toy.joins[0].seam = seam;
        const auto all = studies();
        const AssembledToy made = assemble(toy, all, RevolveOptions{});
        ASSERT_TRUE(made.placed.problems.empty());
        const auto at = frame_of_place(made.solved[0], toy.joins[0].at);
        ASSERT_TRUE(at);
        const Pose& pose = made.placed.pieces[1].pose;
        const double length = all[1].measures().height_mm;
        EXPECT_NEAR((pose * Vec3::Zero() - at->point).norm(), 0, 1e-9);
        EXPECT_NEAR((pose * Vec3(0, length, 0) - at->point - length * at->out).norm(), 0, 1e-9);
        EXPECT_TRUE(test::measure(made.surfaces[1]->mesh).finite);
        toy.joins[0].end = JoinedEnd::end;
        const AssembledToy other = assemble(toy, all);
        EXPECT_NEAR((other.placed.pieces[1].pose * Vec3(0, length, 0) - at->point).norm(), 0, 1e-9);
        toy.joins[0].end = JoinedEnd::start;
    }
}

TEST_F(CurledTailOnABody, IsPartOfTheToysSizeAndWeight) {
    const auto all = studies();
    const AssembledToy made = assemble(toy, all);
    const ToyMeasures measures = toy_measures(made, all);
    EXPECT_TRUE(measures.complete);
    EXPECT_EQ(measures.apart, 0u);
    EXPECT_GT(measures.depth_mm.likely, all[0].measures().depth_mm + all[1].measures().height_mm / 2);
    EXPECT_TRUE(measures.overlaps.empty());
    EXPECT_EQ(toy_mass(made, all).stuffing[1].grams.likely, 0);
}

TEST_F(CurledTailOnABody, HasNoOpenEdgeToSew) {
    toy.joins.clear();
    for (const Check& check : checks_of_joins(toy, studies())) EXPECT_NE(check.piece, 1);
    const auto found = first_joins(toy, 1);
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].seam, Seam::closed);
    EXPECT_EQ(found[0].end, JoinedEnd::start);
    toy.joins = found;
    for (const Check& check : checks_of_joins(toy, studies())) EXPECT_NE(check.piece, 1);
    const auto steps = sewing_steps(toy, counts_of_pieces(studies()), study(0).gauge);
    ASSERT_EQ(steps.size(), 1u);
    EXPECT_TRUE(steps[0].curls);
    EXPECT_FALSE(steps[0].open);
}

}  // namespace
}  // namespace roundwright
