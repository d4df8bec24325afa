#include "render/wording/check_sentence.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "render/wording/amounts.h"
#include "render/wording/as_sentence.h"
#include "render/wording/counted.h"
#include "render/wording/cure_words.h"
#include "render/wording/diagnostic_sentence.h"
#include "render/wording/feature_name.h"
#include "render/wording/length_text.h"
#include "render/wording/plain_text.h"

namespace roundwright {
namespace {

struct ChecksText {
    Q_DECLARE_TR_FUNCTIONS(Checks)
};

/// A check's arguments as words. An argument that is missing, or of another kind, reads as nought.
class Arguments {
  public:
    Arguments(const Check& check, LengthUnit units) : check_(check), units_(units) {}

    [[nodiscard]] int count(std::size_t index) const { return value<int>(index); }
    [[nodiscard]] double number(std::size_t index) const { return value<double>(index); }
    [[nodiscard]] double mm(std::size_t index) const { return value<Millimetres>(index).value; }
    [[nodiscard]] QString length(std::size_t index) const { return length_text(mm(index), units_); }
    [[nodiscard]] QString round() const { return QLocale().toString(check_.round + 1); }
    [[nodiscard]] LengthUnit units() const { return units_; }
    /// The name of another piece within a sentence; "another piece" where it has none.
    [[nodiscard]] QString piece(std::size_t index) const {
        const auto name = value<std::string>(index);
        return name.empty() ? ChecksText::tr("another piece") : name_in_words(name);
    }
    [[nodiscard]] bool is_named(std::size_t index) const { return !value<std::string>(index).empty(); }
    [[nodiscard]] bool is_text(std::size_t index) const {
        return index < check_.arguments.size() &&
               std::holds_alternative<std::string>(check_.arguments[index]);
    }
    /// "the safety eyes": what a check of the face is about.
    [[nodiscard]] QString feature(std::size_t index) const {
        return index < check_.features.size()
                   ? ChecksText::tr("the %1").arg(feature_name(check_.features[index]))
                   : ChecksText::tr("a part of the face");
    }
    [[nodiscard]] const ReadDiagnostic* reading() const {
        return check_.reading ? &*check_.reading : nullptr;
    }

  private:
    template <class Kind>
    [[nodiscard]] Kind value(std::size_t index) const {
        if (index >= check_.arguments.size()) return {};
        const auto* kind = std::get_if<Kind>(&check_.arguments[index]);
        return kind == nullptr ? Kind{} : *kind;
    }

    const Check& check_;
    LengthUnit units_;
};

QString too_many_increases(const Arguments& said) {
    return ChecksText::tr("Round %1 has %2 over %3. Increasing in every stitch makes %4: %5 (%6) too many.")
        .arg(said.round(), stitches_words(said.count(0)), QLocale().toString(said.count(1)),
             QLocale().toString(said.count(2)), stitches_words(said.count(0) - said.count(2)),
             said.length(3));
}

QString too_many_decreases(const Arguments& said) {
    return ChecksText::tr("Round %1 has %2 over %3. Decreasing all around leaves %4: %5 (%6) too few.")
        .arg(said.round(), stitches_words(said.count(0)), QLocale().toString(said.count(1)),
             QLocale().toString(said.count(2)), stitches_words(said.count(2) - said.count(0)),
             said.length(3));
}

QString growth(int more, double flat) {
    if (more == 0) return ChecksText::tr("as many stitches as the round below");
    if (more < 0) return ChecksText::tr("%1 fewer").arg(stitches_words(-more));
    return ChecksText::tr("%1 more where about %2 lie flat")
        .arg(stitches_words(more), about_stitches(flat, more));
}

QString waves(const Arguments& said) {
    return ChecksText::tr("The edge has %1 to spare, which makes waves %2 high.")
        .arg(said.length(4), said.length(3));
}

QString ruffles(const Arguments& said) {
    return ChecksText::tr("Round %1 ruffles: %2. %3")
        .arg(said.round(), growth(said.count(0), said.number(1)), waves(said));
}

QString ruffles_though_flat(const Arguments& said) {
    return ChecksText::tr("Round %1 is marked flat but ruffles: %2. %3")
        .arg(said.round(), growth(said.count(0), said.number(1)), waves(said));
}

QString cups_though_flat(const Arguments& said) {
    return ChecksText::tr("Round %1 is marked flat but rises by %2: %3.")
        .arg(said.round(), said.length(0), growth(said.count(1), said.number(2)));
}

QString gathers(const Arguments& said) {
    return ChecksText::tr("Round %1 gathers: %2 fewer at once draw %3 of the round below together.")
        .arg(said.round(), stitches_words(said.count(0)), said.length(1));
}

QString words_do_not_fit(const Arguments& said) {
    const QString why = said.reading() == nullptr ? QString() : diagnostic_sentence(*said.reading());
    const QString words =
        said.count(0) == said.count(1)
            ? ChecksText::tr("Round %1 does not work out as written. %2").arg(said.round(), why)
            : ChecksText::tr("Round %1 does not work out as written (%2). %3")
                  .arg(said.round(), said.length(2), why);
    return words.trimmed();
}

QString gauge_missing(const Arguments& said) {
    const double width = said.mm(0);
    if (!(width > 0)) return ChecksText::tr("There is no gauge yet.");
    return ChecksText::tr(
               "There is no gauge yet: sizes assume %1 to %2, typical for the hook, and may be off by %3 %.")
        .arg(stitches_words(static_cast<int>(std::lround(stitches_in_swatch(width, said.units())))),
             swatch_words(said.units()), QLocale().toString(std::lround(100 * said.mm(1) / width)));
}

QString not_converged(const Arguments& said) {
    const double width = said.mm(1);
    const double height = said.mm(2);
    if (width > 0 && height > 0) {
        const QString words = width > height
                                  ? ChecksText::tr(
                                        "No settled shape was found for these %1: by the gauge, a stitch "
                                        "is %2 times as wide as it is high. Check the gauge.")
                                  : ChecksText::tr(
                                        "No settled shape was found for these %1: by the gauge, a stitch "
                                        "is %2 times as high as it is wide. Check the gauge.");
        const double times = std::min(std::max(width / height, height / width), 1e9);
        return words.arg(rounds_words(said.count(0)), QLocale().toString(std::lround(times)));
    }
    if (said.count(1) > 0)
        return ChecksText::tr("No settled shape was found for these %1: round %2 goes from %3 to %4.")
            .arg(rounds_words(said.count(0)), said.round(), stitches_words(said.count(1)),
                 QLocale().toString(said.count(2)));
    return ChecksText::tr("No settled shape was found for these %1, so do not rely on the size.")
        .arg(rounds_words(said.count(0)));
}

QString too_many_stitches(const Arguments& said) {
    return ChecksText::tr("This piece has %1, and the limit is %2. Split it into several pieces.")
        .arg(stitches_words(said.count(0)), QLocale().toString(said.count(1)));
}

QString gaps(const Arguments& said) {
    return ChecksText::tr("Stuffing shows through at %3: round %1 stretches most, by %2 %.")
        .arg(said.round(), QLocale().toString(std::lround(said.number(0))), rounds_words(said.count(1)));
}

QString edge(const Arguments& said, const char* sentence) {
    return ChecksText::tr(sentence).arg(said.round(),
                                        QLocale().toString(std::lround(std::abs(said.number(0)))));
}

QString corners(const Arguments& said) {
    return ChecksText::tr(
               "The increases of rounds %1 to %2 line up: the edge gets %Ln corner(s), which (sticks/stick) "
               "out by up to %3.",
               nullptr, said.count(0))
        .arg(QLocale().toString(said.count(2)), QLocale().toString(said.count(3)), said.length(1));
}

QString widening_neck(const Arguments& said) {
    return ChecksText::tr("Stuffing widens the neck at round %1 to %2; its stitches alone make %3.")
        .arg(said.round(), said.length(0), said.length(1));
}

QString feature_lost(const Arguments& said) {
    return ChecksText::tr("The rounds that held %1 are gone.").arg(said.feature(0));
}

QString washer_too_late(const Arguments& said) {
    return ChecksText::tr("The %1 washer of %2 will not go in: by then the opening is only %3.")
        .arg(said.length(1), said.feature(0), said.length(2));
}

QString washer_rocks(const Arguments& said) {
    return ChecksText::tr("The %1 washer of %2 does not lie flat: the fabric curves away by %3.")
        .arg(said.length(1), said.feature(0), said.length(2));
}

QString features_touch(const Arguments& said) {
    const QString what = said.count(3) == 1 ? ChecksText::tr("washers") : ChecksText::tr("outlines");
    if (said.count(0) == said.count(1)) {
        return ChecksText::tr("%1 touch each other: their %2 overlap by %3.")
            .arg(as_sentence(said.feature(0)), what, said.length(2));
    }
    return ChecksText::tr("%1 and %2 touch: their %3 overlap by %4.")
        .arg(as_sentence(said.feature(0)), said.feature(1), what, said.length(2));
}

QString feature_too_large(const Arguments& said) {
    return ChecksText::tr("There is little room for %1: %2 wide where the piece is only %3 across.")
        .arg(said.feature(0), said.length(1), said.length(2));
}

/// Where words of the maker's stand and what they say.
QString said_at(const SaidPlace& place, int round) {
    switch (place.in) {
        case OwnWords::introduction:
            return ChecksText::tr("The introduction, line %1, says “%2”").arg(place.line);
        case OwnWords::notions:
            return ChecksText::tr("The notions, line %1, say “%2”").arg(place.line);
        case OwnWords::assembly:
            return ChecksText::tr("Assembly step %1 says “%2”").arg(place.line);
        case OwnWords::finishing:
            return ChecksText::tr("Finishing step %1 says “%2”").arg(place.line);
        case OwnWords::notes:
            return ChecksText::tr("The notes, line %1, say “%2”").arg(place.line);
        case OwnWords::round_note:
            return ChecksText::tr("The note on round %1 says “%2”").arg(round + 1);
    }
    return {};
}

QString said_words(const Check& check, const QString& why) {
    if (!check.said) return why;
    const QString place = said_at(*check.said, check.round).arg(name_in_words(check.said->words));
    return ChecksText::tr("%1: %2").arg(place, why);
}

QString said_round_moved(const Arguments& said) {
    return ChecksText::tr("that was written for %1, and there are %2 now.")
        .arg(rounds_words(said.count(0)), QLocale().toString(said.count(1)));
}

QString said_round_missing(const Arguments& said) {
    if (said.count(0) == 0) return ChecksText::tr("there are no rounds yet.");
    return ChecksText::tr("there are only %1.").arg(rounds_words(said.count(0)));
}

QString said_count_missing(const Arguments& said) {
    if (said.count(1) > 0) return ChecksText::tr("the open edge has %1.").arg(stitches_words(said.count(1)));
    return ChecksText::tr("no round has %1.").arg(stitches_words(said.count(0)));
}

QString odd_seam(const Arguments& said) {
    return ChecksText::tr("The last round has %1: sewn straight across, one has no partner.")
        .arg(stitches_words(said.count(0)));
}

QString join_without_piece(const Arguments& said) {
    if (said.is_named(0))
        return ChecksText::tr("A join to %1 is for number %2 of this piece, but there are fewer.")
            .arg(said.piece(0), QLocale().toString(said.count(1)));
    return ChecksText::tr("Something that is no longer there is still joined to it.");
}

QString join_without_round(const Arguments& said) {
    if (said.count(2) == 0)
        return ChecksText::tr("It is joined to %1, which has no rounds yet.").arg(said.piece(0));
    return ChecksText::tr("It is joined to %1 at round %2, and there are only %3.")
        .arg(said.piece(0), QLocale().toString(said.count(1)), rounds_words(said.count(2)));
}

QString edge_not_sewn(const Arguments& said) {
    const QString words = said.count(1) == 0 ? ChecksText::tr(
                                                   "Nothing is sewn to the edge it starts with (%1), and "
                                                   "the stuffing would show.")
                                             : ChecksText::tr(
                                                   "Nothing is sewn to its open edge (%1), and the stuffing "
                                                   "would show.");
    return words.arg(stitches_words(said.count(0)));
}

QString worked_on_other_count(const Arguments& said) {
    if (said.count(2) == 0)
        return ChecksText::tr("It is worked on the edges of other pieces, but none is joined to its start.");
    return ChecksText::tr(
               "Its first round is worked over %1, but the edges and chains it is worked on have %2.")
        .arg(stitches_words(said.count(0)), QLocale().toString(said.count(1)));
}

QString seam_length(const Arguments& said) {
    return ChecksText::tr("%1 are sewn to %2 along %3")
        .arg(as_sentence(stitches_words(said.count(1))), said.piece(0), said.length(2));
}

QString by_share(const Arguments& said) { return QLocale().toString(std::lround(std::abs(said.number(3)))); }

QString seam_gathers(const Arguments& said) {
    return ChecksText::tr("%1: the edge is %2 % too long for that, and gathers.")
        .arg(seam_length(said), by_share(said));
}

QString seam_stretches(const Arguments& said) {
    return ChecksText::tr("%1: the edge is %2 % too short for that, and has to be stretched.")
        .arg(seam_length(said), by_share(said));
}

/// Without another piece: two copies of the same.
QString pieces_overlap(const Arguments& said) {
    if (!said.is_text(0))
        return ChecksText::tr(
            "Two of them run into each other: one would be inside the other. Move them apart, or tilt them "
            "away.");
    return ChecksText::tr("It runs into %1: one would be inside the other. Move it, or tilt it away.")
        .arg(said.piece(0));
}

/// "between rounds 5 and 6", "at its start".
QString place_words(int round) {
    return round == 0 ? ChecksText::tr("at the start")
                      : ChecksText::tr("after round %1").arg(QLocale().toString(round));
}

QString joins_changed(const Arguments& said) {
    const int then = said.count(1);
    const int now = said.count(2);
    if (then < 0)
        return ChecksText::tr("It was joined to %1 after your assembly steps were written.")
            .arg(said.piece(0));
    if (now < 0)
        return ChecksText::tr(
                   "It is no longer joined to %1, as it was when your assembly steps were written.")
            .arg(said.piece(0));
    if (said.is_named(3))
        return ChecksText::tr("It was on %1 when your assembly steps were written; now it is on %2.")
            .arg(said.piece(3), said.piece(0));
    if (then != now)
        return ChecksText::tr("It was on %1 %2 when your assembly steps were written; now it is %3.")
            .arg(said.piece(0), place_words(then), place_words(now));
    return ChecksText::tr("How it sits on %1 has changed since your assembly steps were written.")
        .arg(said.piece(0));
}

/// How pieces are sewn together.
QString join_facts(CheckCode code, const Arguments& said) {
    switch (code) {
        case CheckCode::joined_in_a_circle:
            return ChecksText::tr("It is joined to %1, and that back to it, in a circle. One join has to go.")
                .arg(said.piece(0));
        case CheckCode::joined_twice:
            return ChecksText::tr("Number %2 of this piece is joined to %1 although it is already joined on.")
                .arg(said.piece(0), QLocale().toString(said.count(1)));
        case CheckCode::join_without_piece:
            return join_without_piece(said);
        case CheckCode::join_without_round:
            return join_without_round(said);
        case CheckCode::edge_not_sewn:
            return edge_not_sewn(said);
        case CheckCode::worked_on_other_count:
            return worked_on_other_count(said);
        case CheckCode::seam_gathers:
            return seam_gathers(said);
        case CheckCode::seam_stretches:
            return seam_stretches(said);
        case CheckCode::pieces_overlap:
            return pieces_overlap(said);
        case CheckCode::joins_changed:
            return joins_changed(said);
        default:
            return {};
    }
}

QString facts(const Check& check, const Arguments& said) {
    switch (check.code) {
        case CheckCode::too_many_increases:
            return too_many_increases(said);
        case CheckCode::too_many_decreases:
            return too_many_decreases(said);
        case CheckCode::ruffles:
            return ruffles(said);
        case CheckCode::cups_though_flat:
            return cups_though_flat(said);
        case CheckCode::ruffles_though_flat:
            return ruffles_though_flat(said);
        case CheckCode::gathers:
            return gathers(said);
        case CheckCode::words_do_not_fit:
            return words_do_not_fit(said);
        case CheckCode::gauge_missing:
            return gauge_missing(said);
        case CheckCode::not_converged:
            return not_converged(said);
        case CheckCode::too_many_stitches:
            return too_many_stitches(said);
        case CheckCode::gaps:
            return gaps(said);
        case CheckCode::ridge:
            return edge(said,
                        QT_TRANSLATE_NOOP("Checks", "A ridge shows at round %1: the fabric turns by %2°."));
        case CheckCode::crease:
            return edge(said,
                        QT_TRANSLATE_NOOP("Checks", "A crease shows at round %1: the fabric turns by %2°."));
        case CheckCode::corners:
            return corners(said);
        case CheckCode::widening_neck:
            return widening_neck(said);
        case CheckCode::feature_lost:
            return feature_lost(said);
        case CheckCode::washer_too_late:
            return washer_too_late(said);
        case CheckCode::washer_rocks:
            return washer_rocks(said);
        case CheckCode::features_touch:
            return features_touch(said);
        case CheckCode::odd_seam:
            return odd_seam(said);
        case CheckCode::rows_not_flattened:
            return ChecksText::tr(
                "A piece worked in rows has no last round to flatten and sew straight: leave its end open.");
        case CheckCode::feature_too_large:
            return feature_too_large(said);
        case CheckCode::said_round_moved:
            return said_words(check, said_round_moved(said));
        case CheckCode::said_round_missing:
            return said_words(check, said_round_missing(said));
        case CheckCode::said_count_missing:
            return said_words(check, said_count_missing(said));
        case CheckCode::joined_in_a_circle:
        case CheckCode::joined_twice:
        case CheckCode::join_without_piece:
        case CheckCode::join_without_round:
        case CheckCode::edge_not_sewn:
        case CheckCode::worked_on_other_count:
        case CheckCode::seam_gathers:
        case CheckCode::seam_stretches:
        case CheckCode::pieces_overlap:
        case CheckCode::joins_changed:
            return join_facts(check.code, said);
    }
    return {};
}

}  // namespace

QString check_sentence(const Check& check, LengthUnit units) {
    const QString sentence = facts(check, Arguments(check, units));
    if (check.cures.empty()) return sentence;
    if (check.said) {
        return ChecksText::tr("%1 Make it “%2”?").arg(sentence, name_in_words(check.said->becomes));
    }
    return QStringLiteral("%1 %2").arg(sentence, cure_question(check.cures.front()));
}

QString severity_words(Severity severity) {
    switch (severity) {
        case Severity::error:
            return ChecksText::tr("To fix");
        case Severity::warning:
            return ChecksText::tr("Worth a look");
        case Severity::note:
            return ChecksText::tr("Good to know");
    }
    return {};
}

}  // namespace roundwright
