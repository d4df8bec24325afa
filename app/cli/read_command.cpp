#include <algorithm>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include "app/cli/command.h"
#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "app/cli/output_file.h"
#include "app/cli/read_json.h"
#include "app/storage/disk_words.h"
#include "app/storage/stream_file.h"
#include "core/assembly/worked_on_joins.h"
#include "core/base/limits.h"
#include "core/language/pattern/read_pattern.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/terms_words.h"

namespace roundwright::app {
namespace {

/// "pattern.txt:12:8: There are 18 stitches below ...", the form that editors jump to.
void print_diagnostic(const QString& path, const ReadDiagnostic& diagnostic) {
    QString line = QStringLiteral("%1:%2:%3: %4")
                       .arg(path)
                       .arg(diagnostic.where.line)
                       .arg(diagnostic.where.column)
                       .arg(diagnostic_sentence(diagnostic));
    if (!diagnostic.mends.empty()) line += QLatin1Char(' ') + mend_question(diagnostic.mends.front());
    print_line(line);
}

void print_pieces(const ReadPattern& pattern) {
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
        const Piece& piece = pattern.pieces[i];
        const std::vector<int> counts = stitch_counts(piece_graph(piece).graph);
        const QString given = QString::fromStdString(piece.name);
        const QString name = given.isEmpty() ? CommandLine::tr("piece %1").arg(i + 1) : given;
        const QString rounds = rounds_words(static_cast<int>(piece.rounds.size()));
        const QString last = stitches_words(counts.empty() ? 0 : counts.back());
        const RoundTally& tally = pattern.tallies[i];
        // All at once: what a name holds is no place for the next.
        print_line(tally.mended + tally.refused == 0
                       ? CommandLine::tr("%1: %2, the last of %3").arg(name, rounds, last)
                       : CommandLine::tr("%1: %2, the last of %3 (%4 sure, %5 mended, %6 refused)")
                             .arg(name, rounds, last, QString::number(tally.sure),
                                  QString::number(tally.mended), QString::number(tally.refused)));
    }
}

void print_in_words(const QString& path, const ReadPattern& pattern) {
    for (const ReadDiagnostic& diagnostic : pattern.diagnostics) print_diagnostic(path, diagnostic);
    print_pieces(pattern);
    if (!is_english(pattern.terms))
        print_line(CommandLine::tr("Read in %1.").arg(terms_in_words(pattern.terms)));
}

std::optional<QByteArray> contents(const QString& path) {
    constexpr auto limit = static_cast<qint64>(max_text_bytes);
    const bool standard_input = path == QLatin1String("-");
    const ReadFile file = standard_input    ? read_stream(STDIN_FILENO, path, limit)
                          : is_device(path) ? read_stream(path, limit)
                                            : read_whole(path, limit);
    if (!file.fault && file.bytes.size() <= limit) return file.bytes;
    print_problem(file.fault
                      ? CommandLine::tr("%1: %2").arg(path, disk_fault_words(*file.fault))
                      : CommandLine::tr("%1: larger than %2 MiB, too large for a pattern. Nothing was read.")
                            .arg(path)
                            .arg(limit >> 20));
    return std::nullopt;
}

int read_text(const Arguments& arguments, const QString& path) {
    const auto bytes = contents(path);
    if (!bytes) return exit_bad_input;
    ReadOptions options;
    if (arguments.has(QStringLiteral("terms"))) options.terms = terms_wanted(arguments);
    const ReadPattern pattern =
        read_pattern({bytes->constData(), static_cast<std::size_t>(bytes->size())}, options);
    if (arguments.has(QStringLiteral("json")))
        print_json(read_json(path, pattern));
    else
        print_in_words(path, pattern);
    if (pattern.pieces.empty()) return exit_bad_input;
    const int saved = save_new_toy(arguments, with_worked_on_joins(toy_of(pattern)));
    if (saved != exit_fine) return saved;
    return pattern.complete() ? exit_fine : exit_checks_failed;
}

int run(const Arguments& arguments) {
    if (!output_is_free(arguments, toy_endings())) return exit_bad_input;
    int worst = exit_fine;
    for (const QString& path : arguments.operands()) worst = std::max(worst, read_text(arguments, path));
    return worst;
}

constexpr Option options_of_read[] = {
    {"output", 'o', "TOY.roundwright", nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "save what was understood as a toy")},
    force_option,
    {"terms", 0, "TERMS", terms_values,
     QT_TRANSLATE_NOOP("CommandLine", "names of the stitches; otherwise found from the text")},
    {"json", 0, nullptr, nullptr,
     QT_TRANSLATE_NOOP("CommandLine", "one JSON object a file: its pieces, and what was found wrong")},
};

}  // namespace

const Command& read_command() {
    static const Command command{
        "read", "PATTERN...",
        QT_TRANSLATE_NOOP("CommandLine",
                          "read a written pattern and check every stitch; - is standard input"),
        options_of_read, run};
    return command;
}

}  // namespace roundwright::app
