#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <utility>

#include <QRegularExpression>
#include <QStringList>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/input_file.h"
#include "app/cli/length_argument.h"
#include "app/cli/option_values.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "core/gauge/combined_gauge.h"
#include "core/reshape/finished_piece.h"
#include "core/study/next_measurement.h"
#include "render/wording/as_sentence.h"
#include "render/wording/calibration_words.h"
#include "render/wording/measurement_words.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

constexpr int most_circle_rounds = 60;

// --- what was measured

Measured measured_length(const Arguments& arguments, const QString& option, const QString& text,
                         MeasuredOf of) {
    const auto length = length_with_error(text, units_wanted(arguments));
    if (!length)
        throw Complaint{
            CommandLine::tr("--%1 takes a length such as 82mm or 82mm+-1mm, not \"%2\".").arg(option, text)};
    Measured measured{of, length->mm};
    if (length->error_mm) measured.error_mm = *length->error_mm;
    return measured;
}

/// "8=250mm", and more parted by commas.
std::vector<Measured> measured_rounds(const Arguments& arguments, const Piece& piece) {
    const QString option = QStringLiteral("round");
    std::vector<Measured> all;
    if (!arguments.has(option)) return all;
    for (const QString& text : arguments.value(option).split(QLatin1Char(','))) {
        const QStringList parts = text.split(QLatin1Char('='));
        bool good = parts.size() == 2;
        const int round = good ? parts[0].toInt(&good) : 0;
        if (!good)
            throw Complaint{
                CommandLine::tr(
                    "--round takes a round and the length around it, such as 8=250mm, not \"%1\".")
                    .arg(text)};
        if (round < 1 || round > static_cast<int>(piece.rounds.size()))
            throw Complaint{CommandLine::tr("There is no round %1: the piece has %2.")
                                .arg(round)
                                .arg(piece.rounds.size())};
        all.push_back(measured_length(arguments, option, parts[1], MeasuredOf::circumference_of_round));
        all.back().round = round - 1;
    }
    return all;
}

std::vector<Measured> measured_by_options(const Arguments& arguments, const Piece& piece) {
    const std::pair<const char*, MeasuredOf> lengths[] = {{"width", MeasuredOf::width},
                                                          {"height", MeasuredOf::height},
                                                          {"circumference", MeasuredOf::circumference}};
    std::vector<Measured> all;
    for (const auto& [name, of] : lengths) {
        const QString option = QLatin1String(name);
        if (arguments.has(option))
            all.push_back(measured_length(arguments, option, arguments.value(option), of));
    }
    for (const Measured& measured : measured_rounds(arguments, piece)) all.push_back(measured);
    return all;
}

/// The lengths of one piece.
struct MeasuredPiece {
    std::size_t piece = 0;
    std::vector<Measured> measured;
};

/// What "width", "height", "circumference" or the number of a round names.
Measured named_measure(const QString& what, const Piece& piece) {
    for (const auto of : {MeasuredOf::width, MeasuredOf::height, MeasuredOf::circumference})
        if (what == QLatin1String(measured_of_name(of))) return {of};
    bool good = false;
    const int round = what.toInt(&good);
    if (!good)
        throw Complaint{CommandLine::tr("\"%1\" is no width, height, circumference or round.").arg(what)};
    if (round < 1 || round > static_cast<int>(piece.rounds.size()))
        throw Complaint{
            CommandLine::tr("There is no round %1: the piece has %2.").arg(round).arg(piece.rounds.size())};
    return {.of = MeasuredOf::circumference_of_round, .round = round - 1};
}

/// "Head:width=82mm", and more parted by commas.
void add_lengths(const Arguments& arguments, const Toy& toy, std::vector<MeasuredPiece>& pieces) {
    static const QRegularExpression form(QStringLiteral("^(.+):([^:=]+)=([^=]+)$"));
    const QString option = QStringLiteral("lengths");
    if (!arguments.has(option)) return;
    for (const QString& text : arguments.value(option).split(QLatin1Char(','))) {
        const auto match = form.match(text.trimmed());
        if (!match.hasMatch())
            throw Complaint{
                CommandLine::tr("--lengths takes a piece, what was measured and the length, such as "
                                "Head:width=82mm, not \"%1\".")
                    .arg(text)};
        const std::size_t piece = piece_named(toy, match.captured(1));
        const Measured of = named_measure(match.captured(2).trimmed(), toy.pieces[piece]);
        Measured measured = measured_length(arguments, option, match.captured(3), of.of);
        measured.round = of.round;
        auto own = std::ranges::find(pieces, piece, &MeasuredPiece::piece);
        if (own == pieces.end()) own = pieces.insert(pieces.end(), {piece, {}});
        own->measured.push_back(measured);
    }
}

bool names_a_length(const Arguments& arguments) {
    return std::ranges::any_of(std::array{"width", "height", "circumference", "round"},
                               [&](const char* name) { return arguments.has(QLatin1String(name)); });
}

std::vector<MeasuredPiece> measured_pieces(const Arguments& arguments, const Toy& toy) {
    std::vector<MeasuredPiece> pieces;
    const bool other_ways =
        arguments.has(QStringLiteral("lengths")) || arguments.has(QStringLiteral("circle"));
    if (names_a_length(arguments) || !other_ways) {
        const std::size_t piece = one_piece_wanted(arguments, toy);
        pieces.push_back({piece, measured_by_options(arguments, toy.pieces[piece])});
        if (pieces.front().measured.empty())
            throw Complaint{
                CommandLine::tr("Say what was measured: --width, --height, --circumference, --round, "
                                "--lengths or --circle.")};
    }
    add_lengths(arguments, toy, pieces);
    return pieces;
}

CircleGauge measured_circle(const QString& text, LengthUnit units) {
    const QStringList parts = text.split(QLatin1Char('='));
    bool good = parts.size() == 2;
    const int rounds = good ? parts[0].trimmed().toInt(&good) : 0;
    const auto across = good ? length_with_error(parts[1], units) : std::nullopt;
    if (!across || rounds < 1 || rounds > most_circle_rounds)
        throw Complaint{
            CommandLine::tr("--circle takes the rounds and the length across, such as 5=51mm, not \"%1\".")
                .arg(text)};
    CircleGauge circle{.rounds = rounds, .increases = 6, .across_mm = across->mm};
    if (across->error_mm) circle.measuring_error_mm = *across->error_mm;
    return circle;
}

/// "5=51mm": rounds of six more stitches each, and how far across; more parted by commas. Each is called as
/// it was typed.
std::vector<GaugeMeasurement> measured_circles(const Arguments& arguments) {
    const QString option = QStringLiteral("circle");
    std::vector<GaugeMeasurement> circles;
    if (!arguments.has(option)) return circles;
    for (const QString& text : arguments.value(option).split(QLatin1Char(',')))
        circles.push_back({measured_circle(text, units_wanted(arguments)), text.trimmed().toStdString(), {}});
    return circles;
}

// --- the answer

ordered_json note_json(const CalibrationNote& note) {
    ordered_json json{{"code", calibration_code_name(note.code)}};
    if (note.code == CalibrationCode::left_free || note.code == CalibrationCode::not_told_apart)
        json["value"] = calibrated_value_name(note.value);
    if (note.code == CalibrationCode::not_told_apart) json["other"] = calibrated_value_name(note.other);
    if (note.code == CalibrationCode::measurements_disagree) json["measured"] = note.measured;
    return json;
}

ordered_json measured_json(const Measured& measured, double by_this_gauge_mm) {
    ordered_json json{{"of", measured_of_name(measured.of)}};
    if (measured.of == MeasuredOf::circumference_of_round) json["round"] = measured.round + 1;
    json["mm"] = measured.mm;
    json["error_mm"] = measured.error_mm;
    json["by_this_gauge_mm"] = by_this_gauge_mm;
    return json;
}

/// One piece that was measured, and what was found on it.
struct FoundPiece {
    MeasuredPiece measured;
    Calibration found;
};

/// All that the command found: the new toy, and how the measurements go together where there are several.
struct Answer {
    std::vector<FoundPiece> pieces;
    Toy toy;
    Gauge gauge;
    std::optional<CombinedGauge> combined;
    std::vector<NextMeasurement> next;

    [[nodiscard]] const SeveralGauge* several() const { return std::get_if<SeveralGauge>(&toy.gauge); }
};

void put_gauge(ordered_json& json, const Gauge& gauge) {
    json["stitch_width_mm"] = gauge.stitch_width_mm;
    json["stitch_width_error_mm"] = gauge.stitch_width_error_mm;
    json["round_height_mm"] = gauge.round_height_mm;
    json["round_height_error_mm"] = gauge.round_height_error_mm;
    json["error_correlation"] = gauge.error_correlation;
}

void put_found(ordered_json& json, const FoundPiece& piece) {
    const Calibration& found = piece.found;
    json["area_stretch"] = found.area_stretch;
    json["area_stretch_error"] = found.area_stretch_error;
    json["residual_mm"] = found.residual_mm;
    json["measured"] = ordered_json::array();
    for (std::size_t i = 0; i < found.modelled_mm.size(); ++i)
        json["measured"].push_back(measured_json(piece.measured.measured[i], found.modelled_mm[i]));
    json["notes"] = ordered_json::array();
    for (const CalibrationNote& note : found.notes) json["notes"].push_back(note_json(note));
}

ordered_json part_json(const GaugeMeasurement& measurement, const MeasurementPart& part, LengthUnit units) {
    ordered_json json{{"measurement", measurement_name(measurement).toStdString()},
                      {"as_measured", measurement_words(measurement, units).toStdString()},
                      {"counts", measurement.counts},
                      {"share", part.share}};
    if (part.off > 0) {
        json["off_deviations"] = part.off;
        json["differs_in"] = differs_name(part.how);
        json["differs_by"] = part.by;
    }
    return json;
}

ordered_json next_json(const NextMeasurement& next, const Toy& toy) {
    ordered_json json{{"measure", next_measurement_name(next.kind)}};
    if (next.kind == NextMeasurementKind::finished_piece) {
        json["piece"] = own_piece_name(toy, next.piece).toStdString();
        json["of"] = measured_of_name(next.of);
        json["finished"] = next.finished;
    }
    json["size_error_before"] = next.error_before;
    json["size_error_after"] = next.error_after;
    return json;
}

void put_combined(ordered_json& json, const Answer& answer, LengthUnit units) {
    json["measurements"] = ordered_json::array();
    for (std::size_t i = 0; i < answer.combined->parts.size(); ++i)
        json["measurements"].push_back(
            part_json(answer.several()->measurements[i], answer.combined->parts[i], units));
    if (answer.combined->disagrees) json["disagrees"] = *answer.combined->disagrees;
}

ordered_json gauge_json(const QString& path, const Answer& answer, LengthUnit units) {
    ordered_json json{{"file", path.toStdString()}};
    const bool one = answer.pieces.size() == 1;
    if (one) json["piece"] = own_piece_name(answer.toy, answer.pieces.front().measured.piece).toStdString();
    put_gauge(json, answer.gauge);
    if (one) put_found(json, answer.pieces.front());
    for (const FoundPiece& piece : answer.pieces) {
        if (one) break;
        ordered_json found{{"piece", own_piece_name(answer.toy, piece.measured.piece).toStdString()}};
        put_found(found, piece);
        json["pieces"].push_back(std::move(found));
    }
    if (answer.several() != nullptr && answer.combined) put_combined(json, answer, units);
    json["next"] = ordered_json::array();
    for (const NextMeasurement& next : answer.next) json["next"].push_back(next_json(next, answer.toy));
    return json;
}

void print_together(const Answer& answer, LengthUnit units) {
    print_line(CommandLine::tr("  Together: %1").arg(gauge_words(answer.gauge, units)));
    for (std::size_t i = 0; i < answer.combined->parts.size(); ++i) {
        const GaugeMeasurement& measurement = answer.several()->measurements[i];
        print_line(CommandLine::tr("    %1, %2: %3")
                       .arg(as_sentence(measurement_name(measurement)), measurement_words(measurement, units),
                            share_words(measurement, answer.combined->parts[i])));
    }
    const QString disagreement = disagreement_words(*answer.several(), *answer.combined);
    if (!disagreement.isEmpty()) print_line(QStringLiteral("    ") + disagreement);
}

void print_in_words(const QString& path, const Answer& answer, LengthUnit units) {
    print_heading(path, answer.toy);
    for (const FoundPiece& piece : answer.pieces) {
        print_line(
            CommandLine::tr("  %1: %2")
                .arg(piece_name(answer.toy, piece.measured.piece), calibration_words(piece.found, units)));
        for (const QString& note : calibration_note_words(piece.found, piece.measured.measured, units))
            print_line(QStringLiteral("    ") + note);
    }
    if (answer.several() != nullptr && answer.combined)
        print_together(answer, units);
    else if (answer.pieces.empty())
        print_line(QStringLiteral("  ") + gauge_words(answer.gauge, units));
    const QString next = next_measurement_words(answer.next, answer.toy);
    if (!next.isEmpty()) print_line(QStringLiteral("  ") + next);
}

// --- working it out

void add_circles(Toy& toy, const std::vector<GaugeMeasurement>& circles, bool others_count) {
    if (circles.empty()) return;
    SeveralGauge several;
    if (others_count) several.measurements = measurements_of(toy.gauge);
    if (several.measurements.empty() && circles.size() == 1) {
        toy.gauge = std::get<CircleGauge>(circles.front().what);
        return;
    }
    several.measurements.insert(several.measurements.end(), circles.begin(), circles.end());
    toy.gauge = std::move(several);
}

Calibration found_on(const MeasuredPiece& piece, const Toy& toy, const KnownBefore& known,
                     const Arguments& arguments) {
    Calibration found = calibrate_piece(toy.pieces[piece.piece], piece.measured, known);
    if (!found.usable())
        throw Complaint{
            calibration_note_words(found, piece.measured, units_wanted(arguments)).join(QLatin1Char(' '))};
    return found;
}

/// One piece after the other, each with what came before.
Answer work_out(const Arguments& arguments, Toy toy) {
    const std::vector<MeasuredPiece> pieces = measured_pieces(arguments, toy);
    const std::vector<GaugeMeasurement> circles = measured_circles(arguments);
    bool others_count = arguments.has(QStringLiteral("with-gauge"));
    Answer answer;
    if (others_count && !gauge_from(toy.gauge, toy.hook_mm))
        throw Complaint{CommandLine::tr("--with-gauge: the toy has no gauge.")};
    add_circles(toy, circles, others_count);
    others_count = others_count || !circles.empty();
    for (const MeasuredPiece& piece : pieces) {
        KnownBefore known;
        if (others_count) {
            known.gauge = gauge_of_others(toy, piece.piece);
            if (!known.gauge) known.gauge = gauge_from(toy.gauge, toy.hook_mm);
        }
        if (arguments.has(QStringLiteral("with-stuffing")))
            known.area_stretch = toy.pieces[piece.piece].area_stretch;
        answer.pieces.push_back({piece, found_on(piece, toy, known, arguments)});
        toy = with_finished_piece(std::move(toy), {piece.piece, piece.measured, {}},
                                  answer.pieces.back().found, others_count);
        others_count = true;
    }
    const bool one_alone = !std::holds_alternative<SeveralGauge>(toy.gauge) && answer.pieces.size() == 1;
    answer.gauge =
        one_alone ? answer.pieces.front().found.gauge : gauge_from(toy.gauge, toy.hook_mm).value_or(Gauge{});
    if (const auto* several = std::get_if<SeveralGauge>(&toy.gauge))
        answer.combined = combined_gauge(*several, toy.hook_mm);
    answer.toy = std::move(toy);
    answer.next = next_measurements(answer.toy, study_toy(answer.toy));
    return answer;
}

int gauge_of_toy(const Arguments& arguments, const QString& path, const Toy& toy) {
    const Answer answer = work_out(arguments, toy);
    if (arguments.has(QStringLiteral("json")))
        print_json(gauge_json(path, answer, units_wanted(arguments)));
    else
        print_in_words(path, answer, units_wanted(arguments));
    const bool settled = std::ranges::none_of(answer.pieces, [](const FoundPiece& piece) {
        return piece.found.has(CalibrationCode::not_converged);
    });
    if (!settled) return exit_checks_failed;
    return save_new_toy(arguments, answer.toy);
}

int run(const Arguments& arguments) {
    if (arguments.operands().size() > 1) {
        print_problem(CommandLine::tr("One file at a time: the lengths are of one toy."));
        return exit_bad_input;
    }
    if (!toy_output_is_free(arguments)) return exit_bad_input;
    return for_each_toy(
        arguments, [&](const QString& path, const Toy& toy) { return gauge_of_toy(arguments, path, toy); });
}

constexpr Option options[] = {
    {"piece", 0, "NAME", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "the piece you measured, by name or number; needed if there are several")},
    {"width", 0, "LENGTH", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "its width: 82mm, or 82mm+-1mm; otherwise give or take 2 mm")},
    {"height", 0, "LENGTH", nullptr, QT_TRANSLATE_NOOP("CommandLine", "its height")},
    {"circumference", 0, "LENGTH", nullptr, QT_TRANSLATE_NOOP("CommandLine", "around the widest place")},
    {"round", 0, "ROUND=LENGTH", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "around the top of a round: 8=250mm; separate several with commas")},
    {"lengths", 0, "PIECE:WHAT=LENGTH", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "of several pieces: Head:width=82mm,Body:height=110mm,Body:8=250mm")},
    {"circle", 0, "ROUNDS=LENGTH", nullptr,
     QT_TRANSLATE_NOOP(
         "CommandLine",
         "across a gauge circle, six more stitches a round: 5=51mm; separate several with commas")},
    {"with-gauge", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "use what the toy's gauge comes from as well, with its uncertainty")},
    {"with-stuffing", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "take the stuffing to be as the file says")},
    {"output", 'o', "TOY.roundwright", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "save the toy with the gauge and stuffing found; FILE itself may be named")},
    force_option,
    {"json", 0, nullptr, nullptr, QT_TRANSLATE_NOOP("CommandLine", "one JSON object; lengths in mm")},
    {"units", 0, "UNIT", "mm|in|inch",
     QT_TRANSLATE_NOOP("CommandLine", "lengths without a unit, and in the answer")},
};

}  // namespace

const Command& gauge_command() {
    static const Command command{
        "gauge", "FILE",
        QT_TRANSLATE_NOOP("CommandLine", "find the gauge from finished pieces and gauge circles"), options,
        run};
    return command;
}

}  // namespace roundwright::app
