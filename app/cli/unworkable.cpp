#include "app/cli/unworkable.h"

#include "app/cli/command_line.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "core/study/toy_checks.h"
#include "render/wording/check_sentence.h"

namespace roundwright::app {

int name_errors(const QString& path, const Toy& toy, LengthUnit units) {
    int exit = exit_fine;
    for (const Check& check : checks_of_toy(study_toy(toy))) {
        if (check.severity != Severity::error || check.piece < 0) continue;
        exit = exit_checks_failed;
        print_problem(QStringLiteral("%1: %2: %3")
                          .arg(path, piece_name(toy, static_cast<std::size_t>(check.piece)),
                               check_sentence(check, units)));
    }
    return exit;
}

}  // namespace roundwright::app
