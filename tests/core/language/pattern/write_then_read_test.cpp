#include <gtest/gtest.h>
#include <string>

#include "core/language/pattern/read_pattern.h"
#include "core/language/pattern/write_pattern.h"
#include "tests/core/language/pattern/odd_note.h"
#include "tests/core/language/pattern/random_pattern_toy.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/core/language/pattern/read_back.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::odd_note;
using testing::RandomPiece;

::testing::AssertionResult reads_back(const Piece& piece, Terms terms) {
    const std::string text = write_piece(piece, terms);
    const ReadPattern read = read_pattern(text, {terms, {}});
    if (!read.proved() || read.pieces.size() != 1) {
        auto failure = ::testing::AssertionFailure() << text;
        for (const ReadDiagnostic& d : read.diagnostics)
            failure << read_code_name(d.code) << " at " << d.where.line << ":" << d.where.column << "\n";
        return failure << read.pieces.size() << " pieces\n";
    }
    return testing::is_read_back(piece, read.pieces[0], text, terms);
}

void expect_read_back(unsigned part, unsigned parts) {
    const auto count = static_cast<unsigned>(testing::random_cases(100'000));
    for (unsigned seed = part; seed < count; seed += parts) {
        const Piece piece = RandomPiece(seed).piece();
        ASSERT_TRUE(piece_graph(piece).problems.empty()) << "seed " << seed << "\n"
                                                         << write_piece(piece, Terms::us);
        ASSERT_TRUE(reads_back(piece, Terms::us)) << "seed " << seed;
        ASSERT_TRUE(reads_back(piece, Terms::uk)) << "seed " << seed;
    }
}

// A piece as the text tells it: rounds as they are worked, not as they are stored.
std::string piece_told(const Piece& piece, Terms terms) {
    std::string told = write_piece(piece, terms);
    for (const Round& round : piece.rounds) told += "[" + round.note + "]";
    return told;
}

::testing::AssertionResult toy_reads_back(const Toy& toy, Terms terms) {
    const std::string text = write_toy(toy, terms);
    const ReadPattern read = read_pattern(text);
    auto failure = ::testing::AssertionFailure() << text;
    for (const ReadDiagnostic& d : read.diagnostics)
        failure << read_code_name(d.code) << " at " << d.where.line << ":" << d.where.column << "\n";
    if (!read.diagnostics.empty() || read.terms != terms) return failure;
    const Toy again = toy_of(read);
    if (again.title != toy.title || again.designer != toy.designer || again.hook_mm != toy.hook_mm ||
        again.notes != toy.notes || again.pieces.size() != toy.pieces.size())
        return failure << again.title << ", " << again.notes << ", " << again.pieces.size() << " pieces\n";
    for (std::size_t i = 0; i < toy.pieces.size(); ++i)
        if (again.pieces[i].name != toy.pieces[i].name ||
            again.pieces[i].area_stretch != toy.pieces[i].area_stretch ||
            piece_graph(again.pieces[i]).graph != piece_graph(toy.pieces[i]).graph ||
            piece_told(again.pieces[i], terms) != piece_told(toy.pieces[i], terms))
            return failure << "-- read and written again:\n" << piece_told(again.pieces[i], terms);
    return ::testing::AssertionSuccess();
}

TEST(WriteThenRead, GivesTheSameToyAndInventsNothing) {
    const auto count = static_cast<unsigned>(testing::random_cases(20'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        const Toy toy = testing::RandomPatternToy(seed).toy();
        ASSERT_TRUE(toy_reads_back(toy, Terms::us)) << "seed " << seed;
        ASSERT_TRUE(toy_reads_back(toy, Terms::uk)) << "seed " << seed;
    }
}

TEST(WriteThenRead, OddNotesComeBackAsNotes) {
    const auto count = static_cast<unsigned>(testing::random_cases(20'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        Toy toy = testing::RandomPatternToy(seed).toy();
        RandomPiece random(seed);
        for (Piece& piece : toy.pieces)
            for (Round& round : piece.rounds)
                if (random.chance(40)) round.note = odd_note(random);
        if (random.chance(50)) toy.notes = odd_note(random);
        ASSERT_TRUE(toy_reads_back(toy, Terms::us)) << "seed " << seed;
        ASSERT_TRUE(toy_reads_back(toy, Terms::uk)) << "seed " << seed;
    }
}

TEST(WriteThenRead, StuffingInPartAndPelletsComeBack) {
    const auto count = static_cast<unsigned>(testing::random_cases(5'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        Piece piece = RandomPiece(seed).piece();
        RandomPiece random(seed + 1'000'000);
        const int rounds = static_cast<int>(piece.rounds.size());
        if (rounds > 2 && piece.area_stretch > 0 && random.chance(70))
            piece.stuffed_rounds = RoundSpan{0, rounds / 2 - 1};
        if (random.chance(70)) piece.weight_grams = 5 + static_cast<int>(seed % 80) / 4.0;
        for (const Terms terms : {Terms::us, Terms::uk}) {
            ASSERT_TRUE(reads_back(piece, terms)) << "seed " << seed;
            const ReadPattern read = read_pattern(write_piece(piece, terms), {terms, {}});
            ASSERT_EQ(read.pieces[0].stuffed_rounds, piece.stuffed_rounds) << "seed " << seed << "\n"
                                                                           << write_piece(piece, terms);
            ASSERT_EQ(read.pieces[0].weight_grams, piece.weight_grams) << "seed " << seed;
        }
    }
}

TEST(ReadPattern, HearsOfStuffingInPartAndOfPelletsInMakersWords) {
    const auto read = [](const std::string& words) {
        return read_pattern(
                   "Foot\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc around (12)\nRnd 3: sc around "
                   "(12)\n" +
                   words + "\n")
            .pieces.at(0);
    };
    EXPECT_EQ(read("Stuff Rnds 1-2 only, lightly.").stuffed_rounds, (RoundSpan{0, 1}));
    EXPECT_EQ(read("Stuff Rnds 1-2 only, lightly.").area_stretch, light_stuffing_stretch);
    EXPECT_EQ(read("Stuff only rounds 2 to 3.").stuffed_rounds, (RoundSpan{1, 2}));
    EXPECT_FALSE(read("Stuff after round 2.").stuffed_rounds);
    EXPECT_EQ(read("Put 12.5 grams of poly pellets into the tip. Stuff firmly.").weight_grams, 12.5);
    EXPECT_EQ(read("Put 12.5 grams of poly pellets into the tip. Stuff firmly.").area_stretch,
              firm_stuffing_stretch);
    EXPECT_NEAR(read("Add 2 oz of pellets in a bag before stuffing.").weight_grams, 56.7, 0.01);
    EXPECT_EQ(read("Pellets are small parts.").weight_grams, 0);
    EXPECT_EQ(read("Weave in 40 g of ends.").weight_grams, 0);
}

TEST(NoteLine, IsMarkedWhereItCouldBeTakenForAnythingElse) {
    EXPECT_EQ(note_line("Place a marker in the first st.", Terms::us), "Place a marker in the first st.");
    EXPECT_EQ(note_line("Rnd 5: odd note", Terms::us), "Note: Rnd 5: odd note");
    EXPECT_EQ(note_line("(12)", Terms::uk), "Note: (12)");
    EXPECT_EQ(note_line("3. Sew on.", Terms::us), "Note: 3. Sew on.");
    RandomPiece random(7);
    for (int i = testing::random_cases(2'000); i > 0; --i) {
        std::string note = odd_note(random);
        note = note.substr(0, note.find('\n'));
        const std::string text =
            "Rnd 1: 6 sc in magic ring (6)\n" + note_line(note, Terms::us) + "\nRnd 2: inc around (12)\n";
        const ReadPattern read = read_pattern(text, {Terms::us, {}});
        ASSERT_EQ(read.pieces.size(), 1u) << text;
        ASSERT_EQ(read.pieces[0].rounds.size(), 2u) << text;
        EXPECT_EQ(read.pieces[0].rounds[0].note, note);
    }
}

// Four parts, so that they can run side by side.
TEST(WriteThenRead, GivesTheSameStitchesFirstPart) { expect_read_back(0, 4); }
TEST(WriteThenRead, GivesTheSameStitchesSecondPart) { expect_read_back(1, 4); }
TEST(WriteThenRead, GivesTheSameStitchesThirdPart) { expect_read_back(2, 4); }
TEST(WriteThenRead, GivesTheSameStitchesFourthPart) { expect_read_back(3, 4); }

}  // namespace
}  // namespace roundwright
