#include "app/cli/output_file.h"

#include <QCoreApplication>
#include <QFileInfo>

#include "app/cli/command_line.h"
#include "app/cli/output.h"
#include "app/session/document_file.h"
#include "app/session/save_bytes.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

bool refused(const QString& problem) {
    print_problem(problem);
    return false;
}

}  // namespace

QString ending_of(const QString& path) { return QFileInfo(path).suffix().toLower(); }

bool output_is_named(const Arguments& arguments, const QStringList& endings) {
    const QString choices = QStringLiteral(".") + endings.join(tr(" or ") + QStringLiteral("."));
    if (arguments.operands().size() > 1) return refused(tr("Name one file at a time."));
    const QString output = arguments.value(QStringLiteral("output"));
    if (output.isEmpty()) return refused(tr("Say with -o where it goes, ending in %1.").arg(choices));
    if (endings.contains(ending_of(output))) return true;
    return refused(tr("%1 does not end in %2.").arg(output, choices));
}

int write_output(const QString& path, const QByteArray& bytes) {
    if (const auto problem = save_bytes(path, bytes)) {
        print_problem(tr("%1: %2").arg(path, *problem));
        return exit_bad_input;
    }
    print_line(path);
    return exit_fine;
}

int save_new_toy(const Arguments& arguments, const Toy& toy) {
    if (!arguments.has(QStringLiteral("output"))) return exit_fine;
    const QString path = arguments.value(QStringLiteral("output"));
    if (const auto problem = save_document_file(path, toy)) {
        print_problem(tr("%1: %2").arg(path, problem->message));
        return exit_bad_input;
    }
    if (!arguments.has(QStringLiteral("json"))) print_line(tr("Saved as %1.").arg(path));
    return exit_fine;
}

}  // namespace roundwright::app
