#include "app/cli/option_values.h"

#include <QStringList>

#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/output.h"
#include "core/reshape/reshape_toy.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {
namespace {

QString piece_names(const Toy& toy) {
    QStringList names;
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece) names << piece_name(toy, piece);
    return names.join(QStringLiteral(", "));
}

/// A name goes before a number, should a piece be called "2".
std::optional<std::size_t> piece_called(const Toy& toy, const QString& wanted) {
    for (std::size_t piece = 0; piece < toy.pieces.size(); ++piece)
        if (own_piece_name(toy, piece).compare(wanted, Qt::CaseInsensitive) == 0) return piece;
    const uint number = wanted.toUInt();
    return number >= 1 && number <= toy.pieces.size() ? std::optional<std::size_t>(number - 1) : std::nullopt;
}

}  // namespace

std::size_t piece_named(const Toy& toy, const QString& wanted) {
    if (const auto piece = piece_called(toy, wanted)) return *piece;
    throw Complaint{
        CommandLine::tr("There is no piece \"%1\"; there are: %2.").arg(wanted, piece_names(toy))};
}

std::vector<std::size_t> pieces_wanted(const Arguments& arguments, const Toy& toy) {
    if (toy.pieces.empty()) throw Complaint{CommandLine::tr("The toy has no pieces.")};
    if (arguments.has(QStringLiteral("piece")))
        return {piece_named(toy, arguments.value(QStringLiteral("piece")))};
    return all_pieces(toy);
}

bool shows_whole_toy(const Arguments& arguments, const Toy& toy) {
    return !toy.joins.empty() && !arguments.has(QStringLiteral("piece")) &&
           !arguments.has(QStringLiteral("apart"));
}

std::size_t one_piece_wanted(const Arguments& arguments, const Toy& toy) {
    const auto pieces = pieces_wanted(arguments, toy);
    if (pieces.size() == 1) return pieces.front();
    throw Complaint{CommandLine::tr("Which piece? Name one with --piece: %1.").arg(piece_names(toy))};
}

std::optional<int> whole_option(const Arguments& arguments, const char* option, int usual, int least,
                                int most) {
    const QString name = QString::fromLatin1(option);
    if (!arguments.has(name)) return usual;
    bool good = false;
    const int value = arguments.value(name).toInt(&good);
    if (good && value >= least && value <= most) return value;
    print_problem(CommandLine::tr("--%1 takes a whole number from %2 to %3, not \"%4\".")
                      .arg(name, QString::number(least), QString::number(most), arguments.value(name)));
    return std::nullopt;
}

}  // namespace roundwright::app
