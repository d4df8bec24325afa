#include <algorithm>
#include <gtest/gtest.h>

#include "core/checks/check_said_numbers.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

Piece named(const char* name, const Start& start, const char* rounds, End end) {
    Piece piece;
    piece.name = name;
    piece.start = start;
    piece.rounds = rounds_of(rounds);
    piece.end = end;
    return piece;
}

/// A toy of five pieces, two with faces, most left open.
Toy otter() {
    Toy toy;
    toy.pieces = {named("Head", MagicRing{}, "6 12 18 24 30 36x6 30 24 18 12 6", End::drawn_closed),
                  named("Body", MagicRing{}, "6 12 18 24 30 36x4 33 30x3 27 24", End::left_open),
                  named("Left Arm", OpenTube{14}, "14x3 12x5 10", End::left_open),
                  named("Tail tip", ChainRing{8}, "10 16 22x4 16", End::sewn_straight),
                  named("Flipper", OvalChain{5}, "12 18 24", End::left_open)};
    toy.pieces[0].features.resize(1);
    toy.pieces[3].features.resize(2);
    toy.pieces[1].rounds[4].note = "Mark round 5.\nFit the eyes by round 99.";
    toy.pieces[2].rounds[1].note = "All 14 stitches; the 77 stitches.";
    return toy;
}

constexpr const char* sentences[] = {
    "Sew the 24 stitches of the body to the head between rounds 12 and 13.",
    "Sew the left arm's 10 sts to the body at round 9.",
    "Sew the arms to the BODY between rounds 9 and 11.",
    "Place the tail tip on the face at round 8; its all 16 stitches.",
    "Join in round 16. Join in round 17. Join in round 18.",
    "Catch all 24 stitches, then the 25 stitches.",
    "The 8 stitches of the tail tip, the 5 stitches of the flipper, the 14 stitches of the left arm.",
    "The 9 stitches of the tail tip, the 6 stitches of the flipper, the 13 stitches of the left arm.",
    "Under the head, over rounds 3, 4 and 5, sew the flipper's 24 stitches.",
    "Head and body: rounds 1 to 30.",
    "Onto each left arm at round 4 and into an ear at round 12.",
    "Sew the 26 stitches of the flipper on the head around round 15.",
    "Sew the 26 stitches of the flipper, the body and the head.",
    "To the tail tip at round 7, to the tail at round 8.",
    "Sew it to both left arms below round 10.",
    "  \n\nAll 40 stitches.\r\n\t\nRound 0 and round 200.",
};

void tell(RecordedText& text, const Toy& toy) {
    const CountsOfPieces counts = counts_of_pieces(toy);
    for (const Check& check : check_said_numbers(toy, counts)) {
        text.line(check_code_name(check.code)) << check.piece << check.round;
        for (const Argument& argument : check.arguments) text << std::get<int>(argument);
        text << static_cast<int>(check.said->in) << check.said->line << "<" << check.said->words
             << "> becomes <" << check.said->becomes << ">" << check.cures.size();
    }
}

/// The toy after a change of its pieces, with what its words were written for.
Toy changed(const Toy& before, int way) {
    Toy after = before;
    const auto set = [&](std::size_t piece, const char* rounds) {
        after.pieces[piece].rounds = rounds_of(rounds);
    };
    if (way == 1) set(0, "6 12 18 24 30x5 24 18 12 6");
    if (way == 1 || way == 2) set(1, "6 12 18 24 30x4 27 24x2 21 20");
    if (way == 2) set(2, "14x3 12x9 11");
    if (way == 3) set(4, "12 18 24 30");
    if (way == 3) set(2, "");
    if (way == 4) set(0, "6 12 18 24 30 36x6 30 24 18 12");
    if (way == 4) set(1, "6 12 18 24 30 36x4 33 30x3 27 22");
    if (way == 5) after.pieces[1].end = after.pieces[2].end = End::drawn_closed;
    if (way == 5) set(4, "12 18 22");
    return with_words_remembered(before, after);
}

std::string on_one_line(std::string words) {
    std::replace_if(
        words.begin(), words.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
    return words;
}

TEST(RecordedSaidNumbers, AreJudgedAsBefore) {
    RecordedText text;
    for (int way = 0; way <= 5; ++way)
        for (const char* sentence : sentences) {
            Toy toy = otter();
            toy.text.assembly = sentence;
            if (way % 2 == 1) toy.text.written_for.clear();
            if (way == 2) toy = with_words_remembered(Toy{}, toy);
            toy = changed(toy, way);
            text.heading("way " + std::to_string(way) + ": " + on_one_line(sentence));
            text.line("remembered") << toy.text.written_for.size();
            tell(text, toy);
            const Toy mended = with_words_renumbered(toy, counts_of_pieces(toy));
            if (mended.text.assembly != toy.text.assembly)
                text.line("mended") << on_one_line(mended.text.assembly);
        }
    testing::expect_as_recorded("said_numbers.txt", text);
}

/// Each of the maker's texts is read, and remembered for.
TEST(RecordedSaidNumbers, EveryTextIsRead) {
    for (std::string PatternText::*own : {&PatternText::introduction, &PatternText::notions,
                                          &PatternText::assembly, &PatternText::finishing}) {
        Toy toy = otter();
        const std::size_t in_notes = check_said_numbers(toy, counts_of_pieces(toy)).size();
        toy.text.*own = "Look at round 55 of the head.";
        EXPECT_EQ(check_said_numbers(toy, counts_of_pieces(toy)).size(), in_notes + 1);
        EXPECT_EQ(with_words_remembered(otter(), toy).text.written_for.size(), toy.pieces.size());
    }
    Toy toy = otter();
    toy.notes = "Look at round 55 of the head.";
    EXPECT_EQ(with_words_remembered(otter(), toy).text.written_for.size(), toy.pieces.size());
}

}  // namespace
}  // namespace roundwright::test
