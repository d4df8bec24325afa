#include "core/mesh/stitch_cords.h"

namespace roundwright {
namespace {

// Drawn from the look of worked fabric.
constexpr double leg_radius = 0.22, head_radius = 0.2, post_radius = 0.24, wrap_radius = 0.12,
                 wrap_over = 0.09;

constexpr Cord single[] = {{0.43, 0.07, 0.19, 0.87, leg_radius}, {0.57, 0.07, 0.81, 0.87, leg_radius}};
constexpr Cord single_over_bar[] = {
    {0.0, 0.14, 1.0, 0.14, 0.14}, {0.40, 0.32, 0.20, 0.88, leg_radius}, {0.60, 0.32, 0.80, 0.88, leg_radius}};
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
constexpr Cord inside[] = {{0.28, 0.5, 0.72, 0.5, 0.23}};

}  // namespace

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
