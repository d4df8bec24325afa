#include <nlohmann/json.hpp>

#include <QLocale>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/every_stitch.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/shape_json.h"
#include "app/cli/toy_json.h"
#include "core/assembly/assembled_studies.h"
#include "render/wording/as_sentence.h"
#include "render/wording/check_sentence.h"
#include "render/wording/counted.h"
#include "render/wording/length_text.h"
#include "render/wording/measurement_words.h"
#include "render/wording/shape_words.h"
#include "render/wording/toy_words.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

/// Of a ruffle: how else it could lie.
void print_other_balances(const std::vector<OtherBalance>& others, LengthUnit units) {
    for (const OtherBalance& other : others) {
        const QString height = length_text(other.wave_height_mm, units);
        print_line(other.waves > 0
                       ? CommandLine::tr("    It may also lie otherwise: waves around its edge: %1, %2 high.")
                             .arg(QString::number(other.waves), height)
                       : CommandLine::tr("    It may also lie without waves."));
    }
}

void print_shape(const Toy& toy, std::size_t piece, const PieceStudy& study, LengthUnit units) {
    const QString rounds = rounds_words(static_cast<int>(toy.pieces[piece].rounds.size()));
    const PieceMeasures& shape = study.measures();
    if (!shape.usable()) {
        print_line(CommandLine::tr("  %1: %2, no shape").arg(piece_name(toy, piece), rounds));
        return;
    }
    const QString line = shape.converged() ? CommandLine::tr("  %1: %2, %3, %4 ml")
                                           : CommandLine::tr("  %1: %2, %3, %4 ml (not settled)");
    print_line(line.arg(piece_name(toy, piece), rounds, size_words(study, units),
                        QLocale().toString(shape.volume_mm3 / 1000, 'f', 0)));
    print_line(CommandLine::tr("    %1.").arg(as_sentence(fabric_words(study, units))));
    if (shape.fidelity == Fidelity::every_stitch)
        print_line(CommandLine::tr("    Worked out stitch by stitch; %1 from front to back.")
                       .arg(length_text(shape.depth_mm, units)));
    if (study.shape->stitched) print_other_balances(study.shape->stitched->others, units);
    const QString instead = equivalent_round_words(study, units);
    if (!instead.isEmpty()) print_line(CommandLine::tr("    %1.").arg(instead));
    if (!study.sizes->with_circle) return;
    const QString help =
        circle_would_help_words(study.size().width_mm, study.sizes->with_circle->width_mm, units);
    if (!help.isEmpty()) print_line(QStringLiteral("    ") + help);
}

void print_shapes_as_json(const QString& path, const Toy& toy, const std::vector<PieceStudy>& studies,
                          bool stitches) {
    ordered_json json{{"file", path.toStdString()}, {"title", toy.title}, {"pieces", ordered_json::array()}};
    for (std::size_t piece = 0; piece < studies.size(); ++piece) {
        json["pieces"].push_back(shape_json(toy.pieces[piece], studies[piece], stitches));
    }
    if (!toy.joins.empty()) json["toy"] = toy_json(toy, studies);
    print_json(json);
}

/// The toy sewn together: its size, what it weighs, and how it stands.
void print_toy(const Toy& toy, const std::vector<PieceStudy>& studies, LengthUnit units) {
    if (toy.joins.empty()) return;
    const ToyMeasures measures = toy_measures(assemble(toy, studies), studies);
    print_line(CommandLine::tr("  Sewn together: %1").arg(toy_size_words(measures, units)));
    print_line(CommandLine::tr("    %1.").arg(as_sentence(toy_standing_words(measures, toy.stance))));
}

/// A piece without rounds has no shape yet, and nothing is wrong with it.
bool failed(const Piece& piece, const PieceStudy& study) {
    return !piece.rounds.empty() && !study.measures().converged();
}

/// On the standard error: what keeps a piece from its shape.
void say_why(const QString& path, const QString& piece, const PieceStudy& study, LengthUnit units) {
    QStringList reasons;
    for (const Check& check : study.checks())
        if (check.severity == Severity::error || check.code == CheckCode::not_converged)
            reasons += check_sentence(check, units);
    if (reasons.isEmpty()) reasons += CommandLine::tr("No shape was found.");
    for (const QString& why : reasons) print_problem(QStringLiteral("%1: %2: %3").arg(path, piece, why));
}

/// Whether every piece has its shape; says why of those that have none.
bool tell_failures(const QString& path, const Toy& toy, const std::vector<PieceStudy>& studies,
                   LengthUnit units) {
    bool all_found = true;
    for (std::size_t piece = 0; piece < studies.size(); ++piece) {
        if (!failed(toy.pieces[piece], studies[piece])) continue;
        all_found = false;
        say_why(path, piece_name(toy, piece), studies[piece], units);
    }
    return all_found;
}

int shape_toy(const Arguments& arguments, const QString& path, const Toy& toy) {
    std::vector<PieceStudy> studies = study_toy(toy);
    if (arguments.has(QStringLiteral("every-stitch")))
        solve_every_stitch(path, toy, studies, slant_wanted(arguments));
    if (arguments.has(QStringLiteral("json"))) {
        print_shapes_as_json(path, toy, studies, arguments.has(QStringLiteral("stitches")));
    } else {
        print_heading(path, toy);
        for (std::size_t piece = 0; piece < studies.size(); ++piece) {
            print_shape(toy, piece, studies[piece], units_wanted(arguments));
        }
        print_toy(toy, studies, units_wanted(arguments));
    }
    return tell_failures(path, toy, studies, units_wanted(arguments)) ? exit_fine : exit_checks_failed;
}

constexpr Option options[] = {
    every_stitch_option,
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object a file, one to a line; lengths in mm")},
    slant_option,
    {"stitches", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "with --json: the loops that every stitch is worked into")},
    {"units", 0, "UNIT", "mm|in|inch", QT_TRANSLATE_NOOP("CommandLine", "lengths without --json")},
};

}  // namespace

const Command& shape_command() {
    static const Command command{
        "shape", "FILE...", QT_TRANSLATE_NOOP("CommandLine", "work out the stuffed shape of every piece"),
        options, [](const Arguments& arguments) {
            return for_each_toy(arguments, [&](const QString& path, const Toy& toy) {
                return shape_toy(arguments, path, toy);
            });
        }};
    return command;
}

}  // namespace roundwright::app
