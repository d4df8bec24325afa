#include "core/face/opening.h"

#include <algorithm>
#include <numbers>

namespace roundwright {

namespace {

/// The circle inside a loop of this length whose fabric is so thick.
double within(double loop_mm, double fabric_mm) {
    return std::max(0.0, loop_mm / std::numbers::pi - fabric_mm);
}

/// The last round from `first` on, up to the first one that is too narrow.
std::optional<int> last_before_too_narrow(int first, double needed_mm, const std::vector<double>& openings) {
    std::optional<int> last;
    for (int round = first; round < static_cast<int>(openings.size()); ++round) {
        if (openings[static_cast<std::size_t>(round)] < needed_mm) break;
        last = round;
    }
    return last;
}

/// The round after which the edge starts to close for good.
int last_of_widest(const std::vector<double>& openings) {
    int widest = 0;
    for (int round = 0; round < static_cast<int>(openings.size()); ++round) {
        if (openings[static_cast<std::size_t>(round)] >= openings[static_cast<std::size_t>(widest)])
            widest = round;
    }
    return widest;
}

}  // namespace

std::vector<double> openings_mm(const std::vector<double>& rest_loop_mm, double fabric_mm) {
    std::vector<double> openings;
    for (std::size_t loop = 1; loop < rest_loop_mm.size(); ++loop) {
        openings.push_back(within(rest_loop_mm[loop], fabric_mm));
    }
    return openings;
}

double start_opening_mm(const Start& start, const std::vector<double>& rest_loop_mm, double fabric_mm) {
    const bool open = std::holds_alternative<OpenTube>(start) || std::holds_alternative<ChainRing>(start);
    return open && !rest_loop_mm.empty() ? within(rest_loop_mm.front(), fabric_mm) : 0;
}

FittingTime fitting_time(int feature_round, double washer_mm, const std::vector<double>& openings,
                         double start_opening_mm) {
    FittingTime time;
    time.earliest = feature_round + 1;
    time.other_end_open = start_opening_mm >= std::max(washer_mm, fingers_need_mm);
    time.last_by_washer = last_before_too_narrow(time.earliest, washer_mm, openings);
    time.last_by_fingers =
        last_before_too_narrow(time.earliest, std::max(washer_mm, fingers_need_mm), openings);
    const std::optional<int> last = time.last_by_fingers ? time.last_by_fingers : time.last_by_washer;
    // Before the closing begins, so that there is room to try the places out, but never past the last chance.
    if (last) time.recommended = std::min(*last, std::max(time.earliest, last_of_widest(openings)));
    return time;
}

// A washer overhangs the post's hole and, on small eyes, the eye itself.
double usual_washer_mm(double width_mm) {
    constexpr double overhang_mm = 4;
    return width_mm + overhang_mm;
}

StuffingTime stuffing_time(const Piece& piece, const std::vector<double>& openings) {
    StuffingTime time;
    if (piece.area_stretch <= 0 || openings.empty()) return time;
    const int last = static_cast<int>(openings.size()) - 1;
    if (piece.end != End::drawn_closed && openings.back() >= stuffing_needs_mm) return {last, last};
    const int widest = last_of_widest(openings);
    const double half_open = openings[static_cast<std::size_t>(widest)] / 2;
    time.begin =
        last_before_too_narrow(widest, std::max(fingers_need_mm, half_open), openings).value_or(widest);
    time.finish =
        std::max(*time.begin, last_before_too_narrow(widest, stuffing_needs_mm, openings).value_or(widest));
    return time;
}

}  // namespace roundwright
