#include "render/wording/pattern/assembly_words.h"

#include <gtest/gtest.h>

#include "tests/support/plain_pieces.h"

namespace roundwright::render {
namespace {

struct AssemblyWords : ::testing::Test {
    AssemblyWords() {
        toy.pieces = PieceList{test::even_piece("Head", 20, 36, End::drawn_closed),
                               test::even_piece("Ear", 5, 12, End::left_open, 2)};
        toy.joins = {
            {.piece = copy(1), .onto = copy(0), .pair = true, .at = {.round = 4, .stitches_right = 6}}};
    }
    PieceCopy copy(std::size_t piece, int number = 0) const { return {toy.pieces.id(piece), number}; }
    std::vector<SewingStep> steps() const { return sewing_steps(toy, test::counts_of(toy), {4, 4, 0, 0}); }
    QStringList words(Terms terms = Terms::us) const { return assembly_words(toy, steps(), terms); }
    QString first(Terms terms = Terms::us) const { return words(terms).value(0); }
    Toy toy;
};

#define EXPECT_WORDS(words, expected) EXPECT_EQ((words).toStdString(), expected)

TEST_F(AssemblyWords, APairOfOpenEdgesIsPinnedBetweenRoundsSoManyStitchesApart) {
    EXPECT_WORDS(
        first(),
        "Ear (2): Pin the open edges to Head between rounds 5 and 6, 12 stitches apart, and sew them on "
        "all round with the yarn tails. Each edge makes a ring from round 4 to round 7. Add a little "
        "stuffing to each before the last stitches.");
    EXPECT_WORDS(words().last(), "Weave in all ends.");
    EXPECT_TRUE(
        first(Terms::uk).endsWith(QStringLiteral("Add a little filling to each before the last stitches.")));
}

TEST_F(AssemblyWords, FlatPiecesAreSewnThroughBothLayers) {
    toy.pieces[1].area_stretch = unstuffed_stretch;
    toy.joins[0].seam = Seam::straight;
    EXPECT_WORDS(
        first(),
        "Ear (2): Press the edges flat, pin them to Head between rounds 5 and 6, 12 stitches apart, and sew "
        "them on through both layers with the yarn tails. The seam runs along the round.");
    toy.joins[0].turn_degrees = 90;
    EXPECT_TRUE(first().endsWith(QStringLiteral("The seam runs upright, across the rounds.")));
    toy.joins[0].turn_degrees = -40;
    EXPECT_TRUE(first().endsWith(QStringLiteral("The seam slants by about 40°.")));
}

TEST_F(AssemblyWords, AStripThatCurlsIsSewnByOneEnd) {
    Piece& tail = toy.pieces[1];
    tail = test::even_piece("Tail", 1, 30);
    tail.start = OpenTube{15};
    tail.joining = Joining::rows;
    toy.joins[0].pair = false;
    toy.joins[0].at.stitches_right = 18;
    for (const Seam seam : {Seam::edge, Seam::closed, Seam::straight}) {
        toy.joins[0].seam = seam;
        EXPECT_WORDS(first(),
                     "Tail: Let it curl into a coil, hold one end of it against Head between rounds 5 and 6, "
                     "at the middle of the back, and sew that on with the yarn tail.");
    }
}

TEST_F(AssemblyWords, PelletsGoInBeforeTheStuffing) {
    toy.pieces[1].weight_grams = 8;
    EXPECT_TRUE(first().endsWith(QStringLiteral(
        "The bags of pellets go in first. Add a little stuffing to each before the last stitches.")));
    toy.joins[0].pair = false;
    toy.pieces[1].make = 1;
    EXPECT_TRUE(first().contains(QStringLiteral("The bag of pellets goes in first. Add a little stuffing")));
}

TEST_F(AssemblyWords, PlacesAroundThePiece) {
    toy.joins[0].pair = false;
    toy.pieces[1].make = 1;
    const auto place = [&](int round, double right, bool around = false) {
        toy.joins[0].at = {round, right, around};
        return sewn_place_words(steps().at(0)).toStdString();
    };
    EXPECT_EQ(place(4, 0), "between rounds 5 and 6, at the middle of the front");
    EXPECT_EQ(place(4, 18), "between rounds 5 and 6, at the middle of the back");
    EXPECT_EQ(place(4, 1), "between rounds 5 and 6, 1 stitch to the right of the middle of the front");
    EXPECT_EQ(place(4, -7), "between rounds 5 and 6, 7 stitches to the left of the middle of the front");
    EXPECT_EQ(place(4, 0, true), "between rounds 5 and 6, all the way round");
    EXPECT_EQ(place(19, 0), "over its closed end");
    EXPECT_EQ(place(-1, 0), "over the middle of its first round");
    toy.pieces[0].end = End::left_open;
    EXPECT_EQ(place(19, 0), "over its open edge");
    toy.pieces[1].make = 2;
    toy.joins[0].pair = true;
    EXPECT_EQ(place(4, 9), "between rounds 5 and 6, one on each side");
    EXPECT_EQ(place(4, 15), "between rounds 5 and 6, 6 stitches apart across the back");
}

TEST_F(AssemblyWords, TiltAndDepthAreSaidWhereTheyShow) {
    toy.joins[0].lean_degrees = 20;
    toy.joins[0].lean_right_degrees = -15;
    toy.joins[0].sink_mm = 3;
    EXPECT_TRUE(first().contains(
        QStringLiteral("Tilt them up by about 20°. Tilt them inwards by about 15°. Push them in a little")))
        << first().toStdString();
    toy.pieces[0].starts_at_top = true;
    EXPECT_TRUE(first().contains(QStringLiteral("Tilt them down by about 20°.")));
    toy.joins[0].lean_degrees = 3;
    EXPECT_FALSE(first().contains(QStringLiteral("down")));
}

TEST_F(AssemblyWords, CopiesAreNumberedWhereThereAreMore) {
    toy.pieces[1].make = 5;
    toy.joins.push_back({.piece = copy(1, 3), .onto = copy(0), .at = {.round = 9}});
    EXPECT_TRUE(words().value(0).startsWith(QStringLiteral("Ear (2 of 5):")));
    EXPECT_TRUE(words().value(1).startsWith(QStringLiteral("Ear (number 4 of 5):")));
}

TEST_F(AssemblyWords, WhatIsWorkedOnHasNoSeamAndAnOrder) {
    Piece body = test::even_piece("Body", 20, 30, End::drawn_closed);
    body.start = WorkedOn{.stitches = 30, .chains_between = 3};
    toy = {};
    toy.pieces = PieceList{body, test::even_piece("Leg", 8, 12, End::left_open, 2)};
    toy.joins = {
        {.piece = copy(1), .onto = copy(0), .pair = true, .seam = Seam::worked_on, .at = {.round = -1}}};
    EXPECT_EQ(words().size(), 2);
    EXPECT_WORDS(
        first(),
        "Body: It is worked on the edges of Leg (2), so there is no seam. Close any small hole where they "
        "meet with a few stitches.");
    EXPECT_WORDS(working_order_words(toy), "Work the pieces in this order: Leg, Body.");
}

TEST_F(AssemblyWords, TheMakersOwnWordsComeFirst) {
    toy.text.assembly = "Sew on the ears.";
    EXPECT_EQ(words(), QStringList{QStringLiteral("Sew on the ears.")});
    toy.text.assembly.clear();
    toy.joins.clear();
    EXPECT_TRUE(words().isEmpty());
    EXPECT_TRUE(working_order_words(toy).isEmpty());
}

}  // namespace
}  // namespace roundwright::render
