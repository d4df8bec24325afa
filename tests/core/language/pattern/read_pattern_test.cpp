#include "core/language/pattern/read_pattern.h"

#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

// Sources. Repeats, counts and terms: Craft Yarn Council, Standards and Guidelines. Headings, "(make 2)",
// ranges and notes in between are common practice of the trade. The toys are invented.

std::vector<int> counts(const Piece& piece) { return stitch_counts(piece_graph(piece).graph); }

std::vector<int> counts_of(const std::string& text) {
    const ReadPattern read = read_pattern(text);
    return read.pieces.size() == 1 ? counts(read.pieces[0]) : std::vector<int>{};
}

/// "line:column code", in the order of the text.
std::vector<std::string> said_of(const ReadPattern& read) {
    std::vector<std::string> all;
    for (const ReadDiagnostic& d : read.diagnostics)
        all.push_back(std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " +
                      std::string(read_code_name(d.code)));
    return all;
}

using Said = std::vector<std::string>;
using Counts = std::vector<int>;

const std::string ball = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc around (12)\n";

// --- faults without mends

TEST(PatternWithoutMends, ReadsTheSameAndFindsTheSameFaults) {
    const std::string text =
        "Head\n" + ball +
        "Rnd 3: [sc, inc] x 5 (18)\nRnd 4: (sc 2, inc x 6 (24)\nRnd 5: sc in eahc st\n"
        "Rnds 6-8: [2 sc, dec x 6 (12)\nRnd 9: dec around (9)\nFasten off, wave to the gulls.\n";
    ReadPattern read = read_pattern(text);
    ReadOptions without_mends;
    without_mends.find_mends = false;
    const ReadPattern plain = read_pattern(text, without_mends);
    const auto mends_of = [](const ReadPattern& pattern) {
        std::size_t mends = 0;
        for (const ReadDiagnostic& d : pattern.diagnostics) mends += d.mends.size();
        return mends;
    };
    EXPECT_GT(mends_of(read), 3u);
    EXPECT_EQ(mends_of(plain), 0u);
    EXPECT_GT(plain.diagnostics.size(), 3u);
    EXPECT_EQ(said_of(plain), said_of(read));
    // A round that is mended is taken as its mend says, so only the counts are the same.
    ASSERT_EQ(plain.pieces.size(), read.pieces.size());
    EXPECT_EQ(counts(plain.pieces.at(0)), counts(read.pieces.at(0)));
    EXPECT_EQ(plain.notes, read.notes);
}

// --- headings and pieces

TEST(PatternHeadings, NameThePiecesAndSayHowManyToMake) {
    const ReadPattern read = read_pattern("Seal pup\n\nHead\n" + ball + "\nFlippers (make 2)\n" + ball +
                                          "\nMake 3 fish\n" + ball + "\nTAIL x 2:\n" + ball);
    ASSERT_EQ(read.pieces.size(), 4u);
    EXPECT_EQ(read.title, "Seal pup");
    EXPECT_EQ(read.pieces[0].name, "Head");
    EXPECT_EQ(read.pieces[0].make, 1);
    EXPECT_EQ(read.pieces[1].name, "Flippers");
    EXPECT_EQ(read.pieces[1].make, 2);
    EXPECT_EQ(read.pieces[2].name, "fish");
    EXPECT_EQ(read.pieces[2].make, 3);
    EXPECT_EQ(read.pieces[3].name, "TAIL");
    EXPECT_EQ(read.pieces[3].make, 2);
    EXPECT_TRUE(read.diagnostics.empty());
}

TEST(PatternHeadings, AreMarkedByASignToo) {
    const ReadPattern read = read_pattern("# Puffin\n## Body\n" + ball + "### Wing (make 2)\n" + ball);
    ASSERT_EQ(read.pieces.size(), 2u);
    EXPECT_EQ(read.pieces[0].name, "Body");
    EXPECT_EQ(read.pieces[1].name, "Wing");
    EXPECT_EQ(read.pieces[1].make, 2);
}

TEST(PatternHeadings, ARoundOneBeginsTheNextPieceWithoutThem) {
    const ReadPattern read = read_pattern(ball + ball);
    ASSERT_EQ(read.pieces.size(), 2u);
    EXPECT_EQ(read.pieces[0].name, "Piece 1");
    EXPECT_EQ(read.pieces[1].name, "Piece 2");
}

TEST(PatternHeadings, OfMaterialsNameNoPiece) {
    const ReadPattern read = read_pattern(
        "Starfish\n\nMaterials\nYarn A: coral\nHook: 3.5 mm\n6 mm safety eyes\n\nAbbreviations\nsc = single "
        "crochet\ninc: 2 sc in next st\n\nArm (make 5)\n" +
        ball);
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].name, "Arm");
    EXPECT_EQ(read.pieces[0].make, 5);
    EXPECT_EQ(counts(read.pieces[0]), (Counts{6, 12}));
    EXPECT_EQ(read.yarn_names, (std::vector<std::string>{"coral"}));
    EXPECT_DOUBLE_EQ(read.hook_mm.value_or(0), 3.5);
    EXPECT_NE(read.notes.find("6 mm safety eyes"), std::string::npos);
    EXPECT_NE(read.notes.find("sc = single crochet"), std::string::npos);
}

// --- numbers and ranges

TEST(PatternNumbers, StandInManyHands) {
    for (const char* text :
         {"Rnd 1: 6 sc in MR\nRnd 2: inc around\n", "R1. 6 sc in MR\nR2. inc around\n",
          "Round 1 - 6 sc in MR\nRound 2 - inc around\n", "1: 6 sc in MR\n2: inc around\n",
          "1) 6 sc in MR\n2) inc around\n", "(1) 6 sc in MR\n(2) inc around\n",
          "1st rnd: 6 sc in MR\n2nd rnd: inc around\n", "ROUND #1: 6 SC IN MR\nROUND #2: INC AROUND\n",
          "- 6 sc in MR (6)\n- inc around (12)\n", "\xE2\x80\xA2 6 sc in MR\n\xE2\x80\xA2 inc around\n",
          "6 sc in MR (6)\ninc around (12)\n", "Rnd 1: 6 sc in MR. (6) Rnd 2: inc around. (12)\n",
          "Rnd 1: 6 sc in MR\nNext rnd: inc around\n"})
        EXPECT_EQ(counts_of(text), (Counts{6, 12})) << text;
}

TEST(PatternNumbers, RangesAreWorkedRoundByRound) {
    for (const char* range : {"Rnds 3-5:", "Rnds 3 - 5:",
                              "Rounds 3\xE2\x80\x93"
                              "5:",
                              "R3\xE2\x80\x94R5:", "Rnds 3 to 5:", "Rnds 3 through 5.",
                              "Rnds 3, 4 and 5:", "3-5:", "Rnd 3-Rnd 5:", "Next 3 rnds:"})
        EXPECT_EQ(counts_of(ball + range + " sc in each st around (12)\nRnd 6: dec around (6)\n"),
                  (Counts{6, 12, 12, 12, 12, 6}))
            << range;
    EXPECT_EQ(counts_of(ball + "Work even for 3 rounds.\n"), (Counts{6, 12, 12, 12, 12}));
    EXPECT_EQ(counts_of(ball + "Rnd 3: sc around for 3 rounds (12)\n"), (Counts{6, 12, 12, 12, 12}));
}

TEST(PatternNumbers, ListsTakeTurns) {
    EXPECT_EQ(counts_of(ball + "Rnds 3, 5 and 7: sc around\nRnds 4 and 6: inc, sc to end\n"),
              (Counts{6, 12, 12, 13, 13, 14, 14}));
}

TEST(PatternNumbers, EarlierRoundsAreRepeated) {
    EXPECT_EQ(counts_of(ball + "Rnd 3: sc around (12)\nRnds 4-6: rep rnd 3\n"),
              (Counts{6, 12, 12, 12, 12, 12}));
    EXPECT_EQ(
        counts_of(ball + "Rnd 3: [sc 5, inc] around\nRnd 4: sc around\nRnd 5: dec x 7\nRnd 6: rep rnd 4\n"),
        (Counts{6, 12, 14, 14, 7, 7}));
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 3: rep rnd 9\n")), (Said{"3:8 unknown_round"}));
}

TEST(PatternNumbers, OutOfOrderAreNamedAndReadAllTheSame) {
    const ReadPattern leap = read_pattern(ball + "Rnd 5: sc around (12)\n");
    EXPECT_EQ(said_of(leap), (Said{"3:1 rounds_missing"}));
    EXPECT_EQ(leap.diagnostics[0].expected, 3);
    EXPECT_EQ(leap.diagnostics[0].found, 5);
    EXPECT_EQ(leap.pieces.at(0).rounds.size(), 3u);
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 2: sc around (12)\n")), (Said{"3:1 round_out_of_order"}));
    EXPECT_EQ(said_of(read_pattern(ball + "Rnds 5-3: sc around (12)\n"))[0], "3:1 range_reversed");
}

// --- proof: line, column, and nothing hidden

TEST(PatternProof, NamesTheWrongCount) {
    const ReadPattern read = read_pattern("Head\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc around (14)\n");
    ASSERT_EQ(said_of(read), (Said{"4:20 count_differs"}));
    const ReadDiagnostic& d = read.diagnostics[0];
    EXPECT_EQ(d.piece, 0);
    EXPECT_EQ(d.round, 1);
    EXPECT_EQ(d.expected, 14);
    EXPECT_EQ(d.found, 12);
    EXPECT_EQ(d.mends.at(0).edits.at(0).replacement, "12");
}

TEST(PatternProof, OneFaultIsSaidOnce) {
    EXPECT_EQ(said_of(read_pattern(ball + "Rnds 3-9: [sc 3, inc] x 5 (12)\nRnd 10: sc around (12)\n")),
              (Said{"3:12 loops_do_not_fit"}));
}

TEST(PatternProof, TheRoundsAfterAFaultStandOnItsStatedCountOrOnWhatItMakes) {
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 3: [sc 4, inc] x 6 (18)\nRnd 4: [sc 2, inc] x 6 (24)\n")),
              (Said{"3:9 loops_do_not_fit"}));
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 3: [sc, inc] x 6 (20)\nRnd 4: [sc 2, inc] x 6 (24)\n")),
              (Said{"3:23 count_differs"}));
}

TEST(PatternProof, EveryFaultKeepsItsPlaceOverSeveralPieces) {
    const ReadPattern read = read_pattern("Head\n" + ball +
                                          "\nEar (make 2)\nRnd 1: 6 sc in MR (6)\nRnd 2: [scc, "
                                          "inc] x 3 (9)\nRnd 3: sc around (10)\n");
    ASSERT_EQ(said_of(read), (Said{"7:9 unknown_words", "8:19 count_differs"}));
    EXPECT_EQ(read.diagnostics[0].piece, 1);
    EXPECT_EQ(read.diagnostics[0].round, 1);
    EXPECT_EQ(read.diagnostics[1].round, 2);
}

TEST(PatternProof, LinesBrokenByAPageAreOneRound) {
    const ReadPattern read =
        read_pattern(ball + "Rnd 3: *sc in next st, 2 sc in\nnext st; rep from * around.\n(18)\n");
    EXPECT_EQ(counts(read.pieces.at(0)), (Counts{6, 12, 18}));
    EXPECT_TRUE(read.diagnostics.empty());
    ASSERT_EQ(read.lines.size(), 3u);
    EXPECT_EQ(read.lines[2].first_line, 3);
    EXPECT_EQ(read.lines[2].last_line, 5);
    EXPECT_EQ(read.lines[2].understood, "[sc, inc] x 6");
}

// --- notes

TEST(PatternNotes, StandBetweenRoundsAndAreUsedWhereUnderstood) {
    const ReadPattern read = read_pattern(
        ball +
        "Rnd 3: sc around (12)\nPlace 8 mm safety eyes between Rnds 2 and 3, 4 sts apart.\nStuff "
        "firmly.\nRnd 4: dec around (6)\nFasten off, leaving a long tail for sewing.\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    const Piece& piece = read.pieces[0];
    EXPECT_EQ(counts(piece), (Counts{6, 12, 12, 6}));
    ASSERT_EQ(piece.features.size(), 1u);
    EXPECT_EQ(piece.features[0].round, 1);
    EXPECT_EQ(piece.features[0].stitches_apart, 4);
    EXPECT_DOUBLE_EQ(piece.features[0].width_mm, 8);
    EXPECT_DOUBLE_EQ(piece.area_stretch, firm_stuffing_stretch);
    EXPECT_NE(piece.rounds[2].note.find("Stuff firmly"), std::string::npos);
    EXPECT_NE(piece.rounds[3].note.find("long tail for sewing"), std::string::npos);
}

// In the words of the trade (common practice); sewing a piece on, or only flattening it, is no seam across
// it.
TEST(ReadPattern, AnEndFlattenedAndSewnStraightIsUnderstood) {
    const auto end_of = [](const std::string& line) {
        const ReadPattern read = read_pattern(
            "Ear\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\n"
            "Rnds 3-6: sc around (12)\n" +
            line + "\n");
        return read.pieces.size() == 1 ? read.pieces[0].end : End::drawn_closed;
    };
    for (const char* line :
         {"Do not stuff. Flatten and sew straight across through both layers.",
          "Fasten off, flatten the last round and sew straight across it through both layers.",
          "Flatten the ear and whipstitch the opening closed.", "Press flat and sew shut.",
          "Fold flat and sew through both thicknesses.", "Flatten and sew across.",
          "Sew straight across the top."})
        EXPECT_EQ(end_of(line), End::sewn_straight) << line;
    for (const char* line : {"Flatten the ear.", "Sew to the head.", "Leave the end open for sewing.",
                             "Fasten off, leaving a long tail for sewing."})
        EXPECT_EQ(end_of(line), End::left_open) << line;
    EXPECT_EQ(end_of("Pull tight to close."), End::drawn_closed);
}

TEST(PatternNotes, NothingOfTheTextIsLost) {
    const ReadPattern read = read_pattern("A word before.\n\nHead\n" + ball +
                                          "Here the maker rests a while.\nRnd 3: dec around (6)\nThe end.\n");
    EXPECT_EQ(read.notes, "A word before.");
    EXPECT_EQ(read.pieces.at(0).rounds.at(1).note, "Here the maker rests a while.");
    EXPECT_EQ(read.pieces.at(0).rounds.at(2).note, "The end.");
}

TEST(PatternNotes, YarnChangesOfTheirOwnLineHoldFromThereOn) {
    const ReadPattern read = read_pattern("Yarn A: grey\nYarn B: white\n\nBody\n" + ball +
                                          "Change to white.\nRnd 3: sc around (12)\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.yarn_names, (std::vector<std::string>{"grey", "white"}));
    EXPECT_EQ(read.pieces[0].rounds.at(1).yarn, 0u);
    EXPECT_EQ(read.pieces[0].rounds.at(2).yarn, 1u);
}

// --- starts

TEST(PatternStarts, AreSaidBeforeTheFirstRoundOrInIt) {
    const auto start = [](const std::string& text) { return read_pattern(text).pieces.at(0).start; };
    EXPECT_EQ(start("Rnd 1: 6 sc in MR (6)\n"), Start{MagicRing{}});
    EXPECT_EQ(start("Ch 4, sl st to form a ring.\nRnd 1: 8 sc in ring (8)\n"), Start{ChainRing{4}});
    EXPECT_EQ(start("Ch 24, join.\nRnd 1: sc in each ch around (24)\n"), Start{OpenTube{24}});
    EXPECT_EQ(
        start(
            "Rnd 1: Ch 7, sc in 2nd ch from hook, sc in next 4 ch, 3 sc in last ch, working along the other "
            "side of the chain, sc in next 4 ch, 2 sc in last ch (14)\n"),
        Start{OvalChain{6}});
}

TEST(PatternStarts, RowsAreWorkedFlat) {
    const ReadPattern read = read_pattern(
        "Ear\nCh 7.\nRow 1: sc in 2nd ch from hook and in each ch across, turn (6)\nRow 2: ch 1, sc "
        "in each st across, turn (6)\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_EQ(read.pieces[0].joining, Joining::rows);
    EXPECT_EQ(counts(read.pieces[0]), (Counts{6, 6}));
}

// --- terms: Craft Yarn Council: "sc" never occurs in UK terms

TEST(PatternTerms, AreFoundInTheText) {
    const auto terms = [](const std::string& text) {
        const ReadPattern read = read_pattern(text);
        return std::pair(read.terms, read.terms_sure);
    };
    EXPECT_EQ(terms(ball), std::pair(Terms::us, true));
    EXPECT_EQ(terms("UK terms\nRnd 1: 6 dc in MR (6)\n"), std::pair(Terms::uk, true));
    EXPECT_EQ(terms("This pattern uses US terms.\nRnd 1: 12 dc in MR (12)\n"), std::pair(Terms::us, true));
    EXPECT_EQ(terms("Rnd 1: 6 dc in MR (6)\nRnd 2: htr around (6)\n"), std::pair(Terms::uk, true));
    EXPECT_EQ(terms("Rnd 1: 6 dc in MR (6)\n"), std::pair(Terms::uk, false));
    EXPECT_EQ(terms("Rnd 1: 12 dc in MR (12)\n"), std::pair(Terms::us, false));
}

TEST(PatternTerms, GuessedOrMixedAreSaid) {
    EXPECT_EQ(said_of(read_pattern("Rnd 1: 6 dc in MR (6)\n")), (Said{"1:1 terms_guessed"}));
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 3: htr in each st around (12)\n"))[0], "3:8 terms_mixed");
}

TEST(PatternTerms, AskedForAreKept) {
    const ReadPattern read = read_pattern("Rnd 1: 6 dc in MR (6)\n", {Terms::us, {}});
    EXPECT_EQ(read.terms, Terms::us);
    EXPECT_EQ(read.lines.at(0).understood, "6 dc in magic ring");
}

// --- the text itself

TEST(PatternText, BytesThatAreNoTextAreNamedWithTheirPlace) {
    EXPECT_EQ(said_of(read_pattern(ball + "Rnd 3: sc around (12) \xff\n"))[0], "3:23 not_utf8");
    EXPECT_EQ(said_of(read_pattern("")), (Said{"1:1 no_rounds"}));
    EXPECT_EQ(said_of(read_pattern("A letter from the harbour.\n")), (Said{"1:1 no_rounds"}));
}

TEST(PatternText, LineBreaksOfEverySystemCount) {
    const std::string one = "Rnd 1: 6 sc in MR (6)";
    const std::string two = "Rnd 2: inc around (13)";
    for (const char* line_break : {"\n", "\r\n", "\r"})
        EXPECT_EQ(said_of(read_pattern(one + line_break + two)), (Said{"2:20 count_differs"}));
}

TEST(PatternText, StitchesWithoutANumberAmongNumberedRoundsAreTold) {
    EXPECT_EQ(said_of(read_pattern(ball + "\nsc in next 12 sts\nRnd 3: sc around (12)\n")),
              (Said{"4:1 line_not_understood"}));
}

// --- counts alone

TEST(PatternCounts, AreTheRoundsOfOnePiece) {
    const ReadPattern read = read_pattern(
        "6, 12, +6\n\n24x2; \xE2\x80\x93"
        "6 \xC3\x97 2\r\n=*2\n");
    ASSERT_EQ(read.pieces.size(), 1u);
    EXPECT_TRUE(read.complete());
    EXPECT_EQ(read.pieces[0].name, "Piece 1");
    EXPECT_EQ(counts(read.pieces[0]), (Counts{6, 12, 18, 24, 24, 18, 12, 12, 12}));
    ASSERT_EQ(read.account.size(), 5u);
    EXPECT_EQ(read.account[0].kind, ReadLineKind::round);
    EXPECT_EQ(read.account[1].entry, -1);  // blank
    EXPECT_EQ(read.account[2].entry, 1);
    ASSERT_EQ(read.lines.size(), 3u);
    EXPECT_EQ(read.lines[1].first_line, 3);
    EXPECT_EQ(read.lines[1].last_line, 3);
    EXPECT_EQ(read.lines[1].piece, 0);
    EXPECT_EQ(read.lines[1].first_round, 3);
    EXPECT_EQ(read.lines[1].last_round, 6);
    EXPECT_EQ(read.lines[1].stitches, 12);
    EXPECT_EQ(read.lines[1].understood, "24x2, 18, 12");
}

TEST(PatternCounts, KeepTheTermsAndTheYarnsThatAreAskedFor) {
    ReadOptions options;
    options.terms = Terms::uk;
    options.yarn_names = {"white"};
    const ReadPattern read = read_pattern("6 12", options);
    EXPECT_EQ(read.terms, Terms::uk);
    EXPECT_TRUE(read.terms_sure);
    EXPECT_EQ(read.yarn_names, (std::vector<std::string>{"white"}));
    EXPECT_FALSE(read_pattern("6 12").terms_sure);
}

TEST(PatternCounts, WithAFaultAmongThemAreReadAsWords) {
    for (const char* text : {"6, 12x0\n", "+6\n", "6\n-6\n", " \n", "6, 12\nsc around\n", "6\n999999\n"})
        EXPECT_FALSE(read_pattern(text).complete() && !read_pattern(text).pieces.empty()) << text;
}

}  // namespace
}  // namespace roundwright
