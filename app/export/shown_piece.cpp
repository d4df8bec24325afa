#include "app/cli/shown_piece.h"

#include <QCoreApplication>

#include "app/cli/output.h"
#include "core/checks/study_surface.h"

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("CommandLine", text); }

}  // namespace

ShownPiece shown_piece(const Toy& toy, std::size_t piece, const ShownOptions& options) {
    const PieceStudy study = study_piece(toy, piece);
    ShownPiece shown;
    if (!study.shape.usable()) return shown;
    const Piece& made = toy.pieces[piece];
    RevolveOptions drawn;
    drawn.relief = options.relief;
    drawn.most_triangles = options.most_triangles;
    shown.surface = study_surface(toy, piece, study, drawn);
    shown.parts =
        feature_parts(made.features, FaceSurface(made, study.shape), stitch_counts(study.graph.graph));
    return shown;
}

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
