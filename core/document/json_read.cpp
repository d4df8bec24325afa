#include <algorithm>
#include <array>
#include <cstdint>

#include "core/base/limits.h"
#include "core/document/json_document.h"
#include "core/document/json_parser.h"
#include "core/document/json_place.h"
#include "core/document/migrate.h"
#include "core/document/names.h"
#include "core/gauge/hook.h"
#include "core/language/round/round_entry.h"

namespace roundwright {

namespace {

namespace names = document_names;

constexpr double longest_mm = 100'000;
constexpr double most_counted = 1'000'000;
constexpr double most_amount = 1e9;
constexpr double most_area_stretch = 0.5;
constexpr double longest_seconds = 1e9;
constexpr double most_of_a_logarithm = 100;  // a line of evidence has unit length; ln of 100 m is 11.5
constexpr double least_deviation = 1e-6;
constexpr double most_weight_grams = 100'000;
constexpr int most_made = 1'000;
constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);
constexpr int most_rounds = static_cast<int>(max_rounds_per_piece);
constexpr std::size_t most_yarns = 1'000;
constexpr std::size_t most_features = 1'000;
constexpr std::size_t most_joins = max_joins;
constexpr int most_ids = static_cast<int>(largest_piece_id);

template <class Choice, std::size_t count>
Choice choice(const JsonPlace& place, const names::Names<Choice, count>& choices) {
    const std::string word = place.text();
    std::string expected = "one of";
    for (const auto& [value, name] : choices) {
        if (name == word) return value;
        expected += ' ';
        expected += name;
    }
    place.fail(expected);
}

template <class Read>
auto list(const JsonPlace& place, std::size_t most, Read read) {
    std::vector<decltype(read(place))> things;
    things.reserve(place.size(most));
    place.each([&](const JsonPlace& element) { things.push_back(read(element)); });
    return things;
}

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

Colour read_colour(const JsonPlace& place) {
    const std::string text = place.text();
    std::array<std::uint8_t, 3> channels{};
    bool good = text.size() == 7 && text[0] == '#';
    for (std::size_t i = 0; good && i < 3; ++i) {
        const int high = hex_digit(text[2 * i + 1]);
        const int low = hex_digit(text[2 * i + 2]);
        good = high >= 0 && low >= 0;
        if (good) channels[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    if (!good) place.fail("a colour as #rrggbb");
    return {channels[0], channels[1], channels[2]};
}

double optional_number(const JsonPlace& object, std::string_view key, double usual, double least,
                       double most) {
    return object.has(key) ? object.at(key).number(least, most) : usual;
}

bool optional_flag(const JsonPlace& object, std::string_view key) {
    return object.has(key) && object.at(key).flag();
}

std::string optional_text(const JsonPlace& object, std::string_view key) {
    return object.has(key) ? object.at(key).text() : std::string();
}

std::optional<double> amount(const JsonPlace& object, std::string_view key) {
    if (!object.has(key)) return std::nullopt;
    return object.at(key).number(0, most_amount);
}

SwatchGauge read_swatch(const JsonPlace& place) {
    SwatchGauge swatch;
    swatch.stitches = place.at("stitches").number(0, most_counted);
    swatch.width_mm = place.at("width_mm").number(0, longest_mm);
    swatch.rounds = place.at("rounds").number(0, most_counted);
    swatch.height_mm = place.at("height_mm").number(0, longest_mm);
    swatch.worked_in_rows = optional_flag(place, "worked_in_rows");
    swatch.measuring_error_mm = optional_number(place, "measuring_error_mm", 1, 0, longest_mm);
    swatch.hook_mm = optional_number(place, "hook_mm", 0, 0, most_hook_mm);
    return swatch;
}

CircleGauge read_circle(const JsonPlace& place) {
    CircleGauge circle;
    circle.rounds = place.at("rounds").whole(0, most_rounds);
    circle.increases = place.at("increases").whole(0, most_stitches);
    circle.across_mm = place.at("across_mm").number(0, longest_mm);
    circle.lie = choice(place.at("lie"), names::circle_lies);
    circle.measuring_error_mm = optional_number(place, "measuring_error_mm", 1, 0, longest_mm);
    circle.hook_mm = optional_number(place, "hook_mm", 0, 0, most_hook_mm);
    return circle;
}

GivenGauge read_given(const JsonPlace& place) {
    GivenGauge given;
    given.gauge.stitch_width_mm = place.at("stitch_width_mm").number(0, longest_mm);
    given.gauge.round_height_mm = place.at("round_height_mm").number(0, longest_mm);
    given.gauge.stitch_width_error_mm = optional_number(place, "stitch_width_error_mm", 0, 0, longest_mm);
    given.gauge.round_height_error_mm = optional_number(place, "round_height_error_mm", 0, 0, longest_mm);
    given.gauge.error_correlation = optional_number(place, "error_correlation", 0, -1, 1);
    given.found_on = optional_text(place, "found_on");
    return given;
}

Measured read_measured(const JsonPlace& place) {
    Measured measured;
    measured.of = choice(place.at("of"), names::measures);
    if (measured.of == MeasuredOf::circumference_of_round)
        measured.round = place.at("round").whole(1, most_rounds) - 1;
    measured.mm = place.at("mm").number(0, longest_mm);
    measured.error_mm = optional_number(place, "error_mm", measured.error_mm, 0, longest_mm);
    place.close();
    return measured;
}

GaugeLine read_line(const JsonPlace& place) {
    const auto number = [&](std::string_view key) {
        return place.at(key).number(-most_of_a_logarithm, most_of_a_logarithm);
    };
    GaugeLine line{number("of_width"), number("of_height"), number("value")};
    line.deviation = place.at("deviation").number(least_deviation, most_of_a_logarithm);
    place.close();
    return line;
}

FinishedPieceGauge read_finished_piece(const JsonPlace& place) {
    FinishedPieceGauge finished;
    finished.piece = place.at("piece").text();
    finished.measured = list(place.at("measured"), most_measured_lengths, read_measured);
    finished.lines = list(place.at("evidence"), most_gauge_lines, read_line);
    finished.hook_mm = optional_number(place, "hook_mm", 0, 0, most_hook_mm);
    return finished;
}

decltype(GaugeMeasurement::what) read_measurement_itself(const JsonPlace& place) {
    const JsonPlace from = place.at("from");
    const std::string word = from.text();
    if (word == "swatch") return read_swatch(place);
    if (word == "circle") return read_circle(place);
    if (word == "given") return read_given(place);
    if (word == "finished_piece") return read_finished_piece(place);
    from.fail("one of swatch circle given finished_piece");
}

GaugeMeasurement read_measurement(const JsonPlace& place) {
    GaugeMeasurement measurement{read_measurement_itself(place), optional_text(place, "name"),
                                 optional_text(place, "measured_on")};
    if (place.has("counts")) measurement.counts = place.at("counts").flag();
    measurement.kept = place.kept();
    return measurement;
}

GaugeSource read_source(const JsonPlace& place) {
    const JsonPlace from = place.at("from");
    const std::string word = from.text();
    if (word == "swatch") return read_swatch(place);
    if (word == "circle") return read_circle(place);
    if (word == "estimate") return EstimatedGauge{choice(place.at("weight"), names::weights)};
    if (word == "given") return read_given(place);
    if (word == "several")
        return SeveralGauge{list(place.at("measurements"), most_gauge_measurements, read_measurement)};
    from.fail("one of swatch circle estimate given several");
}

GaugeSource read_gauge(const JsonPlace& place) {
    const GaugeSource source = read_source(place);
    place.close();
    return source;
}

Yarn read_yarn(const JsonPlace& place) {
    Yarn yarn;
    yarn.name = place.at("name").text();
    yarn.colour = read_colour(place.at("colour"));
    yarn.weight = choice(place.at("weight"), names::weights);
    yarn.brushed = optional_flag(place, "brushed");
    yarn.metres_per_100_g = amount(place, "metres_per_100_g");
    yarn.ball_grams = amount(place, "ball_grams");
    yarn.ball_price = amount(place, "ball_price");
    yarn.kept = place.kept();
    return yarn;
}

WorkedOn read_worked_on(const JsonPlace& place) {
    WorkedOn on{.stitches = place.at("stitches").whole(1, most_stitches)};
    if (place.has("chains_between")) on.chains_between = place.at("chains_between").whole(0, most_stitches);
    return on;
}

Start start_of_kind(const JsonPlace& place) {
    const JsonPlace kind = place.at("kind");
    const std::string word = kind.text();
    if (word == "magic_ring") return MagicRing{};
    if (word == "worked_on") return read_worked_on(place);
    if (word != "chain_ring" && word != "open_tube" && word != "oval_chain") {
        kind.fail("one of magic_ring chain_ring open_tube oval_chain worked_on");
    }
    const int chains = place.at("chains").whole(1, most_stitches);
    if (word == "chain_ring") return ChainRing{chains};
    if (word == "open_tube") return OpenTube{chains};
    return OvalChain{chains};
}

Start read_start(const JsonPlace& place) {
    const Start start = start_of_kind(place);
    place.close();
    return start;
}

WorkedEvenly read_even(const JsonPlace& place) {
    WorkedEvenly even;
    even.stitches = place.at("stitches").whole(1, most_stitches);
    if (place.has("stitch")) even.kind = choice(place.at("stitch"), names::stitches);
    if (place.has("loop")) even.part = choice(place.at("loop"), names::loops);
    if (place.has("spacing")) even.spacing = choice(place.at("spacing"), names::spacings);
    return even;
}

Round read_round(const JsonPlace& place, std::size_t yarns) {
    Round round;
    if (place.has("words"))
        round.working = AsWritten{place.at("words").text()};
    else
        round.working = read_even(place);
    const int last_yarn = yarns == 0 ? 0 : static_cast<int>(yarns) - 1;
    if (place.has("yarn")) round.yarn = static_cast<std::size_t>(place.at("yarn").whole(0, last_yarn));
    round.lies_flat = optional_flag(place, "lies_flat");
    round.note = optional_text(place, "note");
    round.kept = place.kept();
    return round;
}

WorkedSoFar read_worked(const JsonPlace& place) {
    WorkedSoFar worked;
    worked.rounds = place.at("rounds").whole(0, most_rounds);
    worked.stitches = place.at("stitches").whole(0, most_stitches);
    if (place.has("seconds_of_round")) {
        worked.seconds_of_round = list(place.at("seconds_of_round"), max_rounds_per_piece,
                                       [](const JsonPlace& time) { return time.number(0, longest_seconds); });
    }
    place.close();
    return worked;
}

void read_line_end(const JsonPlace& place, Feature& feature) {
    if (place.has("end_round")) feature.end_round = place.at("end_round").whole(0, most_rounds);
    feature.end_stitches_right =
        optional_number(place, "end_stitches_right", 0, -most_stitches, most_stitches);
}

Feature read_feature(const JsonPlace& place) {
    Feature feature;
    feature.kind = choice(place.at("kind"), names::features);
    feature.name = optional_text(place, "name");
    feature.pair = optional_flag(place, "pair");
    feature.round = place.at("round").whole(0, most_rounds);
    if (feature.pair)
        feature.stitches_apart = place.at("stitches_apart").whole(0, most_stitches);
    else
        feature.stitches_right = place.at("stitches_right").number(-most_stitches, most_stitches);
    feature.width_mm = place.at("width_mm").number(0, longest_mm);
    feature.height_mm = optional_number(place, "height_mm", feature.width_mm, 0, longest_mm);
    feature.washer_mm = optional_number(place, "washer_mm", 0, 0, longest_mm);
    if (place.has("colour")) feature.colour = read_colour(place.at("colour"));
    feature.lids = optional_flag(place, "lids");
    if (feature.kind == FeatureKind::stitched_line) read_line_end(place, feature);
    feature.kept = place.kept();
    return feature;
}

Piece read_piece(const JsonPlace& place, std::size_t yarns) {
    Piece piece;
    piece.name = place.at("name").text();
    piece.start = read_start(place.at("start"));
    piece.end = choice(place.at("end"), names::ends);
    if (place.has("joining")) piece.joining = choice(place.at("joining"), names::joinings);
    piece.area_stretch = optional_number(place, "area_stretch", piece.area_stretch, 0, most_area_stretch);
    if (place.has("stuffed_from_round"))
        piece.stuffed_rounds = RoundSpan{place.at("stuffed_from_round").whole(0, most_rounds),
                                         place.at("stuffed_to_round").whole(0, most_rounds)};
    piece.weight_grams = optional_number(place, "weight_grams", 0, 0, most_weight_grams);
    piece.starts_at_top = optional_flag(place, "starts_at_top");
    if (place.has("make")) piece.make = place.at("make").whole(1, most_made);
    if (place.has("worked")) piece.worked = read_worked(place.at("worked"));
    piece.face_degrees = optional_number(place, "face_degrees", 0, -360, 360);
    if (place.has("features")) piece.features = list(place.at("features"), most_features, read_feature);
    piece.rounds = list(place.at("rounds"), max_rounds_per_piece,
                        [yarns](const JsonPlace& round) { return read_round(round, yarns); });
    piece.kept = place.kept({"start", "worked"});
    return piece;
}

/// The id of a piece, `before` being those of the pieces before it; none where it has to be put right.
PieceId read_id(const JsonPlace& piece, const std::vector<PieceId>& before, std::vector<MendedId>& mended) {
    const auto mend = [&](IdFault fault) {
        mended.push_back({piece.pointer() + "/id", fault});
        return PieceId::none;
    };
    if (!piece.has("id")) return mend(IdFault::missing);
    const std::optional<int> number = piece.at("id").maybe_whole(1, most_ids);
    if (!number) return mend(IdFault::no_number);
    const PieceId id{static_cast<std::uint32_t>(*number)};
    const bool taken = std::find(before.begin(), before.end(), id) != before.end();
    return taken ? mend(IdFault::taken) : id;
}

PieceList read_pieces(const JsonPlace& place, std::size_t yarns, std::vector<MendedId>& mended) {
    std::vector<PieceId> ids;
    auto pieces = list(place, max_pieces, [&](const JsonPlace& piece) {
        ids.push_back(read_id(piece, ids, mended));
        return read_piece(piece, yarns);
    });
    return {std::move(pieces), ids};
}

PieceCopy read_copy(const JsonPlace& place, std::string_view piece, std::string_view copy) {
    return {PieceId{static_cast<std::uint32_t>(place.at(piece).whole(1, most_ids))},
            place.at(copy).whole(0, most_made - 1)};
}

Join read_join(const JsonPlace& place) {
    Join join;
    join.piece = read_copy(place, "piece", "copy");
    join.onto = read_copy(place, "onto", "onto_copy");
    join.pair = optional_flag(place, "pair");
    join.end = choice(place.at("end"), names::joined_ends);
    join.seam = choice(place.at("seam"), names::seams);
    join.at.round = place.at("round").whole(-1, most_rounds);
    join.at.stitches_right = optional_number(place, "stitches_right", 0, -most_stitches, most_stitches);
    join.at.around = optional_flag(place, "around");
    join.turn_degrees = optional_number(place, "turn_degrees", 0, -360, 360);
    join.lean_degrees = optional_number(place, "lean_degrees", 0, -180, 180);
    join.lean_right_degrees = optional_number(place, "lean_right_degrees", 0, -180, 180);
    join.sink_mm = optional_number(place, "sink_mm", 0, -longest_mm, longest_mm);
    join.kept = place.kept();
    return join;
}

PieceThen read_piece_then(const JsonPlace& place) {
    PieceThen then{PieceId{static_cast<std::uint32_t>(place.at("piece").whole(1, most_ids))}, {}};
    const JsonPlace stitches = place.at("stitches");
    const RoundEntry entry = parse_round_entry(stitches.text(), {});
    if (!entry.problems.empty()) stitches.fail("counts such as 6, 12, 18x4");
    for (const Round& round : entry.rounds)
        then.stitches.push_back(std::get<WorkedEvenly>(round.working).stitches);
    then.kept = place.kept();
    return then;
}

PatternText read_text(const JsonPlace& place) {
    PatternText text;
    if (place.has("level")) text.level = choice(place.at("level"), names::levels);
    text.introduction = optional_text(place, "introduction");
    text.notions = optional_text(place, "notions");
    text.assembly = optional_text(place, "assembly");
    text.finishing = optional_text(place, "finishing");
    text.copyright = optional_text(place, "copyright");
    if (place.has("written_for"))
        text.written_for = list(place.at("written_for"), max_pieces, read_piece_then);
    if (place.has("assembly_then"))
        text.assembly_then = list(place.at("assembly_then"), most_joins, read_join);
    place.close();
    return text;
}

Making read_making(const JsonPlace& place) {
    Making making;
    making.stitches_per_minute = amount(place, "stitches_per_minute");
    making.yarn_per_ten_stitches_mm = amount(place, "yarn_per_ten_stitches_mm");
    making.stuffing_density_kg_per_m3 = amount(place, "stuffing_density_kg_per_m3");
    making.stuffing_density_error_kg_per_m3 = amount(place, "stuffing_density_error_kg_per_m3");
    making.currency = optional_text(place, "currency");
    making.hourly_rate = amount(place, "hourly_rate");
    making.stuffing_price_per_kg = amount(place, "stuffing_price_per_kg");
    making.other_cost = amount(place, "other_cost").value_or(0);
    making.finishing_minutes = amount(place, "finishing_minutes");
    making.spare_yarn_percent = amount(place, "spare_yarn_percent");
    making.price = amount(place, "price");
    making.wholesale_price = amount(place, "wholesale_price");
    making.fees_percent = amount(place, "fees_percent");
    place.close();
    return making;
}

Toy read_toy(const JsonPlace& place, std::vector<MendedId>& mended) {
    Toy toy;
    toy.title = optional_text(place, "title");
    toy.designer = optional_text(place, "designer");
    toy.notes = optional_text(place, "notes");
    toy.private_notes = optional_text(place, "private_notes");
    toy.hook_mm = place.at("hook_mm").number(least_hook_mm, most_hook_mm);
    if (place.has("gauge")) toy.gauge = read_gauge(place.at("gauge"));
    toy.yarns = list(place.at("yarns"), most_yarns, read_yarn);
    if (place.has("text")) toy.text = read_text(place.at("text"));
    if (place.has("making")) toy.making = read_making(place.at("making"));
    toy.pieces = read_pieces(place.at("pieces"), toy.yarns.size(), mended);
    if (place.has("joins")) toy.joins = list(place.at("joins"), most_joins, read_join);
    if (place.has("stance")) toy.stance = choice(place.at("stance"), names::stances);
    toy.kept = place.kept({"gauge", "text", "making"});
    return toy;
}

/// A toy whose text breaks off or is damaged begins as an object; other files begin otherwise.
bool begins_as_object(std::string_view text) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    return first != std::string_view::npos && text[first] == '{';
}

JsonTree parse(std::string_view text) {
    if (text.size() > max_file_bytes) {
        throw DocumentError(DocumentFault::too_large, "",
                            "the file is larger than " + std::to_string(max_file_bytes >> 20) + " MiB");
    }
    if (!begins_as_object(text))
        throw DocumentError(DocumentFault::not_a_toy, "", "not a toy: no JSON object");
    return parse_json(text);
}

int version_of(const JsonPlace& document, const JsonTree& tree) {
    const JsonTree::Id format = tree.find(JsonTree::root, "format");
    if (format == JsonTree::none || tree.raw(format) != "\"roundwright\"")
        throw DocumentError(DocumentFault::not_a_toy, "", "not a toy: \"format\" is not \"roundwright\"");
    (void)document.has("format");
    return document.at("version").whole(1, 1'000'000);
}

Toy read_newer(const JsonPlace& document, int version, std::vector<MendedId>& mended) {
    try {
        return read_toy(document, mended);
    } catch (const DocumentError& error) {
        throw DocumentError(error.fault(), error.path(),
                            std::string(error.what()) +
                                " (the file was written by a newer program, format version " +
                                std::to_string(version) + ")",
                            error.place(), error.first_place());
    }
}

}  // namespace

ReadDocument read_document(std::string_view text) {
    JsonTree tree = parse(text);
    UnreadKeys unread;
    const JsonPlace root(tree, unread);
    ReadDocument read;
    read.version = version_of(root, tree);
    read.newer = read.version > document_version;
    if (read.newer) {
        read.toy = read_newer(root, read.version, read.mended);
    } else {
        migrate(tree, read.version, migrations());
        read.toy = read_toy(root, read.mended);
    }
    read.unread = unread.take();
    return read;
}

}  // namespace roundwright
