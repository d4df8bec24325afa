#pragma once

#include <vector>

#include <QString>

#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::render {

/// Something to do when a round is done: fit the eyes, stuff.
struct RoundRemark {
    int after = 0;  ///< round, from 0
    QString text;
};

/// What a piece's features and stuffing ask for, in the order of its rounds.
[[nodiscard]] std::vector<RoundRemark> round_remarks(const Piece& piece, const PieceStudy& study,
                                                     Terms terms);

/// The rounds after which something is to be done, each once.
[[nodiscard]] std::vector<int> remarked_rounds(const std::vector<RoundRemark>& remarks);

}  // namespace roundwright::render
