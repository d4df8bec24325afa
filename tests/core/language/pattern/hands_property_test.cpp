#include <algorithm>
#include <fstream>
#include <gtest/gtest.h>
#include <string>
#include <vector>

#include "core/language/pattern/read_pattern.h"
#include "tests/core/language/pattern/makers_hand.h"
#include "tests/core/language/pattern/numbered_rounds.h"
#include "tests/core/language/pattern/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using testing::MakersHand;
using testing::RandomPiece;

// Random pieces, written in many hands: what is undisturbed comes back stitch for stitch. Where one round has
// a slip, it is named, no round is lost, and every other round keeps its count. By hand for 100,000 texts:
// ROUNDWRIGHT_RANDOM_CASES_PERCENT=1000 core_tests --gtest_filter='RandomHands*'.

Piece counted_piece(RandomPiece& random) {
    Piece piece;
    piece.name = "Body";
    int count = random.between(5, 8);
    const int rounds = random.between(4, 16);
    for (int i = 0; i < rounds; ++i) {
        Round round;
        round.working = WorkedEvenly{count, StitchKind::single_crochet, LoopPart::both,
                                     random.chance(70) ? Spacing::stacked : Spacing::staggered};
        piece.rounds.push_back(round);
        if (random.chance(60)) continue;
        const int step = random.between(1, 6);
        count =
            random.chance(65) ? std::min(count + step, 2 * count) : std::max(count - step, (count + 1) / 2);
        count = std::max(count, 4);
    }
    return piece;
}

Piece piece_of(unsigned seed) {
    RandomPiece random(seed);
    if (random.chance(75)) return counted_piece(random);
    Piece piece = random.piece();
    if (!std::holds_alternative<MagicRing>(piece.start) || piece.joining == Joining::rows)
        return counted_piece(random);
    for (Round& round : piece.rounds) round.note.clear();
    piece.name = "Body";
    for (const GraphRound& round : piece_graph(piece).graph.rounds)
        if (only_yarn(round) != 0) return counted_piece(random);
    return piece;
}

std::vector<int> counts_of(const Piece& piece) { return stitch_counts(piece_graph(piece).graph); }

std::string told(const ReadPattern& read) {
    std::string all;
    for (const ReadDiagnostic& d : read.diagnostics)
        all += std::to_string(d.where.line) + ":" + std::to_string(d.where.column) + " " +
               std::string(read_code_name(d.code)) + "\n";
    return all;
}

bool is_fault(const ReadDiagnostic& d) { return d.severity != Severity::note; }

TEST(RandomHands, WhatIsUndisturbedComesBackStitchForStitch) {
    const auto count = static_cast<unsigned>(testing::random_cases(10'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        const Piece piece = piece_of(seed);
        MakersHand hand(static_cast<int>(seed), seed);
        const Terms terms = hand.between(0, 4) == 0 ? Terms::uk : Terms::us;
        std::string text = "Body\n";
        for (const auto& line : hand.lines_of(piece, terms)) text += hand.written(line);
        const ReadPattern read = read_pattern(text, {terms, {}});
        ASSERT_EQ(read.pieces.size(), 1u) << "seed " << seed << "\n" << text << told(read);
        ASSERT_TRUE(std::none_of(read.diagnostics.begin(), read.diagnostics.end(), is_fault))
            << "seed " << seed << "\n"
            << text << told(read);
        ASSERT_EQ(piece_graph(read.pieces[0]).graph, piece_graph(piece).graph) << "seed " << seed << "\n"
                                                                               << text;
    }
}

// --- slips

enum class Slip { count, times, number, word, bracket };

std::size_t last_digits(const std::string& words, std::size_t& length) {
    std::size_t end = words.size();
    while (end > 0 && (words[end - 1] < '0' || words[end - 1] > '9')) --end;
    std::size_t from = end;
    while (from > 0 && words[from - 1] >= '0' && words[from - 1] <= '9') --from;
    length = end - from;
    return from;
}

/// False where this slip cannot be made in the line.
bool disturb(MakersHand::Line& line, Slip slip, MakersHand& hand) {
    std::size_t length = 0;
    const std::size_t digits = last_digits(line.words, length);
    const std::size_t bracket = line.words.find_first_of(")]}");
    switch (slip) {
        case Slip::count:
            line.stitches += hand.between(1, 3);
            return true;
        case Slip::times:
            if (length == 0 || bracket == std::string::npos || digits < bracket) return false;
            line.words.insert(digits + length, "4");
            return true;
        case Slip::number:
            if (length == 0) return false;
            line.words.replace(digits, length,
                               std::to_string(std::stoi(line.words.substr(digits, length)) + 1));
            return true;
        case Slip::word:
            line.words = "wibble " + line.words.substr(std::min<std::size_t>(line.words.size(), 4));
            return true;
        case Slip::bracket:
            if (bracket == std::string::npos ||
                line.words.find_first_of(")]}", bracket + 1) != std::string::npos)
                return false;
            line.words.erase(bracket, 1);
            return true;
    }
    return false;
}

TEST(RandomHands, ASlipIsNamedAndOneBadRoundStaysOne) {
    const auto count = static_cast<unsigned>(testing::random_cases(10'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        RandomPiece random(seed);
        const Piece piece = counted_piece(random);
        MakersHand hand(static_cast<int>(seed), seed);
        std::vector<MakersHand::Line> lines = hand.lines_of(piece, Terms::us);
        if (lines.size() < 3) continue;
        const auto at = static_cast<std::size_t>(hand.between(1, static_cast<int>(lines.size()) - 2));
        const auto slip = static_cast<Slip>(hand.between(0, 4));
        const bool alone = lines[at].rounds == 1;
        if (!alone || !disturb(lines[at], slip, hand)) continue;
        std::string text = "Body\n";
        for (const auto& line : lines) text += hand.written(line);
        const ReadPattern read = read_pattern(text, {Terms::us, {}});
        const auto info = [&] { return "seed " + std::to_string(seed) + "\n" + text + told(read); };
        ASSERT_EQ(read.pieces.size(), 1u) << info();
        const int bad_line = static_cast<int>(at) + 2;
        ASSERT_TRUE(
            std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                        [&](const ReadDiagnostic& d) { return is_fault(d) && d.where.line == bad_line; }))
            << info();
        ASSERT_EQ(counts_of(read.pieces[0]), counts_of(piece)) << info();
        ASSERT_TRUE(
            std::all_of(read.diagnostics.begin(), read.diagnostics.end(),
                        [&](const ReadDiagnostic& d) { return !is_fault(d) || d.where.line == bad_line; }))
            << info();
        ASSERT_TRUE(piece_graph(read.pieces[0]).problems.empty()) << info();
    }
}

TEST(RandomHands, ALineLeftOutOrWrittenTwiceIsTold) {
    const auto count = static_cast<unsigned>(testing::random_cases(10'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        RandomPiece random(seed);
        const Piece piece = counted_piece(random);
        MakersHand hand(static_cast<int>(seed), seed);
        std::vector<MakersHand::Line> lines = hand.lines_of(piece, Terms::us);
        if (lines.size() < 4) continue;
        const auto at = static_cast<std::size_t>(hand.between(1, static_cast<int>(lines.size()) - 2));
        const bool twice = hand.between(0, 1) == 1;
        const auto place = lines.begin() + static_cast<std::ptrdiff_t>(at);
        if (twice)
            lines.insert(place, MakersHand::Line(*place));
        else
            lines.erase(place);
        std::string text = "Body\n";
        for (const auto& line : lines) text += hand.written(line);
        const ReadPattern read = read_pattern(text, {Terms::us, {}});
        ASSERT_FALSE(read.complete()) << "seed " << seed << "\n" << text;
        int numbered = 0;
        for (const auto& line : lines) numbered += line.rounds;
        int taken = 0;
        for (const Piece& one : read.pieces) taken += static_cast<int>(one.rounds.size());
        ASSERT_EQ(taken, numbered) << "seed " << seed << "\n" << text << told(read);
    }
}

// --- lines of many hands, in any order

std::vector<std::string> lines_of_tables() {
    std::vector<std::string> lines;
    for (const char* file : {"hands.txt", "bad_rounds.txt", "whole_patterns.txt"}) {
        std::ifstream table(std::string(HANDS_FOLDER) + "/" + file);
        for (std::string line; std::getline(table, line);)
            if (!line.starts_with("== ") && !line.starts_with("-> ") && !line.starts_with("%%"))
                lines.push_back(line);
    }
    return lines;
}

TEST(RandomHands, NoNumberedRoundIsLostWithoutAFinding) {
    const std::vector<std::string> lines = lines_of_tables();
    ASSERT_GT(lines.size(), 1'000u);
    const auto count = static_cast<unsigned>(testing::random_cases(20'000));
    for (unsigned seed = 0; seed < count; ++seed) {
        RandomPiece random(seed);
        std::string text;
        const int length = random.between(1, 24);
        int at = 0;
        for (int i = 0; i < length; ++i) {
            const bool jump = i == 0 || random.chance(40);
            at = jump ? random.between(0, static_cast<int>(lines.size()) - 1) : at + 1;
            if (at < static_cast<int>(lines.size())) text += lines[static_cast<std::size_t>(at)] + "\n";
        }
        const ReadPattern read = read_pattern(text);
        if (testing::rounds_read(read) >= testing::numbered_rounds(text)) continue;
        ASSERT_FALSE(read.diagnostics.empty()) << "seed " << seed << "\n" << text;
    }
}

}  // namespace
}  // namespace roundwright
