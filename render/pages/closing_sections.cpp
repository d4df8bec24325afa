#include "render/pages/block_builders.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"
#include "render/pages/small_parts.h"

namespace roundwright::render {
namespace {

QString joined(const std::string& text) { return paragraphs_of(text).join(QLatin1Char('\n')); }

void add_made_section(Blocks& blocks, const PageContext& context, const char* heading, const QString& anchor,
                      const QString& steps) {
    if (steps.isEmpty()) return;
    blocks.push_back(section_heading(words(heading), anchor, context.frame.width()));
    add_steps(blocks, steps, context.frame.width());
}

QString finishing_steps(const Toy& toy) {
    QString steps = joined(toy.text.finishing);
    for (const Yarn& yarn : toy.yarns) {
        if (!yarn.brushed || !steps.isEmpty()) continue;
        steps = words(
            "Brush the fabric gently with a wire brush, a little at a time, until the pile covers the "
            "stitches.\n"
            "Shake out and pick off all loose fibre.");
    }
    return steps;
}

QStringList safety_paragraphs(const Toy& toy) {
    QStringList all;
    if (names_small_parts(toy)) {
        all += words(
            "Safety eyes, noses, buttons and beads are small parts and a choking hazard. For a child under "
            "three, "
            "or for anyone who puts things into the mouth, embroider the features or sew on felt instead.");
        all += words(
            "A safety eye holds only if its washer is pressed on fully from inside; it cannot be taken off "
            "again. "
            "Pull hard at every part before you give the toy away, and again from time to time.");
    } else {
        all += words(
            "If you add eyes, buttons or beads: they are small parts and a choking hazard. For a child under "
            "three, embroider the features or sew on felt instead.");
    }
    all += words(
        "A toy that is sold or given away has to meet the toy safety standards of the place where that "
        "happens; in "
        "the European Union a soft-filled toy for cuddling counts as a toy for children under three, "
        "whatever its "
        "label says. Ask an accredited laboratory. This pattern certifies nothing.");
    return all;
}

}  // namespace

void add_introduction(Blocks& blocks, const PageContext& context) {
    const QString told = joined(context.toy().text.introduction);
    const bool on_cover = context.options.contents.cover && introduction_fits_cover(context);
    if (told.isEmpty() || on_cover) return;
    blocks.push_back(
        section_heading(words("About this toy"), QStringLiteral("about"), context.frame.width()));
    add_text(blocks, told, context.frame.width());
}

void add_making(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.making) return;
    add_made_section(blocks, context, "Assembly", QStringLiteral("assembly"),
                     joined(context.toy().text.assembly));
    add_made_section(blocks, context, "Finishing", QStringLiteral("finishing"),
                     finishing_steps(context.toy()));
}

void add_safety(Blocks& blocks, const PageContext& context) {
    const double width = context.frame.width();
    blocks.push_back(section_heading(words("Safety"), QStringLiteral("safety"), width));
    const QStringList paragraphs = safety_paragraphs(context.toy());
    for (qsizetype i = 0; i < paragraphs.size(); ++i) {
        ParagraphStyle style;
        if (i == 0) style.font = bold_font();
        blocks.push_back(paragraph_block(Paragraph(paragraphs[i], width, style)));
    }
}

void add_notes(Blocks& blocks, const PageContext& context) {
    const double width = context.frame.width();
    const QString notes = joined(context.toy().notes);
    if (context.options.contents.notes && !notes.isEmpty()) {
        blocks.push_back(section_heading(words("Notes"), QStringLiteral("notes"), width));
        add_text(blocks, notes, width);
    }
    const QString copyright = joined(context.toy().text.copyright);
    if (copyright.isEmpty()) return;
    ParagraphStyle style;
    style.font = body_font(8);
    style.colour = page_colour::soft_ink;
    const std::size_t first = blocks.size();
    add_text(blocks, copyright, width, style);
    if (first < blocks.size()) blocks[first].shape.space_before = mm(9);
}

}  // namespace roundwright::render
