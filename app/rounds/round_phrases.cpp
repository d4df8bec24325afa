#include "app/rounds/round_phrases.h"

#include <QCoreApplication>

namespace roundwright::app {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("RoundPhrases", text); }

}  // namespace

QString rounds_phrase(const std::vector<int>& rounds) {
    if (rounds.empty()) return tr("no round");
    if (rounds.size() == 1) return tr("round %1").arg(rounds.front() + 1);
    const bool unbroken = rounds.back() - rounds.front() + 1 == static_cast<int>(rounds.size());
    if (rounds.size() == 2) return tr("rounds %1 and %2").arg(rounds.front() + 1).arg(rounds.back() + 1);
    if (unbroken) return tr("rounds %1 to %2").arg(rounds.front() + 1).arg(rounds.back() + 1);
    return tr("%1 rounds").arg(rounds.size());
}

QString change_phrase(int change) {
    if (change == 0) return QStringLiteral("=");
    return change > 0 ? QStringLiteral("+%1").arg(change) : QStringLiteral("\u2212%1").arg(-change);
}

QString lie_phrase(Lie lie) {
    switch (lie) {
        case Lie::lies_flat:
            return tr("lies flat");
        case Lie::cups:
            return tr("cups");
        case Lie::even:
            return tr("even");
        case Lie::closes:
            return tr("closes");
        case Lie::gathers:
            return tr("gathers");
        case Lie::ruffles:
            return tr("ruffles");
    }
    return {};
}

QString lie_glyph(Lie lie) {
    switch (lie) {
        case Lie::lies_flat:
            return QStringLiteral("lie-flat");
        case Lie::cups:
            return QStringLiteral("lie-cups");
        case Lie::even:
            return QStringLiteral("lie-even");
        case Lie::closes:
            return QStringLiteral("lie-closes");
        case Lie::gathers:
            return QStringLiteral("lie-gathers");
        case Lie::ruffles:
            return QStringLiteral("lie-ruffles");
    }
    return {};
}

}  // namespace roundwright::app
