#include <algorithm>
#include <nlohmann/json.hpp>
#include <numeric>

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/reshape/reshape_words.h"
#include "app/session/document_file.h"
#include "app/session/length_text.h"
#include "core/gauge/hook.h"
#include "core/reshape/continue_from_here.h"
#include "core/reshape/reshape_toy.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

struct Wish {
    Target target;
    std::optional<double> hook_mm;
    std::optional<YarnWeight> weight;
    ReshapeOptions options;
    int most_ripped = -1;  ///< ways on are wanted up to that many rounds; -1: not asked for
    std::optional<WorkedSoFar> worked;
};

struct Problem {  // thrown where a wish cannot be understood; the words go to the maker
    QString words;
};

constexpr double mm_per_inch = 25.4;

/// "60mm", "6 cm", "2.5in" or a bare number in the units that the command speaks.
std::optional<double> length_mm(const QString& text, LengthUnit units) {
    static const QRegularExpression pattern(QStringLiteral("^\\s*([0-9]*\\.?[0-9]+)\\s*(mm|cm|in|\")?\\s*$"));
    const auto match = pattern.match(text);
    if (!match.hasMatch()) return std::nullopt;
    const QString unit = match.captured(2);
    double factor = units == LengthUnit::inches ? mm_per_inch : 1;
    if (unit == QLatin1String("mm")) factor = 1;
    if (unit == QLatin1String("cm")) factor = 10;
    if (unit == QLatin1String("in") || unit == QLatin1String("\"")) factor = mm_per_inch;
    const double mm = match.captured(1).toDouble() * factor;
    return mm > 0 ? std::optional(mm) : std::nullopt;
}

std::optional<double> length_option(const Arguments& arguments, const char* name) {
    if (!arguments.has(QLatin1String(name))) return std::nullopt;
    const QString text = arguments.value(QLatin1String(name));
    const auto mm = length_mm(text, units_wanted(arguments));
    if (!mm)
        throw Problem{
            tr("--%1 takes a length, as 60mm, 6cm or 2.5in, not \"%2\".").arg(QLatin1String(name), text)};
    return mm;
}

std::optional<double> number_option(const Arguments& arguments, const char* name, double least, double most) {
    if (!arguments.has(QLatin1String(name))) return std::nullopt;
    const QString text = arguments.value(QLatin1String(name));
    bool good = false;
    const double value = text.toDouble(&good);
    if (!good || !(value >= least && value <= most)) {
        throw Problem{tr("--%1 takes a number from %2 to %3, not \"%4\".")
                          .arg(QLatin1String(name), QString::number(least), QString::number(most), text)};
    }
    return value;
}

/// "11", or "11+5": eleven rounds and five stitches of the next.
WorkedSoFar worked_option(const QString& text) {
    static const QRegularExpression pattern(QStringLiteral("^([0-9]{1,5})(?:\\+([0-9]{1,6}))?$"));
    const auto match = pattern.match(text);
    if (!match.hasMatch())
        throw Problem{
            tr("--worked takes rounds, or rounds and stitches, as 11 or 11+5, not \"%1\".").arg(text)};
    WorkedSoFar worked;
    worked.rounds = match.captured(1).toInt();
    worked.stitches = match.captured(2).toInt();
    return worked;
}

YarnWeight weight_option(const QString& text) {
    for (const YarnStandard& standard : yarn_standards()) {
        QString name = QString::fromUtf8(standard.name.data(), qsizetype(standard.name.size())).toLower();
        if (name.replace(QLatin1Char(' '), QLatin1Char('-')) == text) return standard.weight;
    }
    return YarnWeight::light;
}

Wish wish_from(const Arguments& arguments) {
    Wish wish;
    wish.target.width_mm = length_option(arguments, "width");
    wish.target.height_mm = length_option(arguments, "height");
    wish.target.circumference_mm = length_option(arguments, "circumference");
    wish.target.scale = number_option(arguments, "scale", 0.01, 100);
    if (arguments.has(QStringLiteral("hook"))) {
        wish.hook_mm = length_mm(arguments.value(QStringLiteral("hook")), LengthUnit::millimetres);
        if (!wish.hook_mm || *wish.hook_mm < least_hook_mm || *wish.hook_mm > most_hook_mm) {
            throw Problem{tr("--hook takes a hook in mm, from %1 to %2, not \"%3\".")
                              .arg(QString::number(least_hook_mm), QString::number(most_hook_mm),
                                   arguments.value(QStringLiteral("hook")))};
        }
    }
    if (arguments.has(QStringLiteral("weight")))
        wish.weight = weight_option(arguments.value(QStringLiteral("weight")));
    if (arguments.has(QStringLiteral("worked")))
        wish.worked = worked_option(arguments.value(QStringLiteral("worked")));
    wish.options.tidiness = number_option(arguments, "tidiness", 0, 1).value_or(ReshapeOptions{}.tidiness);
    if (const auto rip = number_option(arguments, "ways-on", 0, 2'000))
        wish.most_ripped = static_cast<int>(*rip);
    return wish;
}

bool asks_for_a_size(const Target& target) {
    return target.width_mm || target.height_mm || target.circumference_mm;
}

QStringList piece_names(const Toy& toy) {
    QStringList names;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) names << piece_name(toy, i);
    return names;
}

/// The pieces meant: the one named, by name or by number; the only one; all, where no size of one is asked
/// for.
std::vector<std::size_t> pieces_meant(const Arguments& arguments, const Toy& toy, const Wish& wish) {
    if (toy.pieces.empty()) throw Problem{tr("The toy has no piece.")};
    const QString names = piece_names(toy).join(QStringLiteral(", "));
    if (!arguments.has(QStringLiteral("piece"))) {
        if (toy.pieces.size() > 1 && (asks_for_a_size(wish.target) || wish.worked))
            throw Problem{tr("Which piece? Name one with --piece: %1.").arg(names)};
        std::vector<std::size_t> all(toy.pieces.size());
        std::iota(all.begin(), all.end(), std::size_t{0});
        return all;
    }
    const QString wanted = arguments.value(QStringLiteral("piece"));
    for (std::size_t i = 0; i < toy.pieces.size(); ++i)
        if (piece_name(toy, i).compare(wanted, Qt::CaseInsensitive) == 0) return {i};
    bool number = false;
    const uint place = wanted.toUInt(&number);
    if (number && place >= 1 && place <= toy.pieces.size()) return {place - 1};
    throw Problem{tr("There is no piece \"%1\"; there are: %2.").arg(wanted, names)};
}

Toy worked_as(const Toy& toy, const Wish& wish) {
    Toy other = wish.weight ? with_yarn_weight(toy, *wish.weight) : toy;
    return wish.hook_mm ? with_hook(other, *wish.hook_mm) : other;
}

// --- the answer in words

void print_ways(const std::vector<WayOn>& ways, LengthUnit units) {
    if (ways.empty()) return;
    print_line(tr("    Going on from what is worked:"));
    for (const WayOn& way : ways) {
        const QString apart = outline_words(way.shape_error_mm, units);
        print_line(
            tr("      %1: %2; %3.").arg(undo_words(way.back), size_words(way.made.reached(), units), apart));
    }
}

void print_piece(const Toy& toy, const ReshapedPiece& piece, const std::vector<WayOn>& ways,
                 LengthUnit units) {
    print_line(tr("  %1: %2").arg(piece_name(toy, piece.piece), outcome_words(piece.made, units)));
    if (!has_piece(piece.made.code)) return;
    for (const QString& words : {frog_back_words(piece.back), freed_yarn_words(piece.back, units),
                                 rewritten_words(piece.made.rewritten)}) {
        if (!words.isEmpty()) print_line(QStringLiteral("    ") + words);
    }
    print_ways(ways, units);
}

// --- the answer for machines

ordered_json size_json(const Size& size) {
    return {{"width_mm", size.width_mm}, {"height_mm", size.height_mm}};
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
            {"reached", size_json(way.made.reached())},
            {"shape_error_mm", way.shape_error_mm},
            {"stitches", counts_json(way.made.form)}};
}

ordered_json piece_json(const Toy& toy, const ReshapedPiece& piece, const std::vector<WayOn>& ways) {
    ordered_json json{{"name", piece_name(toy, piece.piece).toStdString()},
                      {"code", reshape_code_name(piece.made.code)}};
    json["before"] = size_json(piece.made.before);
    if (!has_piece(piece.made.code)) return json;
    json["wanted"] = size_json(piece.made.wanted);
    json["reached"] = size_json(piece.made.reached());
    json["stitches"] = counts_json(piece.made.form);
    json["frog_back"] = back_json(piece.back);
    json["frog_back_words"] = frog_back_words(piece.back).toStdString();
    if (!ways.empty()) {
        json["ways_on"] = ordered_json::array();
        for (const WayOn& way : ways) json["ways_on"].push_back(way_json(way));
    }
    return json;
}

// --- the work

std::vector<WayOn> ways_of(const Toy& toy, const ReshapedPiece& piece, const Wish& wish) {
    if (wish.most_ripped < 0 || !has_piece(piece.made.code)) return {};
    const PieceForm form = piece_form(toy.pieces[piece.piece], gauge_of(toy));
    Target target = wish.target;
    if (piece.made.form.gauge != form.gauge) target.gauge = piece.made.form.gauge;
    return continue_from_here(form, target, form.piece.worked, wish.most_ripped, wish.options);
}

void print_answer(const Arguments& arguments, const QString& path, const Toy& toy, const ReshapedToy& made,
                  const Wish& wish) {
    ordered_json json{{"file", path.toStdString()}, {"title", toy.title}, {"pieces", ordered_json::array()}};
    const bool for_machines = arguments.has(QStringLiteral("json"));
    if (!for_machines) print_line(QStringLiteral("%1: %2").arg(path, QString::fromStdString(toy.title)));
    for (const ReshapedPiece& piece : made.pieces) {
        const auto ways = ways_of(toy, piece, wish);
        if (for_machines)
            json["pieces"].push_back(piece_json(toy, piece, ways));
        else
            print_piece(toy, piece, ways, units_wanted(arguments));
    }
    if (for_machines) print_json(json);
}

int save_new(const Arguments& arguments, const ReshapedToy& made) {
    if (!arguments.has(QStringLiteral("output"))) return exit_fine;
    const QString path = arguments.value(QStringLiteral("output"));
    const auto problem = save_document_file(path, made.toy);
    if (!problem) return exit_fine;
    print_problem(tr("%1: %2").arg(path, problem->message));
    return exit_bad_input;
}

int resize_toy(const Arguments& arguments, const QString& path, Toy toy) {
    const Wish wish = wish_from(arguments);
    const auto pieces = pieces_meant(arguments, toy, wish);
    if (wish.worked) toy.pieces[pieces.front()].worked = *wish.worked;
    const ReshapedToy made = reshape_toy(toy, worked_as(toy, wish), pieces, wish.target, wish.options);
    for (const ReshapedPiece& piece : made.pieces) {
        if (has_piece(piece.made.code)) continue;
        throw Problem{tr("%1: %2").arg(piece_name(toy, piece.piece),
                                       outcome_words(piece.made, units_wanted(arguments)))};
    }
    print_answer(arguments, path, toy, made, wish);
    const int saved = save_new(arguments, made);
    if (saved != exit_fine) return saved;
    return made.all_met() ? exit_fine : exit_checks_failed;
}

int run(const Arguments& arguments) {
    if (arguments.operands().size() > 1 && arguments.has(QStringLiteral("output"))) {
        print_problem(tr("One file at a time, where the result is saved with -o."));
        return exit_bad_input;
    }
    return for_each_toy(arguments, [&](const QString& path, const Toy& toy) {
        try {
            return resize_toy(arguments, path, toy);
        } catch (const Problem& problem) {
            print_problem(problem.words);
            return static_cast<int>(exit_bad_input);
        }
    });
}

constexpr Option options[] = {
    {"width", 0, "LENGTH", nullptr, "finished width: 60mm, 6cm, 2.5in"},
    {"height", 0, "LENGTH", nullptr, "finished height; alone, width or height keeps the proportions"},
    {"circumference", 0, "LENGTH", nullptr, "around the widest round"},
    {"scale", 0, "NUMBER", nullptr, "1.25: a quarter larger"},
    {"hook", 0, "MM", nullptr, "work with this hook; alone: at the same finished size"},
    {"weight", 0, "WEIGHT", "super-fine|fine|light|medium|bulky|super-bulky|jumbo",
     "work in yarn of this weight, its gauge estimated"},
    {"piece", 0, "NAME", nullptr, "the piece, by name or number; needed for a size where there are several"},
    {"worked", 0, "ROUNDS", nullptr,
     "rounds worked so far, and stitches: 11 or 11+5; else what the file says"},
    {"ways-on", 0, "ROUNDS", nullptr, "also: what comes of ripping back no round, one, ... so many"},
    {"tidiness", 0, "NUMBER", nullptr,
     "0: likeness alone, 1: tidy rounds wherever they can be had; usually 0.5"},
    {"output", 'o', "FILE", nullptr, "save the new toy there"},
    {"json", 0, nullptr, nullptr, "one JSON object a file, one to a line; lengths in mm"},
    {"units", 0, "UNIT", "mm|in", "lengths without a unit, and in the answer"},
};

}  // namespace

const Command& resize_command() {
    static const Command command{"resize", "FILE", "find the rounds for another size, and what to undo",
                                 options, run};
    return command;
}

}  // namespace roundwright::app
