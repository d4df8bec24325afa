#include "core/reshape/reshape_toy.h"

#include <algorithm>
#include <numeric>

#include "core/reshape/carry_joins.h"

namespace roundwright {
namespace {

template <class... Cases>
struct Overloaded : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
Overloaded(Cases...) -> Overloaded<Cases...>;

bool same_size(const Gauge& a, const Gauge& b) {
    return a.stitch_width_mm == b.stitch_width_mm && a.round_height_mm == b.round_height_mm;
}

ReshapeCode code_of_same_rounds(const PieceForm& old, const PieceForm& made) {
    if (!made.usable()) return ReshapeCode::unusable_piece;
    return same_size(old.gauge, made.gauge) ? ReshapeCode::unchanged : ReshapeCode::met;
}

}  // namespace

Toy with_hook(const Toy& toy, double hook_mm) {
    const auto keep_hook = [&](auto& measured) {
        if (measured.hook_mm == 0) measured.hook_mm = toy.hook_mm;
    };
    const auto hold = Overloaded{[&](SwatchGauge& swatch) { keep_hook(swatch); },
                                 [&](CircleGauge& circle) { keep_hook(circle); },
                                 [&](FinishedPieceGauge& finished) { keep_hook(finished); },
                                 [&](GivenGauge& given) {
                                     if (toy.hook_mm > 0)
                                         given.gauge = with_other_hook(given.gauge, toy.hook_mm, hook_mm);
                                 },
                                 [](auto&) {}};
    Toy other = toy;
    std::visit(Overloaded{hold,
                          [&](SeveralGauge& several) {
                              for (GaugeMeasurement& one : several.measurements) std::visit(hold, one.what);
                          }},
               other.gauge);
    other.hook_mm = hook_mm;
    return other;
}

Toy with_yarn_weight(const Toy& toy, YarnWeight weight) {
    Toy other = toy;
    other.gauge = EstimatedGauge{weight};
    for (Yarn& yarn : other.yarns) yarn.weight = weight;
    return other;
}

std::vector<std::size_t> all_pieces(const Toy& toy) {
    std::vector<std::size_t> all(toy.pieces.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

bool ReshapedToy::all_met() const {
    return std::all_of(pieces.begin(), pieces.end(), [](const ReshapedPiece& piece) {
        return piece.made.code == ReshapeCode::met || piece.made.code == ReshapeCode::unchanged;
    });
}

std::vector<WayOn> ways_on_for(const Toy& toy, const PieceForm& form, const Target& target, int most_ripped,
                               const ReshapeOptions& options) {
    const WorkedSoFar& worked = form.piece.worked;
    auto ways = continue_from_here(form, target, worked, most_ripped, options);
    for (WayOn& way : ways) measure_yarn(way.back, form.piece, form.graph.graph, worked, toy, form.gauge);
    return ways;
}

FrogBack frog_back_for(const Toy& toy, const PieceForm& old, const PieceForm& made) {
    const WorkedSoFar& worked = old.piece.worked;
    const StitchGraph& graph = old.graph.graph;
    FrogBack back = same_size(old.gauge, made.gauge)
                        ? frog_back(old.piece, graph, made.piece, made.graph.graph, worked)
                        : frog_everything(old.piece, graph, worked);
    measure_yarn(back, old.piece, graph, worked, toy, old.gauge);
    return back;
}

ReshapedToy same_rounds(const Toy& toy, const Toy& worked_as, const std::vector<std::size_t>& pieces,
                        const ReshapeOptions& options) {
    const Gauge gauge = gauge_of(worked_as);
    ReshapedToy result;
    result.toy = worked_as;
    for (std::size_t piece : pieces) {
        if (piece >= toy.pieces.size()) continue;
        const PieceForm old = piece_form(toy.pieces[piece], gauge_of(toy), nullptr, options.stop);
        ReshapedPiece worked{piece, {}, {}};
        worked.made.form = piece_form(old.piece, gauge, &old.shape, options.stop);
        worked.made.code = code_of_same_rounds(old, worked.made.form);
        worked.made.before = old.size();
        worked.made.wanted = worked.made.reached();
        if (has_piece(worked.made.code)) {
            worked.back = frog_back_for(toy, old, worked.made.form);
            result.toy.pieces[piece].worked = progress_kept(old.piece.worked, worked.back);
            worked.made.form.piece.worked = result.toy.pieces[piece].worked;
        }
        result.pieces.push_back(std::move(worked));
    }
    return result;
}

ReshapedToy reshape_toy(const Toy& toy, const Toy& worked_as, const std::vector<std::size_t>& pieces,
                        Target target, const ReshapeOptions& options) {
    const Gauge gauge = gauge_of(worked_as);
    target.gauge.reset();
    if (!same_size(gauge, gauge_of(toy))) target.gauge = gauge;
    ReshapedToy result;
    result.toy = worked_as;
    for (std::size_t piece : pieces) {
        if (piece >= toy.pieces.size()) continue;
        const PieceForm old = piece_form(toy.pieces[piece], gauge_of(toy), nullptr, options.stop);
        ReshapedPiece reshaped{piece, resize(old, target, options), {}};
        if (has_piece(reshaped.made.code)) {
            reshaped.back = frog_back_for(toy, old, reshaped.made.form);
            Piece& made = reshaped.made.form.piece;
            made.worked = progress_kept(old.piece.worked, reshaped.back);
            result.toy = with_piece_remade(result.toy, piece, made);
        }
        result.pieces.push_back(std::move(reshaped));
    }
    return result;
}

}  // namespace roundwright
