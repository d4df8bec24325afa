#include "core/reshape/mirror_join.h"

#include <algorithm>

#include "core/reshape/fabric_flaws.h"
#include "core/rounds/workable_counts.h"
#include "core/shape/growth.h"

namespace roundwright {
namespace {

bool comes_out(const PieceForm& form) { return !form.piece.rounds.empty() && form.graph.problems.empty(); }

int loops_at(const PieceForm& form, int round) {
    return form.graph.graph.rounds[static_cast<std::size_t>(round)].loops_left;
}

// A round with another's marks, yarn and kind of stitch, worked evenly.
Round even_round_like(const PieceForm& form, int round, int stitches) {
    Round made = form.piece.rounds[static_cast<std::size_t>(round)];
    WorkedEvenly even = worked_mostly(form.graph.graph.rounds[static_cast<std::size_t>(round)]);
    if (const auto* own = std::get_if<WorkedEvenly>(&made.working)) even.spacing = own->spacing;
    even.stitches = stitches;
    made.working = even;
    return made;
}

bool has_hole(const Start& start) { return !std::holds_alternative<MagicRing>(start); }

int start_loops(const PieceForm& form) {
    if (const auto* ring = std::get_if<ChainRing>(&form.piece.start)) return ring->chains;
    return form.graph.graph.foundation_loops;
}

struct Cut {
    int first = 0;
    int last = 0;  // rounds first..last are kept
};

int widest_round(const PieceForm& form) {
    int widest = 0;
    for (int i = 1; i < static_cast<int>(form.piece.rounds.size()); ++i)
        if (loops_at(form, i) > loops_at(form, widest)) widest = i;
    return widest;
}

// Up to the last round, from its widest on, that still has the neck's stitches.
std::optional<Cut> lower_part(const PieceForm& form, int neck) {
    const int rounds = static_cast<int>(form.piece.rounds.size());
    const int widest = widest_round(form);
    if (loops_at(form, widest) < neck) return std::nullopt;
    if (form.piece.end != End::drawn_closed) return Cut{0, rounds - 1};
    int last = widest;
    while (last + 1 < rounds && loops_at(form, last + 1) >= neck) ++last;
    return Cut{0, last};
}

// From the first round that has the neck's stitches.
std::optional<Cut> upper_part(const PieceForm& form, int neck) {
    const int rounds = static_cast<int>(form.piece.rounds.size());
    if (loops_at(form, widest_round(form)) < neck) return std::nullopt;
    int first = 0;
    if (!has_hole(form.piece.start))
        while (loops_at(form, first) < neck) ++first;
    return Cut{first, rounds - 1};
}

// Rounds between two counts, each as far on as neither ruffles nor gathers.
void add_bridge(const PieceForm& form, int like, int from, int to, std::vector<Round>& rounds) {
    const double height = form.problem.rest_height_mm[static_cast<std::size_t>(like)];
    const double flat = flat_increase(height, form.gauge.stitch_width_mm);
    const auto next = [&] {
        const CountRange range = workable_counts(from);
        return to > from ? std::min({to, range.most, from + most_growth(flat)})
                         : std::max({to, range.least, from - most_closing(flat)});
    };
    while (next() != to) {
        from = next();
        Round made = even_round_like(form, like, from);
        made.note.clear();
        made.lies_flat = false;
        rounds.push_back(made);
    }
}

}  // namespace

std::optional<Piece> mirrored(const PieceForm& form) {
    const Piece& old = form.piece;
    if (!comes_out(form) || std::holds_alternative<OvalChain>(old.start) || old.joining == Joining::rows)
        return std::nullopt;
    const int rounds = static_cast<int>(old.rounds.size());
    const bool ring = old.end == End::drawn_closed;
    Piece made = old;
    made.rounds.clear();
    made.worked = {};
    made.start = MagicRing{};
    if (!ring) made.start = OpenTube{loops_at(form, rounds - 1)};
    made.end = has_hole(old.start) ? End::left_open : End::drawn_closed;
    int below = ring ? 0 : loops_at(form, rounds - 1);
    const auto work = [&](int like, int stitches) {
        if (below > 0) stitches = std::clamp(stitches, (below + 1) / 2, 2 * below);
        made.rounds.push_back(even_round_like(form, like, stitches));
        below = stitches;
    };
    // Round k of the old piece leads from loop k - 1 to loop k; worked back, the other way.
    for (int loop = ring ? rounds - 1 : rounds - 2; loop >= 0; --loop)
        work(ring ? loop : loop + 1, loops_at(form, loop));
    if (has_hole(old.start)) work(0, start_loops(form));
    const int new_rounds = static_cast<int>(made.rounds.size());
    if (new_rounds == 0) return std::nullopt;
    // A gap above old round r lies at loop r + 1.
    const auto moved = [&](int round) {
        return std::clamp(rounds - (ring ? 1 : 2) - round, 0, new_rounds - 1);
    };
    for (Feature& feature : made.features) {
        feature.round = moved(feature.round);
        feature.end_round = moved(feature.end_round);
    }
    return made;
}

int usual_neck(const PieceForm& first, const PieceForm& second) {
    if (!comes_out(first) || !comes_out(second)) return 0;
    const int narrower =
        std::min(loops_at(first, widest_round(first)), loops_at(second, widest_round(second)));
    return std::max(3, narrower / 2);
}

std::optional<Piece> joined(const PieceForm& first, const PieceForm& second, int neck_stitches) {
    if (!comes_out(first) || !comes_out(second)) return std::nullopt;
    const auto lower = lower_part(first, neck_stitches);
    const auto upper = upper_part(second, neck_stitches);
    if (!lower || !upper) return std::nullopt;
    Piece made = first.piece;
    made.end = second.piece.end;
    made.rounds.assign(first.piece.rounds.begin(), first.piece.rounds.begin() + lower->last + 1);
    add_bridge(second, upper->first, loops_at(first, lower->last), loops_at(second, upper->first),
               made.rounds);
    const int offset = static_cast<int>(made.rounds.size()) - upper->first;
    for (int i = upper->first; i <= upper->last; ++i) {
        const bool changed_below = i == upper->first;
        made.rounds.push_back(changed_below ? even_round_like(second, i, loops_at(second, i))
                                            : second.piece.rounds[static_cast<std::size_t>(i)]);
    }
    std::erase_if(made.features, [&](const Feature& feature) { return feature.round > lower->last; });
    for (Feature feature : second.piece.features) {
        if (feature.round < upper->first) continue;
        feature.round += offset;
        feature.end_round = std::max(feature.end_round + offset, 0);
        made.features.push_back(feature);
    }
    return made;
}

}  // namespace roundwright
