#include <nlohmann/json.hpp>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/cli/resize_answer.h"
#include "app/cli/resize_wish.h"
#include "core/checks/check_said_numbers.h"
#include "render/wording/reshape_words.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

std::vector<WayOn> ways_of(const Toy& toy, const ReshapedPiece& piece, const ResizeWish& wish) {
    if (wish.most_ripped < 0 || !has_piece(piece.made.code)) return {};
    const PieceForm form = piece_form(toy.pieces[piece.piece], gauge_of(toy));
    Target target = wish.target;
    if (piece.made.form.gauge != form.gauge) target.gauge = piece.made.form.gauge;
    return ways_on_for(toy, form, target, wish.most_ripped, wish.options);
}

void print_answer(const Arguments& arguments, const QString& path, const Toy& toy, const ReshapedToy& made,
                  const ResizeWish& wish) {
    ordered_json json{{"file", path.toStdString()}, {"title", toy.title}, {"pieces", ordered_json::array()}};
    const bool for_machines = arguments.has(QStringLiteral("json"));
    if (!for_machines) print_line(QStringLiteral("%1: %2").arg(path, QString::fromStdString(toy.title)));
    for (const ReshapedPiece& piece : made.pieces) {
        const auto ways = ways_of(toy, piece, wish);
        if (for_machines)
            json["pieces"].push_back(resized_json(toy, piece, ways));
        else
            print_resized(toy, piece, ways, units_wanted(arguments));
    }
    if (for_machines) print_json(json);
}

ReshapedToy reshaped(const Toy& toy, const std::vector<std::size_t>& pieces, const ResizeWish& wish) {
    const Toy other = worked_as(toy, wish);
    return wish.keep_rounds ? same_rounds(toy, other, pieces, wish.options)
                            : reshape_toy(toy, other, pieces, wish.target, wish.options);
}

int resize_toy(const Arguments& arguments, const QString& path, Toy toy) {
    ResizeWish wish = wish_from(arguments);
    auto pieces = pieces_meant(arguments, toy, wish);
    if (wish.worked) toy.pieces[pieces.front()].worked = *wish.worked;
    if (wish.alike) {
        wish.target = as_scale(piece_form(toy.pieces[pieces.front()], gauge_of(toy)), wish.target);
        pieces = all_pieces(toy);
    }
    const ReshapedToy made = reshaped(toy, pieces, wish);
    for (const ReshapedPiece& piece : made.pieces) {
        if (has_piece(piece.made.code)) continue;
        throw Complaint{CommandLine::tr("%1: %2").arg(piece_name(toy, piece.piece),
                                                      outcome_words(piece.made, units_wanted(arguments)))};
    }
    print_answer(arguments, path, toy, made, wish);
    const int saved = save_new_toy(arguments, with_words_remembered(toy, made.toy));
    if (saved != exit_fine) return saved;
    return made.all_met() ? exit_fine : exit_checks_failed;
}

int run(const Arguments& arguments) {
    if (!toy_output_is_free(arguments)) return exit_bad_input;
    return for_each_toy(
        arguments, [&](const QString& path, const Toy& toy) { return resize_toy(arguments, path, toy); });
}

constexpr Option options[] = {
    {"width", 0, "LENGTH", nullptr, QT_TRANSLATE_NOOP("CommandLine", "finished width: 60mm, 6cm, 2.5in")},
    {"height", 0, "LENGTH", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "finished height; alone, width or height keeps the proportions")},
    {"circumference", 0, "LENGTH", nullptr, QT_TRANSLATE_NOOP("CommandLine", "around the widest round")},
    {"scale", 0, "NUMBER", nullptr, QT_TRANSLATE_NOOP("CommandLine", "1.25: a quarter larger")},
    {"hook", 0, "MM", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "work with this hook; alone: at the same finished size")},
    {"weight", 0, "WEIGHT", "super-fine|fine|light|medium|bulky|super-bulky|jumbo",
     QT_TRANSLATE_NOOP("CommandLine", "work in yarn of this weight, its gauge estimated")},
    {"alike", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "with a size: make the other pieces larger or smaller to match")},
    {"keep-rounds", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "with another hook or yarn: keep the rounds, and show the size they come out at")},
    {"piece", 0, "NAME", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "the piece, by name or number; needed for a size if there are several")},
    {"worked", 0, "ROUNDS", nullptr,
     QT_TRANSLATE_NOOP(
         "CommandLine",
         "rounds worked so far, and stitches of the next: 11 or 11+5; otherwise what the file says")},
    {"ways-on", 0, "ROUNDS", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "also show what you get by ripping back no rounds, one, ... up to this many")},
    {"tidiness", 0, "NUMBER", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "0: the closest shape, 1: the tidiest rounds; usually 0.5")},
    {"output", 'o', "TOY.roundwright", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "save the new toy there; FILE itself may be named")},
    force_option,
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object a file, one to a line; lengths in mm")},
    {"units", 0, "UNIT", "mm|in|inch",
     QT_TRANSLATE_NOOP("CommandLine", "lengths without a unit, and in the answer")},
};

}  // namespace

const Command& resize_command() {
    static const Command command{
        "resize", "FILE",
        QT_TRANSLATE_NOOP("CommandLine", "find the rounds for another size, and what to undo"), options, run};
    return command;
}

}  // namespace roundwright::app
