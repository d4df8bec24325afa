#include "app/cli/resize_answer.h"

#include <nlohmann/json.hpp>

#include <QStringList>

#include "app/cli/command_line_text.h"
#include "app/cli/output.h"
#include "app/cli/shape_json.h"
#include "render/wording/piece_name.h"
#include "render/wording/reshape_words.h"
#include "render/wording/shape_words.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

void print_ways(const std::vector<WayOn>& ways, LengthUnit units) {
    if (ways.empty()) return;
    print_line(CommandLine::tr("    Other ways to go on:"));
    for (const WayOn& way : ways) {
        const QString apart = outline_words(way.shape_error_mm, units);
        print_line(CommandLine::tr("      %1: %2; %3.")
                       .arg(undo_words(way.back), size_words(way.made.form, units), apart));
    }
}

ordered_json size_json(const Size& size) {
    return {{"width_mm", size.width_mm}, {"height_mm", size.height_mm}};
}

ordered_json reached_json(const PieceForm& form) {
    const SizeRange range = size_range(form);
    ordered_json json = size_json(form.size());
    json["width_range_mm"] = range_json(range.width_mm);
    json["height_range_mm"] = range_json(range.height_mm);
    return json;
}

ordered_json off_json(const Reshaped& made) {
    return size_json(
        {made.reached().width_mm - made.wanted.width_mm, made.reached().height_mm - made.wanted.height_mm});
}

ordered_json back_json(const FrogBack& back) {
    const Estimate yarn = back.yarn_mm();
    return {{"keep_rounds", back.keep_rounds},
            {"keep_stitches", back.keep_stitches},
            {"undo_rounds", back.undo_rounds},
            {"undo_stitches", back.undo_stitches},
            {"yarn_mm", {{"likely", yarn.likely}, {"low", yarn.low}, {"high", yarn.high}}}};
}

ordered_json counts_json(const PieceForm& form) { return stitch_counts(form.graph.graph); }

ordered_json way_json(const WayOn& way) {
    return {{"frog_back", back_json(way.back)},
            {"reached", reached_json(way.made.form)},
            {"shape_error_mm", way.shape_error_mm},
            {"stitches", counts_json(way.made.form)}};
}

}  // namespace

void print_resized(const Toy& toy, const ReshapedPiece& piece, const std::vector<WayOn>& ways,
                   LengthUnit units) {
    const QString name = piece_name(toy, piece.piece);
    print_line(CommandLine::tr("  %1, now %2").arg(name, size_words(study_piece(toy, piece.piece), units)));
    for (const QString& words :
         {frog_back_words(piece.back), freed_yarn_words(piece.back, units), outcome_words(piece.made, units),
          rounds_in_short(piece.made.form), rewritten_words(piece.made.rewritten)}) {
        if (!words.isEmpty()) print_line(QStringLiteral("    ") + words);
    }
    print_ways(ways, units);
}

ordered_json resized_json(const Toy& toy, const ReshapedPiece& piece, const std::vector<WayOn>& ways) {
    ordered_json json{{"name", own_piece_name(toy, piece.piece).toStdString()},
                      {"code", reshape_code_name(piece.made.code)}};
    json["before"] = size_json(piece.made.before);
    if (!has_piece(piece.made.code)) return json;
    json["wanted"] = size_json(piece.made.wanted);
    json["reached"] = reached_json(piece.made.form);
    json["off"] = off_json(piece.made);
    json["returns_within_a_round"] = piece.made.returns_within_a_round;
    json["stitches"] = counts_json(piece.made.form);
    json["frog_back"] = back_json(piece.back);
    json["frog_back_words"] = frog_back_words(piece.back).toStdString();
    if (!ways.empty()) {
        json["ways_on"] = ordered_json::array();
        for (const WayOn& way : ways) json["ways_on"].push_back(way_json(way));
    }
    return json;
}

}  // namespace roundwright::app
