#include "render/wording/every_stitch_words.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

struct EveryStitchWords {
    Q_DECLARE_TR_FUNCTIONS(EveryStitchWords)
};

QString cells_words(CellsRefusal why) {
    switch (why) {
        case CellsRefusal::no_rounds:
            return EveryStitchWords::tr("it has no rounds");
        case CellsRefusal::round_without_loops:
            return EveryStitchWords::tr("a round leaves no stitches to work into");
        case CellsRefusal::loops_left_hanging:
            return EveryStitchWords::tr("a round leaves stitches out in the middle");
        case CellsRefusal::touches_itself:
            return EveryStitchWords::tr("it has so few stitches somewhere that the fabric folds onto itself");
        case CellsRefusal::none:
            break;
    }
    return EveryStitchWords::tr("its stitches do not make one fabric");
}

}  // namespace

QString not_every_stitch_words(EveryStitchRefusal why, CellsRefusal cells) {
    switch (why) {
        case EveryStitchRefusal::no_cells:
            return cells_words(cells);
        case EveryStitchRefusal::lies_limp:
            return EveryStitchWords::tr("without stuffing it lies in two layers");
        case EveryStitchRefusal::too_large:
            return EveryStitchWords::tr("it has too many stitches");
        case EveryStitchRefusal::not_solved:
        case EveryStitchRefusal::none:
            break;
    }
    return EveryStitchWords::tr("no settled shape was found");
}

}  // namespace roundwright
