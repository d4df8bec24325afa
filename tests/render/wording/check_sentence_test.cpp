#include "render/wording/check_sentence.h"

#include <gtest/gtest.h>

#include <QLocale>

#include "render/wording/cure_words.h"

namespace roundwright {
namespace {

Round of(int stitches) { return {WorkedEvenly{stitches}, 0, false, ""}; }

std::string sentence(CheckCode code, std::vector<Argument> arguments, std::vector<Cure> cures = {},
                     LengthUnit units = LengthUnit::millimetres) {
    const Check check{code, Severity::warning, 0, 5, std::move(arguments), std::move(cures)};
    return check_sentence(check, units).replace(QChar(0xA0), QLatin1Char(' ')).toStdString();
}

class CheckSentence : public testing::Test {
  protected:
    void SetUp() override { QLocale::setDefault(QLocale::c()); }
    void TearDown() override { QLocale::setDefault(QLocale::system()); }
};

TEST_F(CheckSentence, Counts) {
    EXPECT_EQ(sentence(CheckCode::too_many_increases, {13, 6, 12, Millimetres{5}},
                       {{CureKind::set_count, {of(12)}, 5, 1}}),
              "Round 6 has 13 stitches over 6. Increasing in every stitch makes 12: 1 stitch (5 mm) too "
              "many. Work 12 instead?");
    EXPECT_EQ(sentence(CheckCode::too_many_decreases, {4, 12, 6, Millimetres{10}}),
              "Round 6 has 4 stitches over 12. Decreasing all around leaves 6: 2 stitches (10 mm) too few.");
}

TEST_F(CheckSentence, Fabric) {
    const std::vector<Argument> ruffle{12, 6.2832, 5, Millimetres{4}, Millimetres{31}};
    const Cure spread{CureKind::spread_increases, {of(24), of(30)}, 5, 1};
    EXPECT_EQ(sentence(CheckCode::ruffles, ruffle, {spread}),
              "Round 6 ruffles: 12 stitches more where about 6 lie flat. The edge has 31 mm to spare, which "
              "makes waves 4 mm high. Spread the increases over 2 rounds?");
    EXPECT_EQ(sentence(CheckCode::ruffles_though_flat, ruffle),
              "Round 6 is marked flat but ruffles: 12 stitches more where about 6 lie flat. The edge has 31 "
              "mm to spare, which makes waves 4 mm high.");
    EXPECT_EQ(sentence(CheckCode::cups_though_flat, {Millimetres{3}, 5, 6.2832}),
              "Round 6 is marked flat but rises by 3 mm: 5 stitches more where about 6 lie flat.");
    EXPECT_EQ(sentence(CheckCode::cups_though_flat, {Millimetres{5}, 0, 6.2832}),
              "Round 6 is marked flat but rises by 5 mm: as many stitches as the round below.");
    EXPECT_EQ(sentence(CheckCode::gathers, {15, Millimetres{47}}),
              "Round 6 gathers: 15 stitches fewer at once draw 47 mm of the round below together.");
}

TEST_F(CheckSentence, SixWhereFewerLieFlatIsNotWordedAsSixWhereSix) {
    EXPECT_EQ(sentence(CheckCode::ruffles, {6, 5.65, 3, Millimetres{2}, Millimetres{9}}),
              "Round 6 ruffles: 6 stitches more where about 5.7 lie flat. The edge has 9 mm to spare, which "
              "makes waves 2 mm high.");
}

TEST_F(CheckSentence, Words) {
    Check check{CheckCode::words_do_not_fit, Severity::error, 0, 2, {12, 10, Millimetres{10}}, {}};
    ReadDiagnostic reading;
    reading.code = ReadCode::loops_do_not_fit;
    reading.expected = 12;
    reading.found = 10;
    check.reading = reading;
    const Mend mend{MendCode::change_times, {5, 6, 2, 10, 12}, {}};
    check.cures.push_back(
        {CureKind::mend_words, {Round{AsWritten{"[sc, inc] x 6"}, 0, false, ""}}, 2, 1, mend});
    EXPECT_EQ(
        check_sentence(check, LengthUnit::millimetres).replace(QChar(0xA0), QLatin1Char(' ')).toStdString(),
        "Round 3 does not work out as written (10 mm). There are 12 stitches below and the words use 10: 2 "
        "left "
        "over. Should that be 6 times, not 5?");
    EXPECT_EQ(cure_label(check.cures[0]), "6 times");
}

TEST_F(CheckSentence, WholePieceAndToy) {
    EXPECT_EQ(sentence(CheckCode::gauge_missing, {Millimetres{5}, Millimetres{1}}),
              "There is no gauge yet: sizes assume 20 stitches to 10 cm, typical for the hook, and may be "
              "off by 20 %.");
    EXPECT_EQ(
        sentence(CheckCode::gauge_missing, {Millimetres{5.08}, Millimetres{0.508}}, {}, LengthUnit::inches),
        "There is no gauge yet: sizes assume 20 stitches to 4 in, typical for the hook, and may be off by 10 "
        "%.");
    EXPECT_EQ(sentence(CheckCode::not_converged, {17}),
              "No settled shape was found for these 17 rounds, so do not rely on the size.");
    EXPECT_EQ(
        sentence(CheckCode::not_converged, {17, Millimetres{5}, Millimetres{0.02}}),
        "No settled shape was found for these 17 rounds: by the gauge, a stitch is 250 times as wide as "
        "it is high. Check the gauge.");
    EXPECT_EQ(sentence(CheckCode::not_converged, {17, Millimetres{1}, Millimetres{8}}),
              "No settled shape was found for these 17 rounds: by the gauge, a stitch is 8 times as high as "
              "it is wide. Check the gauge.");
    Check steep{CheckCode::not_converged, Severity::warning, 0, 2, {3, 560, 1}, {}};
    EXPECT_EQ(check_sentence(steep, LengthUnit::millimetres).toStdString(),
              "No settled shape was found for these 3 rounds: round 3 goes from 560 stitches to 1.");
    EXPECT_EQ(sentence(CheckCode::too_many_stitches, {200'001, 200'000}),
              "This piece has 200001 stitches, and the limit is 200000. Split it into several pieces.");
}

TEST_F(CheckSentence, CornersAreSaidWithTheirRoundsAndHeight) {
    EXPECT_EQ(sentence(CheckCode::odd_seam, {15}),
              "The last round has 15 stitches: sewn straight across, one has no partner.");
    EXPECT_EQ(
        sentence(CheckCode::corners, {6, Millimetres{7.2}, 2, 11}),
        "The increases of rounds 2 to 11 line up: the edge gets 6 corners, which stick out by up to 7 mm.");
}

TEST_F(CheckSentence, WordsOfThePatternThatFitNoRound) {
    Check check{CheckCode::said_round_moved, Severity::warning, 0, -1, {23, 17}, {}};
    check.said = SaidPlace{OwnWords::assembly, 1, "rounds 19 and 20", "rounds 14 and 15"};
    check.cures.push_back({CureKind::renumber_words, {}, 0, 0});
    EXPECT_EQ(check_sentence(check, LengthUnit::millimetres).toStdString(),
              "Assembly step 1 says “rounds 19 and 20”: that was written for 23 rounds, and there are 17 "
              "now. Make it "
              "“rounds 14 and 15”?");
    EXPECT_EQ(cure_label(check.cures[0]), "Update the numbers");
    check = {CheckCode::said_count_missing, Severity::warning, 0, -1, {15}, {}};
    check.said = SaidPlace{OwnWords::notes, 2, "the 15 stitches", ""};
    EXPECT_EQ(check_sentence(check, LengthUnit::millimetres).toStdString(),
              "The notes, line 2, say “the 15 stitches”: no round has 15 stitches.");
    check = {CheckCode::said_round_missing, Severity::warning, 0, 3, {12}, {}};
    check.said = SaidPlace{OwnWords::round_note, 1, "round 30", ""};
    EXPECT_EQ(check_sentence(check, LengthUnit::millimetres).toStdString(),
              "The note on round 4 says “round 30”: there are only 12 rounds.");
}

TEST_F(CheckSentence, ChecksOfTheFaceSayWhichEyeOrNose) {
    Feature nose;
    nose.kind = FeatureKind::safety_nose;
    nose.pair = false;
    Feature patch;
    patch.kind = FeatureKind::felt_disc;
    patch.name = "left spot";
    const auto about = [](CheckCode code, std::vector<Argument> arguments, std::vector<Feature> features) {
        Check check{code, Severity::warning, 0, 8, std::move(arguments), {}};
        check.features = std::move(features);
        return check_sentence(check, LengthUnit::millimetres)
            .replace(QChar(0xA0), QLatin1Char(' '))
            .toStdString();
    };
    EXPECT_EQ(about(CheckCode::feature_lost, {0}, {Feature{}}),
              "The rounds that held the safety eyes are gone.");
    EXPECT_EQ(about(CheckCode::washer_too_late, {1, Millimetres{12}, Millimetres{9}}, {nose}),
              "The 12 mm washer of the safety nose will not go in: by then the opening is only 9 mm.");
    EXPECT_EQ(about(CheckCode::features_touch, {0, 0, Millimetres{2}, 1}, {Feature{}}),
              "The safety eyes touch each other: their washers overlap by 2 mm.");
    EXPECT_EQ(about(CheckCode::features_touch, {0, 1, Millimetres{2}, 0}, {Feature{}, patch}),
              "The safety eyes and the left spot touch: their outlines overlap by 2 mm.");
    EXPECT_EQ(about(CheckCode::feature_too_large, {0, Millimetres{30}, Millimetres{40}}, {patch}),
              "There is little room for the left spot: 30 mm wide where the piece is only 40 mm across.");
}

TEST_F(CheckSentence, MissingArgumentsDoNoHarm) {
    for (int code = 0; code <= static_cast<int>(CheckCode::said_count_missing); ++code) {
        EXPECT_NE(sentence(static_cast<CheckCode>(code), {}), "") << code;
    }
}

TEST_F(CheckSentence, EveryCureHasAQuestionALabelAndAStep) {
    for (int kind = 0; kind <= static_cast<int>(CureKind::words_still_fit); ++kind) {
        const Cure cure{static_cast<CureKind>(kind), {of(24), of(30)}, 5, 1};
        EXPECT_TRUE(cure_question(cure).endsWith(QLatin1Char('?'))) << kind;
        EXPECT_FALSE(cure_label(cure).isEmpty()) << kind;
        EXPECT_FALSE(cure_step(cure).isEmpty()) << kind;
    }
    EXPECT_EQ(cure_label({CureKind::set_count, {of(12)}, 5, 1}), "Work 12");
    EXPECT_EQ(cure_label({CureKind::spread_increases, {of(24), of(30)}, 5, 1}), "Spread over 2 rounds");
    EXPECT_EQ(cure_question({CureKind::change_start_count, {of(6), of(12)}, 0, 2}),
              "Start with 6, and work 6, 12?");
    EXPECT_EQ(cure_label({CureKind::change_start_count, {of(6), of(12)}, 0, 2}), "Start with 6");
    EXPECT_EQ(cure_question({CureKind::stagger_increases, {}, 0, 2}), "Stagger the increases?");
}

TEST_F(CheckSentence, Joins) {
    const std::string head = "Head";
    EXPECT_EQ(
        sentence(CheckCode::joined_in_a_circle, {head, 1}, {{CureKind::remove_join, {}, 0, 0}}),
        "It is joined to Head, and that back to it, in a circle. One join has to go. Take this join away?");
    EXPECT_EQ(sentence(CheckCode::joined_twice, {head, 2}),
              "Number 2 of this piece is joined to Head although it is already joined on.");
    EXPECT_EQ(sentence(CheckCode::join_without_piece, {head, 3}),
              "A join to Head is for number 3 of this piece, but there are fewer.");
    EXPECT_EQ(sentence(CheckCode::join_without_round, {head, 40, 20}),
              "It is joined to Head at round 40, and there are only 20 rounds.");
    EXPECT_EQ(sentence(CheckCode::edge_not_sewn, {18, 1}),
              "Nothing is sewn to its open edge (18 stitches), and the stuffing would show.");
    EXPECT_EQ(
        sentence(CheckCode::worked_on_other_count, {28, 30, 2}),
        "Its first round is worked over 28 stitches, but the edges and chains it is worked on have 30.");
}

TEST_F(CheckSentence, SeamsInStitchesAndLengths) {
    const std::string head = "Head";
    EXPECT_EQ(sentence(CheckCode::seam_gathers, {head, 30, Millimetres{94}, 10.2}),
              "30 stitches are sewn to Head along 94 mm: the edge is 10 % too long for that, and gathers.");
    EXPECT_EQ(sentence(CheckCode::seam_stretches, {head, 30, Millimetres{160}, 20.0}),
              "30 stitches are sewn to Head along 160 mm: the edge is 20 % too short for that, and has to be "
              "stretched.");
    EXPECT_EQ(sentence(CheckCode::pieces_overlap, {head, 1200.0}),
              "It runs into Head: one would be inside the other. Move it, or tilt it away.");
    EXPECT_EQ(sentence(CheckCode::pieces_overlap, {1200.0}),
              "Two of them run into each other: one would be inside the other. Move them apart, or tilt them "
              "away.");
}

TEST_F(CheckSentence, JoinsThatChangedUnderWords) {
    const std::string head = "Head";
    const auto said = [&](int then, int now, const char* onto = "") {
        return sentence(CheckCode::joins_changed, {head, then, now, std::string(onto)});
    };
    EXPECT_EQ(said(-1, 5), "It was joined to Head after your assembly steps were written.");
    EXPECT_EQ(said(5, -1),
              "It is no longer joined to Head, as it was when your assembly steps were written.");
    EXPECT_EQ(said(5, 0),
              "It was on Head after round 5 when your assembly steps were written; now it is at the start.");
    EXPECT_EQ(said(5, 5), "How it sits on Head has changed since your assembly steps were written.");
    EXPECT_EQ(said(5, 5, "Body"), "It was on Body when your assembly steps were written; now it is on Head.");
}

}  // namespace
}  // namespace roundwright
