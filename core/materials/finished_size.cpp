#include "core/materials/finished_size.h"

#include <algorithm>

namespace roundwright {
namespace {

void include(Estimate& range, double value) {
    range.low = std::min(range.low, value);
    range.high = std::max(range.high, value);
}

/// The smallest share of a measure that its range may reach down to.
constexpr double least_share = 0.2;

double shifted(double value, double error) { return std::max(value + error, value * least_share); }

}  // namespace

std::optional<FinishedSize> finished_size(const Piece& piece, const StitchGraph& graph, const Gauge& gauge,
                                          const ShapeOptions& options) {
    const Shape middle = solve_shape(shape_problem(piece, graph, gauge), options);
    if (!middle.usable()) return std::nullopt;
    FinishedSize size{exactly(middle.width_mm), exactly(middle.height_mm)};
    if (gauge.stitch_width_error_mm <= 0 && gauge.round_height_error_mm <= 0) return size;
    for (const double wide : {-gauge.stitch_width_error_mm, gauge.stitch_width_error_mm}) {
        for (const double high : {-gauge.round_height_error_mm, gauge.round_height_error_mm}) {
            const Gauge end{shifted(gauge.stitch_width_mm, wide), shifted(gauge.round_height_mm, high), 0, 0};
            const Shape shape = solve_shape(shape_problem(piece, graph, end), options, &middle);
            if (!shape.usable()) continue;
            include(size.width_mm, shape.width_mm);
            include(size.height_mm, shape.height_mm);
        }
    }
    return size;
}

Gauge gauge_at_width(const Gauge& gauge, double stitch_width_mm) {
    return {stitch_width_mm, gauge.round_height_mm * stitch_width_mm / gauge.stitch_width_mm, 0, 0};
}

}  // namespace roundwright
