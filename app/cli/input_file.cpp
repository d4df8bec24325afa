#include "app/cli/input_file.h"

#include <algorithm>

#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/output.h"
#include "app/session/document_file.h"
#include "app/storage/stream_file.h"
#include "core/study/fabric_stage.h"
#include "render/background/fault_words.h"

namespace roundwright::app {
namespace {

void print_file_problem(const QString& path, const FileProblem& problem) {
    print_problem(problem.place.isEmpty()
                      ? CommandLine::tr("%1: %2").arg(path, problem.message)
                      : CommandLine::tr("%1: at %2: %3").arg(path, problem.place, problem.message));
}

/// A newer program's words are not slips.
void print_not_understood(const QString& path, const ReadDocument& document) {
    if (document.newer) {
        print_problem(
            CommandLine::tr(
                "%1: written by a newer Roundwright; what is not known here is kept, but not understood.")
                .arg(path));
        return;
    }
    for (const UnreadKey& key : document.unread)
        print_problem(CommandLine::tr("%1: %2").arg(path, unread_key_words(key)));
    for (const MendedId& id : document.mended)
        print_problem(CommandLine::tr("%1: %2").arg(path, mended_id_words(id)));
}

int work_or_complain(const std::function<int(const QString&, const Toy&)>& work, const QString& path,
                     const Toy& toy) {
    try {
        return work(path, toy);
    } catch (const Complaint& complaint) {
        print_problem(complaint.words);
        return exit_bad_input;
    } catch (const std::exception& problem) {
        if (!render::is_out_of_memory(problem)) throw;
    }
    print_problem(CommandLine::tr("%1: %2").arg(path, render::not_enough_memory_words()));
    return exit_checks_failed;
}

}  // namespace

int for_each_toy(const Arguments& arguments, const std::function<int(const QString&, const Toy&)>& work) {
    int worst = exit_fine;
    for (const QString& path : arguments.operands()) {
        const LoadedFile file = is_device(path) ? load_document_stream(path) : load_document_file(path);
        if (file.problem) {
            print_file_problem(path, *file.problem);
            worst = exit_bad_input;
            continue;
        }
        print_not_understood(path, file.document);
        worst = std::max(worst, work_or_complain(work, path, file.document.toy));
    }
    return worst;
}

std::vector<PieceStudy> study_toy(const Toy& toy) {
    std::vector<PieceStudy> studies;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        studies.push_back(as_worked(study_piece(toy, piece), toy, piece));
    return studies;
}

LengthUnit units_wanted(const Arguments& arguments) {
    return arguments.value(QStringLiteral("units")).startsWith(QLatin1String("in")) ? LengthUnit::inches
                                                                                    : LengthUnit::millimetres;
}

Terms terms_wanted(const Arguments& arguments) {
    return terms_of_code(arguments.value(QStringLiteral("terms")).toStdString()).value_or(Terms::us);
}

void print_heading(const QString& path, const Toy& toy) {
    print_line(toy.title.empty() ? path
                                 : QStringLiteral("%1: %2").arg(path, QString::fromStdString(toy.title)));
}

}  // namespace roundwright::app
