#include <QDateTime>
#include <QFileInfo>
#include <QGuiApplication>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/cli/unworkable.h"
#include "render/pages/pdf/pdf_export.h"

namespace roundwright::app {
namespace {

render::PdfOptions pdf_options(const Arguments& arguments) {
    render::PdfOptions options;
    if (arguments.value(QStringLiteral("paper")) == QLatin1String("letter"))
        options.paper = render::Paper::letter;
    options.terms = terms_wanted(arguments);
    if (units_wanted(arguments) == LengthUnit::inches) options.units = LengthUnit::inches;
    if (arguments.has(QStringLiteral("date"))) {
        options.date = QDateTime::fromString(arguments.value(QStringLiteral("date")), Qt::ISODate);
    }
    return options;
}

/// Where the pattern goes: what -o says, or beside the toy.
QString output_path(const Arguments& arguments, const QString& path) {
    const QFileInfo toy(path);
    const QString beside = toy.path() + QLatin1Char('/') + toy.completeBaseName() + QStringLiteral(".pdf");
    return arguments.value(QStringLiteral("output"), beside);
}

int export_toy(const Arguments& arguments, const QString& path, const Toy& toy) {
    const QString output = output_path(arguments, path);
    if (!may_write(arguments, output, {QStringLiteral("pdf")})) return exit_bad_input;
    QString error;
    const auto bytes = render::pattern_pdf(toy, pdf_options(arguments), &error);
    if (!bytes) {
        print_problem(CommandLine::tr("%1: %2").arg(output, error));
        return exit_bad_input;
    }
    const int written = write_output(arguments, path, output, *bytes);
    return written == exit_fine ? name_errors(path, toy, units_wanted(arguments)) : written;
}

int run(const Arguments& arguments) {
    if (!output_is_free(arguments, {QStringLiteral("pdf")})) return exit_bad_input;
    const bool dated = arguments.has(QStringLiteral("date"));
    if (dated && !pdf_options(arguments).date->isValid()) {
        print_problem(CommandLine::tr("--date takes a date such as 2026-05-01."));
        return exit_bad_input;
    }
    return for_each_toy(
        arguments, [&](const QString& path, const Toy& toy) { return export_toy(arguments, path, toy); });
}

constexpr Option options[] = {
    {"output", 'o', "OUT.pdf", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "where to save the pattern; otherwise beside the toy")},
    force_option,
    {"paper", 0, "PAPER", "a4|letter", QT_TRANSLATE_NOOP("CommandLine", "page size")},
    {"terms", 0, "TERMS", terms_values, QT_TRANSLATE_NOOP("CommandLine", "names of the stitches")},
    {"units", 0, "UNIT", "mm|in|inch", QT_TRANSLATE_NOOP("CommandLine", "lengths")},
    {"date", 0, "DATE", nullptr,
     QT_TRANSLATE_NOOP("CommandLine",
                       "date in the file, such as 2026-05-01; the same toy then gives the same bytes")},
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object a file, with the names of both files")},
};

}  // namespace

const Command& pdf_command() {
    static const Command command{
        "pdf", "FILE...", QT_TRANSLATE_NOOP("CommandLine", "save the pattern as PDF"), options, run, true};
    return command;
}

}  // namespace roundwright::app
