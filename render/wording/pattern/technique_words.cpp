#include "render/wording/pattern/technique_words.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/language/words/in_language.h"
#include "render/wording/pattern/pattern_words.h"

namespace roundwright::render {
namespace {

/// A technique as it is told: stitches are named by the terms, the rest by their own names. {sc} and {dc}
/// stand for the short names of a single and of a double crochet, {Yo} and {yo} for a yarn over, {color} for
/// the word.
struct Told {
    Technique technique;
    std::optional<StitchKind> stitch;
    const char* short_name;
    const char* name;
    const char* working;
};

constexpr std::array told{
    Told{Technique::magic_ring,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "magic ring"),
         QT_TRANSLATE_NOOP("Pattern",
                           "Lay the yarn in a ring, draw up a loop and chain 1. Work the first round into "
                           "the ring and over the "
                           "tail, then pull the tail to close the hole.")},
    Told{Technique::chain, StitchKind::chain, "", "",
         QT_TRANSLATE_NOOP("Pattern", "{Yo}, draw through the loop on the hook.")},
    Told{Technique::foundation_ring,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "ring of chains"),
         QT_TRANSLATE_NOOP(
             "Pattern",
             "Make the chains and join the last to the first with a slip stitch, without twisting.")},
    Told{Technique::oval_start,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "oval start"),
         QT_TRANSLATE_NOOP(
             "Pattern",
             "Work along one side of the chain, go round its end, and come back along the other side.")},
    Told{Technique::slip_stitch, StitchKind::slip_stitch, "", "",
         QT_TRANSLATE_NOOP(
             "Pattern", "Insert the hook, {yo}, draw through the stitch and the loop on the hook at once.")},
    Told{Technique::single_crochet, StitchKind::single_crochet, "", "",
         QT_TRANSLATE_NOOP("Pattern", "Insert the hook, draw up a loop, {yo}, draw through both loops.")},
    Told{Technique::half_double_crochet, StitchKind::half_double_crochet, "", "",
         QT_TRANSLATE_NOOP("Pattern",
                           "{Yo}, insert the hook, draw up a loop, {yo}, draw through all three loops.")},
    Told{Technique::double_crochet, StitchKind::double_crochet, "", "",
         QT_TRANSLATE_NOOP("Pattern",
                           "{Yo}, insert the hook, draw up a loop; {yo} and draw through two loops, twice.")},
    Told{Technique::treble_crochet, StitchKind::treble_crochet, "", "",
         QT_TRANSLATE_NOOP(
             "Pattern",
             "{Yo} twice, insert the hook, draw up a loop; {yo} and draw through two loops, three "
             "times.")},
    Told{Technique::bobble, StitchKind::bobble, "", "",
         QT_TRANSLATE_NOOP("Pattern",
                           "Work 5 {dc} into one stitch, leaving the last loop of each on the hook; then "
                           "{yo} and draw through "
                           "all "
                           "loops.")},
    Told{Technique::skip, StitchKind::skip, "", "",
         QT_TRANSLATE_NOOP("Pattern", "Do not work into the stitch.")},
    Told{Technique::increase,
         {},
         QT_TRANSLATE_NOOP("Pattern", "inc"),
         QT_TRANSLATE_NOOP("Pattern", "increase"),
         QT_TRANSLATE_NOOP("Pattern", "Work 2 {sc} into one stitch: one stitch more.")},
    Told{Technique::decrease,
         {},
         QT_TRANSLATE_NOOP("Pattern", "dec"),
         QT_TRANSLATE_NOOP("Pattern", "decrease"),
         QT_TRANSLATE_NOOP(
             "Pattern",
             "Draw up a loop in each of the next two stitches, {yo}, draw through all three loops "
             "({sc}2tog): "
             "one stitch fewer.")},
    Told{Technique::invisible_decrease,
         {},
         QT_TRANSLATE_NOOP("Pattern", "invdec"),
         QT_TRANSLATE_NOOP("Pattern", "invisible decrease"),
         QT_TRANSLATE_NOOP("Pattern",
                           "Insert the hook through the front loops of the next two stitches, draw up one "
                           "loop through both, "
                           "{yo}, draw through both loops: one stitch fewer.")},
    Told{Technique::together,
         {},
         QT_TRANSLATE_NOOP("Pattern", "tog"),
         QT_TRANSLATE_NOOP("Pattern", "together"),
         QT_TRANSLATE_NOOP("Pattern",
                           "Work so many stitches, leaving the last loop of each on the hook; then {yo} and "
                           "draw through all "
                           "loops.")},
    Told{Technique::front_loop,
         {},
         QT_TRANSLATE_NOOP("Pattern", "FLO"),
         QT_TRANSLATE_NOOP("Pattern", "front loop only"),
         QT_TRANSLATE_NOOP("Pattern", "Work into the loop nearest to you.")},
    Told{Technique::back_loop,
         {},
         QT_TRANSLATE_NOOP("Pattern", "BLO"),
         QT_TRANSLATE_NOOP("Pattern", "back loop only"),
         QT_TRANSLATE_NOOP("Pattern", "Work into the loop away from you.")},
    Told{Technique::change_yarn,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "change of {color}"),
         QT_TRANSLATE_NOOP("Pattern", "Work the last {yo} of the stitch before with the new yarn.")},
    Told{Technique::draw_closed,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "drawing closed"),
         QT_TRANSLATE_NOOP("Pattern",
                           "Cut the yarn, thread the tail through the front loops of the last round, pull "
                           "tight and weave in.")},
    Told{Technique::fasten_off,
         {},
         "",
         QT_TRANSLATE_NOOP("Pattern", "fastening off"),
         QT_TRANSLATE_NOOP("Pattern", "Cut the yarn and pull the end through the last loop.")},
    Told{
        Technique::sew_straight,
        {},
        "",
        QT_TRANSLATE_NOOP("Pattern", "sewing straight across"),
        QT_TRANSLATE_NOOP(
            "Pattern",
            "Press the last round flat, so that its stitches lie in pairs; sew through both stitches of each "
            "pair, from one fold to the other.")},
};

QString view(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

QString words_or_none(const char* text) { return *text == 0 ? QString() : Pattern::tr(text); }

QString filled(const char* text, Terms terms) {
    const std::string two_together = said_in("sc2tog", terms);
    return words_or_none(text)
        .replace(QStringLiteral("{sc}2tog"),
                 is_english(terms) ? QStringLiteral("{sc}2tog") : QString::fromStdString(two_together))
        .replace(QStringLiteral("{sc}"), view(abbreviation(StitchKind::single_crochet, terms)))
        .replace(QStringLiteral("{dc}"), view(abbreviation(StitchKind::double_crochet, terms)))
        .replace(QStringLiteral("{Yo}"),
                 by_terms(terms, Pattern::tr("Yarn over"), Pattern::tr("Yarn round hook")))
        .replace(QStringLiteral("{yo}"),
                 by_terms(terms, Pattern::tr("yarn over"), Pattern::tr("yarn round hook")))
        .replace(QStringLiteral("{color}"), by_terms(terms, Pattern::tr("color"), Pattern::tr("colour")));
}

/// As the rounds write it in another language.
QString short_in(const Told& one, Terms terms) {
    if (one.stitch) return view(abbreviation(*one.stitch, terms));
    if (one.technique == Technique::together) return QString::fromStdString(said_in("sc3tog", terms));
    if (one.technique == Technique::magic_ring) return QString::fromStdString(said_in("magic ring", terms));
    return QString::fromStdString(said_in(one.short_name, terms));
}

/// "feste Masche (single crochet)": what the rounds say, and what it means.
QString name_in(const Told& one, Terms terms) {
    if (!one.stitch) return filled(one.name, terms);
    return Pattern::tr("%1 (%2)").arg(view(full_name(*one.stitch, terms)),
                                      view(full_name(*one.stitch, Terms::us)));
}

}  // namespace

std::vector<TechniqueWords> place_words(Terms terms) {
    if (is_english(terms)) return {{Pattern::tr("st, sts"), Pattern::tr("stitch, stitches"), {}}};
    const auto said = [terms](const char* english) {
        return QString::fromStdString(said_in(english, terms));
    };
    return {{said("st"), Pattern::tr("stitch, stitches"), {}},
            {said("rnd"), Pattern::tr("round"), {}},
            {said("around"), Pattern::tr("around"), {}},
            {said("in each st around"), Pattern::tr("in each stitch around"), {}},
            {said("in next st"), Pattern::tr("in the next stitch"), {}}};
}

TechniqueWords technique_words(Technique technique, Terms terms) {
    const auto* found = std::ranges::find(told, technique, &Told::technique);
    if (found == told.end()) return {};
    const QString working = filled(found->working, terms);
    if (!is_english(terms)) return {short_in(*found, terms), name_in(*found, terms), working};
    if (found->stitch)
        return {view(abbreviation(*found->stitch, terms)), view(full_name(*found->stitch, terms)), working};
    return {words_or_none(found->short_name), filled(found->name, terms), working};
}

}  // namespace roundwright::render
