#pragma once

namespace roundwright::render {

/// Ways of working that a pattern may explain.
enum class Technique {
    magic_ring,
    chain,
    foundation_ring,
    oval_start,
    slip_stitch,
    single_crochet,
    half_double_crochet,
    double_crochet,
    treble_crochet,
    bobble,
    skip,
    increase,
    decrease,
    invisible_decrease,
    together,  ///< other stitches worked together
    front_loop,
    back_loop,
    change_yarn,
    draw_closed,
    fasten_off,
    sew_straight,
};

}  // namespace roundwright::render
