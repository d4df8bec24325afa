#include <nlohmann/json.hpp>
#include <utility>

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
#include "core/reshape/finished_piece.h"
#include "render/wording/calibration_words.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

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

std::vector<Measured> all_measured(const Arguments& arguments, const Piece& piece) {
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
    if (all.empty())
        throw Complaint{
            CommandLine::tr("Say what was measured: --width, --height, --circumference or --round.")};
    return all;
}

KnownBefore known_before(const Arguments& arguments, const Toy& toy, const Piece& piece) {
    KnownBefore known;
    if (arguments.has(QStringLiteral("with-gauge"))) {
        known.gauge = gauge_from(toy.gauge, toy.hook_mm);
        if (!known.gauge) throw Complaint{CommandLine::tr("--with-gauge: the toy has no gauge.")};
    }
    if (arguments.has(QStringLiteral("with-stuffing"))) known.area_stretch = piece.area_stretch;
    return known;
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

ordered_json gauge_json(const QString& path, const Toy& toy, std::size_t piece, const Calibration& found,
                        const std::vector<Measured>& measured) {
    ordered_json json{{"file", path.toStdString()}, {"piece", own_piece_name(toy, piece).toStdString()}};
    json["stitch_width_mm"] = found.gauge.stitch_width_mm;
    json["stitch_width_error_mm"] = found.gauge.stitch_width_error_mm;
    json["round_height_mm"] = found.gauge.round_height_mm;
    json["round_height_error_mm"] = found.gauge.round_height_error_mm;
    json["error_correlation"] = found.gauge.error_correlation;
    json["area_stretch"] = found.area_stretch;
    json["area_stretch_error"] = found.area_stretch_error;
    json["residual_mm"] = found.residual_mm;
    json["measured"] = ordered_json::array();
    for (std::size_t i = 0; i < found.modelled_mm.size(); ++i)
        json["measured"].push_back(measured_json(measured[i], found.modelled_mm[i]));
    json["notes"] = ordered_json::array();
    for (const CalibrationNote& note : found.notes) json["notes"].push_back(note_json(note));
    return json;
}

void print_in_words(const QString& path, const Toy& toy, std::size_t piece, const Calibration& found,
                    const std::vector<Measured>& measured, LengthUnit units) {
    print_heading(path, toy);
    print_line(CommandLine::tr("  %1: %2").arg(piece_name(toy, piece), calibration_words(found, units)));
    for (const QString& note : calibration_note_words(found, measured, units))
        print_line(QStringLiteral("    ") + note);
}

int gauge_of_toy(const Arguments& arguments, const QString& path, const Toy& toy) {
    const std::size_t piece = one_piece_wanted(arguments, toy);
    const std::vector<Measured> measured = all_measured(arguments, toy.pieces[piece]);
    const Calibration found =
        calibrate_piece(toy.pieces[piece], measured, known_before(arguments, toy, toy.pieces[piece]));
    if (!found.usable())
        throw Complaint{
            calibration_note_words(found, measured, units_wanted(arguments)).join(QLatin1Char(' '))};
    if (arguments.has(QStringLiteral("json")))
        print_json(gauge_json(path, toy, piece, found, measured));
    else
        print_in_words(path, toy, piece, found, measured, units_wanted(arguments));
    if (found.has(CalibrationCode::not_converged)) return exit_checks_failed;
    return save_new_toy(arguments, with_calibration(toy, piece, found));
}

int run(const Arguments& arguments) {
    if (arguments.operands().size() > 1) {
        print_problem(CommandLine::tr("One file at a time: the lengths are of one piece."));
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
    {"with-gauge", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "use the toy's gauge as well, with its uncertainty")},
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
        QT_TRANSLATE_NOOP("CommandLine", "find the gauge from what was measured on a finished piece"),
        options, run};
    return command;
}

}  // namespace roundwright::app
