#pragma once

#include <gtest/gtest.h>
#include <string>

#include "core/language/pattern/write_pattern.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::testing {

/// What was read of a piece's own text is the piece again, stitch for stitch.
inline ::testing::AssertionResult is_read_back(const Piece& piece, const Piece& again,
                                               const std::string& text, Terms terms) {
    const bool same = piece_graph(again).graph == piece_graph(piece).graph && again.start == piece.start &&
                      again.end == piece.end && again.joining == piece.joining && again.make == piece.make &&
                      again.name == piece.name && again.area_stretch == piece.area_stretch;
    if (same) return ::testing::AssertionSuccess();
    return ::testing::AssertionFailure() << text << "-- read and written again:\n"
                                         << write_piece(again, terms);
}

}  // namespace roundwright::testing
