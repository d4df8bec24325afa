#include <cmath>
#include <gtest/gtest.h>
#include <random>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/seam_measures.h"
#include "core/assembly/toy_measures.h"
#include "core/document/json_document.h"
#include "tests/core/shape/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

/// A tenth of what was tried by hand, with ROUNDWRIGHT_RANDOM_CASES_PERCENT=1000.
constexpr int toys_tried = 500;

class RandomJoins {
  public:
    explicit RandomJoins(unsigned seed) : random_(seed) {}

    Toy toy() {
        Toy toy;
        toy.stance = static_cast<Stance>(whole(0, 2));
        const int pieces = whole(2, 20);
        for (int i = 0; i < pieces; ++i) toy.pieces.push_back(piece());
        const int joins = whole(1, pieces + 3);
        for (int i = 0; i < joins; ++i) toy.joins.push_back(join(toy));
        return toy;
    }

    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }

  private:
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    bool once_in(int times) { return whole(1, times) == 1; }

    Piece piece() {
        Piece piece;
        std::vector<int> counts = test::random_toy_counts(random_);
        if (once_in(2)) counts.resize(static_cast<std::size_t>(whole(1, static_cast<int>(counts.size()))));
        for (const int n : counts)
            piece.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .note = {}});
        if (once_in(4)) piece.start = OpenTube{counts.front()};
        if (once_in(6)) piece.start = WorkedOn{.stitches = counts.front(), .chains_between = whole(0, 4)};
        if (once_in(9)) piece.start = OvalChain{whole(2, 9)};
        piece.end = static_cast<End>(whole(0, 2));
        piece.area_stretch = once_in(3) ? 0 : 0.04;
        if (once_in(8)) curl(piece);
        if (once_in(5)) piece.stuffed_rounds = RoundSpan{whole(0, 6), whole(0, 30)};
        piece.starts_at_top = once_in(3);
        piece.face_degrees = between(-180, 180);
        piece.make = once_in(3) ? whole(2, 4) : 1;
        if (once_in(5)) piece.weight_grams = between(0, 200);
        if (once_in(5)) piece.rounds.clear();
        return piece;
    }

    /// Several stitches in every chain.
    void curl(Piece& piece) {
        const int chains = whole(1, 40);
        piece.start = OpenTube{chains};
        piece.joining = Joining::rows;
        piece.rounds.resize(1);
        piece.rounds[0].working = WorkedEvenly{.stitches = chains * whole(2, 6)};
    }

    PieceCopy copy(const Toy& toy) {
        const auto piece = static_cast<std::size_t>(whole(0, static_cast<int>(toy.pieces.size()) - 1));
        return {once_in(50) ? PieceId{9999} : toy.pieces.id(piece), whole(0, toy.pieces[piece].make - 1)};
    }

    Join join(const Toy& toy) {
        Join join{.piece = copy(toy), .onto = copy(toy), .at = {}};
        join.pair = once_in(3);
        join.end = static_cast<JoinedEnd>(whole(0, 1));
        join.seam = static_cast<Seam>(whole(0, 5));
        join.at = {.round = whole(-1, 30), .stitches_right = between(-30, 30), .around = once_in(4)};
        join.turn_degrees = between(-360, 360);
        join.lean_degrees = between(-180, 180);
        join.lean_right_degrees = between(-180, 180);
        join.sink_mm = between(-20, 40);
        return join;
    }

    std::mt19937 random_;
};

bool finite(const Vec3& point) { return point.allFinite() && point.norm() < 1e7; }

void expect_placed(const AssembledToy& made, const Toy& toy) {
    std::size_t copies = 0;
    for (const Piece& piece : toy.pieces) copies += static_cast<std::size_t>(piece.make);
    ASSERT_EQ(made.placed.pieces.size(), copies);
    for (std::size_t i = 0; i < copies; ++i) {
        const PlacedPiece& placed = made.placed.pieces[i];
        ASSERT_TRUE(placed.pose.matrix().allFinite());
        ASSERT_NEAR(placed.pose.linear().determinant(), 1, 1e-9);
        ASSERT_TRUE(!placed.onto || *placed.onto < i);
        if (placed.line) {
            for (const SurfaceSpot& spot : placed.line->points) ASSERT_TRUE(finite(spot.place));
        }
        if (made.solids[i]) {
            for (const Vec3& point : made.solids[i]->points) ASSERT_TRUE(finite(point));
        }
        if (const auto seam = seam_measures(toy, made.placed, made.solved, i)) {
            ASSERT_TRUE(std::isfinite(seam->stretch()));
        }
    }
}

void expect_measured(const ToyMeasures& found) {
    for (const Estimate& size : {found.width_mm, found.height_mm, found.depth_mm, found.mass_g}) {
        ASSERT_TRUE(std::isfinite(size.likely) && size.likely >= 0);
        ASSERT_LE(size.low, size.likely + 1e-9);
        ASSERT_GE(size.high, size.likely - 1e-9);
    }
    ASSERT_TRUE(std::isfinite(found.stable_degrees.likely) || found.rest.support.empty());
    ASSERT_TRUE(!found.weight_to_hold_g || std::isfinite(*found.weight_to_hold_g));
    for (const PieceOverlap& overlap : found.overlaps) ASSERT_GT(overlap.volume_mm3, 0);
}

TEST(RandomJoins, AreFiniteAndPlacedAndEndWhateverTheyJoin) {
    const int tried = testing::random_cases(toys_tried);
    for (int seed = 0; seed < tried; ++seed) {
        SCOPED_TRACE(seed);
        RandomJoins random(static_cast<unsigned>(seed));
        const Toy toy = random.toy();
        std::vector<PieceStudy> studies;
        for (std::size_t i = 0; i < toy.pieces.size(); ++i) studies.push_back(study_shape(toy, i));
        const AssembledToy made = assemble(toy, studies);
        expect_placed(made, toy);
        if (seed % 5 == 0) expect_measured(toy_measures(made, studies));
        if (::testing::Test::HasFatalFailure()) return;
    }
}

TEST(RandomJoins, AreReadAsTheyWereWritten) {
    for (int seed = 0; seed < testing::random_cases(toys_tried); ++seed) {
        const Toy toy = RandomJoins(static_cast<unsigned>(seed)).toy();
        const Toy read = read_document(write_document(toy)).toy;
        ASSERT_EQ(read.joins, toy.joins) << seed;
        ASSERT_EQ(write_document(read), write_document(toy)) << seed;
    }
}

}  // namespace
}  // namespace roundwright
