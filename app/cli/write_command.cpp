#include <nlohmann/json.hpp>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/cli/unworkable.h"
#include "app/cli/write_json.h"
#include "core/language/pattern/write_pattern.h"
#include "render/pages/text_export.h"

namespace roundwright::app {
namespace {

render::PatternOptions pattern_options(const Arguments& arguments) {
    render::PatternOptions options;
    options.terms = terms_wanted(arguments);
    if (units_wanted(arguments) == LengthUnit::inches) options.units = LengthUnit::inches;
    return options;
}

QString text_of(const Arguments& arguments, const Toy& toy) {
    const QString form = arguments.value(QStringLiteral("form"), QStringLiteral("rounds"));
    const render::PatternOptions options = pattern_options(arguments);
    if (form == QLatin1String("pattern")) return render::pattern_text(toy, options, render::TextForm::plain);
    if (form == QLatin1String("markdown"))
        return render::pattern_text(toy, options, render::TextForm::markdown);
    if (form == QLatin1String("csv")) return render::rounds_csv(toy, options);
    return QString::fromStdString(write_toy(toy, options.terms));
}

QStringList endings_of_form(const Arguments& arguments) {
    const QString form = arguments.value(QStringLiteral("form"));
    if (form == QLatin1String("markdown")) return {QStringLiteral("md"), QStringLiteral("markdown")};
    return {form == QLatin1String("csv") ? QStringLiteral("csv") : QStringLiteral("txt")};
}

int hand_out(const Arguments& arguments, const QString& path, const Toy& toy) {
    const QString text = text_of(arguments, toy);
    const QString output = arguments.value(QStringLiteral("output"));
    if (!output.isEmpty()) return write_output(arguments, path, output, text.toUtf8());
    if (arguments.has(QStringLiteral("json")))
        print_json(write_json(path, toy, terms_wanted(arguments), text));
    else
        print_text(text);
    return exit_fine;
}

int write_words(const Arguments& arguments, const QString& path, const Toy& toy) {
    const int written = hand_out(arguments, path, toy);
    return written == exit_fine ? name_errors(path, toy, units_wanted(arguments)) : written;
}

int run(const Arguments& arguments) {
    if (!output_is_free(arguments, endings_of_form(arguments))) return exit_bad_input;
    return for_each_toy(
        arguments, [&](const QString& path, const Toy& toy) { return write_words(arguments, path, toy); });
}

constexpr Option options_of_write[] = {
    {"output", 'o', "OUT.txt|.md|.csv", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "where to save it, with the ending of its form; otherwise standard output")},
    force_option,
    {"terms", 0, "TERMS", terms_values, QT_TRANSLATE_NOOP("CommandLine", "names of the stitches")},
    {"form", 0, "FORM", "rounds|pattern|markdown|csv",
     QT_TRANSLATE_NOOP(
         "CommandLine",
         "rounds, which read can read back (the default); the whole pattern; a table of rounds")},
    {"units", 0, "UNIT", "mm|in|inch", QT_TRANSLATE_NOOP("CommandLine", "lengths")},
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP(
         "CommandLine",
         "one JSON object a file: the text and every round, or with -o the names of both files")},
};

}  // namespace

const Command& write_command() {
    static const Command command{
        "write",          "FILE...", QT_TRANSLATE_NOOP("CommandLine", "write the rounds in words"),
        options_of_write, run,       true};
    return command;
}

}  // namespace roundwright::app
