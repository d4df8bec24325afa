#include "app/reshape/reshape_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "app/session/length_text.h"
#include "app/wording/counted.h"
#include "app/wording/measure_words.h"
#include "app/wording/piece_name.h"
#include "core/base/units.h"

namespace roundwright::app {
namespace {

constexpr double mm_in_metre = 1000;
constexpr double mm_in_yard = 914.4;

QString tr(const char* text) { return QCoreApplication::translate("ReshapeWords", text); }

QString width_and_height_missed(const Reshaped& made, LengthUnit units) {
    const QString wide = length_text(made.wanted.width_mm, units);
    const QString tall = length_text(made.wanted.height_mm, units);
    if (made.code == ReshapeCode::width_not_met)
        return tr("%1 wide cannot be met with whole stitches").arg(wide);
    if (made.code == ReshapeCode::height_not_met)
        return tr("%1 tall cannot be met with whole rounds").arg(tall);
    return tr("%1 wide and %2 tall cannot be met with whole stitches and rounds").arg(wide, tall);
}

QString kept_words(const FrogBack& back) {
    const int rounds = back.keep_rounds;
    if (back.keep_stitches > 0) {
        const QString part = tr("the %1 of round %2").arg(stitches_words(back.keep_stitches)).arg(rounds + 1);
        return rounds == 0   ? part
               : rounds == 1 ? tr("round 1 and %1").arg(part)
                             : tr("rounds 1 to %1 and %2").arg(rounds).arg(part);
    }
    return rounds == 1 ? tr("round 1") : tr("rounds 1 to %1").arg(rounds);
}

QString met_words(const Reshaped& made, LengthUnit units) {
    const QString words = tr("%1: %2.").arg(size_words(made.form, units), count_words(made.form));
    if (made.returns_within_a_round) return words;
    return tr("%1 Its rounds are coarse for this size: brought back to its old size, it may be more than a "
              "round off.")
        .arg(words);
}

// As `length_text` rounds.
double least_shown_mm(LengthUnit units) { return units == LengthUnit::inches ? mm_per_inch / 16 : 1; }

QString whole_or_tenth(double value) { return QLocale().toString(value, 'f', value < 9.95 ? 1 : 0); }

}  // namespace

QString size_words(const PieceForm& form, LengthUnit units) {
    const SizeRange range = size_range(form);
    return QStringLiteral("%1, %2").arg(width_words(form.shape.width_mm, range.width_mm, units),
                                        height_words(form.shape.height_mm, range.height_mm, units));
}

QString yarn_length_words(double mm, LengthUnit units) {
    if (units == LengthUnit::inches) return tr("%1 yd").arg(whole_or_tenth(mm / mm_in_yard));
    return tr("%1 m").arg(whole_or_tenth(mm / mm_in_metre));
}

QString count_words(const PieceForm& form) {
    int stitches = 0;
    for (const GraphRound& round : form.graph.graph.rounds)
        stitches += static_cast<int>(round.stitches.size());
    return tr("%1, %2").arg(rounds_words(static_cast<int>(form.piece.rounds.size())),
                            stitches_words(stitches));
}

QString rounds_in_short(const PieceForm& form) {
    QStringList words;
    const auto counts = stitch_counts(form.graph.graph);
    for (std::size_t i = 0; i < counts.size();) {
        std::size_t same = i;
        while (same < counts.size() && counts[same] == counts[i]) ++same;
        words << (same - i > 1 ? QStringLiteral("%1x%2").arg(counts[i]).arg(same - i)
                               : QString::number(counts[i]));
        i = same;
    }
    return words.join(QStringLiteral(", "));
}

QString outcome_words(const Reshaped& made, LengthUnit units) {
    switch (made.code) {
        case ReshapeCode::met:
            return met_words(made, units);
        case ReshapeCode::unchanged:
            return tr("It is that size already: %1.").arg(size_words(made.form, units));
        case ReshapeCode::width_not_met:
        case ReshapeCode::height_not_met:
        case ReshapeCode::size_not_met:
            return tr("%1. The nearest is %2: %3.")
                .arg(width_and_height_missed(made, units), size_words(made.form, units),
                     count_words(made.form));
        case ReshapeCode::nothing_wanted:
            return tr("Say how wide or how tall it should be.");
        case ReshapeCode::conflicting_target:
            return tr(
                "A scale says width and height at once: leave the other sizes away. The same goes for a "
                "circumference and a width.");
        case ReshapeCode::unusable_target:
            return tr("A size must be more than nothing.");
        case ReshapeCode::too_small:
            return tr("That is smaller than a few stitches of this yarn.");
        case ReshapeCode::too_large:
            return tr("That would be more rounds or stitches than a piece can have here.");
        case ReshapeCode::unusable_piece:
            return tr("This piece has no shape yet to start from: mend its rounds first.");
        case ReshapeCode::cancelled:
            break;
    }
    return {};
}

QString form_outcome_words(const Reshaped& made, FormCounts counts, LengthUnit units) {
    if (counts == FormCounts::size || !has_piece(made.code)) return outcome_words(made, units);
    const QString comes_out =
        tr("Comes out %1: %2.").arg(size_words(made.form, units), count_words(made.form));
    if (made.code == ReshapeCode::met) return comes_out;
    return tr("%1 Tidy rounds for the size come nearer to it.").arg(comes_out);
}

QString undo_words(const FrogBack& back) {
    if (back.undo_rounds == 0) return tr("Undo nothing");
    return tr("Undo %1 (%2)").arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
}

QString frog_back_words(const FrogBack& back) {
    const bool kept = back.keep_rounds > 0 || back.keep_stitches > 0;
    const QString undo =
        tr("undo %1 (%2)").arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
    if (kept && back.undo_rounds == 0) return tr("Keep %1 and go on from there.").arg(kept_words(back));
    if (kept) return tr("Keep %1, %2.").arg(kept_words(back), undo);
    if (back.undo_rounds == 0) return {};
    return tr("Keep nothing: undo all %1 (%2).")
        .arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
}

QString freed_yarn_words(const FrogBack& back, LengthUnit units) {
    const Estimate yarn = back.yarn_mm();
    if (!(yarn.likely > 0)) return {};
    return tr("About %1 of yarn comes free (%2 to %3).")
        .arg(yarn_length_words(yarn.likely, units), yarn_length_words(yarn.low, units),
             yarn_length_words(yarn.high, units));
}

QString rewritten_words(const std::vector<int>& rounds) {
    if (rounds.empty()) return {};
    QStringList numbers;
    for (int round : rounds) numbers << QString::number(round + 1);
    if (rounds.size() == 1)
        return tr("Round %1 was in words that no longer fit, and is worked evenly now.").arg(numbers.front());
    return tr("Rounds %1 were in words that no longer fit, and are worked evenly now.")
        .arg(numbers.join(QStringLiteral(", ")));
}

QString outline_words(double apart_mm, LengthUnit units) {
    if (apart_mm <= 0) return tr("the wanted piece");
    if (apart_mm < least_shown_mm(units)) return tr("hardly off the wanted outline");
    return tr("%1 off the wanted outline").arg(length_text(apart_mm, units));
}

QString off_line_words(double apart_mm, LengthUnit units) {
    if (apart_mm < least_shown_mm(units)) return tr("It follows the line closely.");
    return tr("Stuffed, it lies %1 off the line on the whole.").arg(length_text(apart_mm, units));
}

QString whole_toy_words(int pieces, bool keeps_rounds) {
    if (keeps_rounds) return tr("All %1 pieces change with it: a toy has one gauge.").arg(pieces);
    return tr("All %1 pieces get new rounds.").arg(pieces);
}

QString missed_words(const Toy& toy, const std::vector<std::size_t>& pieces) {
    if (pieces.empty()) return {};
    QStringList names;
    for (const std::size_t piece : pieces) names << piece_name(toy, piece);
    return tr("With whole stitches and rounds these come only near their size, or stay as they are: %1.")
        .arg(names.join(QStringLiteral(", ")));
}

QString form_name(FormKind kind) {
    switch (kind) {
        case FormKind::ball:
            return tr("Ball");
        case FormKind::egg:
            return tr("Egg");
        case FormKind::pear:
            return tr("Pear");
        case FormKind::cone:
            return tr("Cone");
        case FormKind::cylinder:
            return tr("Cylinder");
        case FormKind::bell:
            return tr("Bell");
        case FormKind::gourd:
            return tr("Gourd");
        case FormKind::half_ball:
            return tr("Half ball");
    }
    return {};
}

QString form_problem_words(FormCode code) {
    switch (code) {
        case FormCode::good:
            return {};
        case FormCode::size_not_positive:
            return tr("Every size must be more than nothing.");
        case FormCode::top_not_narrower:
            return tr("The top must be narrower than the whole.");
        case FormCode::waist_not_narrower:
            return tr("The waist must be narrower than the top, and the top no wider than the whole.");
    }
    return {};
}

}  // namespace roundwright::app
