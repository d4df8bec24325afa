#include "app/export/mesh_file.h"

#include <gtest/gtest.h>
#include <numeric>

namespace roundwright::app {
namespace {

using Shares = std::vector<std::size_t>;

TEST(MeshFile, SharesLeaveSmallPiecesTheirs) {
    EXPECT_EQ(shares_of({}, 10), Shares{});
    EXPECT_EQ(shares_of({3, 4}, 10), (Shares{3, 4}));
    EXPECT_EQ(shares_of({3, 7}, 10), (Shares{3, 7}));
    EXPECT_EQ(shares_of({9, 1, 9}, 11), (Shares{5, 1, 5}));
    EXPECT_EQ(shares_of({100, 2, 30, 4}, 20), (Shares{7, 2, 7, 4}));
    EXPECT_EQ(shares_of({8, 8, 8}, 2), (Shares{0, 0, 0}));
}

Toy many_balls(std::size_t pieces) {
    std::vector<int> counts;
    for (int i = 1; i <= 20; ++i) counts.push_back(6 * i);
    counts.insert(counts.end(), 20, 120);
    for (int i = 20; i >= 1; --i) counts.push_back(6 * i);
    Piece ball;
    ball.end = End::drawn_closed;
    for (const int count : counts) ball.rounds.emplace_back().working = WorkedEvenly{count};
    Toy toy;
    for (std::size_t k = 0; k < pieces; ++k) toy.pieces.push_back(ball);
    return toy;
}

// An STL file is 84 bytes and 50 a triangle.
std::size_t triangles_of(const MeshFile& file) { return (file.bytes.size() - 84) / 50; }

TEST(MeshFile, AllPiecesTogetherKeepToTheLimit) {
    const Toy toy = many_balls(60);
    std::vector<std::size_t> all(60);
    std::iota(all.begin(), all.end(), std::size_t{0});
    const MeshFile one = mesh_file(toy, {MeshForm::stl, {0}, {}});
    EXPECT_FALSE(one.coarser);
    const MeshFile ten = mesh_file(toy, {MeshForm::stl, {0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, {}});
    EXPECT_FALSE(ten.coarser);
    EXPECT_EQ(triangles_of(ten), 10 * triangles_of(one));
    const MeshFile sixty = mesh_file(toy, {MeshForm::stl, all, {}});
    EXPECT_TRUE(sixty.coarser);
    EXPECT_LE(triangles_of(sixty), most_triangles_at_all);
    EXPECT_GT(triangles_of(sixty), most_triangles_at_all / 3);
}

}  // namespace
}  // namespace roundwright::app
