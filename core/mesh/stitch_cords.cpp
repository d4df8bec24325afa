#include "core/mesh/stitch_cords.h"

namespace roundwright {
namespace {

// Drawn from the look of worked fabric.
constexpr double leg_radius = 0.215, head_radius = 0.2, post_radius = 0.24, wrap_radius = 0.12,
                 wrap_over = 0.09;

constexpr Cord top_loop{0.08, 0.955, 1.0, 1.03, 0.15, 0.06, 0.1, 0.7};
constexpr Cord single[] = {top_loop,
                           {0.45, 0.14, 0.17, 0.74, leg_radius, 0.16, 0.18, 0.8},
                           {0.57, 0.10, 0.85, 0.70, leg_radius, 0.16, 0.18, 0.8}};
constexpr Cord single_over_bar[] = {top_loop,
                                    {0.02, 0.16, 1.0, 0.22, 0.15, 0.12, 0.12, 0.8},
                                    {0.45, 0.40, 0.18, 0.76, leg_radius, 0.12, 0.16, 0.8},
                                    {0.57, 0.37, 0.84, 0.72, leg_radius, 0.12, 0.16, 0.8}};
constexpr Cord half_double[] = {{0.50, 0.08, 0.47, 0.62, post_radius},
                                {0.27, 0.34, 0.73, 0.44, wrap_radius, wrap_over},
                                {0.41, 0.74, 0.20, 0.91, head_radius},
                                {0.59, 0.74, 0.80, 0.91, head_radius}};
constexpr Cord double_crochet[] = {{0.50, 0.06, 0.46, 0.72, post_radius},
                                   {0.26, 0.19, 0.74, 0.27, wrap_radius, wrap_over},
                                   {0.26, 0.45, 0.74, 0.53, wrap_radius, wrap_over},
                                   {0.41, 0.81, 0.20, 0.94, head_radius},
                                   {0.59, 0.81, 0.80, 0.94, head_radius}};
constexpr Cord treble[] = {{0.50, 0.05, 0.46, 0.77, post_radius},
                           {0.26, 0.15, 0.74, 0.21, wrap_radius, wrap_over},
                           {0.26, 0.35, 0.74, 0.41, wrap_radius, wrap_over},
                           {0.26, 0.55, 0.74, 0.61, wrap_radius, wrap_over},
                           {0.41, 0.86, 0.20, 0.95, head_radius},
                           {0.59, 0.86, 0.80, 0.95, head_radius}};
constexpr Cord bobble[] = {{0.5, 0.49, 0.5, 0.51, 0.48, 0.2}};
constexpr Cord chain[] = {{0.1, 0.75, 0.9, 0.75, 0.2}};
constexpr Cord slip[] = {{0.2, 0.35, 0.8, 0.65, 0.2}};
constexpr Cord pile[] = {{0.5, 0.38, 0.5, 0.62, 0.44}};
constexpr Cord inside[] = {{0.04, 0.14, 0.52, 0.24, 0.15, 0.02, 0.1},
                           {0.52, 0.22, 1.02, 0.10, 0.15, 0.02, 0.1},
                           {0.06, 0.60, 0.94, 0.66, 0.20, 0.1, 0.2}};

}  // namespace

double Cord::radius_at(double t) const {
    return radius * (taper + (1 - taper) * t) * (1 + 4 * cord_belly * t * (1 - t));
}

StitchFace face_of(StitchKind kind, LoopPart part) {
    switch (kind) {
        case StitchKind::chain:
            return StitchFace::chain;
        case StitchKind::slip_stitch:
            return StitchFace::slip;
        case StitchKind::half_double_crochet:
            return StitchFace::half_double;
        case StitchKind::double_crochet:
            return StitchFace::double_crochet;
        case StitchKind::treble_crochet:
            return StitchFace::treble;
        case StitchKind::bobble:
            return StitchFace::bobble;
        case StitchKind::single_crochet:
        case StitchKind::skip:
            break;
    }
    return part == LoopPart::back ? StitchFace::single_over_bar : StitchFace::single;
}

std::span<const Cord> cords_of(StitchFace face) {
    switch (face) {
        case StitchFace::single:
            return single;
        case StitchFace::single_over_bar:
            return single_over_bar;
        case StitchFace::half_double:
            return half_double;
        case StitchFace::double_crochet:
            return double_crochet;
        case StitchFace::treble:
            return treble;
        case StitchFace::bobble:
            return bobble;
        case StitchFace::chain:
            return chain;
        case StitchFace::slip:
            return slip;
        case StitchFace::inside:
            return inside;
        case StitchFace::pile:
            return pile;
    }
    return single;
}

}  // namespace roundwright
