#include "render/wording/cure_words.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/language/round/round_entry.h"
#include "render/wording/counted.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright {
namespace {

struct CuresText {
    Q_DECLARE_TR_FUNCTIONS(Cures)
};

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
            return CuresText::tr("Spread the increases over %1?").arg(rounds_text(cure));
        case CureKind::spread_decreases:
            return CuresText::tr("Spread the decreases over %1?").arg(rounds_text(cure));
        case CureKind::set_count:
            return CuresText::tr("Work %1 instead?").arg(counts_text(cure));
        case CureKind::add_even_round:
            return CuresText::tr("Add an even round?");
        case CureKind::change_start_count:
            return CuresText::tr("Start with %1, and work %2?").arg(start_text(cure), counts_text(cure));
        case CureKind::stagger_increases:
            return CuresText::tr("Stagger the increases?");
        case CureKind::remove_flat_mark:
            return CuresText::tr("Remove the mark?");
        case CureKind::mend_words:
            return cure.mend ? mend_question(*cure.mend) : CuresText::tr("Fix the words?");
        case CureKind::stuff_softer:
            return CuresText::tr("Stuff it less firmly?");
        case CureKind::move_feature:
            return CuresText::tr("Move it to an earlier round?");
        case CureKind::space_features:
            return CuresText::tr("Set them further apart?");
        case CureKind::embroider:
            return CuresText::tr("Embroider instead?");
        case CureKind::smaller_feature:
            return CuresText::tr("Use a smaller one?");
        case CureKind::remove_feature:
            return CuresText::tr("Remove it?");
        case CureKind::move_join:
            return CuresText::tr("Move it to the last round?");
        case CureKind::remove_join:
            return CuresText::tr("Take this join away?");
        case CureKind::change_start:
            return CuresText::tr("Work it over those?");
        case CureKind::words_still_fit:
            return CuresText::tr("Do they still fit?");
        case CureKind::renumber_words:
            return CuresText::tr("Update the numbers?");
    }
    return {};
}

QString cure_label(const Cure& cure) {
    switch (cure.kind) {
        case CureKind::spread_increases:
        case CureKind::spread_decreases:
            return CuresText::tr("Spread over %1").arg(rounds_text(cure));
        case CureKind::set_count:
            return cure.rounds.size() == 1 ? CuresText::tr("Work %1").arg(counts_text(cure))
                                           : CuresText::tr("Change %1").arg(rounds_text(cure));
        case CureKind::add_even_round:
            return CuresText::tr("Add a round");
        case CureKind::change_start_count:
            return CuresText::tr("Start with %1").arg(start_text(cure));
        case CureKind::stagger_increases:
            return CuresText::tr("Stagger the increases");
        case CureKind::remove_flat_mark:
            return CuresText::tr("Remove the mark");
        case CureKind::mend_words:
            return cure.mend ? mend_label(*cure.mend) : CuresText::tr("Fix the words");
        case CureKind::stuff_softer:
            return CuresText::tr("Stuff less firmly");
        case CureKind::move_feature:
            return CuresText::tr("Move it");
        case CureKind::space_features:
            return CuresText::tr("Further apart");
        case CureKind::embroider:
            return CuresText::tr("Embroider");
        case CureKind::smaller_feature:
            return CuresText::tr("Use a smaller one");
        case CureKind::remove_feature:
            return CuresText::tr("Remove it");
        case CureKind::move_join:
            return CuresText::tr("Move to the last round");
        case CureKind::remove_join:
            return CuresText::tr("Take the join away");
        case CureKind::change_start:
            return CuresText::tr("Work over those");
        case CureKind::words_still_fit:
            return CuresText::tr("They still fit");
        case CureKind::renumber_words:
            return CuresText::tr("Update the numbers");
    }
    return {};
}

QString cure_step(const Cure& cure) {
    switch (cure.kind) {
        case CureKind::spread_increases:
            return CuresText::tr("Spread increases");
        case CureKind::spread_decreases:
            return CuresText::tr("Spread decreases");
        case CureKind::set_count:
        case CureKind::change_start_count:
            return CuresText::tr("Change counts");
        case CureKind::add_even_round:
            return CuresText::tr("Add an even round");
        case CureKind::stagger_increases:
            return CuresText::tr("Stagger the increases");
        case CureKind::remove_flat_mark:
            return CuresText::tr("Remove the flat mark");
        case CureKind::mend_words:
            return CuresText::tr("Fix the words");
        case CureKind::stuff_softer:
            return CuresText::tr("Change stuffing");
        case CureKind::move_feature:
            return CuresText::tr("Move on the face");
        case CureKind::space_features:
            return CuresText::tr("Space the pair");
        case CureKind::embroider:
            return CuresText::tr("Embroider instead");
        case CureKind::smaller_feature:
            return CuresText::tr("Change size on the face");
        case CureKind::remove_feature:
            return CuresText::tr("Remove from the face");
        case CureKind::move_join:
            return CuresText::tr("Move a join");
        case CureKind::remove_join:
            return CuresText::tr("Take a join away");
        case CureKind::change_start:
            return CuresText::tr("Change the start");
        case CureKind::words_still_fit:
            return CuresText::tr("Keep the assembly steps");
        case CureKind::renumber_words:
            return CuresText::tr("Update the numbers");
    }
    return {};
}

}  // namespace roundwright
