#include <algorithm>
#include <cstdint>
#include <nlohmann/json.hpp>

#include "core/document/json_document.h"
#include "core/document/json_parser.h"
#include "core/document/names.h"
#include "core/language/round/round_entry.h"

namespace roundwright {

namespace {

using nlohmann::ordered_json;
namespace names = document_names;

/// JSON that is written as it is: no value of the format is binary.
ordered_json as_it_is(std::string_view json) { return ordered_json::binary({json.begin(), json.end()}); }

void put_members(ordered_json& json, const JsonTree& kept, JsonTree::Id object) {
    for (JsonTree::Id member = kept.first(object); member != JsonTree::none; member = kept.next(member)) {
        const std::string key = kept.key(member);
        const auto there = json.find(key);
        if (there == json.end())
            json[key] = as_it_is(kept.raw(member));
        else if (there->is_object() && kept.kind(member) == JsonKind::object)
            put_members(*there, kept, member);
    }
}

/// Puts what an object keeps behind its own members. A key that has come to be used is the object's own.
void put_kept(ordered_json& json, const KeptKeys& kept) {
    if (!kept.empty()) put_members(json, parse_json(kept.json()), JsonTree::root);
}

bool keeps(const KeptKeys& kept, std::string_view inside) {
    return !kept.empty() && parse_json(kept.json()).find(JsonTree::root, inside) != JsonTree::none;
}

ordered_json colour_json(const Colour& colour) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text = "#";
    for (const std::uint8_t channel : {colour.red, colour.green, colour.blue}) {
        text += digits[channel >> 4];
        text += digits[channel & 15];
    }
    return text;
}

void put(ordered_json& json, const char* key, const std::optional<double>& number) {
    if (number) json[key] = *number;
}

void put(ordered_json& json, const char* key, const std::string& text) {
    if (!text.empty()) json[key] = text;
}

template <class Things, class ToJson>
ordered_json list_json(const Things& things, ToJson to_json) {
    ordered_json list = ordered_json::array();
    for (const auto& thing : things) list.push_back(to_json(thing));
    return list;
}

ordered_json source_json(const SwatchGauge& swatch) {
    return {{"from", "swatch"},
            {"stitches", swatch.stitches},
            {"width_mm", swatch.width_mm},
            {"rounds", swatch.rounds},
            {"height_mm", swatch.height_mm},
            {"worked_in_rows", swatch.worked_in_rows},
            {"measuring_error_mm", swatch.measuring_error_mm},
            {"hook_mm", swatch.hook_mm}};
}

ordered_json source_json(const CircleGauge& circle) {
    return {{"from", "circle"},
            {"rounds", circle.rounds},
            {"increases", circle.increases},
            {"across_mm", circle.across_mm},
            {"lie", names::name_of(names::circle_lies, circle.lie)},
            {"measuring_error_mm", circle.measuring_error_mm},
            {"hook_mm", circle.hook_mm}};
}

ordered_json source_json(const EstimatedGauge& estimate) {
    return {{"from", "estimate"}, {"weight", names::name_of(names::weights, estimate.weight)}};
}

ordered_json source_json(const GivenGauge& given) {
    ordered_json json{{"from", "given"},
                      {"stitch_width_mm", given.gauge.stitch_width_mm},
                      {"round_height_mm", given.gauge.round_height_mm},
                      {"stitch_width_error_mm", given.gauge.stitch_width_error_mm},
                      {"round_height_error_mm", given.gauge.round_height_error_mm}};
    if (given.gauge.error_correlation != 0) json["error_correlation"] = given.gauge.error_correlation;
    if (!given.found_on.empty()) json["found_on"] = given.found_on;
    return json;
}

ordered_json measured_json(const Measured& measured) {
    ordered_json json{{"of", names::name_of(names::measures, measured.of)}};
    if (measured.of == MeasuredOf::circumference_of_round) json["round"] = measured.round + 1;
    json["mm"] = measured.mm;
    json["error_mm"] = measured.error_mm;
    return json;
}

ordered_json line_json(const GaugeLine& line) {
    return {{"of_width", line.of_width},
            {"of_height", line.of_height},
            {"value", line.value},
            {"deviation", line.deviation}};
}

ordered_json source_json(const FinishedPieceGauge& finished) {
    return {{"from", "finished_piece"},
            {"piece", finished.piece},
            {"measured", list_json(finished.measured, measured_json)},
            {"evidence", list_json(finished.lines, line_json)},
            {"hook_mm", finished.hook_mm}};
}

ordered_json measurement_json(const GaugeMeasurement& measurement) {
    ordered_json json = std::visit([](const auto& what) { return source_json(what); }, measurement.what);
    put(json, "name", measurement.name);
    put(json, "measured_on", measurement.measured_on);
    if (!measurement.counts) json["counts"] = false;
    put_kept(json, measurement.kept);
    return json;
}

ordered_json source_json(const SeveralGauge& several) {
    return {{"from", "several"}, {"measurements", list_json(several.measurements, measurement_json)}};
}

ordered_json source_json(std::monostate) { return nullptr; }

ordered_json yarn_json(const Yarn& yarn) {
    ordered_json json{{"name", yarn.name},
                      {"colour", colour_json(yarn.colour)},
                      {"weight", names::name_of(names::weights, yarn.weight)}};
    json["brushed"] = yarn.brushed;
    put(json, "metres_per_100_g", yarn.metres_per_100_g);
    put(json, "ball_grams", yarn.ball_grams);
    put(json, "ball_price", yarn.ball_price);
    put_kept(json, yarn.kept);
    return json;
}

ordered_json start_json(const MagicRing&) { return {{"kind", "magic_ring"}}; }
ordered_json start_json(const ChainRing& ring) { return {{"kind", "chain_ring"}, {"chains", ring.chains}}; }
ordered_json start_json(const OpenTube& tube) { return {{"kind", "open_tube"}, {"chains", tube.chains}}; }
ordered_json start_json(const WorkedOn& on) {
    ordered_json json{{"kind", "worked_on"}, {"stitches", on.stitches}};
    if (on.chains_between != 0) json["chains_between"] = on.chains_between;
    return json;
}
ordered_json start_json(const OvalChain& oval) { return {{"kind", "oval_chain"}, {"chains", oval.chains}}; }

void put_working(ordered_json& json, const WorkedEvenly& even) {
    const WorkedEvenly usual;
    json["stitches"] = even.stitches;
    if (even.kind != usual.kind) json["stitch"] = names::name_of(names::stitches, even.kind);
    if (even.part != usual.part) json["loop"] = names::name_of(names::loops, even.part);
    if (even.spacing != usual.spacing) json["spacing"] = names::name_of(names::spacings, even.spacing);
}

void put_working(ordered_json& json, const AsWritten& written) { json["words"] = written.words; }

ordered_json round_json(const Round& round) {
    ordered_json json = ordered_json::object();
    std::visit([&json](const auto& working) { put_working(json, working); }, round.working);
    if (round.yarn != 0) json["yarn"] = round.yarn;
    if (round.lies_flat) json["lies_flat"] = true;
    put(json, "note", round.note);
    put_kept(json, round.kept);
    return json;
}

ordered_json worked_json(const WorkedSoFar& worked) {
    ordered_json json{{"rounds", worked.rounds}, {"stitches", worked.stitches}};
    if (!worked.seconds_of_round.empty()) json["seconds_of_round"] = worked.seconds_of_round;
    return json;
}

ordered_json feature_json(const Feature& feature) {
    const Feature usual;
    ordered_json json{{"kind", names::name_of(names::features, feature.kind)},
                      {"pair", feature.pair},
                      {"round", feature.round}};
    put(json, "name", feature.name);
    if (feature.pair)
        json["stitches_apart"] = feature.stitches_apart;
    else
        json["stitches_right"] = feature.stitches_right;
    json["width_mm"] = feature.width_mm;
    json["height_mm"] = feature.height_mm;
    if (feature.washer_mm != 0) json["washer_mm"] = feature.washer_mm;
    if (feature.colour != usual.colour) json["colour"] = colour_json(feature.colour);
    if (feature.lids) json["lids"] = true;
    if (feature.kind == FeatureKind::stitched_line) {
        json["end_round"] = feature.end_round;
        json["end_stitches_right"] = feature.end_stitches_right;
    }
    put_kept(json, feature.kept);
    return json;
}

ordered_json piece_json(PieceId id, const Piece& piece) {
    ordered_json json{{"id", static_cast<std::uint32_t>(id)},
                      {"name", piece.name},
                      {"start", std::visit([](const auto& start) { return start_json(start); }, piece.start)},
                      {"end", names::name_of(names::ends, piece.end)},
                      {"joining", names::name_of(names::joinings, piece.joining)},
                      {"area_stretch", piece.area_stretch},
                      {"starts_at_top", piece.starts_at_top},
                      {"make", piece.make}};
    if (piece.stuffed_rounds) {
        json["stuffed_from_round"] = piece.stuffed_rounds->first;
        json["stuffed_to_round"] = piece.stuffed_rounds->last;
    }
    if (piece.weight_grams != 0) json["weight_grams"] = piece.weight_grams;
    if (piece.worked != WorkedSoFar{} || keeps(piece.kept, "worked"))
        json["worked"] = worked_json(piece.worked);
    if (piece.face_degrees != 0) json["face_degrees"] = piece.face_degrees;
    if (!piece.features.empty()) json["features"] = list_json(piece.features, feature_json);
    json["rounds"] = list_json(piece.rounds, round_json);
    put_kept(json, piece.kept);
    return json;
}

ordered_json pieces_json(const PieceList& pieces) {
    ordered_json list = ordered_json::array();
    for (std::size_t i = 0; i < pieces.size(); ++i) list.push_back(piece_json(pieces.id(i), pieces[i]));
    return list;
}

void put_number(ordered_json& json, std::string_view key, double number) {
    if (number != 0) json[std::string(key)] = number;
}

ordered_json join_json(const Join& join) {
    ordered_json json{{"piece", static_cast<std::uint32_t>(join.piece.piece)},
                      {"copy", join.piece.copy},
                      {"onto", static_cast<std::uint32_t>(join.onto.piece)},
                      {"onto_copy", join.onto.copy}};
    if (join.pair) json["pair"] = true;
    json["end"] = names::name_of(names::joined_ends, join.end);
    json["seam"] = names::name_of(names::seams, join.seam);
    json["round"] = join.at.round;
    put_number(json, "stitches_right", join.at.stitches_right);
    if (join.at.around) json["around"] = true;
    put_number(json, "turn_degrees", join.turn_degrees);
    put_number(json, "lean_degrees", join.lean_degrees);
    put_number(json, "lean_right_degrees", join.lean_right_degrees);
    put_number(json, "sink_mm", join.sink_mm);
    put_kept(json, join.kept);
    return json;
}

/// Counts as fast entry writes them, so that a piece stays on one line.
ordered_json piece_then_json(const PieceThen& then) {
    ordered_json json{{"piece", static_cast<std::uint32_t>(then.piece)},
                      {"stitches", write_round_entry(then.stitches)}};
    put_kept(json, then.kept);
    return json;
}

ordered_json text_json(const PatternText& text) {
    ordered_json json = ordered_json::object();
    if (text.level) json["level"] = names::name_of(names::levels, *text.level);
    put(json, "introduction", text.introduction);
    put(json, "notions", text.notions);
    put(json, "assembly", text.assembly);
    put(json, "finishing", text.finishing);
    put(json, "copyright", text.copyright);
    if (!text.written_for.empty()) json["written_for"] = list_json(text.written_for, piece_then_json);
    if (!text.assembly_then.empty()) json["assembly_then"] = list_json(text.assembly_then, join_json);
    return json;
}

ordered_json making_json(const Making& making) {
    ordered_json json = ordered_json::object();
    put(json, "stitches_per_minute", making.stitches_per_minute);
    put(json, "yarn_per_ten_stitches_mm", making.yarn_per_ten_stitches_mm);
    put(json, "stuffing_density_kg_per_m3", making.stuffing_density_kg_per_m3);
    put(json, "stuffing_density_error_kg_per_m3", making.stuffing_density_error_kg_per_m3);
    put(json, "currency", making.currency);
    put(json, "hourly_rate", making.hourly_rate);
    put(json, "stuffing_price_per_kg", making.stuffing_price_per_kg);
    json["other_cost"] = making.other_cost;
    put(json, "finishing_minutes", making.finishing_minutes);
    put(json, "spare_yarn_percent", making.spare_yarn_percent);
    put(json, "price", making.price);
    put(json, "wholesale_price", making.wholesale_price);
    put(json, "fees_percent", making.fees_percent);
    return json;
}

/// The text is kept fit for reading and comparing: lists of objects stand one to a line where the objects are
/// flat.
class Printer {
  public:
    std::string print(const ordered_json& document) {
        value(document, 0);
        text_ += '\n';
        return std::move(text_);
    }

  private:
    static bool flat(const ordered_json& json) {
        for (const auto& member : json) {
            if (member.is_structured()) return false;
        }
        return true;
    }

    static bool has_kept(const ordered_json& json) {
        return std::any_of(json.begin(), json.end(), [](const auto& member) { return member.is_binary(); });
    }

    void value(const ordered_json& json, int depth) {
        if (json.is_binary()) {
            text_.append(json.get_binary().begin(), json.get_binary().end());
            return;
        }
        if (!json.is_structured() || json.empty() || (depth > 0 && json.is_object() && flat(json))) {
            one_line(json, depth);
            return;
        }
        text_ += json.is_object() ? '{' : '[';
        members(json, depth + 1);
        line(depth);
        text_ += json.is_object() ? '}' : ']';
    }

    void one_line(const ordered_json& json, int depth) {
        if (!json.is_structured() || !has_kept(json)) {
            text_ += json.dump(-1, ' ', false, ordered_json::error_handler_t::replace);
            return;
        }
        char before = '{';
        for (const auto& [key, member] : json.items()) {
            text_ += before;
            text_ += ordered_json(key).dump() + ':';
            value(member, depth);
            before = ',';
        }
        text_ += '}';
    }

    void members(const ordered_json& json, int depth) {
        bool first = true;
        for (const auto& [key, member] : json.items()) {
            if (!first) text_ += ',';
            first = false;
            line(depth);
            if (json.is_object()) text_ += ordered_json(key).dump() + ": ";
            value(member, depth);
        }
    }

    void line(int depth) {
        text_ += '\n';
        text_.append(static_cast<std::size_t>(depth) * 2, ' ');
    }

    std::string text_;
};

}  // namespace

std::string write_document(const Toy& toy) {
    ordered_json document{{"format", "roundwright"},
                          {"version", document_version},
                          {"title", toy.title},
                          {"designer", toy.designer},
                          {"notes", toy.notes}};
    put(document, "private_notes", toy.private_notes);
    document["hook_mm"] = toy.hook_mm;
    document["gauge"] = std::visit([](const auto& source) { return source_json(source); }, toy.gauge);
    document["yarns"] = list_json(toy.yarns, yarn_json);
    if (toy.text != PatternText{}) document["text"] = text_json(toy.text);
    if (toy.making != Making{}) document["making"] = making_json(toy.making);
    document["pieces"] = pieces_json(toy.pieces);
    if (!toy.joins.empty()) document["joins"] = list_json(toy.joins, join_json);
    if (toy.stance != Stance::standing) document["stance"] = names::name_of(names::stances, toy.stance);
    put_kept(document, toy.kept);
    return Printer().print(document);
}

}  // namespace roundwright
