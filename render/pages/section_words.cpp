#include "render/pages/section_words.h"

#include <algorithm>
#include <cmath>

#include "core/instructions/pattern_notes.h"
#include "core/instructions/write.h"
#include "core/pattern/firmness.h"
#include "core/shape/oval_plan.h"
#include "core/shape/reads_as_flat.h"
#include "render/pages/paragraph.h"
#include "render/pages/pattern_words.h"
#include "render/pages/small_parts.h"

namespace roundwright::render {
namespace {

QString view(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString working_words(const Piece& piece, Terms terms) {
    if (piece.joining == Joining::spiral)
        return words("Worked in a spiral; mark the first stitch of each round and do not join.");
    return QString::fromStdString(joining_words(piece.joining, terms));
}

QString firmness_words(double area_stretch) {
    switch (firmness_of(area_stretch)) {
        case Firmness::none:
            return words("Not stuffed.");
        case Firmness::light:
            return words("Stuffed lightly.");
        case Firmness::medium:
            return words("Stuffed until it keeps its shape and still gives.");
        case Firmness::firm:
            return words("Stuffed firmly.");
    }
    return {};
}

QString measured_words(const FinishedSize& size, Units units) {
    const QString width = length_words(size.width_mm, units);
    if (lies_flat(size)) return words("%1 across, flat.").arg(width);
    return words("%1 wide, %2 high.").arg(width, length_words(size.height_mm, units));
}

/// Of a piece that is not round as worked: what its size and its drawings are.
QString equivalent_round_words(const PieceStudy& study, Units units) {
    const QString instead =
        words("Its size and its drawings are those of the round piece with the same stitches.");
    const auto plan = oval_plan(study.problem, study.shape);
    if (!plan) return instead;
    return words("%1 As an oval it is about %2 long and %3 wide.")
        .arg(instead, length_words(plan->length_mm, units), length_words(plan->width_mm, units));
}

}  // namespace

bool lies_flat(const FinishedSize& size) {
    return reads_as_flat(size.width_mm.likely, size.height_mm.likely);
}

QString piece_size_words(const FinishedSize& size, Units units) {
    if (lies_flat(size)) return words("%1 across").arg(length_words(size.width_mm.likely, units));
    return size_words(size.width_mm.likely, size.height_mm.likely, units);
}

QStringList paragraphs_of(const std::string& utf8) {
    QStringList paragraphs;
    for (const QString& line : printable(QString::fromStdString(utf8)).split(QLatin1Char('\n'))) {
        const QString text = line.simplified();
        if (!text.isEmpty()) paragraphs += text;
    }
    return paragraphs;
}

QString yarn_name_words(const Yarn& yarn) {
    QString name = printable_line(yarn.name);
    if (name.isEmpty()) name = words("Yarn");
    if (yarn.brushed) name += words(", brushed when finished");
    return name;
}

QString yarn_length_range_words(const YarnUse& use, Units units) {
    const QString low = yarn_length_words(use.metres.low, units);
    const QString high = yarn_length_words(use.metres.high, units);
    if (low == high) return high;
    return words("%1 to %2").arg(low.section(QLatin1Char(' '), 0, 0), high);
}

QString yarn_amount_words(const YarnUse& use, Units units) {
    QString amount = weight_words(use.grams, units);
    if (use.balls) amount += QStringLiteral("\n") + counted(*use.balls, "ball", "balls");
    return amount;
}

QString yarn_estimate_words(const Toy& toy) {
    if (toy.making.yarn_per_ten_stitches_mm) {
        return words(
            "Amounts are counted from the stitches, and from ten stitches undone and measured. "
            "Each end is given 15\u00A0cm\u00A0(6\u00A0in).");
    }
    return words(
        "Amounts are counted from the stitches: each takes five to eight times its own width of yarn. "
        "Each end is given 15\u00A0cm\u00A0(6\u00A0in).");
}

QString stuffing_words(const PatternStudy& study, Units units) {
    const Estimate& grams = study.materials.stuffing_g;
    if (grams.high <= 0) return {};
    const bool weighed = study.toy.making.stuffing_density_kg_per_m3.has_value();
    return (weighed
                ? words("%1 of washable fibrefill, by the weight of a stuffed piece.")
                : words("%1 of washable fibrefill. This is a guess from the volume of the pieces: have the "
                        "larger amount at hand."))
        .arg(weight_words(grams, units));
}

QStringList notions_words(const Toy& toy) {
    const QStringList own = paragraphs_of(toy.text.notions);
    if (!own.isEmpty()) return own;
    return {words("Tapestry needle"), words("Scissors"), words("Stitch marker")};
}

QString gauge_words(const PatternStudy& study, const PatternOptions& options) {
    return words("%1 stitches and %2 rounds of %3 measure %4 by %4, worked in the round before stuffing.")
        .arg(number_words(stitches_in_swatch(study.gauge.stitch_width_mm, options.units)),
             number_words(stitches_in_swatch(study.gauge.round_height_mm, options.units)),
             view(full_name(StitchKind::single_crochet, options.terms)), swatch_words(options.units));
}

QString gauge_source_words(const PatternStudy& study) {
    if (!study.gauge_known) {
        return words(
            "No gauge has been measured for this toy. This one is usual for the hook, and the sizes in the "
            "pattern are only as good as that.");
    }
    if (std::holds_alternative<EstimatedGauge>(study.toy.gauge)) {
        return words(
            "It is estimated from the yarn's weight and the hook (Craft Yarn Council, Standard Yarn Weight "
            "System); the sizes show the range that leaves.");
    }
    return words(
        "A toy does not need an exact gauge, but its size follows it, and the fabric has to be close enough "
        "to hide the stuffing.");
}

QString gauge_circle_words(Terms terms) {
    return words(
               "To measure yours, work five rounds of %1 with six increases each (30 stitches), lay the "
               "circle flat and measure across: the round height is a tenth of that.")
        .arg(view(full_name(StitchKind::single_crochet, terms)));
}

QString piece_name_words(const Toy& toy, std::size_t piece) {
    const QString name = printable_line(toy.pieces[piece].name);
    return name.isEmpty() ? words("Piece %1").arg(piece + 1) : name;
}

QStringList piece_fact_words(const PatternStudy& study, const PatternOptions& options, std::size_t i) {
    const Piece& piece = study.toy.pieces[i];
    QStringList facts;
    if (piece.make > 1) facts += words("Make %1.").arg(piece.make);
    if (const auto& size = study.sizes[i]) facts += measured_words(*size, options.units);
    if (study.pieces[i].problem.equivalent_round)
        facts += equivalent_round_words(study.pieces[i], options.units);
    if (piece.starts_at_top) facts += QString::fromStdString(top_down_words());
    facts += firmness_words(piece.area_stretch);
    facts += working_words(piece, options.terms);
    return facts;
}

QString end_words(const Piece& piece, std::size_t pieces) {
    if (piece.end == End::left_open && piece.area_stretch > 0) {
        return pieces > 1 ? words("Fasten off and leave a long tail to sew with. Stuff before sewing on.")
                          : words("Fasten off, stuff, and sew the opening shut.");
    }
    if (piece.end == End::drawn_closed) {
        return words(
            "Cut the yarn, thread the tail through the front loops of the last round, draw the hole closed "
            "and weave the end in.");
    }
    return pieces > 1 ? words("Fasten off and leave a long tail to sew with.")
                      : words("Fasten off and weave the end in.");
}

QString change_words(const Toy& toy, const WrittenRounds& rounds) {
    const auto yarn = static_cast<std::size_t>(rounds.yarn);
    if (!rounds.new_yarn || yarn >= toy.yarns.size()) return {};
    const QString letter = QString::fromStdString(yarn_letter(rounds.yarn));
    const QString name = printable_line(toy.yarns[yarn].name);
    return name.isEmpty() ? words("Change to yarn %1.").arg(letter)
                          : words("Change to yarn %1, %2.").arg(letter, name);
}

QString does_not_fit_words() {
    return words("This round does not come out over the stitches below it. Mend it before working it.");
}

QString terms_words(Terms terms) {
    return terms == Terms::us ? words("This pattern is written in US terms.")
                              : words("This pattern is written in UK terms.");
}

QString reading_words() {
    return words(
        "Work what stands in brackets as often as the number after it says. The number at the end of a line "
        "is the count of stitches when the round is done.");
}

QStringList finishing_words(const Toy& toy) {
    const QStringList own = paragraphs_of(toy.text.finishing);
    const bool brushed =
        std::any_of(toy.yarns.begin(), toy.yarns.end(), [](const Yarn& yarn) { return yarn.brushed; });
    if (!own.isEmpty() || !brushed) return own;
    return {words("Brush the fabric gently with a wire brush, a little at a time, until the pile covers the "
                  "stitches."),
            words("Shake out and pick off all loose fibre.")};
}

QStringList safety_words(const Toy& toy) {
    QStringList all;
    if (names_small_parts(toy)) {
        all += words(
            "Safety eyes, noses, buttons and beads are small parts and a choking hazard. For a child under "
            "three, or for anyone who puts things into the mouth, embroider the features or sew on felt "
            "instead.");
        all += words(
            "A safety eye holds only if its washer is pressed on fully from inside; it cannot be taken off "
            "again. Pull hard at every part before you give the toy away, and again from time to time.");
    } else {
        all += words(
            "If you add eyes, buttons or beads: they are small parts and a choking hazard. For a child under "
            "three, embroider the features or sew on felt instead.");
    }
    all += words(
        "A toy that is sold or given away has to meet the toy safety standards of the place where that "
        "happens; in the European Union a soft-filled toy for cuddling counts as a toy for children under "
        "three, whatever its label says. Ask an accredited laboratory. This pattern certifies nothing.");
    return all;
}

}  // namespace roundwright::render
