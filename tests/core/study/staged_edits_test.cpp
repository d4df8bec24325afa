#include <gtest/gtest.h>
#include <random>
#include <set>

#include "core/study/studied_piece.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

using testing::one_of;
using testing::random_cases;
using testing::random_gauge;
using testing::random_piece;

/// One edit of a kind that the window offers; some change nothing that is computed.
void edit_at_random(Toy& toy, std::mt19937& random) {
    Piece& piece = toy.pieces[0];
    const auto round = static_cast<std::size_t>(one_of(random, static_cast<int>(piece.rounds.size())));
    switch (one_of(random, 12)) {
        case 0:
            if (auto* even = std::get_if<WorkedEvenly>(&piece.rounds[round].working)) ++even->stitches;
            break;
        case 1:
            piece.rounds[round].lies_flat = !piece.rounds[round].lies_flat;
            break;
        case 2:
            piece.rounds[round].yarn = static_cast<std::size_t>(one_of(random, 3));
            break;
        case 3:
            toy.yarns[static_cast<std::size_t>(one_of(random, 2))].colour.red ^= 0x40;
            break;
        case 4:
            toy.gauge = GivenGauge{random_gauge(random), one_of(random, 2) == 0 ? "Body" : ""};
            break;
        case 5:
            piece.area_stretch = 0.02 * one_of(random, 5);
            break;
        case 6:
            piece.end = static_cast<End>(one_of(random, 3));
            break;
        case 7:
            piece.name = one_of(random, 2) == 0 ? "Body" : "Head";
            break;
        case 8:
            piece.features.resize(static_cast<std::size_t>(one_of(random, 3)));
            for (Feature& feature : piece.features) feature.round = static_cast<int>(round);
            break;
        case 9:
            piece.starts_at_top = !piece.starts_at_top;
            break;
        case 10:
            piece.rounds.insert(piece.rounds.begin() + static_cast<std::ptrdiff_t>(round),
                                piece.rounds[round]);
            break;
        default:
            piece.rounds[round].note += "!";
            break;
    }
}

/// Where two rounds are as bad, a shape solved from the one before may name the other.
std::multiset<CheckCode> codes(const PieceStudy& study) {
    std::multiset<CheckCode> codes;
    for (const Check& check : study.checks()) codes.insert(check.code);
    return codes;
}

void expect_alike(const StudiedPiece& staged, const StudiedPiece& cold) {
    const PieceStudy& one = *staged.study;
    const PieceStudy& other = *cold.study;
    EXPECT_EQ(one.graph().graph, other.graph().graph);
    EXPECT_EQ(one.problem(), other.problem());
    EXPECT_EQ(one.gauge, other.gauge);
    EXPECT_EQ(one.measures().termination, other.measures().termination);
    const double little = 1e-4 * std::max(1.0, other.measures().width_mm);
    EXPECT_NEAR(one.measures().width_mm, other.measures().width_mm, little);
    EXPECT_NEAR(one.measures().height_mm, other.measures().height_mm, little);
    EXPECT_NEAR(one.size().width_mm.low, other.size().width_mm.low, little);
    EXPECT_NEAR(one.size().height_mm.high, other.size().height_mm.high, little);
    EXPECT_EQ(codes(one), codes(other));
    ASSERT_EQ(staged.surface() == nullptr, cold.surface() == nullptr);
    if (!staged.surface()) return;
    EXPECT_EQ(staged.surface()->mesh.colours, cold.surface()->mesh.colours);
    ASSERT_EQ(staged.surface()->mesh.positions.size(), cold.surface()->mesh.positions.size());
    for (std::size_t i = 0; i < cold.surface()->mesh.positions.size(); i += 101)
        EXPECT_NEAR(staged.surface()->mesh.positions[i], cold.surface()->mesh.positions[i], little);
}

TEST(StagedStudies, AreWhatStudiesFromNothingAre) {
    for (int i = 0; i < random_cases(200); ++i) {
        std::mt19937 random(static_cast<unsigned>(i));
        Toy toy;
        toy.gauge = GivenGauge{random_gauge(random)};
        toy.yarns.resize(2);
        toy.yarns[1].colour = {0xF0, 0xF0, 0xF0};
        toy.pieces.push_back(random_piece(random));
        const SurfaceWanted wanted{false, {.relief = Relief::none, .most_triangles = 20'000}};
        StudiedPiece staged = study_in_stages(toy, 0, {}, wanted);
        for (int edit = 0; edit < 12; ++edit) {
            edit_at_random(toy, random);
            staged = study_in_stages(toy, 0, staged, wanted);
            expect_alike(staged, study_in_stages(toy, 0, {}, wanted));
            ASSERT_FALSE(::testing::Test::HasFailure()) << "case " << i << ", edit " << edit;
        }
    }
}

}  // namespace
}  // namespace roundwright::test
