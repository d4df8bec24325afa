#include "render/wording/pattern/assembly_words.h"

#include <cmath>
#include <cstdlib>

#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

/// Turns and leanings below this do not show in a toy that is sewn by hand.
constexpr double least_degrees = 8;
constexpr double least_sink_mm = 2;

int whole(double number) { return static_cast<int>(std::lround(number)); }
bool is_pair(const SewingStep& step) { return step.copies > 1; }

QString between(const SewingStep& step) {
    return Pattern::tr("between rounds %1 and %2").arg(step.round).arg(step.round + 1);
}

/// Of a pair: how far from each other, by the shorter way across.
QString apart(const SewingStep& step) {
    const int across_front = whole(2 * std::abs(step.stitches_right));
    const int across_back = step.onto_stitches - across_front;
    if (std::abs(across_front - across_back) <= 1)
        return Pattern::tr("%1, one on each side").arg(between(step));
    if (across_front < across_back)
        return Pattern::tr("%1, %n stitch(es) apart", nullptr, across_front).arg(between(step));
    return Pattern::tr("%1, %n stitch(es) apart across the back", nullptr, across_back).arg(between(step));
}

QString from_middle(const SewingStep& step) {
    const int right = whole(step.stitches_right);
    if (right == 0) return Pattern::tr("%1, at the middle of the front").arg(between(step));
    if (2 * std::abs(right) >= step.onto_stitches - 1)
        return Pattern::tr("%1, at the middle of the back").arg(between(step));
    if (right > 0)
        return Pattern::tr("%1, %n stitch(es) to the right of the middle of the front", nullptr, right)
            .arg(between(step));
    return Pattern::tr("%1, %n stitch(es) to the left of the middle of the front", nullptr, -right)
        .arg(between(step));
}

QString edge_words(const SewingStep& step) {
    return is_pair(step)
               ? Pattern::tr(
                     "%1: Pin the open edges to %2 %3, and sew them on all round with the yarn tails.")
               : Pattern::tr("%1: Pin the open edge to %2 %3, and sew it on all round with the yarn tail.");
}

QString straight_words(const SewingStep& step) {
    return is_pair(step) ? Pattern::tr(
                               "%1: Press the edges flat, pin them to %2 %3, and sew them on through both "
                               "layers with the yarn tails.")
                         : Pattern::tr(
                               "%1: Press the edge flat, pin it to %2 %3, and sew it on through both layers "
                               "with the yarn tail.");
}

QString closed_words(const SewingStep& step) {
    if (step.onto_open && !is_pair(step))
        return Pattern::tr("%1: Set it on %2 %3, and sew the edge to it all round.");
    return is_pair(step)
               ? Pattern::tr("%1: Hold them against %2 %3, and sew them on where they touch.")
               : Pattern::tr("%1: Hold it against %2 %3, and sew it on in a ring where the two touch.");
}

QString hung_words(const SewingStep& step) {
    return is_pair(step) ? Pattern::tr("%1: Sew the tips to %2 %3, each to one stitch, and let them hang.")
                         : Pattern::tr("%1: Sew the tip to one stitch of %2 %3, and let it hang.");
}

QString layers_words(const SewingStep& step) {
    return is_pair(step)
               ? Pattern::tr("%1: Lay them flat on %2 with their middles %3, and sew all round the edges.")
               : Pattern::tr("%1: Lay it flat on %2 with its middle %3, and sew all round the edge.");
}

/// A strip that curls has no edge to sew around: its end is sewn.
QString coil_words(const SewingStep& step) {
    return is_pair(step)
               ? Pattern::tr(
                     "%1: Let them curl into coils, hold one end of each against %2 %3, and sew these on "
                     "with the yarn tails.")
               : Pattern::tr(
                     "%1: Let it curl into a coil, hold one end of it against %2 %3, and sew that on with "
                     "the yarn tail.");
}

QString seam_words(const SewingStep& step) {
    if (step.curls && step.seam != Seam::hung && step.seam != Seam::worked_on) return coil_words(step);
    switch (step.seam) {
        case Seam::edge:
            return edge_words(step);
        case Seam::closed:
            return closed_words(step);
        case Seam::straight:
            return straight_words(step);
        case Seam::hung:
            return hung_words(step);
        case Seam::layers:
            return layers_words(step);
        case Seam::worked_on:
            return Pattern::tr("%1: There is nothing to sew to %2: they are one fabric.");
    }
    return {};
}

QString covers_words(const SewingStep& step) {
    if (!step.covers) return {};
    const QString ring = is_pair(step) ? Pattern::tr("Each edge makes a ring from round %1 to round %2.")
                                       : Pattern::tr("The edge makes a ring from round %1 to round %2.");
    return ring.arg(step.covers->first).arg(step.covers->last);
}

QString slant_words(const SewingStep& step, double turn_degrees) {
    if (step.seam != Seam::straight || step.curls) return {};
    const double turn = std::remainder(turn_degrees, 180);
    if (std::abs(turn) < least_degrees)
        return step.place == SewnPlace::gap ? Pattern::tr("The seam runs along the round.") : QString();
    if (std::abs(turn) > 90 - least_degrees) return Pattern::tr("The seam runs upright, across the rounds.");
    return Pattern::tr("The seam slants by about %1°.").arg(whole(std::abs(turn)));
}

QString lean_up_words(bool pair, double up) {
    if (std::abs(up) < least_degrees) return {};
    const int degrees = whole(std::abs(up));
    if (up > 0)
        return (pair ? Pattern::tr("Tilt them up by about %1°.") : Pattern::tr("Tilt it up by about %1°."))
            .arg(degrees);
    return (pair ? Pattern::tr("Tilt them down by about %1°.") : Pattern::tr("Tilt it down by about %1°."))
        .arg(degrees);
}

QString lean_aside_words(const Join& join, bool pair) {
    const double aside = join.lean_right_degrees;
    if (std::abs(aside) < least_degrees) return {};
    const int degrees = whole(std::abs(aside));
    if (pair) {
        const bool outwards = (aside > 0) == (join.at.stitches_right >= 0);
        return (outwards ? Pattern::tr("Tilt them outwards by about %1°.")
                         : Pattern::tr("Tilt them inwards by about %1°."))
            .arg(degrees);
    }
    return (aside > 0 ? Pattern::tr("Tilt it to the right by about %1°.")
                      : Pattern::tr("Tilt it to the left by about %1°."))
        .arg(degrees);
}

QString sink_words(const Join& join, bool pair) {
    if (join.sink_mm < least_sink_mm) return {};
    return pair ? Pattern::tr("Push them in a little as you sew.")
                : Pattern::tr("Push it in a little as you sew.");
}

QString stuffing_first_words(const SewingStep& step) {
    if (!step.stuffed_first) return {};
    if (step.seam == Seam::straight)
        return is_pair(step) ? Pattern::tr("Stuff them before you close the edges.")
                             : Pattern::tr("Stuff it before you close the edge.");
    return is_pair(step) ? Pattern::tr("Add a little stuffing to each before the last stitches.")
                         : Pattern::tr("Add a little stuffing before the last stitches.");
}

/// Filling, where "stuffing" is not what it is called.
QString stuffing_first_words(const SewingStep& step, Terms terms) {
    QString words = stuffing_first_words(step);
    if (terms == Terms::uk && step.stuffed_first && step.seam != Seam::straight)
        words = is_pair(step) ? Pattern::tr("Add a little filling to each before the last stitches.")
                              : Pattern::tr("Add a little filling before the last stitches.");
    return words;
}

QString pellets_first_words(const Piece& piece, const SewingStep& step) {
    if (!step.stuffed_first || !(piece.weight_grams > 0)) return {};
    return is_pair(step) ? Pattern::tr("The bags of pellets go in first.")
                         : Pattern::tr("The bag of pellets goes in first.");
}

/// A piece that is worked on others closes what is left between them.
QString worked_on_words(const Toy& toy, std::size_t piece) {
    return Pattern::tr(
               "%1: It is worked on the edges of %2, so there is no seam. Close any small hole where they "
               "meet with a few stitches.")
        .arg(piece_name_words(toy, piece), worked_on_names(toy, piece));
}

}  // namespace

QString joined_name_words(const Toy& toy, const SewingStep& step) {
    const QString name = piece_name_words(toy, step.piece);
    const int make = toy.pieces[step.piece].make;
    if (make == step.copies) return make > 1 ? Pattern::tr("%1 (%2)").arg(name).arg(make) : name;
    if (is_pair(step)) return Pattern::tr("%1 (%2 of %3)").arg(name).arg(step.copies).arg(make);
    return Pattern::tr("%1 (number %2 of %3)").arg(name).arg(step.first_copy + 1).arg(make);
}

QString sewn_place_words(const SewingStep& step) {
    switch (step.place) {
        case SewnPlace::start:
            return step.onto_open ? Pattern::tr("over the edge it starts with")
                                  : Pattern::tr("over the middle of its first round");
        case SewnPlace::last_edge:
            return step.onto_open ? Pattern::tr("over its open edge") : Pattern::tr("over its closed end");
        case SewnPlace::around:
            return Pattern::tr("%1, all the way round").arg(between(step));
        case SewnPlace::gap:
            return is_pair(step) ? apart(step) : from_middle(step);
    }
    return {};
}

QString sewing_step_words(const Toy& toy, const SewingStep& step, Terms terms) {
    const Join& join = toy.joins[step.join];
    const bool pair = is_pair(step);
    const double up = toy.pieces[step.onto].starts_at_top ? -join.lean_degrees : join.lean_degrees;
    QStringList said{seam_words(step).arg(joined_name_words(toy, step), piece_name_words(toy, step.onto),
                                          sewn_place_words(step)),
                     covers_words(step),
                     slant_words(step, join.turn_degrees),
                     lean_up_words(pair, up),
                     lean_aside_words(join, pair),
                     sink_words(join, pair),
                     pellets_first_words(toy.pieces[step.piece], step),
                     stuffing_first_words(step, terms)};
    said.removeAll(QString());
    return said.join(QLatin1Char(' '));
}

QStringList worked_out_assembly(const Toy& toy, const std::vector<SewingStep>& steps, Terms terms) {
    QStringList all;
    for (const std::size_t piece : working_order(toy))
        if (!worked_on_edges(toy, piece).empty()) all += worked_on_words(toy, piece);
    for (const SewingStep& step : steps)
        if (step.seam != Seam::worked_on) all += sewing_step_words(toy, step, terms);
    if (!all.isEmpty()) all += Pattern::tr("Weave in all ends.");
    return all;
}

QStringList assembly_words(const Toy& toy, const std::vector<SewingStep>& steps, Terms terms) {
    const QStringList own = paragraphs_of(toy.text.assembly);
    return own.isEmpty() ? worked_out_assembly(toy, steps, terms) : own;
}

QString working_order_words(const Toy& toy) {
    QStringList names;
    bool worked_on = false;
    for (const std::size_t piece : working_order(toy)) {
        names += piece_name_words(toy, piece);
        worked_on = worked_on || !worked_on_edges(toy, piece).empty();
    }
    if (!worked_on) return {};
    return Pattern::tr("Work the pieces in this order: %1.").arg(names.join(Pattern::tr(", ")));
}

}  // namespace roundwright::render
