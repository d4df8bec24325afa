#include "app/cli/toy_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "core/assembly/assembled_studies.h"
#include "core/assembly/seam_measures.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

const char* stance_name(Stance stance) {
    switch (stance) {
        case Stance::standing:
            return "standing";
        case Stance::sitting:
            return "sitting";
        case Stance::lying:
            return "lying";
    }
    return "";
}

const char* fault_name(JoinFault fault) {
    switch (fault) {
        case JoinFault::no_such_piece:
            return "no_such_piece";
        case JoinFault::no_such_copy:
            return "no_such_copy";
        case JoinFault::no_such_place:
            return "no_such_place";
        case JoinFault::joined_twice:
            return "joined_twice";
        case JoinFault::in_a_circle:
            return "in_a_circle";
        case JoinFault::no_shape:
            return "no_shape";
    }
    return "";
}

void put(ordered_json& json, const char* name, const char* range_name, const Estimate& estimate) {
    json[name] = estimate.likely;
    json[range_name] = {estimate.low, estimate.high};
}

ordered_json copy_json(const PieceCopy& copy, const Toy& toy) {
    ordered_json json;
    json["piece"] = toy.pieces[*toy.pieces.index_of(copy.piece)].name;
    json["copy"] = copy.copy + 1;
    return json;
}

ordered_json point_json(const Vec3& point) { return {point.x(), point.y(), point.z()}; }

ordered_json seam_json(const SeamMeasures& seam) {
    ordered_json json{{"line_mm", seam.line_mm},
                      {"stitches_mm", seam.stitches_mm},
                      {"stitches", seam.stitches},
                      {"stretch", seam.stretch()}};
    json["between_rounds"] = {seam.lowest_round + 1, seam.highest_round + 2};
    return json;
}

ordered_json placed_json(const AssembledToy& made, std::size_t i, const Pose& table) {
    const PlacedPiece& placed = made.placed.pieces[i];
    ordered_json json = copy_json(placed.copy, made.toy);
    if (placed.onto) json["onto"] = copy_json(made.placed.pieces[*placed.onto].copy, made.toy);
    if (made.solids[i]) json["middle_mm"] = point_json(table * measure_volume(*made.solids[i]).centre);
    if (const auto seam = seam_measures(made.toy, made.placed, made.solved, i))
        json["seam"] = seam_json(*seam);
    return json;
}

ordered_json overlap_json(const AssembledToy& made, const PieceOverlap& overlap) {
    return {{"one", copy_json(made.placed.pieces[overlap.one].copy, made.toy)},
            {"other", copy_json(made.placed.pieces[overlap.other].copy, made.toy)},
            {"volume_mm3", overlap.volume_mm3}};
}

void put_standing(ordered_json& json, const ToyMeasures& measures) {
    json["stands"] = measures.rest.stands();
    put(json, "stable_degrees", "stable_range_degrees", measures.stable_degrees);
    json["weight_to_hold_g"] =
        measures.weight_to_hold_g ? ordered_json(*measures.weight_to_hold_g) : ordered_json();
    json["centre_of_mass_mm"] = point_json(measures.rest.centre_of_mass);
}

}  // namespace

ordered_json toy_json(const Toy& toy, std::span<const PieceStudy> studies) {
    const AssembledToy made = assemble(toy, studies);
    const ToyMeasures measures = toy_measures(made, studies);
    ordered_json json;
    put(json, "width_mm", "width_range_mm", measures.width_mm);
    put(json, "height_mm", "height_range_mm", measures.height_mm);
    put(json, "depth_mm", "depth_range_mm", measures.depth_mm);
    put(json, "mass_g", "mass_range_g", measures.mass_g);
    double pellets = 0;
    for (const Piece& piece : toy.pieces) pellets += std::max(0.0, piece.weight_grams) * piece.make;
    if (pellets > 0) json["pellets_g"] = pellets;
    json["stance"] = stance_name(toy.stance);
    put_standing(json, measures);
    json["complete"] = measures.complete;
    json["apart"] = measures.apart;
    json["copies"] = ordered_json::array();
    for (std::size_t i = 0; i < made.placed.pieces.size(); ++i)
        json["copies"].push_back(placed_json(made, i, measures.rest.pose));
    json["overlaps"] = ordered_json::array();
    for (const PieceOverlap& overlap : measures.overlaps)
        json["overlaps"].push_back(overlap_json(made, overlap));
    json["problems"] = ordered_json::array();
    for (const JoinProblem& problem : made.placed.problems)
        json["problems"].push_back({{"join", problem.join + 1}, {"fault", fault_name(problem.fault)}});
    return json;
}

}  // namespace roundwright::app
