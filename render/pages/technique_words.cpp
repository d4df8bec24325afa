#include "render/pages/technique_words.h"

#include "render/pages/pattern_words.h"

namespace roundwright::render {
namespace {

QString view(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

TechniqueWords stitch(StitchKind kind, Terms terms, const QString& working) {
    return {view(abbreviation(kind, terms)), view(full_name(kind, terms)), working};
}

/// A sentence with the short names of a single and of a double crochet put in.
QString filled(const char* text, Terms terms) {
    return words(text)
        .replace(QStringLiteral("{sc}"), view(abbreviation(StitchKind::single_crochet, terms)))
        .replace(QStringLiteral("{dc}"), view(abbreviation(StitchKind::double_crochet, terms)));
}

}  // namespace

TechniqueWords technique_words(Technique technique, Terms terms) {
    switch (technique) {
        case Technique::magic_ring:
            return {{},
                    words("magic ring"),
                    words("Lay the yarn in a ring, tail to the front, draw up a loop and chain 1; work the "
                          "first round over "
                          "ring and tail together, then pull the tail until the hole closes.")};
        case Technique::chain:
            return stitch(StitchKind::chain, terms, words("Yarn over, draw through the loop on the hook."));
        case Technique::foundation_ring:
            return {
                {},
                words("ring of chains"),
                words("Make the chains and join the last to the first with a slip stitch, without a twist.")};
        case Technique::oval_start:
            return {{},
                    words("oval start"),
                    words("Work along one side of the chain, go round its end, and come back along the other "
                          "side.")};
        case Technique::slip_stitch:
            return stitch(
                StitchKind::slip_stitch, terms,
                words(
                    "Insert the hook, yarn over, draw through the stitch and the loop on the hook at once."));
        case Technique::single_crochet:
            return stitch(StitchKind::single_crochet, terms,
                          words("Insert the hook, draw up a loop, yarn over, draw through both loops."));
        case Technique::half_double_crochet:
            return stitch(
                StitchKind::half_double_crochet, terms,
                words(
                    "Yarn over, insert the hook, draw up a loop, yarn over, draw through all three loops."));
        case Technique::double_crochet:
            return stitch(StitchKind::double_crochet, terms,
                          words("Yarn over, insert the hook, draw up a loop; yarn over and draw through two "
                                "loops, twice."));
        case Technique::treble_crochet:
            return stitch(
                StitchKind::treble_crochet, terms,
                words(
                    "Yarn over twice, insert the hook, draw up a loop; yarn over and draw through two loops, "
                    "three times."));
        case Technique::bobble:
            return stitch(StitchKind::bobble, terms,
                          filled("Work five {dc} into one stitch, each but for its last yarn over; then yarn "
                                 "over and draw "
                                 "through all the loops.",
                                 terms));
        case Technique::skip:
            return stitch(StitchKind::skip, terms, words("Leave the stitch unworked."));
        case Technique::increase:
            return {words("inc"), words("increase"),
                    filled("Work 2 {sc} into one stitch: one stitch more.", terms)};
        case Technique::decrease:
            return {words("dec"), words("decrease"),
                    filled("Draw up a loop in each of the next two stitches, yarn over, draw through all "
                           "three loops "
                           "({sc}2tog): one stitch fewer.",
                           terms)};
        case Technique::invisible_decrease:
            return {words("invdec"), words("invisible decrease"),
                    words("Insert the hook through the front loops of the next two stitches, draw up one "
                          "loop through "
                          "both, yarn over, draw through both loops: one stitch fewer.")};
        case Technique::together:
            return {words("tog"), words("together"),
                    words("Work the stitches named, each but for its last yarn over; then yarn over and draw "
                          "through all "
                          "the loops.")};
        case Technique::front_loop:
            return {words("FLO"), words("front loop only"), words("Work into the loop nearest to you.")};
        case Technique::back_loop:
            return {words("BLO"), words("back loop only"), words("Work into the loop away from you.")};
        case Technique::change_yarn:
            return {{},
                    words("change of colour"),
                    words("Draw the last loop of the stitch before with the new yarn.")};
        case Technique::draw_closed:
            return {{},
                    words("drawing closed"),
                    words("Cut the yarn, thread the tail through the front loops of the last round, pull "
                          "tight and weave in.")};
        case Technique::fasten_off:
            return {
                {}, words("fastening off"), words("Cut the yarn and draw the end through the last loop.")};
    }
    return {};
}

}  // namespace roundwright::render
