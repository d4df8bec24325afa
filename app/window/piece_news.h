#pragma once

#include <vector>

#include <QString>

#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// What a maker who listens knows of a piece: what was said of it, or stood there when it came on show.
struct PieceAsHeard {
    std::vector<int> counts;
    std::vector<Lie> lies;  ///< one a round, or none
    bool has_size = false;
    double width_mm = 0;
    double height_mm = 0;
    std::vector<Feature> features;

    [[nodiscard]] static PieceAsHeard of(const Piece& piece, const PieceStudy& study);
};

/// What is new of a piece, a sentence each; empty where nothing is.
struct PieceNews {
    QString count;  ///< "Round 4: 24 stitches, +6"
    QString lie;    ///< "Round 6 begins to ruffle"
    std::vector<int> rounds_of_lie;
    bool size = false;  ///< changed by a millimetre or more
    QString features;   ///< "Safety eyes: between rounds 9 and 10, with 7 stitches between them"
};

[[nodiscard]] PieceNews piece_news(const PieceAsHeard& before, const PieceAsHeard& now);

}  // namespace roundwright::app
