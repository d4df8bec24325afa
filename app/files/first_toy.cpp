#include "app/files/first_toy.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

std::string tr(const char* text) { return QCoreApplication::translate("FirstToy", text).toStdString(); }

}  // namespace

Toy first_toy() {
    Toy toy;
    toy.title = tr("Seal pup of the harbour");
    toy.hook_mm = 3.5;
    toy.gauge = EstimatedGauge{YarnWeight::light};
    Yarn fog;
    fog.name = tr("Fog grey");
    fog.colour = {198, 206, 210};
    Yarn tide;
    tide.name = tr("Tide blue");
    tide.colour = {84, 122, 149};
    toy.yarns = {fog, tide};
    Piece head;
    head.name = tr("Head");
    for (const int stitches : {6, 12, 18, 24, 30, 36, 36, 36, 36, 36}) {
        Round round;
        round.working =
            WorkedEvenly{stitches, StitchKind::single_crochet, LoopPart::both, Spacing::staggered};
        head.rounds.push_back(round);
    }
    toy.pieces.push_back(head);
    return toy;
}

}  // namespace roundwright::app
