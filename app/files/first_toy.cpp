#include "app/files/first_toy.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

struct FirstToyText {
    Q_DECLARE_TR_FUNCTIONS(FirstToy)
};

}  // namespace

Toy first_toy() {
    Toy toy;
    toy.title = FirstToyText::tr("Seal pup of the harbour").toStdString();
    toy.hook_mm = 3.5;
    toy.gauge = EstimatedGauge{YarnWeight::light};
    Yarn fog;
    fog.name = FirstToyText::tr("Fog grey").toStdString();
    fog.colour = {198, 206, 210};
    Yarn tide;
    tide.name = FirstToyText::tr("Tide blue").toStdString();
    tide.colour = {84, 122, 149};
    toy.yarns = {fog, tide};
    Piece head;
    head.name = FirstToyText::tr("Head").toStdString();
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
