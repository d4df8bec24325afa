#include <gtest/gtest.h>
#include <numeric>
#include <random>

#include "core/study/study_surface.h"
#include "tests/core/mesh/mesh_measures.h"
#include "tests/core/shape/random_table.h"
#include "tests/support/random_cases.h"

namespace roundwright::test {
namespace {

constexpr int all_tables = 100'000;
constexpr int parts = 4;

/// Most tables are as large as toys are, which keeps all of them affordable; some are as large as they come.
int most_stitches(int number) { return number % 200 == 0 ? 150'000 : 2'000; }

std::vector<int> counts_within(std::mt19937& random, int first, int most) {
    for (;;) {
        auto counts = random_table_counts(random, first);
        if (std::accumulate(counts.begin(), counts.end(), 0) <= most) return counts;
    }
}

Piece random_table_piece(std::mt19937& random, int most) {
    constexpr double stretches[] = {0, 0.01, 0.04, 0.08, 0.2};
    Piece piece;
    int first = std::uniform_int_distribution<int>(3, 12)(random);
    switch (random() % 4) {
        case 0:
            first = std::uniform_int_distribution<int>(3, 60)(random);
            piece.start = OpenTube{first};
            break;
        case 1:
            piece.start = ChainRing{first};
            break;
        default:
            break;
    }
    constexpr End ends[] = {End::left_open, End::drawn_closed, End::sewn_straight};
    piece.end = ends[random() % 3];
    piece.area_stretch = stretches[random() % 5];
    piece.starts_at_top = random() % 4 == 0;
    for (const int count : counts_within(random, first, most))
        piece.rounds.emplace_back().working = WorkedEvenly{count};
    return piece;
}

bool has_hole_below(const Piece& piece) {
    return std::holds_alternative<OpenTube>(piece.start) || std::holds_alternative<ChainRing>(piece.start);
}

/// A tube open at both ends is a ring of fabric; everything else is a ball's surface, or a cup's with its
/// inside.
int expected_euler_characteristic(const Piece& piece) {
    return has_hole_below(piece) && piece.end == End::left_open ? 0 : 2;
}

class RandomMeshes : public ::testing::TestWithParam<int> {};

// Whatever table can be worked has a closed, outward facing mesh.
TEST_P(RandomMeshes, AreClosedOrientedAndFinite) {
    for (int k = 0; k < testing::random_cases(all_tables / parts); ++k) {
        const int number = GetParam() + parts * k;
        std::mt19937 random(static_cast<unsigned>(number));
        Toy toy;
        toy.pieces.push_back(random_table_piece(random, most_stitches(number)));
        const PieceStudy study = study_piece(toy, 0);
        ASSERT_TRUE(study.measures().usable()) << "table " << number;
        RevolveOptions options;
        options.relief = number % 8 == 0 ? Relief::solid : number % 8 == 4 ? Relief::shaded : Relief::none;
        options.most_triangles = 4'000;
        const Mesh& mesh = study_surface(toy, 0, study, options).mesh;
        const MeshMeasures found = measure(mesh);
        ASSERT_TRUE(found.finite && found.unit_normals) << "table " << number;
        ASSERT_EQ(found.odd_edges, 0U) << "table " << number;
        ASSERT_EQ(found.euler_characteristic, expected_euler_characteristic(toy.pieces[0]))
            << "table " << number;
        // A stub of a few rounds without stuffing may hold nothing, nor may a single round sewn straight
        // across.
        const bool only_a_seam = study.problem().sewn_straight && study.graph().graph.rounds.size() == 1;
        if ((study.problem().area_stretch > 0 || study.measures().flattened) && !only_a_seam) {
            ASSERT_GT(found.volume_mm3, 0) << "table " << number;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Part, RandomMeshes, ::testing::Range(0, parts));

}  // namespace
}  // namespace roundwright::test
