#include "app/cli/output_file.h"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include <QFileInfo>

#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/output.h"
#include "app/kit/save_bytes.h"
#include "app/kit/toy_files.h"
#include "app/session/document_file.h"

namespace roundwright::app {
namespace {

const auto output_option = QStringLiteral("output");

bool refused(const QString& problem) {
    print_problem(problem);
    return false;
}

void print_remarks(const QString& path, const QString& remarks) {
    if (!remarks.isEmpty()) print_problem(CommandLine::tr("%1: %2").arg(path, remarks));
}

/// ".png or .svg"
QString in_words(QStringList endings) {
    for (QString& ending : endings) ending.prepend(QLatin1Char('.'));
    return one_of(endings);
}

/// The standard input may be a file too: "read - < pattern.txt".
QString file_of_operand(const QString& operand) {
    return operand == QLatin1String("-") ? QStringLiteral("/dev/stdin") : operand;
}

/// One file, whatever links lead to it: the same device and inode.
bool is_one_file(const QString& one, const QString& other) {
    std::error_code unknown;
    return std::filesystem::equivalent(one.toStdString(), other.toStdString(), unknown);
}

bool is_read(const Arguments& arguments, const QString& path) {
    return std::any_of(arguments.operands().begin(), arguments.operands().end(),
                       [&](const QString& operand) { return is_one_file(file_of_operand(operand), path); });
}

}  // namespace

QString ending_of(const QString& path) { return QFileInfo(path).suffix().toLower(); }

QStringList toy_endings() { return {toy_ending()}; }

bool may_write(const Arguments& arguments, const QString& path, const QStringList& endings,
               WriteBack write_back) {
    if (is_device(path)) return true;
    const QFileInfo there(path);
    if (there.isDir()) return refused(CommandLine::tr("%1 is a folder.").arg(path));
    if (!endings.contains(ending_of(path)))
        return refused(CommandLine::tr("%1 does not end in %2.").arg(path, in_words(endings)));
    if (!there.exists()) return true;
    if (is_read(arguments, path)) {
        if (write_back == WriteBack::yes) return true;
        return refused(CommandLine::tr("%1 is the file being read: name another with -o.").arg(path));
    }
    if (arguments.has(QLatin1String(force_option.name))) return true;
    return refused(CommandLine::tr("%1 exists already. Name another with -o, or use --force.").arg(path));
}

bool output_is_free(const Arguments& arguments, const QStringList& endings, WriteBack write_back) {
    if (!arguments.has(output_option)) return true;
    if (arguments.operands().size() > 1) return refused(CommandLine::tr("-o takes one file at a time."));
    return may_write(arguments, arguments.value(output_option), endings, write_back);
}

bool toy_output_is_free(const Arguments& arguments) {
    return output_is_free(arguments, toy_endings(), WriteBack::yes);
}

bool output_is_named(const Arguments& arguments, const QStringList& endings) {
    if (arguments.operands().size() > 1) return refused(CommandLine::tr("Name one file at a time."));
    if (!arguments.has(output_option))
        return refused(CommandLine::tr("Say with -o where to save it, ending in %1.").arg(in_words(endings)));
    return output_is_free(arguments, endings);
}

int write_output(const Arguments& arguments, const QString& input, const QString& path,
                 const QByteArray& bytes) {
    const SavedBytes saved = save_bytes(path, bytes);
    if (saved.problem) {
        print_problem(CommandLine::tr("%1: %2").arg(path, *saved.problem));
        return exit_bad_input;
    }
    print_remarks(path, saved.remarks);
    if (arguments.has(QStringLiteral("json")))
        print_json({{"file", input.toStdString()}, {"output", path.toStdString()}});
    else
        print_line(path);
    return exit_fine;
}

int save_new_toy(const Arguments& arguments, const Toy& toy) {
    if (!arguments.has(output_option)) return exit_fine;
    const QString path = arguments.value(output_option);
    const SavedFile saved = save_document_file(path, toy, {});
    if (saved.problem) {
        print_problem(CommandLine::tr("%1: %2").arg(path, saved.problem->message));
        return exit_bad_input;
    }
    print_remarks(path, saved.remarks);
    if (!arguments.has(QStringLiteral("json"))) print_line(CommandLine::tr("Saved as %1.").arg(path));
    return exit_fine;
}

}  // namespace roundwright::app
