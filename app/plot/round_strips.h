#pragma once

#include <vector>

#include <QString>

#include "app/kit/preferences.h"
#include "core/study/piece_study.h"

namespace roundwright::app {

/// A value from which the fabric behaves otherwise.
struct StripLimit {
    double value = 0;
    QString says;  ///< may be empty
};

/// A value a round, and the lines that bound what is well.
struct RoundStrip {
    QString title;
    std::vector<double> values;
    std::vector<StripLimit> limits;
    double low = 0;   ///< at the least, the strip reaches from here
    double high = 0;  ///< to here
    int decimals = 0;
    QString unit;
};

/// Width, growth and stretch along the rounds of a piece that has a shape.
[[nodiscard]] std::vector<RoundStrip> round_strips(const PieceStudy& study, LengthUnit units);

/// "Round 5", and its value in each strip on a line of its own.
[[nodiscard]] QString round_words(const std::vector<RoundStrip>& strips, int round);

}  // namespace roundwright::app
