#include "render/wording/reshape_words.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/base/units.h"
#include "render/wording/amounts.h"
#include "render/wording/counted.h"
#include "render/wording/length_text.h"
#include "render/wording/measure_words.h"
#include "render/wording/piece_name.h"

namespace roundwright {
namespace {

struct ReshapeWords {
    Q_DECLARE_TR_FUNCTIONS(ReshapeWords)
};

QString width_and_height_missed(const Reshaped& made, LengthUnit units) {
    const QString wide = length_text(made.wanted.width_mm, units);
    const QString tall = length_text(made.wanted.height_mm, units);
    if (made.code == ReshapeCode::width_not_met)
        return ReshapeWords::tr("%1 wide does not work out in whole stitches").arg(wide);
    if (made.code == ReshapeCode::height_not_met)
        return ReshapeWords::tr("%1 tall does not work out in whole rounds").arg(tall);
    return ReshapeWords::tr("%1 wide and %2 tall do not work out in whole stitches and rounds")
        .arg(wide, tall);
}

QString kept_words(const FrogBack& back) {
    const int rounds = back.keep_rounds;
    if (back.keep_stitches > 0) {
        const QString part =
            ReshapeWords::tr("the %1 of round %2").arg(stitches_words(back.keep_stitches)).arg(rounds + 1);
        return rounds == 0   ? part
               : rounds == 1 ? ReshapeWords::tr("round 1 and %1").arg(part)
                             : ReshapeWords::tr("rounds 1 to %1 and %2").arg(rounds).arg(part);
    }
    return rounds == 1 ? ReshapeWords::tr("round 1") : ReshapeWords::tr("rounds 1 to %1").arg(rounds);
}

// As `length_text` rounds.
double least_shown_mm(LengthUnit units) { return units == LengthUnit::inches ? mm_per_inch / 16 : 1; }

QString more_or_less(double mm, const QString& more, const QString& less, LengthUnit units) {
    return mm == 0 ? QString() : (mm > 0 ? more : less).arg(length_text(std::abs(mm), units));
}

// "That is 1 mm wider and 2 mm shorter than you asked for (48 mm wide, 44 mm tall)."
QString asked_words(const Reshaped& made, LengthUnit units) {
    const Size& asked = made.wanted;
    if (!(asked.width_mm > 0) || asked == made.reached()) return {};
    QStringList off{more_or_less(shown_difference_mm(made.reached().width_mm, asked.width_mm, units),
                                 ReshapeWords::tr("%1 wider"), ReshapeWords::tr("%1 narrower"), units),
                    more_or_less(shown_difference_mm(made.reached().height_mm, asked.height_mm, units),
                                 ReshapeWords::tr("%1 taller"), ReshapeWords::tr("%1 shorter"), units)};
    off.removeAll(QString());
    if (off.isEmpty()) return ReshapeWords::tr("Just the size you asked for.");
    return ReshapeWords::tr("That is %1 than you asked for (%2 wide, %3 tall).")
        .arg(off.size() == 2 ? ReshapeWords::tr("%1 and %2").arg(off[0], off[1]) : off[0],
             length_text(asked.width_mm, units), length_text(asked.height_mm, units));
}

QString with_more(const QString& words, const QString& more) {
    return more.isEmpty() ? words : words + QLatin1Char(' ') + more;
}

QString met_words(const Reshaped& made, LengthUnit units) {
    const QString words =
        with_more(ReshapeWords::tr("%1: %2.").arg(size_words(made.form, units), count_words(made.form)),
                  asked_words(made, units));
    if (made.returns_within_a_round) return words;
    return with_more(
        words,
        ReshapeWords::tr("One round makes a big difference at this size: resized back, the piece may be "
                         "more than a round off."));
}

}  // namespace

QString size_words(const PieceForm& form, LengthUnit units) {
    const SizeRange range = size_range(form);
    return QStringLiteral("%1, %2").arg(width_words(form.size().width_mm, range.width_mm, units),
                                        height_words(form.size().height_mm, range.height_mm, units));
}

double shown_difference_mm(double reached_mm, double asked_mm, LengthUnit units) {
    const double step = least_shown_mm(units);
    return step * (std::round(reached_mm / step) - std::round(asked_mm / step));
}

QString count_words(const PieceForm& form) {
    int stitches = 0;
    for (const GraphRound& round : form.graph.graph.rounds)
        stitches += static_cast<int>(round.stitches.size());
    return ReshapeWords::tr("%1, %2").arg(rounds_words(static_cast<int>(form.piece.rounds.size())),
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
            return ReshapeWords::tr("It is already that size: %1.").arg(size_words(made.form, units));
        case ReshapeCode::width_not_met:
        case ReshapeCode::height_not_met:
        case ReshapeCode::size_not_met:
            return with_more(ReshapeWords::tr("%1. The closest is %2: %3.")
                                 .arg(width_and_height_missed(made, units), size_words(made.form, units),
                                      count_words(made.form)),
                             asked_words(made, units));
        case ReshapeCode::nothing_wanted:
            return ReshapeWords::tr("Enter a width or a height.");
        case ReshapeCode::conflicting_target:
            return ReshapeWords::tr(
                "A scale sets width and height at once, so leave the other sizes out. And give either a "
                "width or "
                "a circumference, not both.");
        case ReshapeCode::unusable_target:
            return ReshapeWords::tr("Sizes must be greater than zero.");
        case ReshapeCode::too_small:
            return ReshapeWords::tr("That is too small to work in this yarn.");
        case ReshapeCode::too_large:
            return ReshapeWords::tr("That takes more rounds or stitches than a piece can have here.");
        case ReshapeCode::unusable_piece:
            return ReshapeWords::tr("This piece has no shape yet. Fix its rounds first.");
        case ReshapeCode::not_of_revolution:
            return ReshapeWords::tr("Only pieces that are round about an axis can be reshaped.");
        case ReshapeCode::cancelled:
            break;
    }
    return {};
}

QString form_outcome_words(const Reshaped& made, FormCounts counts, LengthUnit units) {
    if (counts == FormCounts::size || !has_piece(made.code)) return outcome_words(made, units);
    const QString comes_out =
        ReshapeWords::tr("Comes out %1: %2.").arg(size_words(made.form, units), count_words(made.form));
    if (made.code == ReshapeCode::met) return comes_out;
    return ReshapeWords::tr("%1 Choose tidy rounds to get closer to the size.").arg(comes_out);
}

QString undo_words(const FrogBack& back) {
    if (back.undo_rounds == 0) return ReshapeWords::tr("Undo nothing");
    return ReshapeWords::tr("Undo %1 (%2)")
        .arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
}

QString frog_back_words(const FrogBack& back) {
    const bool kept = back.keep_rounds > 0 || back.keep_stitches > 0;
    const QString undo = ReshapeWords::tr("undo %1 (%2)")
                             .arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
    if (kept && back.undo_rounds == 0)
        return ReshapeWords::tr("Keep %1 and go on from there.").arg(kept_words(back));
    if (kept) return ReshapeWords::tr("Keep %1, %2.").arg(kept_words(back), undo);
    if (back.undo_rounds == 0) return {};
    return ReshapeWords::tr("Keep nothing: undo all %1 (%2).")
        .arg(rounds_words(back.undo_rounds), stitches_words(back.undo_stitches));
}

QString freed_yarn_words(const FrogBack& back, LengthUnit units) {
    const Estimate yarn = back.yarn_mm();
    if (!(yarn.likely > 0)) return {};
    return ReshapeWords::tr("That frees about %1 of yarn (%2 to %3).")
        .arg(yarn_length_words(yarn.likely, units), yarn_length_words(yarn.low, units),
             yarn_length_words(yarn.high, units));
}

QString rewritten_words(const std::vector<int>& rounds) {
    if (rounds.empty()) return {};
    QStringList numbers;
    for (int round : rounds) numbers << QString::number(round + 1);
    return ReshapeWords::tr(
               "The wording of round(s) %1 no longer fits, so (it is/they are) worked evenly now.", nullptr,
               static_cast<int>(rounds.size()))
        .arg(numbers.join(QStringLiteral(", ")));
}

QString outline_words(double apart_mm, LengthUnit units) {
    if (apart_mm <= 0) return ReshapeWords::tr("the piece you asked for");
    if (apart_mm < least_shown_mm(units)) return ReshapeWords::tr("very close to the outline you asked for");
    return ReshapeWords::tr("%1 off the outline you asked for").arg(length_text(apart_mm, units));
}

QString off_line_words(double apart_mm, LengthUnit units) {
    if (apart_mm < least_shown_mm(units)) return ReshapeWords::tr("It follows the line closely.");
    return ReshapeWords::tr("Once stuffed, it is %1 off the line on average.")
        .arg(length_text(apart_mm, units));
}

QString whole_toy_words(int pieces, bool keeps_rounds) {
    if (keeps_rounds)
        return ReshapeWords::tr("All %n piece(s) (changes/change) too: a toy has one gauge.", nullptr,
                                pieces);
    return ReshapeWords::tr("All %n piece(s) (gets/get) new rounds.", nullptr, pieces);
}

QString missed_words(const Toy& toy, const std::vector<std::size_t>& pieces) {
    if (pieces.empty()) return {};
    QStringList names;
    for (const std::size_t piece : pieces) names << piece_name(toy, piece);
    return ReshapeWords::tr("These only come close to their size, or stay as they are: %1.")
        .arg(names.join(QStringLiteral(", ")));
}

QString form_name(FormKind kind) {
    switch (kind) {
        case FormKind::ball:
            return ReshapeWords::tr("Ball");
        case FormKind::egg:
            return ReshapeWords::tr("Egg");
        case FormKind::pear:
            return ReshapeWords::tr("Pear");
        case FormKind::cone:
            return ReshapeWords::tr("Cone");
        case FormKind::cylinder:
            return ReshapeWords::tr("Cylinder");
        case FormKind::bell:
            return ReshapeWords::tr("Bell");
        case FormKind::gourd:
            return ReshapeWords::tr("Gourd");
        case FormKind::half_ball:
            return ReshapeWords::tr("Half ball");
    }
    return {};
}

QString form_problem_words(FormCode code) {
    switch (code) {
        case FormCode::good:
            return {};
        case FormCode::size_not_positive:
            return ReshapeWords::tr("Every size must be greater than zero.");
        case FormCode::top_not_narrower:
            return ReshapeWords::tr("The top must be narrower than the widest part.");
        case FormCode::waist_not_narrower:
            return ReshapeWords::tr(
                "The waist must be narrower than the top, and the top no wider than the widest part.");
    }
    return {};
}

}  // namespace roundwright
