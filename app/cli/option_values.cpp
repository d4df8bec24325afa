#include "app/cli/option_values.h"

#include <QCoreApplication>

#include "app/cli/output.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

}  // namespace

std::optional<std::vector<std::size_t>> pieces_wanted(const Arguments& arguments, const Toy& toy) {
    const QString wanted = arguments.value(QStringLiteral("piece"));
    std::vector<std::size_t> pieces;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece) {
        const bool named = QString::fromStdString(toy.pieces[piece].name) == wanted;
        if (wanted.isEmpty() || named || wanted == QString::number(piece + 1)) pieces.push_back(piece);
    }
    if (!pieces.empty()) return pieces;
    print_problem(wanted.isEmpty() ? tr("The toy has no pieces.") : tr("There is no piece %1.").arg(wanted));
    return std::nullopt;
}

std::optional<int> whole_option(const Arguments& arguments, const char* option, int usual, int least,
                                int most) {
    const QString name = QString::fromLatin1(option);
    if (!arguments.has(name)) return usual;
    bool good = false;
    const int value = arguments.value(name).toInt(&good);
    if (good && value >= least && value <= most) return value;
    print_problem(tr("--%1 takes a whole number from %2 to %3, not \"%4\".")
                      .arg(name, QString::number(least), QString::number(most), arguments.value(name)));
    return std::nullopt;
}

}  // namespace roundwright::app
