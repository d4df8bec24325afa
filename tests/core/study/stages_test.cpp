#include <functional>
#include <gtest/gtest.h>
#include <string>

#include "core/study/studied_piece.h"
#include "core/toy/edits.h"
#include "tests/core/checks/checked_piece.h"

namespace roundwright::test {
namespace {

Yarn yarn_of(const char* name, Colour colour) {
    Yarn yarn;
    yarn.name = name;
    yarn.colour = colour;
    return yarn;
}

/// A seal pup of our own: a head with a pair of eyes in two yarns, and a fin.
Toy seal() {
    Toy toy = stuffed_toy_of({6, 12, 18, 24, 30, 30, 30, 30, 30, 24, 18, 12, 6});
    toy.gauge = GivenGauge{{5, 5, 0.2, 0.2, 0}};
    toy.yarns = {yarn_of("grey", {0x90, 0x90, 0x98}), yarn_of("white", {0xF0, 0xF0, 0xF0}),
                 yarn_of("red", {0xC0, 0x20, 0x20})};
    Piece& head = toy.pieces[0];
    head.name = "Head";
    head.rounds[6].yarn = 1;
    Feature eyes;
    eyes.round = 6;
    head.features = {eyes};
    Piece fin = toy_of({6, 9, 12, 15}).pieces[0];
    fin.name = "Fin";
    toy.pieces.push_back(fin);
    return toy;
}

/// The study and surface of one piece, with the studies of the others left aside.
StudiedPiece studied(const Toy& toy, std::size_t piece, const StudiedPiece& before = {}) {
    const SurfaceWanted wanted{false, {.relief = Relief::shaded}};
    return with_checks(study_in_stages(toy, piece, before, wanted), toy, piece, before);
}

/// The stages that were computed anew, by name: "stitches shape sizes checks surface".
std::string computed(const StudiedPiece& before, const StudiedPiece& after) {
    std::string names;
    const auto add = [&names](bool anew, const char* name) {
        if (anew) names += (names.empty() ? "" : " ") + std::string(name);
    };
    add(before.study->stitches != after.study->stitches, "stitches");
    add(before.study->shape != after.study->shape, "shape");
    add(before.study->sizes != after.study->sizes, "sizes");
    add(before.study->checked != after.study->checked, "checks");
    add(before.drawn != after.drawn, "surface");
    return names;
}

Round& head_round(Toy& toy, std::size_t round) { return toy.pieces[0].rounds[round]; }
Yarn& yarn(Toy& toy, std::size_t index) { return toy.yarns[index]; }

const char* const everything = "stitches shape sizes checks surface";
const char* const from_the_shape_on = "shape sizes checks surface";
const char* const nothing = "";

struct EditRow {
    const char* edit;
    std::function<void(Toy&)> change;
    const char* computes;
};

const EditRow rows[] = {
    {"nothing", [](Toy&) {}, nothing},
    // Its rounds.
    {"a count", [](Toy& t) { head_round(t, 5).working = WorkedEvenly{32}; }, everything},
    {"words of another count", [](Toy& t) { head_round(t, 5).working = AsWritten{"inc, 29 sc"}; },
     everything},
    {"words of the same count", [](Toy& t) { head_round(t, 5).working = AsWritten{"30 sc"}; },
     "stitches checks surface"},
    {"increases between those below",
     [](Toy& t) {
         head_round(t, 3).working =
             WorkedEvenly{24, StitchKind::single_crochet, LoopPart::both, Spacing::staggered};
     },
     "stitches checks surface"},
    {"a note", [](Toy& t) { head_round(t, 5).note = "Mind the flipper."; }, "checks"},
    {"the mark that it lies flat", [](Toy& t) { head_round(t, 1).lies_flat = true; }, "checks"},
    {"the yarn of a round", [](Toy& t) { head_round(t, 5).yarn = 1; }, "stitches checks surface"},
    {"a round added",
     [](Toy& t) { t.pieces[0].rounds.insert(t.pieces[0].rounds.begin() + 6, head_round(t, 6)); }, everything},
    {"a round taken out", [](Toy& t) { t.pieces[0].rounds.erase(t.pieces[0].rounds.begin() + 6); },
     everything},
    // The piece.
    {"the start", [](Toy& t) { t.pieces[0].start = ChainRing{6}; }, everything},
    {"the end", [](Toy& t) { t.pieces[0].end = End::left_open; }, from_the_shape_on},
    {"the stuffing", [](Toy& t) { t.pieces[0].area_stretch = firm_stuffing_stretch; }, from_the_shape_on},
    {"rounds joined", [](Toy& t) { t.pieces[0].joining = Joining::joined; }, "checks surface"},
    {"rows", [](Toy& t) { t.pieces[0].joining = Joining::rows; }, from_the_shape_on},
    {"which end is up", [](Toy& t) { t.pieces[0].starts_at_top = true; }, "checks surface"},
    {"its name", [](Toy& t) { t.pieces[0].name = "Body"; }, nothing},
    {"how many are made", [](Toy& t) { t.pieces[0].make = 2; }, nothing},
    {"a round ticked off",
     [](Toy& t) {
         t.pieces[0].worked = {3, 2, {20, 30, 40}};
     },
     nothing},
    {"an eye moved", [](Toy& t) { t.pieces[0].features[0].stitches_apart = 10; }, "checks"},
    {"an eye's colour",
     [](Toy& t) {
         t.pieces[0].features[0].colour = {1, 2, 3};
     },
     "checks"},
    {"the direction of the face", [](Toy& t) { t.pieces[0].face_degrees = 30; }, "checks"},
    // The yarns.
    {"a yarn's colour",
     [](Toy& t) {
         yarn(t, 1).colour = {0xFF, 0xE0, 0xD0};
     },
     "surface"},
    {"a yarn brushed", [](Toy& t) { yarn(t, 0).brushed = true; }, "surface"},
    {"the colour of a yarn that it has not",
     [](Toy& t) {
         yarn(t, 2).colour = {1, 2, 3};
     },
     nothing},
    {"a yarn's price", [](Toy& t) { yarn(t, 0).ball_price = 3.5; }, nothing},
    {"a yarn's name and length",
     [](Toy& t) {
         yarn(t, 0).name = "silver";
         yarn(t, 0).metres_per_100_g = 120;
     },
     nothing},
    // Its fabric is thicker: a washer may pass the opening no more. A stuffed shape does not read it.
    {"a yarn's weight", [](Toy& t) { yarn(t, 0).weight = YarnWeight::bulky; }, "checks"},
    {"a yarn more", [](Toy& t) { t.yarns.push_back(yarn_of("black", {})); }, nothing},
    {"a yarn gone", [](Toy& t) { t.yarns.resize(1); }, "surface"},
    // Gauge and hook.
    {"the gauge",
     [](Toy& t) {
         t.gauge = GivenGauge{{5.5, 5, 0.2, 0.2, 0}};
     },
     from_the_shape_on},
    {"the gauge's error",
     [](Toy& t) {
         t.gauge = GivenGauge{{5, 5, 0.4, 0.2, 0}};
     },
     "sizes checks"},
    {"the piece that the gauge was found on",
     [](Toy& t) {
         t.gauge = GivenGauge{{5, 5, 0.2, 0.2, 0}, "Head"};
     },
     "sizes"},
    {"the hook, beside a given gauge", [](Toy& t) { t.hook_mm = 4; }, nothing},
    // What is the toy's.
    {"its title", [](Toy& t) { t.title = "Seal pup"; }, nothing},
    {"its designer", [](Toy& t) { t.designer = "Harbour"; }, nothing},
    {"its notes", [](Toy& t) { t.notes = t.private_notes = "From the harbour."; }, nothing},
    {"its words", [](Toy& t) { t.text.introduction = "Sews up in an evening."; }, nothing},
    {"a pace, prices",
     [](Toy& t) {
         t.making.stitches_per_minute = 12;
         t.making.hourly_rate = 15;
         t.making.currency = "EUR";
     },
     nothing},
    // The other pieces.
    {"another piece edited", [](Toy& t) { t.pieces[1].rounds[2].working = WorkedEvenly{13}; }, nothing},
    {"another piece added", [](Toy& t) { t.pieces.push_back(t.pieces[1]); }, nothing},
    {"another piece taken out", [](Toy& t) { t.pieces.pop_back(); }, nothing},
};

TEST(StagesOfAStudy, EachEditComputesWhatReadsIt) {
    const Toy toy = seal();
    const StudiedPiece before = studied(toy, 0);
    ASSERT_TRUE(before.drawn);
    ASSERT_FALSE(before.study->sizes->size == SizeRange{});
    for (const EditRow& row : rows) {
        Toy edited = toy;
        row.change(edited);
        EXPECT_EQ(computed(before, studied(edited, 0, before)), row.computes) << row.edit;
    }
}

TEST(StagesOfAStudy, AHookChangesAGaugeThatIsEstimatedFromIt) {
    Toy toy = seal();
    toy.gauge = EstimatedGauge{YarnWeight::light};
    const StudiedPiece before = studied(toy, 0);
    toy.hook_mm = 4;
    EXPECT_EQ(computed(before, studied(toy, 0, before)), from_the_shape_on);
}

TEST(StagesOfAStudy, APieceThatMovedOnlyChangesItsNumberInItsChecks) {
    Toy toy = seal();
    toy.pieces[1].rounds.push_back({WorkedEvenly{40}, 0, false, ""});
    const StudiedPiece before = studied(toy, 1);
    ASSERT_FALSE(before.study->checks().empty());
    std::swap(toy.pieces[0], toy.pieces[1]);
    const StudiedPiece after = studied(toy, 0, before);
    EXPECT_EQ(computed(before, after), "checks");
    EXPECT_EQ(named(after.study->checks()), named(before.study->checks()));
    for (const Check& check : after.study->checks()) EXPECT_EQ(check.piece, 0);
    EXPECT_EQ(after.study->checked->inputs, before.study->checked->inputs);
    std::swap(toy.pieces[0], toy.pieces[1]);
    const StudiedPiece back = studied(toy, 1, after);
    EXPECT_EQ(named(back.study->checks()), named(before.study->checks()));
    for (const Check& check : back.study->checks()) EXPECT_EQ(check.piece, 1);
}

TEST(StagesOfAStudy, WhatIsDrawnUnstuffedIsSharedToo) {
    Toy toy = seal();
    const SurfaceWanted wanted{true, {.relief = Relief::shaded}};
    const StudiedPiece before = study_in_stages(toy, 0, {}, wanted);
    EXPECT_NE(before.shown, before.study);
    EXPECT_EQ(before.shown->problem().area_stretch, unstuffed_stretch);
    toy.pieces[0].features[0].stitches_apart = 10;
    const StudiedPiece moved = study_in_stages(toy, 0, before, wanted);
    EXPECT_EQ(moved.shown->shape, before.shown->shape);
    EXPECT_EQ(moved.shown->sizes, before.shown->sizes);
    EXPECT_EQ(moved.drawn, before.drawn);
    toy.pieces[0].area_stretch = firm_stuffing_stretch;
    const StudiedPiece firmer = study_in_stages(toy, 0, moved, wanted);
    EXPECT_NE(firmer.study->shape, moved.study->shape);
    EXPECT_EQ(firmer.drawn, moved.drawn) << "how it is stuffed does not show before it is";
}

TEST(StagesOfAStudy, ASurfaceOfAnotherFinenessIsMadeAnew) {
    const Toy toy = seal();
    const StudiedPiece before = studied(toy, 0);
    const SurfaceWanted few{false, {.relief = Relief::shaded, .most_triangles = 2'000}};
    const StudiedPiece coarse = with_checks(study_in_stages(toy, 0, before, few), toy, 0, before);
    EXPECT_EQ(computed(before, coarse), "surface");
    EXPECT_LT(coarse.surface()->mesh.triangle_count(), before.surface()->mesh.triangle_count());
}

TEST(StagesOfAStudy, NoSurfaceIsMadeThatIsNotWanted) {
    const Toy toy = seal();
    const StudiedPiece made = study_in_stages(toy, 0, {}, std::nullopt);
    EXPECT_EQ(made.surface(), nullptr);
    EXPECT_EQ(made.shown, made.study);
    EXPECT_FALSE(made.study->checks().empty() && made.study->size() == SizeRange{});
}

TEST(StagesOfAStudy, TheShapeIsThereBeforeItsChecks) {
    const Toy toy = seal();
    const StudiedPiece shaped = study_in_stages(toy, 0, {}, SurfaceWanted{});
    EXPECT_EQ(shaped.study->checked, no_stage<CheckStage>());
    EXPECT_NE(shaped.study->sizes, no_stage<SizeStage>());
    const StudiedPiece made = with_checks(shaped, toy, 0, {});
    EXPECT_EQ(shaped.study->shape, made.study->shape);
    EXPECT_EQ(shaped.drawn, made.drawn);
    EXPECT_EQ(made.shown, made.study);
    EXPECT_NE(made.study->checked, no_stage<CheckStage>());
}

TEST(StagesOfAStudy, WhatWasStoppedIsNotTakenForRight) {
    const Toy toy = stuffed_toy_of({6, 30, 12, 6});
    std::stop_source stopped;
    stopped.request_stop();
    const PieceStudy cut_short = study_piece(toy, 0, nullptr, stopped.get_token());
    const PieceStudy whole = study_piece(toy, 0, &cut_short);
    EXPECT_TRUE(whole.measures().converged());
    EXPECT_EQ(named(whole.checks()), named(study_piece(toy, 0).checks()));

    PieceStudy shaped = study_shape(toy, 0);
    shaped = with_checks(with_sizes(shaped, toy, 0), toy, 0, nullptr, stopped.get_token());
    EXPECT_FALSE(shaped.checked->complete);
    EXPECT_NE(study_piece(toy, 0, &shaped).checked, shaped.checked);
}

TEST(StagesOfAStudy, APieceOverTheLimitHasNone) {
    const Toy toy = toy_of(std::vector<int>(2'000, 200'000));
    const StudiedPiece made = studied(toy, 0);
    EXPECT_TRUE(made.study->graph().graph.rounds.empty());
    EXPECT_EQ(made.study->shape, no_stage<ShapeStage>());
    EXPECT_EQ(made.surface(), nullptr);
    EXPECT_EQ(computed(made, studied(toy, 0, made)), nothing);
}

}  // namespace
}  // namespace roundwright::test
