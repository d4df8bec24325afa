#include "render/pages/section_words.h"

#include <algorithm>
#include <cmath>

#include "core/language/pattern/pattern_notes.h"
#include "core/language/round/write.h"
#include "core/materials/cost.h"
#include "core/shape/oval_plan.h"
#include "core/shape/reads_as_flat.h"
#include "core/toy/firmness.h"
#include "render/pages/layout/paragraph.h"
#include "render/pages/pattern_words.h"
#include "render/pages/small_parts.h"

namespace roundwright::render {
namespace {

bool is_brushed(const Toy& toy) {
    return std::any_of(toy.yarns.begin(), toy.yarns.end(), [](const Yarn& yarn) { return yarn.brushed; });
}

QString view(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString working_words(const Piece& piece, Terms terms) {
    if (piece.joining == Joining::spiral)
        return QString::fromUtf8(spiral_words.data(), static_cast<qsizetype>(spiral_words.size()));
    return QString::fromStdString(joining_words(piece.joining, terms));
}

QString firmness_words(double area_stretch) {
    switch (firmness_of(area_stretch)) {
        case Firmness::none:
            return words("Do not stuff.");
        case Firmness::light:
            return words("Stuff lightly.");
        case Firmness::medium:
            return words("Stuff so that it holds its shape but still gives.");
        case Firmness::firm:
            return words("Stuff firmly.");
    }
    return {};
}

/// "A, Night ink".
QString yarn_words(const Toy& toy, int yarn) {
    const QString letter = QString::fromStdString(yarn_letter(yarn));
    const QString name = printable_line(toy.yarns[static_cast<std::size_t>(yarn)].name);
    return name.isEmpty() ? letter : words("%1, %2").arg(letter, name);
}

QString measured_words(const FinishedSize& size, Units units) {
    const QString width = length_words(size.width_mm, units);
    if (size.wave_height_mm > 0) {
        return words("%1 across. The edge ruffles, in waves about %2 high.")
            .arg(width, length_words(size.wave_height_mm, units));
    }
    if (lies_flat(size)) return words("%1 across, flat.").arg(width);
    if (size.flattened)
        return words("%1 wide, %2 long, laid flat.").arg(width, length_words(size.height_mm, units));
    return words("%1 wide, %2 tall.").arg(width, length_words(size.height_mm, units));
}

QString sewn_straight_words(const Piece& piece, std::size_t pieces) {
    const QString off = pieces > 1 ? words("Fasten off and leave a long tail to sew with.")
                                   : words("Fasten off and leave a tail to sew with.");
    const QString sewn =
        piece.area_stretch > 0
            ? words("Stuff, press the last round flat and sew straight across it, through both layers.")
            : words("Press the piece flat and sew straight across the last round, through both layers.");
    return QStringLiteral("%1 %2").arg(off, sewn);
}

/// Of a piece that is not round as worked: what its size and its drawings are.
QString equivalent_round_words(const PieceStudy& study, Units units) {
    const QString instead = words("The size and the drawings show a round piece with the same stitches.");
    const auto plan = oval_plan(study.problem(), study.measures());
    if (!plan) return instead;
    return words("%1 Worked as an oval it is about %2 long and %3 wide.")
        .arg(instead, length_words(plan->length_mm, units), length_words(plan->width_mm, units));
}

}  // namespace

bool lies_flat(const FinishedSize& size) {
    return !size.flattened && reads_as_flat(size.width_mm.likely, size.height_mm.likely);
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

QString yarn_amount_words(const Yarn& yarn, const YarnUse& use, Units units) {
    const auto grams = [&](double metres, double weight) {
        return metres > 0 ? grams_upwards(weight / metres * printed_yarn_metres(metres, units)) : 0;
    };
    const Estimate printed{use.grams.likely, grams(use.metres.low, use.grams.low),
                           grams(use.metres.high, use.grams.high)};
    QString amount = weight_words(printed, units);
    if (const auto balls = balls_to_buy(yarn, printed))
        amount += QStringLiteral("\n") + counted(*balls, "ball", "balls");
    return amount;
}

QString yarn_estimate_words(const Toy& toy) {
    if (toy.making.yarn_per_ten_stitches_mm) {
        return words(
            "Amounts are worked out from the stitches and from ten of them undone and measured, with "
            "15\u00A0cm\u00A0(6\u00A0in) for each end. The larger figure is enough for most makers.");
    }
    return words(
        "Amounts are worked out from the stitches, each of which takes five to eight times its own width of "
        "yarn, with 15\u00A0cm\u00A0(6\u00A0in) for each end. The larger figure is enough for most makers.");
}

QString stuffing_words(const PatternStudy& study, const PatternOptions& options) {
    const Estimate& grams = study.materials.stuffing_g;
    if (grams.high <= 0) return {};
    const bool weighed = study.toy.making.stuffing_density_kg_per_m3.has_value();
    return (weighed
                ? words(options.terms,
                        "%1 of washable polyester fiberfill, by the weight of a stuffed piece.",
                        "%1 of washable toy filling, by the weight of a stuffed piece.")
                : words(options.terms,
                        "%1 of washable polyester fiberfill. This is a guess from the volume of the pieces: "
                        "have the larger amount on hand.",
                        "%1 of washable toy filling. This is a guess from the volume of the pieces: have the "
                        "larger amount to hand."))
        .arg(weight_words(grams, options.units));
}

QStringList notions_words(const Toy& toy) {
    const QStringList own = paragraphs_of(toy.text.notions);
    if (!own.isEmpty()) return own;
    return {is_brushed(toy) ? words("Tapestry needle, scissors, stitch marker, wire brush")
                            : words("Tapestry needle, scissors, stitch marker")};
}

QString gauge_heading_words(Terms terms) { return words(terms, "Gauge", "Tension"); }

QString other_gauges_heading_words(Terms terms) {
    return words(terms, "Size at other gauges", "Size at other tensions");
}

QString other_gauges_words(Terms terms) {
    return words(terms, "Width × height of each finished piece. This pattern's own gauge is in bold.",
                 "Width × height of each finished piece. This pattern's own tension is in bold.");
}

QString gauge_words(const PatternStudy& study, const PatternOptions& options) {
    return words("%1 stitches and %2 rounds of %3 = %4 × %4, worked in the round and not stuffed.")
        .arg(number_words(stitches_in_swatch(study.gauge.stitch_width_mm, options.units)),
             number_words(stitches_in_swatch(study.gauge.round_height_mm, options.units)),
             view(full_name(StitchKind::single_crochet, options.terms)), swatch_words(options.units));
}

QString gauge_source_words(const PatternStudy& study, Terms terms) {
    if (!study.gauge_known) {
        return words(terms,
                     "This gauge is only typical for the hook: it was not measured, and every size in the "
                     "pattern depends on it.",
                     "This tension is only typical for the hook: it was not measured, and every size in the "
                     "pattern depends on it.");
    }
    if (std::holds_alternative<EstimatedGauge>(study.toy.gauge)) {
        return words(
            "Estimated from the weight of the yarn and the hook (Craft Yarn Council, Standard Yarn Weight "
            "System), not measured.");
    }
    return words(
        terms,
        "Your gauge need not match exactly, but it sets the size, and the fabric must be tight enough "
        "to hide the stuffing.",
        "Your tension need not match exactly, but it sets the size, and the fabric must be tight "
        "enough to hide the filling.");
}

QString size_range_words(const PatternStudy& study, Terms terms) {
    const bool ranges = std::any_of(study.sizes.begin(), study.sizes.end(), [](const auto& size) {
        return size && size->width_mm.low < size->width_mm.high;
    });
    if (!ranges) return {};
    return words(
        terms,
        "Sizes in parentheses are the range in which about 9 in 10 toys should come out, as gauge and "
        "stuffing vary. It is an estimate, not counted from finished toys.",
        "Sizes in brackets are the range in which about 9 in 10 toys should come out, as tension and "
        "stuffing vary. It is an estimate, not counted from finished toys.");
}

QString gauge_circle_words(const PatternStudy& study, const PatternOptions& options) {
    return words(options.terms,
                 "To check your gauge, work a flat circle: 5 rounds of %1, starting with 6 and adding 6 in "
                 "each "
                 "round (30 stitches). It should measure %2 across.",
                 "To check your tension, work a flat circle: 5 rounds of %1, starting with 6 and adding 6 in "
                 "each round (30 stitches). It should measure %2 across.")
        .arg(view(full_name(StitchKind::single_crochet, options.terms)),
             length_words(2 * 5 * study.gauge.round_height_mm, options.units));
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
    if (study.pieces[i].problem().equivalent_round)
        facts += equivalent_round_words(study.pieces[i], options.units);
    if (piece.starts_at_top) facts += QString::fromStdString(top_down_words());
    facts += firmness_words(piece.area_stretch);
    facts += working_words(piece, options.terms);
    facts += piece_yarn_words(study.toy, written_rounds(piece, study.pieces[i].graph(), options.terms));
    facts.removeAll(QString());
    return facts;
}

QString end_words(const Piece& piece, std::size_t pieces) {
    if (piece.end == End::left_open && piece.area_stretch > 0) {
        return pieces > 1 ? words("Fasten off, leaving a long tail for sewing. Stuff before sewing on.")
                          : words("Fasten off, stuff, and sew the opening shut.");
    }
    if (piece.end == End::sewn_straight) return sewn_straight_words(piece, pieces);
    if (piece.end == End::drawn_closed) {
        return words(
            "Fasten off. Thread the tail through the front loops of the last round, pull tight to close the "
            "hole, and weave in the end.");
    }
    return pieces > 1 ? words("Fasten off, leaving a long tail for sewing.")
                      : words("Fasten off and weave in the end.");
}

QString piece_yarn_words(const Toy& toy, const std::vector<WrittenRounds>& rounds) {
    if (toy.yarns.empty() || rounds.empty()) return {};
    const WrittenRounds& first = rounds.front();
    if (first.several_yarns || static_cast<std::size_t>(first.yarn) >= toy.yarns.size()) return {};
    const bool one = std::all_of(rounds.begin(), rounds.end(), [&](const WrittenRounds& each) {
        return !each.several_yarns && each.yarn == first.yarn;
    });
    return (one ? words("Use yarn %1.") : words("Begin with yarn %1.")).arg(yarn_words(toy, first.yarn));
}

QString change_words(const Toy& toy, const WrittenRounds& rounds) {
    if (!rounds.new_yarn || static_cast<std::size_t>(rounds.yarn) >= toy.yarns.size()) return {};
    return words("Change to yarn %1.").arg(yarn_words(toy, rounds.yarn));
}

QString does_not_fit_words() {
    return words("This round cannot be worked as it stands: it does not fit the stitches below it.");
}

QString terms_words(Terms terms) {
    return terms == Terms::us ? words("This pattern uses US terms.") : words("This pattern uses UK terms.");
}

QString reading_words(Terms terms) {
    return words(
        terms,
        "Repeat the stitches in [brackets] as many times as the number after the x. The number in "
        "(parentheses) at the end of a round is its stitch count.",
        "Repeat the stitches in [square brackets] as many times as the number after the x. The number "
        "in (round brackets) at the end of a round is its stitch count.");
}

QStringList finishing_words(const Toy& toy, Terms terms) {
    const QStringList own = paragraphs_of(toy.text.finishing);
    if (!own.isEmpty() || !is_brushed(toy)) return own;
    return {
        words("Brush the fabric gently with a wire brush, a little at a time, until the pile covers the "
              "stitches."),
        words(terms, "Shake out and pick off all loose fiber.", "Shake out and pick off all loose fibre.")};
}

QStringList safety_words(const Toy& toy) {
    QStringList all;
    if (names_small_parts(toy)) {
        all += words(
            "Safety eyes, noses, buttons and beads are small parts and a choking hazard. For a child under "
            "three, or for anyone who puts things in their mouth, embroider the face or sew on felt "
            "instead.");
        all += words(
            "A safety eye only holds if its washer is pushed on all the way from inside, and it cannot be "
            "taken off again. Pull hard at every part before you give the toy away, and check them again "
            "from "
            "time to time.");
    } else {
        all += words(
            "If you add eyes, buttons or beads: they are small parts and a choking hazard. For a child under "
            "three, embroider the face or sew on felt instead.");
    }
    all += words(
        "A toy that you sell or give away must meet the toy safety rules of the place where you do so. In "
        "the "
        "European Union a soft toy for cuddling counts as a toy for children under three, whatever its label "
        "says. If in doubt, ask an accredited laboratory. This pattern certifies nothing.");
    return all;
}

}  // namespace roundwright::render
