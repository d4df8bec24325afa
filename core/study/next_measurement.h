#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/gauge/measured.h"
#include "core/study/piece_study.h"

namespace roundwright {

/// Worked to its last round.
[[nodiscard]] bool is_finished(const Piece& piece);

enum class NextMeasurementKind { circle, swatch_in_rounds, finished_piece };

/// What one more measurement would do for the sizes of a toy's pieces.
struct NextMeasurement {
    NextMeasurementKind kind = NextMeasurementKind::circle;
    std::size_t piece = 0;              ///< of `finished_piece`
    MeasuredOf of = MeasuredOf::width;  ///< of `finished_piece`: its width, height or circumference
    bool finished = false;              ///< the piece is worked to its last round
    double error_before = 0;            ///< of the sizes, see below
    double error_after = 0;
};

/// The gauge circle that is offered first, a swatch of 20 stitches and 20 rounds worked in the round, and the
/// measures of every piece that has a shape, the most useful first; of equals, the one with less work.
///
/// The error of the sizes is the half width of the range that holds nine in ten, as a share of the size: the
/// root of the mean, over the widths and heights of all pieces, of the variance of their logarithms, by the
/// gauge alone. Sizes are linear in the logarithms of stitch width and round height here, with one-sided
/// differences on the forward solve. What a piece measures is known as well as the tape says (2 mm), its
/// stuffing and the spread from day to day.
///
/// `studies`: one a piece of the toy, with the toy's gauge.
[[nodiscard]] std::vector<NextMeasurement> next_measurements(const Toy& toy,
                                                             std::span<const PieceStudy> studies);

}  // namespace roundwright
