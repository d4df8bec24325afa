#include "core/assembly/join_tree.h"

#include <gtest/gtest.h>
#include <random>

namespace roundwright {
namespace {

Toy toy_of(int pieces, int make = 1) {
    Toy toy;
    for (int i = 0; i < pieces; ++i) toy.pieces.emplace_back().make = make;
    return toy;
}

PieceCopy copy_of(const Toy& toy, std::size_t piece, int copy = 0) { return {toy.pieces.id(piece), copy}; }

void join(Toy& toy, std::size_t piece, std::size_t onto, bool pair = false) {
    toy.joins.push_back({.piece = copy_of(toy, piece), .onto = copy_of(toy, onto), .pair = pair, .at = {}});
}

TEST(JoinTree, PutsWhatIsJoinedOnAfterWhatItIsJoinedTo) {
    Toy toy = toy_of(3);
    join(toy, 0, 1);
    join(toy, 1, 2);
    const JoinTree tree = join_tree(toy);
    ASSERT_EQ(tree.copies.size(), 3u);
    EXPECT_TRUE(tree.problems.empty());
    EXPECT_EQ(tree.copies[0].copy, copy_of(toy, 2));
    EXPECT_EQ(tree.copies[1].copy, copy_of(toy, 1));
    EXPECT_EQ(tree.copies[1].onto, 0u);
    EXPECT_EQ(tree.copies[2].copy, copy_of(toy, 0));
    EXPECT_EQ(tree.copies[2].onto, 1u);
}

TEST(JoinTree, APairTakesTheNextCopy) {
    Toy toy = toy_of(1);
    toy.pieces.emplace_back().make = 3;
    join(toy, 1, 0, true);
    const JoinTree tree = join_tree(toy);
    ASSERT_EQ(tree.copies.size(), 4u);
    EXPECT_EQ(tree.copies[0].copy, copy_of(toy, 0));
    EXPECT_EQ(tree.copies[1].copy, copy_of(toy, 1, 2));
    EXPECT_FALSE(tree.copies[1].join);
    EXPECT_FALSE(tree.copies[2].mirrored);
    EXPECT_TRUE(tree.copies[3].mirrored);
    EXPECT_EQ(tree.copies[3].copy, copy_of(toy, 1, 1));
}

TEST(JoinTree, NamesWhatIsNotThereAndWhatIsJoinedTwice) {
    Toy toy = toy_of(2);
    join(toy, 1, 0, true);
    join(toy, 1, 0);
    toy.joins.push_back({.piece = {PieceId{99}, 0}, .onto = copy_of(toy, 0), .at = {}});
    const JoinTree tree = join_tree(toy);
    EXPECT_EQ(tree.problems, (std::vector<JoinProblem>{{0, JoinFault::no_such_copy},
                                                       {1, JoinFault::joined_twice},
                                                       {2, JoinFault::no_such_piece}}));
    EXPECT_EQ(tree.copies.size(), 2u);
    EXPECT_EQ(tree.copies[1].join, 0u);
}

TEST(JoinTree, ACircleHoldsNothingAndWhatHangsOnItStays) {
    Toy toy = toy_of(4);
    join(toy, 0, 1);
    join(toy, 1, 2);
    join(toy, 2, 0);
    join(toy, 3, 2);
    const JoinTree tree = join_tree(toy);
    ASSERT_EQ(tree.problems.size(), 3u);
    for (const JoinProblem& problem : tree.problems) EXPECT_EQ(problem.fault, JoinFault::in_a_circle);
    ASSERT_EQ(tree.copies.size(), 4u);
    EXPECT_EQ(tree.copies[3].copy, copy_of(toy, 3));
    EXPECT_EQ(tree.copies[3].onto, 2u);
    join(toy, 3, 3);
    EXPECT_EQ(join_tree(toy).copies.size(), 4u);
}

TEST(JoinTree, OfAnyJoinsHoldsEveryCopyOnceInOrder) {
    std::mt19937 random(17);
    const auto below = [&](int end) { return std::uniform_int_distribution<int>(0, end - 1)(random); };
    for (int turn = 0; turn < 500; ++turn) {
        Toy toy = toy_of(2 + below(8), 1 + below(3));
        for (int i = below(20); i > 0; --i) {
            const auto any = [&] {
                return PieceCopy{PieceId{static_cast<std::uint32_t>(1 + below(10))}, below(4)};
            };
            toy.joins.push_back({.piece = any(), .onto = any(), .pair = below(2) == 0, .at = {}});
        }
        const JoinTree tree = join_tree(toy);
        std::vector<PieceCopy> met;
        for (std::size_t i = 0; i < tree.copies.size(); ++i) {
            met.push_back(tree.copies[i].copy);
            EXPECT_EQ(tree.copies[i].join.has_value(), tree.copies[i].onto.has_value());
            if (tree.copies[i].onto) {
                EXPECT_LT(*tree.copies[i].onto, i);
            }
        }
        std::ranges::sort(met);
        std::vector<PieceCopy> all;
        for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
            for (int copy = 0; copy < std::as_const(toy).pieces[piece].make; ++copy)
                all.push_back(copy_of(toy, piece, copy));
        std::ranges::sort(all);
        EXPECT_EQ(met, all) << turn;
    }
}

}  // namespace
}  // namespace roundwright
