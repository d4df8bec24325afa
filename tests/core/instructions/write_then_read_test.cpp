#include <gtest/gtest.h>
#include <string>

#include "core/instructions/read_pattern.h"
#include "core/instructions/write_pattern.h"
#include "tests/core/instructions/random_piece.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

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
    const Piece& again = read.pieces[0];
    const bool same = piece_graph(again).graph == piece_graph(piece).graph && again.start == piece.start &&
                      again.end == piece.end && again.joining == piece.joining && again.make == piece.make &&
                      again.name == piece.name && again.area_stretch == piece.area_stretch;
    if (same) return ::testing::AssertionSuccess();
    return ::testing::AssertionFailure() << text << "-- read and written again:\n"
                                         << write_piece(again, terms);
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

// Four parts, so that they can run side by side.
TEST(WriteThenRead, GivesTheSameStitchesFirstPart) { expect_read_back(0, 4); }
TEST(WriteThenRead, GivesTheSameStitchesSecondPart) { expect_read_back(1, 4); }
TEST(WriteThenRead, GivesTheSameStitchesThirdPart) { expect_read_back(2, 4); }
TEST(WriteThenRead, GivesTheSameStitchesFourthPart) { expect_read_back(3, 4); }

}  // namespace
}  // namespace roundwright
