#include "render/chart/chart_symbols.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include <QTransform>

namespace roundwright::render {
namespace {

constexpr double cross_width = 0.5, bar_width = 0.52, slash_width = 0.36, dot_radius = 0.14, gap = 0.12;

double length(const QPointF& way) { return std::hypot(way.x(), way.y()); }

/// A stem's line, drawn in at its ends so that rounds do not run into each other.
struct Stem {
    QPointF from, to;
    QPointF along;   ///< unit
    QPointF across;  ///< unit, to the right of along

    Stem(const QPointF& foot, const QPointF& head, double in_at_foot, double in_at_head) {
        const QPointF way = head - foot;
        const double long_ = std::max(1e-9, length(way));
        along = way / long_;
        across = {along.y(), -along.x()};
        from = foot + in_at_foot * along;
        to = head - in_at_head * along;
    }
    [[nodiscard]] QPointF at(double share) const { return from + share * (to - from); }
};

void line(QPainterPath& path, const QPointF& from, const QPointF& to) {
    path.moveTo(from);
    path.lineTo(to);
}

void bar(QPainterPath& path, const Stem& stem, double share, double width) {
    line(path, stem.at(share) - width / 2 * stem.across, stem.at(share) + width / 2 * stem.across);
}

void slash(QPainterPath& path, const Stem& stem, double share) {
    const QPointF half = slash_width / 2 * (0.87 * stem.across + 0.5 * stem.along);
    line(path, stem.at(share) - half, stem.at(share) + half);
}

void diagonal_cross(QPainterPath& path, const Stem& stem, const QPointF& middle, double size) {
    const QPointF one = size / 2 * 0.72 * (stem.along + stem.across),
                  other = size / 2 * 0.72 * (stem.along - stem.across);
    line(path, middle - one, middle + one);
    line(path, middle - other, middle + other);
}

/// The marks on a stem that tell what stitch it is.
void add_marks(QPainterPath& path, const Stem& stem, StitchKind kind, double room, bool bar_on_head) {
    const double width = std::min(bar_width, 0.8 * room);
    switch (kind) {
        case StitchKind::single_crochet:
            bar(path, stem, 0.56, std::min(cross_width, 0.8 * room));
            return;
        case StitchKind::treble_crochet:
            slash(path, stem, 0.68);
            [[fallthrough]];
        case StitchKind::double_crochet:
            slash(path, stem, 0.5);
            [[fallthrough]];
        case StitchKind::half_double_crochet:
            if (bar_on_head) bar(path, stem, 1, width);
            return;
        default:
            return;
    }
}

void add_bobble(QPainterPath& path, const Stem& stem, double room) {
    const double swell = std::min(0.34, 0.42 * room);
    for (const double side : {-1.0, 0.0, 1.0}) {
        const QPointF out = side * 4.0 / 3 * swell * stem.across;
        path.moveTo(stem.from);
        path.cubicTo(stem.at(0.25) + out, stem.at(0.75) + out, stem.to);
    }
}

/// A half circle at the foot; `opens` outwards (front) or inwards (back).
void add_loop_arc(QPainterPath& path, const QPointF& foot, const QPointF& outward, bool outwards) {
    const QPointF across(outward.y(), -outward.x());
    const double radius = 0.2, sign = outwards ? 1 : -1;
    const QPointF middle = foot + 0.03 * outward;
    const QPointF deep = -sign * radius * 0.62 * outward, edge = sign * 0.06 * outward;
    path.moveTo(middle - radius * across + edge);
    path.cubicTo(middle - radius * across + deep, middle + radius * across + deep,
                 middle + radius * across + edge);
}

void add_oval(QPainterPath& path, const QPointF& middle, const QPointF& along, double long_, double wide) {
    QTransform turn;
    turn.translate(middle.x(), middle.y());
    turn.rotateRadians(std::atan2(along.y(), along.x()));
    QPainterPath oval;
    oval.addEllipse(QPointF(), long_ / 2, wide / 2);
    path.addPath(turn.map(oval));
}

void add_stems(SymbolPaths& paths, const ChartStitch& stitch, CrossSymbol cross) {
    const bool together = stitch.feet.size() > 1;
    const bool alone = !together && !stitch.shares_foot;
    const bool is_single = stitch.made.kind == StitchKind::single_crochet;
    for (const auto& foot : stitch.feet) {
        const Stem stem(foot, stitch.head, stitch.shares_foot ? 0.06 : gap, together ? 0.06 : gap);
        if (stitch.made.kind == StitchKind::bobble) {
            add_bobble(paths.lines, stem, stitch.width);
            continue;
        }
        if (is_single && cross == CrossSymbol::diagonal) {
            const double size = std::min(0.62, 0.85 * stitch.width);
            if (!alone) line(paths.lines, stem.from, stem.to);
            diagonal_cross(paths.lines, stem,
                           stem.at(alone      ? 0.5
                                   : together ? 0.4
                                              : 0.62),
                           alone ? size : 0.7 * size);
            continue;
        }
        line(paths.lines, stem.from, stem.to);
        add_marks(paths.lines, stem, stitch.made.kind, stitch.width, !together);
    }
    if (!together || is_single || stitch.made.kind == StitchKind::bobble) return;
    // Stitches together share the bar on their one head.
    const Stem upright(stitch.head - stitch.outward, stitch.head, 0, 0.06);
    bar(paths.lines, upright, 1, std::min(bar_width, 0.8 * stitch.width));
}

ChartStitch sample_stitch(StitchKind kind) {
    ChartStitch stitch;
    stitch.made.kind = kind;
    stitch.feet = {{0, -0.5}};
    stitch.head = {0, 0.5};
    stitch.outward = {0, 1};
    return stitch;
}

}  // namespace

void add_symbol(SymbolPaths& paths, const ChartStitch& stitch, CrossSymbol cross) {
    const QPointF along(-stitch.outward.y(), stitch.outward.x());
    if (stitch.made.kind == StitchKind::chain) {
        add_oval(paths.lines, stitch.head - 0.2 * stitch.outward, along, std::min(0.72, 0.9 * stitch.width),
                 0.34);
    } else if (stitch.made.kind == StitchKind::slip_stitch) {
        const QPointF foot = stitch.feet.empty() ? stitch.head : stitch.feet.front();
        paths.fills.addEllipse((foot + stitch.head) / 2, dot_radius, dot_radius);
    } else {
        add_stems(paths, stitch, cross);
    }
    const bool through_fronts = stitch.made.invisible && stitch.made.feet > 1;
    if (stitch.made.part == LoopPart::both && !through_fronts) return;
    if (stitch.made.same_foot) return;
    for (const auto& foot : stitch.feet)
        add_loop_arc(paths.lines, foot, stitch.outward,
                     through_fronts || stitch.made.part == LoopPart::front);
}

void add_start(SymbolPaths& paths, const ChartStart& start) {
    if (start.kind == ChartStart::Kind::round_below) return;
    if (start.kind == ChartStart::Kind::magic_ring) {
        // The yarn's end goes once around and a little within.
        for (int k = 0; k <= 40; ++k) {
            const double turn = 1.35 * 2 * std::numbers::pi * k / 40, radius = 0.1 + 0.22 * k / 40;
            const QPointF at(radius * std::cos(turn), radius * std::sin(turn));
            if (k == 0)
                paths.lines.moveTo(at);
            else
                paths.lines.lineTo(at);
        }
        return;
    }
    for (std::size_t k = 0; k < start.chains.size(); ++k)
        add_oval(paths.lines, start.chains[k], start.along[k], 0.72, 0.34);
}

std::vector<ChartSymbol> symbols_used(const ChartLayout& layout) {
    std::set<ChartSymbol> used;
    if (layout.start.kind != ChartStart::Kind::round_below) {
        used.insert(layout.start.kind == ChartStart::Kind::magic_ring ? ChartSymbol::magic_ring
                                                                      : ChartSymbol::chain);
    }
    for (const auto& stitch : layout.stitches) {
        switch (stitch.made.kind) {
            case StitchKind::chain:
                used.insert(ChartSymbol::chain);
                break;
            case StitchKind::slip_stitch:
                used.insert(ChartSymbol::slip_stitch);
                break;
            case StitchKind::single_crochet:
                used.insert(ChartSymbol::single_crochet);
                break;
            case StitchKind::half_double_crochet:
                used.insert(ChartSymbol::half_double_crochet);
                break;
            case StitchKind::double_crochet:
                used.insert(ChartSymbol::double_crochet);
                break;
            case StitchKind::treble_crochet:
                used.insert(ChartSymbol::treble_crochet);
                break;
            case StitchKind::bobble:
                used.insert(ChartSymbol::bobble);
                break;
            case StitchKind::skip:
                break;
        }
        if (stitch.made.same_foot) used.insert(ChartSymbol::increase);
        if (stitch.made.feet > 1) used.insert(ChartSymbol::decrease);
        if (stitch.made.part == LoopPart::front || (stitch.made.invisible && stitch.made.feet > 1))
            used.insert(ChartSymbol::front_loop);
        if (stitch.made.part == LoopPart::back) used.insert(ChartSymbol::back_loop);
    }
    return {used.begin(), used.end()};
}

SymbolPaths sample_of(ChartSymbol symbol, CrossSymbol cross) {
    SymbolPaths paths;
    const auto add = [&](StitchKind kind) { add_symbol(paths, sample_stitch(kind), cross); };
    const auto with_part = [&](LoopPart part) {
        auto stitch = sample_stitch(StitchKind::single_crochet);
        stitch.made.part = part;
        add_symbol(paths, stitch, cross);
    };
    switch (symbol) {
        case ChartSymbol::magic_ring:
            add_start(paths, {ChartStart::Kind::magic_ring, {}, {}});
            break;
        case ChartSymbol::chain:
            add_start(paths, {ChartStart::Kind::chains, {{0, 0}}, {{1, 0}}});
            break;
        case ChartSymbol::slip_stitch:
            add(StitchKind::slip_stitch);
            break;
        case ChartSymbol::single_crochet:
            add(StitchKind::single_crochet);
            break;
        case ChartSymbol::half_double_crochet:
            add(StitchKind::half_double_crochet);
            break;
        case ChartSymbol::double_crochet:
            add(StitchKind::double_crochet);
            break;
        case ChartSymbol::treble_crochet:
            add(StitchKind::treble_crochet);
            break;
        case ChartSymbol::bobble:
            add(StitchKind::bobble);
            break;
        case ChartSymbol::increase:
            for (const double side : {-0.38, 0.38}) {
                auto stitch = sample_stitch(StitchKind::single_crochet);
                stitch.shares_foot = true;
                stitch.head.setX(side);
                add_symbol(paths, stitch, cross);
            }
            break;
        case ChartSymbol::decrease: {
            auto stitch = sample_stitch(StitchKind::single_crochet);
            stitch.made.feet = 2;
            stitch.feet = {{-0.38, -0.5}, {0.38, -0.5}};
            add_symbol(paths, stitch, cross);
            break;
        }
        case ChartSymbol::front_loop:
            with_part(LoopPart::front);
            break;
        case ChartSymbol::back_loop:
            with_part(LoopPart::back);
            break;
    }
    return paths;
}

}  // namespace roundwright::render
