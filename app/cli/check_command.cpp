#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/severity_name.h"
#include "core/assembly/check_joins.h"
#include "core/study/toy_checks.h"
#include "render/wording/check_sentence.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

ordered_json check_json(const Toy& toy, const Check& check, LengthUnit units) {
    ordered_json json{{"code", check_code_name(check.code)}, {"severity", severity_name(check.severity)}};
    json["piece"] = nullptr;
    json["round"] = nullptr;
    if (check.piece >= 0) json["piece"] = toy.pieces[static_cast<std::size_t>(check.piece)].name;
    if (check.round >= 0) json["round"] = check.round + 1;
    json["message"] = check_sentence(check, units).toStdString();
    return json;
}

void print_checks(const QString& path, const Toy& toy, const std::vector<Check>& checks, LengthUnit units) {
    print_heading(path, toy);
    if (checks.empty()) print_line(CommandLine::tr("  Nothing to fix."));
    for (const Check& check : checks) {
        const QString piece =
            check.piece < 0 ? CommandLine::tr("Toy") : piece_name(toy, static_cast<std::size_t>(check.piece));
        print_line(QStringLiteral("  %1: %2: %3")
                       .arg(piece, severity_words(check.severity), check_sentence(check, units)));
    }
}

int check_toy(const Arguments& arguments, const QString& path, const Toy& toy) {
    const std::vector<PieceStudy> studies = study_toy(toy);
    std::vector<Check> checks = every_check(toy, studies);
    for (Check& check : checks_of_joins(toy, studies)) checks.push_back(std::move(check));
    const LengthUnit units = units_wanted(arguments);
    if (arguments.has(QStringLiteral("json"))) {
        ordered_json json{
            {"file", path.toStdString()}, {"title", toy.title}, {"checks", ordered_json::array()}};
        for (const Check& check : checks) json["checks"].push_back(check_json(toy, check, units));
        print_json(json);
    } else {
        print_checks(path, toy, checks, units);
    }
    const bool wrong = std::any_of(checks.begin(), checks.end(),
                                   [](const Check& check) { return check.severity == Severity::error; });
    return wrong ? exit_checks_failed : exit_fine;
}

constexpr Option options[] = {
    {"json", 0, nullptr, nullptr, QT_TRANSLATE_NOOP("CommandLine", "one JSON object a file, one to a line")},
    {"units", 0, "UNIT", "mm|in|inch", QT_TRANSLATE_NOOP("CommandLine", "lengths in the messages")},
};

}  // namespace

const Command& check_command() {
    static const Command command{
        "check", "FILE...",
        QT_TRANSLATE_NOOP("CommandLine", "list what cannot be worked, ruffles, cups or gathers"), options,
        [](const Arguments& arguments) {
            return for_each_toy(arguments, [&](const QString& path, const Toy& toy) {
                return check_toy(arguments, path, toy);
            });
        }};
    return command;
}

}  // namespace roundwright::app
