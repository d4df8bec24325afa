#pragma once

#include <functional>
#include <stop_token>

#include "core/language/words/terms.h"
#include "render/pages/layout/paper.h"
#include "render/wording/length_unit.h"

namespace roundwright::render {

/// What goes into a pattern. Safety words always do.
struct PatternContents {
    bool cover = true;
    bool materials = true;
    bool gauge_table = true;  ///< size if the gauge differs
    bool abbreviations = true;
    bool rounds = true;
    bool round_chart = true;
    bool face = true;        ///< where features sit
    bool silhouette = true;  ///< full size, to hold the work against
    bool making = true;      ///< assembly and finishing
    bool teaching_sheet = false;
    bool notes = true;

    friend bool operator==(const PatternContents&, const PatternContents&) = default;
};

struct PatternOptions {
    Paper paper = Paper::a4;
    Terms terms = Terms::us;
    LengthUnit units = LengthUnit::millimetres;
    PatternContents contents;

    friend bool operator==(const PatternOptions&, const PatternOptions&) = default;
};

/// How far long work has come, and whether it should stop.
struct Progress {
    std::function<void(int done, int of)> report;  ///< may be empty
    std::stop_token stop;
};

}  // namespace roundwright::render
