#pragma once

#include <vector>

#include "core/language/pattern/written_rounds.h"
#include "render/pages/pattern_study.h"
#include "render/pages/used_stitches.h"

namespace roundwright::render {

/// What to do with a line of the pattern before a class or a camera.
enum class Showing {
    in_full,  ///< something is met for the first time: a technique, a yarn, a note, a thing to fit
    begin,    ///< a new rhythm of known stitches: show its first repeat
    skip,     ///< goes on as before: say the count and go on
};

struct TaughtLine {
    WrittenRounds line;
    Showing showing = Showing::begin;
    std::vector<Technique> first_met;
    double minutes = 0;      ///< at the maker's pace
    double end_minutes = 0;  ///< running, from the first round of the first piece
};

struct TaughtPiece {
    std::size_t piece = 0;
    std::vector<TaughtLine> lines;
};

/// The pieces, each once, in the order they are worked.
[[nodiscard]] std::vector<TaughtPiece> teaching_plan(const PatternStudy& study, Terms terms);

}  // namespace roundwright::render
