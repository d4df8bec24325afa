#include "render/wording/round_by_round.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/width_profile.h"
#include "render/wording/length_text.h"
#include "render/wording/round_phrases.h"

namespace roundwright {
namespace {

struct RoundByRound {
    Q_DECLARE_TR_FUNCTIONS(RoundByRound)
};

QString at_loop(const PieceStudy& study, std::size_t loop, LengthUnit units) {
    const QString wide = length_text(study.measures().loops[loop].width_mm, units);
    return loop == 0 ? RoundByRound::tr("the start (%1)").arg(wide)
                     : RoundByRound::tr("round %1 (%2)").arg(QString::number(loop), wide);
}

}  // namespace

QString profile_words(const PieceStudy& study, LengthUnit units) {
    const auto profile = width_profile(study.measures());
    if (!profile) return {};
    QStringList words{RoundByRound::tr("widest at %1").arg(at_loop(study, profile->widest, units))};
    if (profile->narrows_from)
        words << RoundByRound::tr("narrowing from round %1").arg(*profile->narrows_from);
    for (const std::size_t neck : profile->necks)
        words << RoundByRound::tr("neck at %1").arg(at_loop(study, neck, units));
    return words.join(QStringLiteral(", "));
}

QStringList round_by_round(const Piece& piece, const PieceStudy& study, Terms terms, LengthUnit units) {
    const auto& graph = study.graph().graph;
    const std::size_t rounds = piece.rounds.size();
    if (study.measures().rounds() != rounds || graph.rounds.size() != rounds || study.lies().size() != rounds)
        return {};
    const auto counts = stitch_counts(graph);
    QStringList lines;
    for (std::size_t k = 0; k < rounds; ++k) {
        const LoopMeasures& loop = study.measures().round(k);
        const RoundLie& lie = study.lies()[k];
        lines << RoundByRound::tr("Round %1: %2 (%3). %4 wide, %5 up, %6; growth %7, stretch around %8 %.")
                     .arg(QString::number(k + 1),
                          QString::fromStdString(round_words(graph, static_cast<int>(k), terms, piece)),
                          QString::number(counts[k]), length_text(loop.width_mm, units),
                          length_text(loop.height_mm, units), lie_phrase(lie.lie),
                          QLocale().toString(lie.growth, 'f', 2),
                          QLocale().toString(100 * loop.course_stretch, 'f', 0));
    }
    return lines;
}

}  // namespace roundwright
