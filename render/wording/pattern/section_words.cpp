#include "render/wording/pattern/section_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/assembly/sewing_steps.h"
#include "core/language/pattern/pattern_notes.h"
#include "core/language/round/worked_on_words.h"
#include "core/language/round/write.h"
#include "core/language/words/in_language.h"
#include "core/materials/cost.h"
#include "core/rounds/piece_graph.h"
#include "core/shape/curled_strip.h"
#include "core/shape/oval_plan.h"
#include "core/study/coil_stage.h"
#include "core/toy/firmness.h"
#include "core/toy/stuffed_part.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/small_parts.h"
#include "render/wording/printable.h"
#include "render/wording/terms_words.h"

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
            return Pattern::tr("Do not stuff.");
        case Firmness::light:
            return Pattern::tr("Stuff lightly.");
        case Firmness::medium:
            return Pattern::tr("Stuff so that it holds its shape but still gives.");
        case Firmness::firm:
            return Pattern::tr("Stuff firmly.");
    }
    return {};
}

/// Of a piece that is stuffed in part: which rounds.
QString stuffed_part_words(const Piece& piece, const RoundSpan& rounds) {
    QString words = Pattern::tr("Stuff rounds %1 to %2 only, so that it holds its shape but still gives.");
    if (firmness_of(piece.area_stretch) == Firmness::light)
        words = Pattern::tr("Stuff rounds %1 to %2 only, lightly.");
    if (firmness_of(piece.area_stretch) == Firmness::firm)
        words = Pattern::tr("Stuff rounds %1 to %2 only, firmly.");
    return words.arg(rounds.first + 1).arg(rounds.last + 1);
}

QString stuffing_fact(const Piece& piece) {
    const auto part = stuffed_part(piece);
    return part ? stuffed_part_words(piece, *part) : firmness_words(piece.area_stretch);
}

/// Grams as they are weighed: whole ones, and below ten to the tenth.
QString weighed_number(double grams) {
    return grams < 10 ? number_words(grams) : QString::number(std::lround(grams));
}

QString weight_fact(const Piece& piece) {
    if (piece.weight_grams <= 0) return {};
    return Pattern::tr(
               "Sew %1 g of plastic pellets into a small bag of closely woven fabric, and lay it at the "
               "lowest point before the stuffing.")
        .arg(weighed_number(piece.weight_grams));
}

/// Where another piece is worked on from the last edge; empty where none is.
QString goes_on_words(const Toy& toy, std::size_t piece) {
    const auto later = goes_on_as(toy, piece);
    if (!later) return {};
    const QString name = piece_name_words(toy, *later);
    if (worked_on_edges(toy, *later).size() < 2)
        return Pattern::tr("Do not fasten off: %1 goes on from here.").arg(name);
    return Pattern::tr(
               "Fasten off, but not the last one that you make: %1 goes on from there around all the edges.")
        .arg(name);
}

/// "A, Night ink".
QString yarn_words(const Toy& toy, int yarn) {
    const QString letter = QString::fromStdString(yarn_letter(yarn));
    const QString name = printable_line(toy.yarns[static_cast<std::size_t>(yarn)].name);
    return name.isEmpty() ? letter : Pattern::tr("%1, %2").arg(letter, name);
}

QString measured_in_three(const FinishedSize& size, LengthUnit units) {
    const QString width = length_words(size.width_mm, units), depth = length_words(*size.depth_mm, units);
    if (lies_flat(size)) return Pattern::tr("%1 wide, %2 deep, flat.").arg(width, depth);
    return Pattern::tr("%1 wide, %2 deep, %3 tall.").arg(width, depth, length_words(size.height_mm, units));
}

QString measured_words(const FinishedSize& size, LengthUnit units) {
    const QString width = length_words(size.width_mm, units);
    if (size.wave_height_mm > 0) {
        return Pattern::tr("%1 across. The edge ruffles, in waves about %2 high.")
            .arg(width, length_words(size.wave_height_mm, units));
    }
    if (size.depth_mm) return measured_in_three(size, units);
    if (lies_flat(size)) return Pattern::tr("%1 across, flat.").arg(width);
    if (size.flattened)
        return Pattern::tr("%1 wide, %2 long, laid flat.").arg(width, length_words(size.height_mm, units));
    return Pattern::tr("%1 wide, %2 tall.").arg(width, length_words(size.height_mm, units));
}

QString sewn_straight_words(const Piece& piece, std::size_t pieces) {
    const QString off = pieces > 1 ? Pattern::tr("Fasten off and leave a long tail to sew with.")
                                   : Pattern::tr("Fasten off and leave a tail to sew with.");
    const QString sewn =
        piece.area_stretch > 0
            ? Pattern::tr("Stuff, press the last round flat and sew straight across it, through both layers.")
            : Pattern::tr(
                  "Press the piece flat and sew straight across the last round, through both layers.");
    return QStringLiteral("%1 %2").arg(off, sewn);
}

/// Of a strip with several stitches in every chain.
QString coil_words(const Coil& coil) {
    const int turns = static_cast<int>(std::lround(coil.radians / (2 * std::numbers::pi)));
    return turns > 1 ? Pattern::tr("It curls by itself into a coil of about %n turn(s).", nullptr, turns)
                     : Pattern::tr("It curls by itself.");
}

QString in_three_words(const FinishedSize& size, LengthUnit units) {
    const QString width = length_words(size.width_mm.likely, units);
    const QString depth = length_words(size.depth_mm->likely, units);
    if (lies_flat(size)) return Pattern::tr("%1 wide, %2 deep").arg(width, depth);
    return Pattern::tr("%1 wide, %2 deep, %3 tall")
        .arg(width, depth, length_words(size.height_mm.likely, units));
}

/// Of a piece that is not round as worked, and could not be solved stitch by stitch: what its size and its
/// drawings are.
QString equivalent_round_words(const PieceStudy& study, LengthUnit units) {
    if (study.measures().fidelity != Fidelity::equivalent_round) return {};
    const QString instead =
        Pattern::tr("The size and the drawings show a round piece with the same stitches.");
    const auto plan = oval_plan(study.problem(), study.measures());
    if (!plan) return instead;
    return Pattern::tr("%1 Worked as an oval it is about %2 long and %3 wide.")
        .arg(instead, length_words(plan->length_mm, units), length_words(plan->width_mm, units));
}

}  // namespace

bool lies_flat(const FinishedSize& size) { return !size.flattened && size.flat; }

QString whole_size_words(const PatternStudy& study, LengthUnit units) {
    if (study.toy.joins.empty() || !study.measures.usable()) return {};
    return Pattern::tr("%1 wide, %2 tall, %3 deep")
        .arg(length_words(study.measures.width_mm, units), length_words(study.measures.height_mm, units),
             length_words(study.measures.depth_mm, units));
}

QString piece_size_words(const FinishedSize& size, LengthUnit units) {
    if (size.depth_mm) return in_three_words(size, units);
    if (lies_flat(size)) return Pattern::tr("%1 across").arg(length_words(size.width_mm.likely, units));
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
    if (name.isEmpty()) name = Pattern::tr("Yarn");
    return yarn.brushed ? Pattern::tr("%1, brushed when finished").arg(name) : name;
}

QString yarn_length_range_words(const YarnUse& use, LengthUnit units) {
    const QString low = yarn_to_buy_number(use.metres.low, units);
    const QString high = yarn_to_buy_words(use.metres.high, units);
    return low == yarn_to_buy_number(use.metres.high, units) ? high : Pattern::tr("%1 to %2").arg(low, high);
}

QString yarn_amount_words(const Yarn& yarn, const YarnUse& use, LengthUnit units) {
    const auto grams = [&](double metres, double weight) {
        return metres > 0 ? grams_upwards(weight / metres * printed_yarn_metres(metres, units)) : 0;
    };
    const Estimate printed{use.grams.likely, grams(use.metres.low, use.grams.low),
                           grams(use.metres.high, use.grams.high)};
    QString amount = weight_words(printed, units);
    if (const auto balls = balls_to_buy(yarn, printed))
        amount += QStringLiteral("\n") + Pattern::tr("%n ball(s)", nullptr, static_cast<int>(*balls));
    return amount;
}

QString yarn_estimate_words(const Toy& toy) {
    const bool measured = toy.making.yarn_per_ten_stitches_mm.has_value();
    if (measured && toy.joins.empty()) {
        return Pattern::tr(
            "Amounts are worked out from the stitches and from ten of them undone and measured, with "
            "15\u00A0"
            "cm\u00A0(6\u00A0in) for each end. The larger figure is enough for most makers.");
    }
    if (measured) {
        return Pattern::tr(
            "Amounts are worked out from the stitches and from ten of them undone and measured, with "
            "15\u00A0"
            "cm\u00A0(6\u00A0in) for each end and enough to sew the pieces together. The larger figure is "
            "enough for most makers.");
    }
    if (toy.joins.empty()) {
        return Pattern::tr(
            "Amounts are worked out from the stitches, each of which takes five to eight times its own width "
            "of yarn, with 15\u00A0"
            "cm\u00A0(6\u00A0in) for each end. The larger figure is enough for most makers.");
    }
    return Pattern::tr(
        "Amounts are worked out from the stitches, each of which takes five to eight times its own width of "
        "yarn, with 15\u00A0"
        "cm\u00A0(6\u00A0in) for each end and enough to sew the pieces together. The larger figure is "
        "enough for most makers.");
}

QString stuffing_words(const PatternStudy& study, Terms terms, LengthUnit units) {
    const Estimate& grams = study.materials.stuffing_g;
    if (grams.high <= 0) return {};
    const bool weighed = study.toy.making.stuffing_density_kg_per_m3.has_value();
    return (weighed
                ? by_terms(
                      terms,
                      Pattern::tr("%1 of washable polyester fiberfill, by the weight of a stuffed piece."),
                      Pattern::tr("%1 of washable toy filling, by the weight of a stuffed piece."))
                : by_terms(
                      terms,
                      Pattern::tr("%1 of washable polyester fiberfill. This is a guess from the volume of "
                                  "the pieces: "
                                  "have the larger amount on hand."),
                      Pattern::tr("%1 of washable toy filling. This is a guess from the volume of the "
                                  "pieces: have the "
                                  "larger amount to hand.")))
        .arg(weight_words(grams, units));
}

QString pellets_words(const PatternStudy& study, LengthUnit units) {
    const Materials& taken = study.materials;
    if (!(taken.pellets_g > 0)) return {};
    return Pattern::tr("%1 of plastic pellets, and closely woven fabric for %n small bag(s).", nullptr,
                       taken.pellet_bags)
        .arg(weight_words(exactly(taken.pellets_g), units));
}

QStringList notions_words(const Toy& toy) {
    const QStringList own = paragraphs_of(toy.text.notions);
    if (!own.isEmpty()) return own;
    return {is_brushed(toy) ? Pattern::tr("Tapestry needle, scissors, stitch marker, wire brush")
                            : Pattern::tr("Tapestry needle, scissors, stitch marker")};
}

QString gauge_heading_words(Terms terms) {
    return by_terms(terms, Pattern::tr("Gauge"), Pattern::tr("Tension"));
}

QString other_gauges_heading_words(Terms terms) {
    return by_terms(terms, Pattern::tr("Size at other gauges"), Pattern::tr("Size at other tensions"));
}

QString other_gauges_words(Terms terms) {
    return by_terms(
        terms, Pattern::tr("Width × height of each finished piece. This pattern's own gauge is in bold."),
        Pattern::tr("Width × height of each finished piece. This pattern's own tension is in bold."));
}

QString gauge_words(const PatternStudy& study, Terms terms, LengthUnit units) {
    return Pattern::tr("%1 stitches and %2 rounds of %3 = %4 × %4, worked in the round and not stuffed.")
        .arg(number_words(stitches_in_swatch(study.gauge.stitch_width_mm, units)),
             number_words(stitches_in_swatch(study.gauge.round_height_mm, units)),
             view(full_name(StitchKind::single_crochet, terms)), swatch_words(units));
}

QString gauge_source_words(const PatternStudy& study, Terms terms) {
    if (!study.gauge_known) {
        return by_terms(
            terms,
            Pattern::tr("This gauge is only typical for the hook: it was not measured, and every size in the "
                        "pattern depends on it."),
            Pattern::tr(
                "This tension is only typical for the hook: it was not measured, and every size in the "
                "pattern depends on it."));
    }
    if (std::holds_alternative<EstimatedGauge>(study.toy.gauge)) {
        return Pattern::tr(
            "Estimated from the weight of the yarn and the hook (Craft Yarn Council, Standard Yarn Weight "
            "System), not measured.");
    }
    return by_terms(
        terms,
        Pattern::tr(
            "Your gauge need not match exactly, but it sets the size, and the fabric must be tight enough "
            "to hide the stuffing."),
        Pattern::tr("Your tension need not match exactly, but it sets the size, and the fabric must be tight "
                    "enough to hide the filling."));
}

QString size_range_words(const PatternStudy& study, Terms terms) {
    const bool ranges = std::any_of(study.sizes.begin(), study.sizes.end(), [](const auto& size) {
        return size && size->width_mm.low < size->width_mm.high;
    });
    if (!ranges) return {};
    return by_terms(
        terms,
        Pattern::tr(
            "Sizes in parentheses are the range in which about 9 in 10 toys should come out, as gauge and "
            "stuffing vary. It is an estimate, not counted from finished toys."),
        Pattern::tr(
            "Sizes in brackets are the range in which about 9 in 10 toys should come out, as tension and "
            "stuffing vary. It is an estimate, not counted from finished toys."));
}

QString gauge_circle_words(const PatternStudy& study, Terms terms, LengthUnit units) {
    return by_terms(
               terms,
               Pattern::tr(
                   "To check your gauge, work a flat circle: 5 rounds of %1, starting with 6 and adding 6 in "
                   "each "
                   "round (30 stitches). It should measure %2 across."),
               Pattern::tr("To check your tension, work a flat circle: 5 rounds of %1, starting with 6 and "
                           "adding 6 in "
                           "each round (30 stitches). It should measure %2 across."))
        .arg(view(full_name(StitchKind::single_crochet, terms)),
             length_words(2 * 5 * study.gauge.round_height_mm, units));
}

QString piece_name_words(const Toy& toy, std::size_t piece) {
    const QString name = printable_line(toy.pieces[piece].name);
    return name.isEmpty() ? Pattern::tr("Piece %1").arg(piece + 1) : name;
}

QStringList piece_fact_words(const PatternStudy& study, std::size_t i, Terms terms, LengthUnit units) {
    const Piece& piece = study.toy.pieces[i];
    QStringList facts;
    if (piece.make > 1) facts += Pattern::tr("Make %1.").arg(piece.make);
    if (const auto& size = study.sizes[i]) facts += measured_words(*size, units);
    if (const auto coil = study_coil(piece, study.pieces[i])) facts += coil_words(*coil);
    facts += equivalent_round_words(study.pieces[i], units);
    if (piece.starts_at_top) facts += QString::fromStdString(top_down_words());
    if (!is_coil(study.pieces[i]) || piece.area_stretch != medium_stuffing_stretch)
        facts += stuffing_fact(piece);
    facts += weight_fact(piece);
    facts += working_words(piece, terms);
    facts += piece_yarn_words(study.toy, written_rounds(piece, study.pieces[i].graph(), terms));
    facts.removeAll(QString());
    return facts;
}

QString worked_on_names(const Toy& toy, std::size_t piece) {
    QStringList names;
    std::vector<PieceId> named;
    const std::vector<PieceCopy> edges = worked_on_edges(toy, piece);
    for (const PieceCopy& edge : edges) {
        if (std::ranges::find(named, edge.piece) != named.end()) continue;
        named.push_back(edge.piece);
        const auto copies = std::ranges::count(edges, edge.piece, &PieceCopy::piece);
        const QString name = piece_name_words(toy, *toy.pieces.index_of(edge.piece));
        names += copies > 1 ? Pattern::tr("%1 (%2)").arg(name).arg(copies) : name;
    }
    return names.join(Pattern::tr(", "));
}

QString start_line_words(const Toy& toy, std::size_t piece, Terms terms) {
    const auto* on = std::get_if<WorkedOn>(&toy.pieces[piece].start);
    if (on == nullptr) return QString::fromStdString(start_words(toy.pieces[piece], terms));
    const std::string start = worked_on_words(*on, worked_on_names(toy, piece).toStdString(),
                                              worked_on_edges(toy, piece).size() == 1);
    return QString::fromStdString(said_in(start, terms));
}

QString end_words(const Toy& toy, std::size_t index) {
    const Piece& piece = toy.pieces[index];
    const std::size_t pieces = toy.pieces.size();
    if (const QString on = goes_on_words(toy, index); !on.isEmpty()) return on;
    const bool holds_stuffing = !curls(piece, stitch_counts(piece_graph(piece).graph));
    if (piece.end == End::left_open && piece.area_stretch > 0 && holds_stuffing) {
        return pieces > 1 ? Pattern::tr("Fasten off, leaving a long tail for sewing. Stuff before sewing on.")
                          : Pattern::tr("Fasten off, stuff, and sew the opening shut.");
    }
    if (piece.end == End::sewn_straight) return sewn_straight_words(piece, pieces);
    if (piece.end == End::drawn_closed) {
        return Pattern::tr(
            "Fasten off. Thread the tail through the front loops of the last round, pull tight to close the "
            "hole, and weave in the end.");
    }
    return pieces > 1 ? Pattern::tr("Fasten off, leaving a long tail for sewing.")
                      : Pattern::tr("Fasten off and weave in the end.");
}

QString piece_yarn_words(const Toy& toy, const std::vector<WrittenRounds>& rounds) {
    if (toy.yarns.empty() || rounds.empty()) return {};
    const WrittenRounds& first = rounds.front();
    if (first.several_yarns || static_cast<std::size_t>(first.yarn) >= toy.yarns.size()) return {};
    const bool one = std::all_of(rounds.begin(), rounds.end(), [&](const WrittenRounds& each) {
        return !each.several_yarns && each.yarn == first.yarn;
    });
    return (one ? Pattern::tr("Use yarn %1.") : Pattern::tr("Begin with yarn %1."))
        .arg(yarn_words(toy, first.yarn));
}

QString change_words(const Toy& toy, const WrittenRounds& rounds) {
    if (!rounds.new_yarn || static_cast<std::size_t>(rounds.yarn) >= toy.yarns.size()) return {};
    return Pattern::tr("Change to yarn %1.").arg(yarn_words(toy, rounds.yarn));
}

QString does_not_fit_words() {
    return Pattern::tr("This round cannot be worked as it stands: it does not fit the stitches below it.");
}

QString terms_words(Terms terms) {
    if (!is_english(terms))
        return Pattern::tr("The rounds of this pattern are in %1.").arg(terms_in_words(terms));
    return terms == Terms::us ? Pattern::tr("This pattern uses US terms.")
                              : Pattern::tr("This pattern uses UK terms.");
}

QString reading_words(Terms terms) {
    return by_terms(
        terms,
        Pattern::tr(
            "Repeat the stitches in [brackets] as many times as the number after the x. The number in "
            "(parentheses) at the end of a round is its stitch count."),
        Pattern::tr(
            "Repeat the stitches in [square brackets] as many times as the number after the x. The number "
            "in (round brackets) at the end of a round is its stitch count."));
}

QStringList finishing_words(const Toy& toy, Terms terms) {
    const QStringList own = paragraphs_of(toy.text.finishing);
    if (!own.isEmpty() || !is_brushed(toy)) return own;
    return {Pattern::tr(
                "Brush the fabric gently with a wire brush, a little at a time, until the pile covers the "
                "stitches."),
            by_terms(terms, Pattern::tr("Shake out and pick off all loose fiber."),
                     Pattern::tr("Shake out and pick off all loose fibre."))};
}

namespace {

bool has_pellets(const Toy& toy) {
    return std::ranges::any_of(toy.pieces, [](const Piece& piece) { return piece.weight_grams > 0; });
}

}  // namespace

QStringList safety_words(const Toy& toy) {
    QStringList all;
    if (names_small_parts(toy)) {
        all += Pattern::tr(
            "Safety eyes, noses, buttons and beads are small parts and a choking hazard. For a child under "
            "three, or for anyone who puts things in their mouth, embroider the face or sew on felt "
            "instead.");
        all += Pattern::tr(
            "A safety eye only holds if its washer is pushed on all the way from inside, and it cannot be "
            "taken off again. Pull hard at every part before you give the toy away, and check them again "
            "from "
            "time to time.");
        if (has_pellets(toy))
            all += Pattern::tr(
                "Pellets are small parts too. Sew them into a bag of their own that they cannot come out of, "
                "even "
                "if a seam of the toy opens. For a child under three, leave them out.");
    } else {
        all += Pattern::tr(
            "If you add eyes, buttons or beads: they are small parts and a choking hazard. For a child under "
            "three, embroider the face or sew on felt instead.");
    }
    all += Pattern::tr(
        "A toy that you sell or give away must meet the toy safety rules of the place where you do so. In "
        "the "
        "European Union a soft toy for cuddling counts as a toy for children under three, whatever its label "
        "says. If in doubt, ask an accredited laboratory. This pattern certifies nothing.");
    return all;
}

}  // namespace roundwright::render
