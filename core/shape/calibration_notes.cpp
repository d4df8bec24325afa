#include "core/shape/calibration_notes.h"

#include <algorithm>
#include <cmath>

#include "core/gauge/gauge_belief.h"
#include "core/shape/calibration_fit.h"

namespace roundwright {

namespace {

/// Shares of the presumed spread: what is left of it where a value counts as free, and where two that go
/// together are small enough to do no harm. Starting values of our own.
constexpr double free_above = 0.5;
constexpr double harmless_below = 0.25;
constexpr double going_together = 0.9;
/// Measurements disagree where the mean square of their deviations is above this.
constexpr double disagreeing = 4;

/// The part of the presumption's spread that is left.
double remaining(int v, const Calibration& found) {
    const bool is_stretch = v == static_cast<int>(CalibratedValue::area_stretch);
    return std::sqrt(found.covariance(v, v)) / (is_stretch ? presumed_stretch_spread : presumed_gauge_spread);
}

bool go_together(int a, int b, const Calibration& found) {
    if (remaining(a, found) < harmless_below && remaining(b, found) < harmless_below) return false;
    return std::abs(found.covariance(a, b)) >
           going_together * std::sqrt(found.covariance(a, a) * found.covariance(b, b));
}

void note_disagreement(const Calibration& found, const std::vector<Measured>& measured,
                       std::vector<CalibrationNote>& notes) {
    double squares = 0;
    double worst = 0;
    CalibrationNote note{CalibrationCode::measurements_disagree};
    for (std::size_t i = 0; i < measured.size(); ++i) {
        const double part =
            std::abs(measured[i].mm - found.modelled_mm[i]) * deviations_in_half_width / measured[i].error_mm;
        squares += part * part;
        if (part > worst) note.measured = i;
        worst = std::max(worst, part);
    }
    if (squares > disagreeing * static_cast<double>(measured.size())) notes.push_back(note);
}

}  // namespace

std::vector<CalibrationNote> calibration_notes(const Calibration& found,
                                               const std::vector<Measured>& measured,
                                               const std::array<bool, 3>& sought) {
    std::vector<CalibrationNote> notes;
    const auto is_sought = [&](int v) { return sought[static_cast<std::size_t>(v)]; };
    for (int v = 0; v < 3; ++v)
        if (is_sought(v) && remaining(v, found) > free_above)
            notes.push_back({CalibrationCode::left_free, static_cast<CalibratedValue>(v)});
    for (int a = 0; a < 3; ++a)
        for (int b = a + 1; b < 3; ++b)
            if (is_sought(a) && is_sought(b) && go_together(a, b, found))
                notes.push_back({CalibrationCode::not_told_apart, static_cast<CalibratedValue>(a),
                                 static_cast<CalibratedValue>(b)});
    note_disagreement(found, measured, notes);
    return notes;
}

}  // namespace roundwright
