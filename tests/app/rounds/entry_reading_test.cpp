#include "app/rounds/entry_reading.h"

#include <gtest/gtest.h>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

EntryReading read(const QString& text, const Piece& after = piece_of({6, 12})) {
    return read_entry(text,
                      {after, after.rounds.empty() ? Round{} : after.rounds.back(), {"Fog grey"}, Terms::us});
}

TEST(EntryReading, SaysWhatItUnderstood) {
    EXPECT_EQ(read(QStringLiteral("24x4, 18, 12, 6")).understood,
              QStringLiteral("rounds 3 to 9: 4 rounds of 24, 18, 12, 6"));
    EXPECT_EQ(read(QStringLiteral("+6")).understood, QStringLiteral("round 3: 18"));
    EXPECT_EQ(read(QStringLiteral("=x2")).understood, QStringLiteral("rounds 3 to 4: 2 rounds of 12"));
}

TEST(EntryReading, MakesTheRounds) {
    const auto reading = read(QStringLiteral("+6x3 ="));
    Piece piece;
    piece.rounds = reading.rounds;
    EXPECT_EQ(counts_of(piece), (std::vector{18, 24, 30, 30}));
    EXPECT_TRUE(reading.can_be_added());
}

TEST(EntryReading, PointsAtWhatItDoesNotUnderstand) {
    const auto reading = read(QStringLiteral("18, 24x, 30"));
    EXPECT_FALSE(reading.can_be_added());
    EXPECT_FALSE(reading.problem.isEmpty());
    EXPECT_GE(reading.problem_at, 5);
    EXPECT_LE(reading.problem_at, 8);
}

TEST(EntryReading, TheFirstRoundHasNoneBelow) {
    EXPECT_TRUE(read(QStringLiteral("+6"), Piece{}).problem.contains(QStringLiteral("first round")));
}

TEST(EntryReading, ReadsWordsOneRoundALine) {
    const auto reading = read(QStringLiteral("[sc, inc] x 6\n[sc 2, inc] x 6"));
    Piece piece;
    piece.rounds = reading.rounds;
    EXPECT_EQ(counts_of(piece), (std::vector{18, 24})) << "words of even rounds make even rounds";
    EXPECT_EQ(reading.understood, QStringLiteral("rounds 3 to 4: 18, 24"));
}

TEST(EntryReading, SaysWhichRoundDoesNotComeOut) {
    const auto reading = read(QStringLiteral("[sc, inc] x 6\nsc 3, inc"));
    EXPECT_TRUE(reading.understood.contains(QStringLiteral("round 4 does not work out")))
        << reading.understood.toStdString();
    EXPECT_TRUE(reading.can_be_added());
}

TEST(EntryReading, WordsWithoutStitchesAreNotAdded) {
    EXPECT_FALSE(read(QStringLiteral("hello there")).can_be_added());
}

TEST(EntryReading, NothingIsNoProblem) {
    EXPECT_TRUE(read(QStringLiteral("  ")).problem.isEmpty());
    EXPECT_FALSE(read(QStringLiteral("  ")).can_be_added());
}

}  // namespace
}  // namespace roundwright::app
