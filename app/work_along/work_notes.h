#pragma once

#include <vector>

#include <QString>

#include "app/kit/preferences.h"
#include "core/study/piece_study.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// Something to do between two rounds: change the yarn, fit the eyes, stuff, close.
struct WorkNote {
    int after_round = -1;  ///< from 0; -1: before round 1
    QString words;
};

/// All of a piece, in the order they come up.
[[nodiscard]] std::vector<WorkNote> work_notes(const Toy& toy, const Piece& piece, const PieceStudy& study);

/// A round that is one group repeated: how often, and of how many stitches. Nothing for another.
struct Repeat {
    int times = 0;
    int stitches = 0;
};
[[nodiscard]] Repeat repeat_of(const QString& words, int stitches);

/// "1:20", "1:02:05"
[[nodiscard]] QString time_text(double seconds);

/// Seconds that the rounds still to be worked take, by those measured, stitch for stitch; 0 if none was.
[[nodiscard]] double seconds_left(const WorkedSoFar& worked, const std::vector<int>& stitches_of_round);

}  // namespace roundwright::app
