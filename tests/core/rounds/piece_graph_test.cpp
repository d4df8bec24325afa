#include "core/rounds/piece_graph.h"

#include <gtest/gtest.h>

#include "core/base/limits.h"
#include "core/language/round/write.h"

namespace roundwright {
namespace {

Piece piece_of(const std::vector<int>& counts, Start start = MagicRing{},
               Spacing spacing = Spacing::stacked) {
    Piece piece;
    piece.start = start;
    for (int count : counts) {
        Round round;
        round.working = WorkedEvenly{.stitches = count, .spacing = spacing};
        piece.rounds.push_back(round);
    }
    return piece;
}

std::vector<std::string> words_of(const Piece& piece, Terms terms = Terms::us) {
    const PieceGraph made = piece_graph(piece);
    std::vector<std::string> words;
    for (int round = 0; round < static_cast<int>(made.graph.rounds.size()); ++round)
        words.push_back(round_words(made.graph, round, terms, piece.start));
    return words;
}

// Common practice of the trade: the six-increase ball.
TEST(PieceGraph, ABallIsWrittenInTheTradesWords) {
    EXPECT_EQ(
        words_of(piece_of({6, 12, 18, 24, 24, 18, 12, 6})),
        (std::vector<std::string>{"6 sc in magic ring", "inc around", "[sc, inc] x 6", "[sc 2, inc] x 6",
                                  "sc in each st around", "[sc 2, dec] x 6", "[sc, dec] x 6", "dec around"}));
}

TEST(PieceGraph, UkTermsNameTheSameStitches) {
    EXPECT_EQ(words_of(piece_of({6, 12, 18, 18}), Terms::uk),
              (std::vector<std::string>{"6 dc in magic ring", "inc around", "[dc, inc] x 6",
                                        "dc in each st around"}));
}

// Common practice: increases of one round are set between those of the round below to hide the corners.
TEST(PieceGraph, StaggeredIncreasesAlternate) {
    EXPECT_EQ(words_of(piece_of({6, 12, 18, 24, 30, 36}, MagicRing{}, Spacing::staggered)),
              (std::vector<std::string>{"6 sc in magic ring", "inc around", "[inc, sc] x 6",
                                        "[sc 2, inc] x 6", "[sc, inc, sc 2] x 6", "[sc 4, inc] x 6"}));
}

TEST(PieceGraph, Starts) {
    EXPECT_EQ(words_of(piece_of({8, 16}, ChainRing{4}))[0], "8 sc in ring");
    EXPECT_EQ(piece_graph(piece_of({12}, OpenTube{12})).graph.foundation_loops, 12);
    EXPECT_EQ(words_of(piece_of({12, 12}, OpenTube{12})),
              (std::vector<std::string>{"sc in each ch around", "sc in each st around"}));
    EXPECT_EQ(piece_graph(piece_of({14}, OvalChain{6})).graph.rounds[0].loops_below, 12);
    EXPECT_EQ(words_of(piece_of({14}, OvalChain{6}))[0], "[sc 5, inc] x 2");
}

TEST(PieceGraph, CountsAreThoseOfTheRounds) {
    EXPECT_EQ(stitch_counts(piece_graph(piece_of({6, 15, 7, 40})).graph), (std::vector<int>{6, 15, 7, 40}));
}

TEST(PieceGraph, ACountBeyondTheLimitIsCutAndNamed) {
    const PieceGraph made = piece_graph(piece_of({6, 2'000'000'000}));
    ASSERT_EQ(made.problems.size(), 1u);
    EXPECT_EQ(made.problems[0].round, 1);
    EXPECT_EQ(made.problems[0].found, 2'000'000'000);
    EXPECT_EQ(made.graph.rounds[1].loops_left, static_cast<int>(max_stitches_per_piece) - 6);
}

Round written(const std::string& words) {
    Round round;
    round.working = AsWritten{words};
    return round;
}

TEST(PieceGraph, WrittenRoundsStandOnTheRoundBelow) {
    Piece piece = piece_of({6, 12});
    piece.rounds.push_back(written("sc 4, inc, sc 7"));
    piece.rounds.push_back(written("dec, sc in each st around to last st, sl st"));
    const PieceGraph made = piece_graph(piece);
    EXPECT_TRUE(made.problems.empty());
    EXPECT_EQ(stitch_counts(made.graph), (std::vector<int>{6, 12, 13, 12}));
}

TEST(PieceGraph, AWrittenRoundThatDoesNotFitIsNamedAndHidesNothing) {
    Piece piece = piece_of({6, 12});
    piece.rounds.push_back(written("[sc 1, inc] x 5"));
    piece.rounds.push_back(written("sc in each st around"));
    const PieceGraph made = piece_graph(piece);
    ASSERT_EQ(made.problems.size(), 1u);
    EXPECT_EQ(made.problems[0].round, 2);
    EXPECT_EQ(made.problems[0].code, ReadCode::loops_do_not_fit);
    EXPECT_EQ(made.problems[0].expected, 12);
    EXPECT_EQ(made.problems[0].found, 10);
    EXPECT_EQ(made.problems[0].where, (TextSpan{1, 8, 3}));
    EXPECT_EQ(stitch_counts(made.graph), (std::vector<int>{6, 12, 15, 15}));
}

TEST(ReadCell, StoresWhatIsEvenAsEvenAndKeepsOtherWords) {
    const Piece piece = piece_of({6, 12, 12});
    YarnTable yarns;
    const ReadCell even =
        read_cell(piece, 2, "*1 dc, 2 dc in next st; rep from * around (18)", Terms::uk, yarns);
    EXPECT_EQ(even.round.working, (std::variant<WorkedEvenly, AsWritten>(WorkedEvenly{.stitches = 18})));
    const ReadCell uneven = read_cell(piece, 2, "2 dc in next 3 sts, dc 9. Place a marker", Terms::uk, yarns);
    EXPECT_EQ(uneven.round.working,
              (std::variant<WorkedEvenly, AsWritten>(AsWritten{"2 sc in next 3 sts, sc 9"})));
    EXPECT_EQ(uneven.round.note, "Place a marker");
}

}  // namespace
}  // namespace roundwright
