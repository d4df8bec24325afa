#include "render/wording/cure_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/language/round/round_entry.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("Cures", text); }

/// "36", "13, 19, 25": the counts that the cure works.
QString counts_text(const Cure& cure) {
    std::vector<int> counts;
    for (const Round& round : cure.rounds) {
        if (const auto* even = std::get_if<WorkedEvenly>(&round.working)) counts.push_back(even->stitches);
    }
    return QString::fromStdString(write_round_entry(counts));
}

/// The stitches of the first round.
QString start_text(const Cure& cure) {
    const auto* even = cure.rounds.empty() ? nullptr : std::get_if<WorkedEvenly>(&cure.rounds[0].working);
    return QLocale().toString(even == nullptr ? 0 : even->stitches);
}

QString rounds_text(const Cure& cure) { return rounds_words(static_cast<int>(cure.rounds.size())); }

}  // namespace

QString cure_question(const Cure& cure) {
    switch (cure.kind) {
        case CureKind::spread_increases:
            return tr("Spread the increases over %1?").arg(rounds_text(cure));
        case CureKind::spread_decreases:
            return tr("Spread the decreases over %1?").arg(rounds_text(cure));
        case CureKind::set_count:
            return tr("Work %1 instead?").arg(counts_text(cure));
        case CureKind::add_even_round:
            return tr("Add an even round?");
        case CureKind::change_start_count:
            return tr("Start with %1, and work %2?").arg(start_text(cure), counts_text(cure));
        case CureKind::stagger_increases:
            return tr("Stagger the increases?");
        case CureKind::remove_flat_mark:
            return tr("Remove the mark?");
        case CureKind::mend_words:
            return cure.mend ? mend_question(*cure.mend) : tr("Fix the words?");
        case CureKind::stuff_softer:
            return tr("Stuff it less firmly?");
        case CureKind::move_feature:
            return tr("Move it to an earlier round?");
        case CureKind::space_features:
            return tr("Set them further apart?");
        case CureKind::embroider:
            return tr("Embroider instead?");
        case CureKind::smaller_feature:
            return tr("Use a smaller one?");
        case CureKind::remove_feature:
            return tr("Remove it?");
        case CureKind::renumber_words:
            return tr("Update the numbers?");
    }
    return {};
}

QString cure_label(const Cure& cure) {
    switch (cure.kind) {
        case CureKind::spread_increases:
        case CureKind::spread_decreases:
            return tr("Spread over %1").arg(rounds_text(cure));
        case CureKind::set_count:
            return cure.rounds.size() == 1 ? tr("Work %1").arg(counts_text(cure))
                                           : tr("Change %1").arg(rounds_text(cure));
        case CureKind::add_even_round:
            return tr("Add a round");
        case CureKind::change_start_count:
            return tr("Start with %1").arg(start_text(cure));
        case CureKind::stagger_increases:
            return tr("Stagger the increases");
        case CureKind::remove_flat_mark:
            return tr("Remove the mark");
        case CureKind::mend_words:
            return cure.mend ? mend_label(*cure.mend) : tr("Fix the words");
        case CureKind::stuff_softer:
            return tr("Stuff less firmly");
        case CureKind::move_feature:
            return tr("Move it");
        case CureKind::space_features:
            return tr("Further apart");
        case CureKind::embroider:
            return tr("Embroider");
        case CureKind::smaller_feature:
            return tr("Use a smaller one");
        case CureKind::remove_feature:
            return tr("Remove it");
        case CureKind::renumber_words:
            return tr("Update the numbers");
    }
    return {};
}

QString cure_step(const Cure& cure) {
    switch (cure.kind) {
        case CureKind::spread_increases:
            return tr("Spread increases");
        case CureKind::spread_decreases:
            return tr("Spread decreases");
        case CureKind::set_count:
        case CureKind::change_start_count:
            return tr("Change counts");
        case CureKind::add_even_round:
            return tr("Add an even round");
        case CureKind::stagger_increases:
            return tr("Stagger the increases");
        case CureKind::remove_flat_mark:
            return tr("Remove the flat mark");
        case CureKind::mend_words:
            return tr("Fix the words");
        case CureKind::stuff_softer:
            return tr("Change stuffing");
        case CureKind::move_feature:
            return tr("Move on the face");
        case CureKind::space_features:
            return tr("Space the pair");
        case CureKind::embroider:
            return tr("Embroider instead");
        case CureKind::smaller_feature:
            return tr("Change size on the face");
        case CureKind::remove_feature:
            return tr("Remove from the face");
        case CureKind::renumber_words:
            return tr("Update the numbers");
    }
    return {};
}

}  // namespace roundwright
