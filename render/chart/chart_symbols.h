#pragma once

#include <vector>

#include <QPainterPath>

#include "render/chart/chart_layout.h"

namespace roundwright::render {

/// How a single crochet is drawn; the trade uses both.
enum class CrossSymbol { upright, diagonal };

/// Lines and fills of symbols in the chart's units, to be drawn in one ink.
struct SymbolPaths {
    QPainterPath lines;
    QPainterPath fills;
};

/// Adds a stitch's symbol: the trade's standard ones. A chain is an open oval, a slip stitch a dot; every
/// other stitch is a stem from its foot to its head, crossed for a single crochet, with a bar on its head for
/// a half double, and one slash more for a double, two for a treble; a bobble is stems that swell apart and
/// meet. Stitches in one loop start from one foot, stitches together end in one head. Worked into the front
/// loop only: an arc that opens outwards at the foot; back loop only: one that opens inwards.
void add_symbol(SymbolPaths& paths, const ChartStitch& stitch, CrossSymbol cross);

/// Adds the start: a small ring with its tail, or chains.
void add_start(SymbolPaths& paths, const ChartStart& start);

/// What a chart's key explains, in the order of the key.
enum class ChartSymbol {
    magic_ring,
    chain,
    slip_stitch,
    single_crochet,
    half_double_crochet,
    double_crochet,
    treble_crochet,
    bobble,
    increase,
    decrease,
    front_loop,
    back_loop,
};
[[nodiscard]] std::vector<ChartSymbol> symbols_used(const ChartLayout& layout);

/// One symbol by itself around (0, 0), about one unit high, as the key shows it.
[[nodiscard]] SymbolPaths sample_of(ChartSymbol symbol, CrossSymbol cross);

}  // namespace roundwright::render
