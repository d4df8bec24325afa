#include "core/toy/piece_list.h"

#include <algorithm>
#include <gtest/gtest.h>
#include <random>
#include <utility>

#include "core/toy/edits.h"
#include "core/toy/toy.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

Piece piece_called(const std::string& name) {
    Piece piece;
    piece.name = name;
    piece.rounds.resize(3);
    return piece;
}

Toy harbour() {
    Toy toy;
    toy.pieces = {piece_called("Head"), piece_called("Body"), piece_called("Fin")};
    return toy;
}

std::vector<PieceId> ids_of(const PieceList& pieces) {
    std::vector<PieceId> ids;
    for (std::size_t i = 0; i < pieces.size(); ++i) ids.push_back(pieces.id(i));
    return ids;
}

using Ids = std::vector<PieceId>;

bool share(const PieceList& a, const PieceList& b, std::size_t index) {
    return a.shared(index) == b.shared(index);
}

TEST(PieceList, CopiesShareEveryPiece) {
    const Toy toy = harbour();
    const Toy copy = toy;
    for (std::size_t i = 0; i < 3; ++i) EXPECT_TRUE(share(toy.pieces, copy.pieces, i));
}

TEST(PieceList, ReadingThroughAConstListSharesOn) {
    const Toy toy = harbour();
    const Toy copy = toy;
    for (const Piece& piece : copy.pieces) EXPECT_FALSE(piece.name.empty());
    EXPECT_EQ(copy.pieces.front().name, "Head");
    EXPECT_EQ(copy, toy);
    for (std::size_t i = 0; i < 3; ++i) EXPECT_TRUE(share(toy.pieces, copy.pieces, i));
}

TEST(PieceList, ChangingAPieceDetachesThatOneOnly) {
    const Toy toy = harbour();
    Toy copy = toy;
    copy.pieces[1].name = "Tail";
    EXPECT_EQ(toy.pieces[1].name, "Body");
    EXPECT_TRUE(share(toy.pieces, copy.pieces, 0));
    EXPECT_FALSE(share(toy.pieces, copy.pieces, 1));
    EXPECT_TRUE(share(toy.pieces, copy.pieces, 2));
    const Piece* own = &std::as_const(copy).pieces[1];
    copy.pieces[1].make = 4;
    EXPECT_EQ(&std::as_const(copy).pieces[1], own) << "what is its own is not copied again";
}

TEST(PieceList, WhatIsHeldOnToStaysAsItWas) {
    Toy toy = harbour();
    const auto held = toy.pieces.shared(0);
    toy.pieces[0].name = "Other";
    EXPECT_EQ(held->name, "Head");
    toy.pieces.clear();
    EXPECT_EQ(held->name, "Head");
}

TEST(PieceList, EveryWayToComeInGivesANewId) {
    Toy toy = harbour();
    EXPECT_EQ(ids_of(toy.pieces), (Ids{PieceId{1}, PieceId{2}, PieceId{3}}));
    toy.pieces.push_back(toy.pieces[0]);
    toy.pieces.insert(toy.pieces.begin(), piece_called("Ear"));
    toy.pieces.emplace_back();
    toy.pieces.resize(7);
    const Toy other = harbour();
    toy.pieces.insert(toy.pieces.cend(), other.pieces.begin(), other.pieces.end());
    EXPECT_EQ(ids_of(toy.pieces), (Ids{PieceId{5}, PieceId{1}, PieceId{2}, PieceId{3}, PieceId{4}, PieceId{6},
                                       PieceId{7}, PieceId{8}, PieceId{9}, PieceId{10}}));
    EXPECT_EQ(toy.pieces.shared(9), other.pieces.shared(2));
}

TEST(PieceList, IdsStayWhenPiecesMoveOrGo) {
    const Toy toy = harbour();
    const Toy moved = move_piece(toy, 0, 2);
    EXPECT_EQ(ids_of(moved.pieces), (Ids{PieceId{2}, PieceId{3}, PieceId{1}}));
    EXPECT_EQ(moved.pieces[2].name, "Head");
    EXPECT_EQ(moved.pieces.index_of(PieceId{1}), 2u);
    const Toy fewer = remove_piece(moved, 0);
    EXPECT_EQ(ids_of(fewer.pieces), (Ids{PieceId{3}, PieceId{1}}));
    EXPECT_EQ(fewer.pieces.index_of(PieceId{2}), std::nullopt);
}

TEST(PieceList, AnIdIsNotGivenTwice) {
    Toy toy = remove_piece(harbour(), 2);
    toy = insert_piece(toy, 0, piece_called("Beak")).value;
    EXPECT_EQ(ids_of(toy.pieces), (Ids{PieceId{4}, PieceId{1}, PieceId{2}}));
}

TEST(PieceList, ReplacedByAssignmentAPieceKeepsItsId) {
    Toy toy = harbour();
    toy.pieces[1] = piece_called("Sail");
    EXPECT_EQ(toy.pieces.id(1), PieceId{2});
    EXPECT_EQ(toy.pieces[1].name, "Sail");
}

TEST(PieceList, TheSamePiecesInAnotherOrderOrUnderOtherIdsAreNotEqual) {
    Toy two;
    two.pieces = {piece_called("Ear"), piece_called("Ear")};
    EXPECT_NE(move_piece(two, 0, 1), two);
    Toy anew = two;
    anew.pieces.erase(anew.pieces.cbegin() + 1);
    anew.pieces.push_back(piece_called("Ear"));
    EXPECT_NE(anew, two);
    EXPECT_EQ(anew.pieces[1], two.pieces[1]);
}

TEST(PieceList, YarnsThatMoveNoRoundDetachNoPiece) {
    Toy toy = harbour();
    toy.yarns.resize(2);
    toy.pieces[2].rounds[0].yarn = 1;
    const Toy grown = insert_yarn(toy, 2, Yarn{});
    for (std::size_t i = 0; i < 3; ++i) EXPECT_TRUE(share(toy.pieces, grown.pieces, i));
    const Toy before = insert_yarn(toy, 1, Yarn{});
    EXPECT_TRUE(share(toy.pieces, before.pieces, 0));
    EXPECT_FALSE(share(toy.pieces, before.pieces, 2));
    EXPECT_EQ(before.pieces[2].rounds[0].yarn, 2u);
}

TEST(PieceIds, TheFirstToAskKeepsIt) {
    const Ids wanted{PieceId{4}, PieceId::none, PieceId{4}, PieceId{2}, PieceId{2'000'000'000}};
    EXPECT_EQ(unique_piece_ids(wanted), (Ids{PieceId{4}, PieceId{5}, PieceId{6}, PieceId{2}, PieceId{7}}));
    EXPECT_EQ(unique_piece_ids(Ids{largest_piece_id, PieceId::none, PieceId{1}}),
              (Ids{largest_piece_id, PieceId{2}, PieceId{1}}));
}

/// A toy's pieces as a plain list of values with their ids, that shares nothing.
struct PlainPiece {
    PieceId id;
    Piece piece;
};
using PlainToy = std::vector<PlainPiece>;

PlainToy plain(const Toy& toy) {
    PlainToy copy;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) copy.push_back({toy.pieces.id(i), toy.pieces[i]});
    return copy;
}

bool same(const Toy& toy, const PlainToy& expected) {
    if (toy.pieces.size() != expected.size()) return false;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        if (toy.pieces.id(i) != expected[i].id || !(toy.pieces[i] == expected[i].piece)) return false;
    }
    return true;
}

class RandomToys {
  public:
    explicit RandomToys(unsigned seed) : random_(seed) {
        toys_.push_back(harbour());
        plain_.push_back(plain(toys_.back()));
    }

    /// Copies toys over one another and changes one of them, in it and in its plain twin.
    void step() {
        const std::size_t which = below(toys_.size());
        if (toys_.size() < 8) {
            toys_.push_back(toys_[which]);
            plain_.push_back(plain_[which]);
        } else if (below(4) == 0) {
            const std::size_t to = below(toys_.size());
            toys_[to] = toys_[which];
            plain_[to] = plain_[which];
        }
        change(toys_[which], plain_[which]);
    }

    void expect_all_apart(int at) const {
        for (std::size_t i = 0; i < toys_.size(); ++i) ASSERT_TRUE(same(toys_[i], plain_[i])) << at;
    }

  private:
    std::size_t below(std::size_t count) { return random_() % count; }

    void change(Toy& toy, PlainToy& twin) {
        if (toy.pieces.empty() || below(7) == 0) return add(toy, twin);
        const std::size_t at = below(toy.pieces.size());
        const auto place = static_cast<std::ptrdiff_t>(at);
        const std::size_t to = below(toy.pieces.size());
        switch (below(7)) {
            case 0:
                toy.pieces[at].make = twin[at].piece.make = static_cast<int>(below(90));
                break;
            case 1:
                for (Piece& piece : toy.pieces) piece.name += "x";
                for (PlainPiece& each : twin) each.piece.name += "x";
                break;
            case 2:
                toy.pieces[at].rounds.resize(below(5));
                twin[at].piece.rounds.resize(toy.pieces[at].rounds.size());
                break;
            case 3:
                toy.pieces[at] = toy.pieces[to];
                twin[at].piece = twin[to].piece;
                break;
            case 4: {
                toy.pieces.move(at, to);
                const PlainPiece moved = twin[at];
                twin.erase(twin.begin() + place);
                twin.insert(twin.begin() + static_cast<std::ptrdiff_t>(to), moved);
                break;
            }
            case 5:
                if (toy.pieces.size() < 3) return;
                toy.pieces.erase(toy.pieces.begin() + place);
                twin.erase(twin.begin() + place);
                break;
            default:
                std::ranges::for_each(toy.pieces, [](Piece& piece) { piece.face_degrees += 1; });
                for (PlainPiece& each : twin) each.piece.face_degrees += 1;
        }
    }

    void add(Toy& toy, PlainToy& twin) {
        if (toy.pieces.size() > 6) return;
        const std::size_t at = below(toy.pieces.size() + 1);
        const Piece added = toy.pieces.empty() ? piece_called("Fin") : twin[below(twin.size())].piece;
        toy = insert_piece(toy, at, added).value;
        twin.insert(twin.begin() + static_cast<std::ptrdiff_t>(at), {toy.pieces.id(at), added});
    }

    std::mt19937 random_;
    std::vector<Toy> toys_;
    std::vector<PlainToy> plain_;
};

TEST(PieceList, SharingLeaksNoChangeFromOneToyIntoAnother) {
    for (unsigned seed = 1; seed <= static_cast<unsigned>(testing::random_cases(40)); ++seed) {
        RandomToys toys(seed);
        for (int at = 0; at < 500; ++at) {
            toys.step();
            ASSERT_NO_FATAL_FAILURE(toys.expect_all_apart(at)) << "seed " << seed;
        }
    }
}

}  // namespace
}  // namespace roundwright
