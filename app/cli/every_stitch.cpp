#include "app/cli/every_stitch.h"

#include <cmath>
#include <utility>

#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"

namespace roundwright::app {
namespace {

QString cells_words(CellsRefusal why) {
    switch (why) {
        case CellsRefusal::no_rounds:
            return CommandLine::tr("it has no rounds");
        case CellsRefusal::round_without_loops:
            return CommandLine::tr("a round leaves no stitches to work into");
        case CellsRefusal::loops_left_hanging:
            return CommandLine::tr("a round leaves stitches out in the middle");
        case CellsRefusal::oval_in_rows:
            return CommandLine::tr("rows around both sides of a chain cannot be worked out yet");
        case CellsRefusal::touches_itself:
            return CommandLine::tr("it has so few stitches somewhere that the fabric folds onto itself");
        case CellsRefusal::none:
            break;
    }
    return {};
}

QString refusal_words(const FabricStage& refused) {
    switch (refused.refusal) {
        case EveryStitchRefusal::no_cells:
            return cells_words(refused.cells);
        case EveryStitchRefusal::lies_limp:
            return CommandLine::tr("without stuffing it lies in two layers");
        case EveryStitchRefusal::not_solved:
        case EveryStitchRefusal::none:
            break;
    }
    return CommandLine::tr("no settled shape was found");
}

}  // namespace

void say_not_every_stitch(const QString& path, const Toy& toy, std::size_t piece,
                          const FabricStage& refused) {
    print_problem(CommandLine::tr("%1: %2: not worked out stitch by stitch: %3.")
                      .arg(path, piece_name(toy, piece), refusal_words(refused)));
}

double slant_wanted(const Arguments& arguments) {
    if (!arguments.has(QStringLiteral("slant"))) return usual_slant_stitches;
    const QString text = arguments.value(QStringLiteral("slant"));
    bool good = false;
    const double slant = text.toDouble(&good);
    if (good && std::abs(slant) <= largest_slant_stitches) return slant;
    throw Complaint{
        CommandLine::tr("--slant takes a number of stitches from -1 to 1, not \"%1\".").arg(text)};
}

void solve_every_stitch(const QString& path, const Toy& toy, std::vector<PieceStudy>& studies,
                        double slant_stitches) {
    for (std::size_t piece = 0; piece < studies.size(); ++piece) {
        if (!studies[piece].measures().usable()) continue;
        FabricStage stage = fabric_stage(toy.pieces[piece], studies[piece], nullptr, {}, slant_stitches);
        if (stage.shape->measures.converged())
            studies[piece] = with_sizes(with_shape(std::move(studies[piece]), stage.shape), toy, piece);
        else
            say_not_every_stitch(path, toy, piece, stage);
    }
}

}  // namespace roundwright::app
