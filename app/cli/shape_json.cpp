#include "app/cli/shape_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <numbers>

#include "core/assembly/worked_pieces.h"
#include "core/shape/covered_ball.h"
#include "core/shape/fabric/solved_stitches.h"
#include "core/shape/highest_wave.h"
#include "core/shape/oval_plan.h"
#include "core/shape/own_depth.h"
#include "core/study/coil_stage.h"
#include "core/toy/stuffed_part.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

const char* termination_name(Termination termination) {
    switch (termination) {
        case Termination::converged:
            return "converged";
        case Termination::iteration_limit:
            return "iteration_limit";
        case Termination::line_search_failed:
            return "line_search_failed";
        case Termination::cancelled:
            return "cancelled";
        case Termination::unusable_problem:
            return "unusable_problem";
    }
    return "";
}

const char* lie_name(Lie lie) {
    switch (lie) {
        case Lie::lies_flat:
            return "lies_flat";
        case Lie::cups:
            return "cups";
        case Lie::even:
            return "even";
        case Lie::closes:
            return "closes";
        case Lie::gathers:
            return "gathers";
        case Lie::ruffles:
            return "ruffles";
    }
    return "";
}

const char* kind_name(StitchKind kind) {
    switch (kind) {
        case StitchKind::chain:
            return "chain";
        case StitchKind::slip_stitch:
            return "slip_stitch";
        case StitchKind::single_crochet:
            return "single_crochet";
        case StitchKind::half_double_crochet:
            return "half_double_crochet";
        case StitchKind::double_crochet:
            return "double_crochet";
        case StitchKind::treble_crochet:
            return "treble_crochet";
        case StitchKind::bobble:
            return "bobble";
        case StitchKind::skip:
            return "skip";
    }
    return "";
}

const char* part_name(LoopPart part) {
    switch (part) {
        case LoopPart::both:
            return "both";
        case LoopPart::front:
            return "front";
        case LoopPart::back:
            return "back";
    }
    return "";
}

const char* solve_name(Fidelity fidelity) {
    switch (fidelity) {
        case Fidelity::equivalent_round:
            return "equivalent_round";
        case Fidelity::round:
            return "round";
        case Fidelity::every_stitch:
            return "every_stitch";
    }
    return "";
}

const char* end_name(End end) {
    switch (end) {
        case End::drawn_closed:
            return "drawn_closed";
        case End::left_open:
            return "left_open";
        case End::sewn_straight:
            return "sewn_straight";
    }
    return "";
}

ordered_json stitch_json(const GraphStitch& made) {
    return {{"stitch", kind_name(made.stitch.kind)}, {"loop", part_name(made.stitch.part)},
            {"first_foot", made.first_foot},         {"feet", made.stitch.feet},
            {"same_foot", made.stitch.same_foot},    {"yarn", made.stitch.yarn}};
}

void put_graph(ordered_json& json, const GraphRound& round) {
    json["first_below"] = round.first_below;
    json["loops_below"] = round.loops_below;
    json["worked"] = ordered_json::array();
    for (const GraphStitch& made : round.stitches) json["worked"].push_back(stitch_json(made));
}

/// How a loop of a flattened piece lies: from fold to fold along the layer, from front to back, and how far
/// its line turns from fold to fold. `radius_mm` is that of a circle of its length.
void put_section(ordered_json& json, const LoopSection& section) {
    json["width_mm"] = 2 * section.half_width_mm;
    json["depth_mm"] = 2 * section.half_depth_mm;
    json["bend_degrees"] = section.bend * 180 / std::numbers::pi;
}

/// Of the loop that round `index` leaves. Only the round solver bends the layers of a flattened piece.
void put_place(ordered_json& json, const PieceStudy& study, std::size_t index) {
    const LoopMeasures& loop = study.measures().round(index);
    json["radius_mm"] = loop.radius_mm;
    json["z_mm"] = loop.height_mm;
    if (study.revolved().flattened()) put_section(json, study.revolved().sections[index + 1]);
    json["course_stretch"] = loop.course_stretch;
    json["wale_stretch"] = loop.wale_stretch;
    const RoundLie& lie = study.lies()[index];
    json["lie"] = lie_name(lie.lie);
    if (lie.waves > 0) {
        json["waves"] = lie.waves;
        json["wave_height_mm"] = lie.wave_height_mm;
    }
}

ordered_json round_json(const PieceStudy& study, std::size_t index, bool stitches) {
    const GraphRound& round = study.graph().graph.rounds[index];
    ordered_json json{{"round", index + 1}, {"stitches", round.loops_left}};
    if (index < study.lies().size()) put_place(json, study, index);
    if (stitches) put_graph(json, round);
    return json;
}

/// Of a piece that is not round as worked and could not be solved stitch by stitch: the sizes are those of
/// the round piece with the same stitches.
void put_equivalent_round(ordered_json& json, const PieceStudy& study) {
    json["equivalent_round"] = study.measures().fidelity == Fidelity::equivalent_round;
    if (const auto plan = oval_plan(study.problem(), study.measures()))
        json["oval"] = {{"length_mm", plan->length_mm}, {"width_mm", plan->width_mm}};
}

/// Of a strip that curls: how its coil lies.
void put_coil(ordered_json& json, const Piece& piece, const PieceStudy& study) {
    const auto coil = study_coil(piece, study);
    if (!coil) return;
    json["coil"] = {{"inner_radius_mm", coil->inner_radius_mm},
                    {"outer_radius_mm", coil->outer_radius_mm()},
                    {"turns", coil->radians / (2 * std::numbers::pi)},
                    {"length_mm", coil->length_mm()}};
}

/// Of a ruffle solved stitch by stitch: in which other shapes it is in balance.
void put_other_balances(ordered_json& json, const PieceStudy& study) {
    if (!study.shape->stitched || study.shape->stitched->others.empty()) return;
    json["other_shapes"] = ordered_json::array();
    for (const OtherBalance& other : study.shape->stitched->others)
        json["other_shapes"].push_back({{"waves", other.waves},
                                        {"wave_height_mm", other.wave_height_mm},
                                        {"more_energy", other.more_energy}});
}

/// Sizes lie in the middle of the fabric; what is inside has the fabric's thickness less.
void put_fabric(ordered_json& json, const PieceStudy& study) {
    const FabricThickness& fabric = study.fabric;
    json["fabric_thickness_mm"] = fabric.mm;
    json["fabric_thickness_range_mm"] = {std::max(0.0, fabric.mm - fabric.error_mm),
                                         fabric.mm + fabric.error_mm};
    if (is_coil(study)) return;
    if (const auto inside = inside_width_mm(study.problem(), study.measures(), fabric.mm))
        json["inside_width_mm"] = *inside;
    if (const auto ball = largest_covered_ball_mm(study.problem(), fabric.mm))
        json["fits_over_ball_mm"] = *ball;
}

}  // namespace

ordered_json range_json(const Range& range) { return {range.low, range.high}; }

ordered_json shape_json(const Piece& piece, const PieceStudy& study, bool stitches) {
    const PieceMeasures& shape = study.measures();
    ordered_json json{{"name", piece.name}, {"width_mm", shape.width_mm}, {"height_mm", shape.height_mm}};
    json["depth_mm"] = shape.depth_mm;
    json["solve"] = solve_name(shape.fidelity);
    json["end"] = end_name(piece.end);
    json["stuffed"] = piece.area_stretch > 0 && !is_coil(study);
    if (const auto part = stuffed_part(piece)) json["stuffed_rounds"] = {part->first + 1, part->last + 1};
    if (piece.weight_grams > 0) json["pellets_g"] = piece.weight_grams;
    json["flattened"] = shape.flattened;
    json["width_range_mm"] = range_json(study.size().width_mm);
    json["height_range_mm"] = range_json(study.size().height_mm);
    json["depth_range_mm"] = range_json(depth_range(shape, study.size().width_mm));
    if (const auto& with_circle = study.sizes->with_circle) {
        json["width_range_with_circle_mm"] = range_json(with_circle->width_mm);
        json["height_range_with_circle_mm"] = range_json(with_circle->height_mm);
    }
    json["wave_height_mm"] = highest_wave_mm(study.lies());
    put_equivalent_round(json, study);
    put_other_balances(json, study);
    put_fabric(json, study);
    json["volume_mm3"] = shape.volume_mm3;
    json["stuffed_volume_mm3"] = stuffed_volume_mm3(piece, study);
    put_coil(json, piece, study);
    json["surface_mm2"] = shape.surface_mm2;
    json["area_stretch"] = shape.area_stretch;
    json["termination"] = termination_name(shape.termination);
    json["rounds"] = ordered_json::array();
    for (std::size_t index = 0; index < study.graph().graph.rounds.size(); ++index) {
        json["rounds"].push_back(round_json(study, index, stitches));
    }
    return json;
}

}  // namespace roundwright::app
