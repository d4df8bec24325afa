#include "render/wording/round_phrases.h"

#include <QCoreApplication>

namespace roundwright {
namespace {

struct RoundPhrasesText {
    Q_DECLARE_TR_FUNCTIONS(RoundPhrases)
};

}  // namespace

QString rounds_phrase(const std::vector<int>& rounds) {
    if (rounds.empty()) return RoundPhrasesText::tr("no round");
    if (rounds.size() == 1) return RoundPhrasesText::tr("round %1").arg(rounds.front() + 1);
    const bool unbroken = rounds.back() - rounds.front() + 1 == static_cast<int>(rounds.size());
    if (rounds.size() == 2)
        return RoundPhrasesText::tr("rounds %1 and %2").arg(rounds.front() + 1).arg(rounds.back() + 1);
    if (unbroken)
        return RoundPhrasesText::tr("rounds %1 to %2").arg(rounds.front() + 1).arg(rounds.back() + 1);
    return RoundPhrasesText::tr("%n round(s)", nullptr, static_cast<int>(rounds.size()));
}

QString change_phrase(int change) {
    if (change == 0) return QStringLiteral("=");
    return change > 0 ? QStringLiteral("+%1").arg(change) : QStringLiteral("\u2212%1").arg(-change);
}

QString lie_phrase(Lie lie) {
    switch (lie) {
        case Lie::lies_flat:
            return RoundPhrasesText::tr("lies flat");
        case Lie::cups:
            return RoundPhrasesText::tr("cups");
        case Lie::even:
            return RoundPhrasesText::tr("even");
        case Lie::closes:
            return RoundPhrasesText::tr("closes");
        case Lie::gathers:
            return RoundPhrasesText::tr("gathers");
        case Lie::ruffles:
            return RoundPhrasesText::tr("ruffles");
    }
    return {};
}

}  // namespace roundwright
