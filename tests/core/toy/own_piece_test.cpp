#include "core/toy/own_piece.h"

#include <gtest/gtest.h>

#include "core/base/limits.h"

namespace roundwright {
namespace {

Yarn yarn(const char* name, Colour colour) {
    Yarn made;
    made.name = name;
    made.colour = colour;
    return made;
}

/// A fin in the second of three yarns, with an eye, half worked.
Toy harbour() {
    Toy toy;
    toy.yarns = {yarn("Fog grey", {200, 206, 210}), yarn("Tide blue", {60, 90, 140}),
                 yarn("Foam", {250, 250, 250})};
    Piece fin;
    fin.name = "Fin";
    for (const int n : {6, 9, 9})
        fin.rounds.push_back({.working = WorkedEvenly{.stitches = n}, .yarn = 1, .note = {}});
    fin.features.push_back({.name = {}, .round = 1});
    fin.worked.rounds = 2;
    toy.pieces = PieceList{
        Piece{.name = "Body", .rounds = {}, .stuffed_rounds = {}, .worked = {}, .features = {}}, fin};
    return toy;
}

TEST(OwnPiece, IsAToyOfItsOwnWithItsYarnsAndFace) {
    const Toy alone = toy_of_piece(harbour(), 1);
    ASSERT_EQ(alone.pieces.size(), 1u);
    ASSERT_EQ(alone.yarns.size(), 1u);
    EXPECT_EQ(alone.yarns[0].name, "Tide blue");
    EXPECT_EQ(alone.pieces[0].rounds[2].yarn, 0u);
    EXPECT_EQ(alone.pieces[0].features.size(), 1u);
    EXPECT_EQ(alone.pieces[0].worked.rounds, 0);
    EXPECT_EQ(alone.title, "Fin");
}

TEST(OwnPiece, KeepsEveryYarnThatItsWordsMayName) {
    Toy toy = harbour();
    toy.pieces[1].rounds[1].working = AsWritten{"sc in each st around"};
    const Toy alone = toy_of_piece(toy, 1);
    EXPECT_EQ(alone.yarns, toy.yarns);
    EXPECT_EQ(alone.pieces[0].rounds[0].yarn, 1u);
}

TEST(OwnPiece, ComesIntoAToyWithTheYarnsThatItDoesNotHave) {
    Toy other;
    other.yarns = {yarn("Sand", {220, 200, 160}), yarn("Tide blue", {60, 90, 140})};
    other.pieces =
        PieceList{Piece{.name = "Star", .rounds = {}, .stuffed_rounds = {}, .worked = {}, .features = {}}};
    const auto edited = insert_pieces_of(other, 1, toy_of_piece(harbour(), 1));
    ASSERT_FALSE(edited.refusal);
    EXPECT_EQ(edited.value.yarns, other.yarns);  // the toy has it
    EXPECT_EQ(edited.value.pieces[1].rounds[0].yarn, 1u);
    EXPECT_EQ(edited.value.pieces.id(0), other.pieces.id(0));
    other.yarns.pop_back();
    const auto with_yarn = insert_pieces_of(other, 9, toy_of_piece(harbour(), 1));
    ASSERT_EQ(with_yarn.value.yarns.size(), 2u);
    EXPECT_EQ(with_yarn.value.yarns[1].name, "Tide blue");
    EXPECT_EQ(with_yarn.value.pieces[1].rounds[0].yarn, 1u);
}

TEST(OwnPiece, IsRefusedOverTheLimit) {
    Toy full;
    full.pieces.resize(max_pieces);
    const auto edited = insert_pieces_of(full, 0, toy_of_piece(harbour(), 1));
    EXPECT_EQ(edited.refusal, EditRefusal::too_many_pieces);
    EXPECT_EQ(edited.value, full);
}

}  // namespace
}  // namespace roundwright
