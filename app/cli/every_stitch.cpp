#include "app/cli/every_stitch.h"

#include <cmath>
#include <utility>

#include "app/cli/command_line.h"
#include "app/cli/command_line_text.h"
#include "app/cli/complaint.h"
#include "app/cli/input_file.h"
#include "app/cli/output.h"
#include "render/wording/every_stitch_words.h"

namespace roundwright::app {

void say_not_every_stitch(const QString& path, const Toy& toy, std::size_t piece,
                          const FabricStage& refused) {
    print_problem(
        CommandLine::tr("%1: %2: not worked out stitch by stitch: %3.")
            .arg(path, piece_name(toy, piece), not_every_stitch_words(refused.refusal, refused.cells)));
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
        FabricStage stage =
            fabric_stage(toy.pieces[piece], studies[piece], studies[piece].shape, {}, slant_stitches);
        if (stage.shape->measures.converged())
            studies[piece] = with_sizes(with_shape(std::move(studies[piece]), stage.shape), toy, piece);
        else
            say_not_every_stitch(path, toy, piece, stage);
    }
}

}  // namespace roundwright::app
