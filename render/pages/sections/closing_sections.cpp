#include "render/pages/layout/block_builders.h"
#include "render/pages/page_context.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

void add_made_section(Blocks& blocks, const PageContext& context, const QString& heading,
                      const QString& anchor, const QStringList& steps) {
    if (steps.isEmpty()) return;
    const std::size_t first = blocks.size();
    blocks.push_back(section_heading(heading, anchor, context.frame.width()));
    add_steps(blocks, steps, context.frame.width());
    keep_on_one_page(blocks, first, context.frame.height() / 3);
}

}  // namespace

void add_introduction(Blocks& blocks, const PageContext& context) {
    const QStringList told = paragraphs_of(context.toy().text.introduction);
    const bool on_cover = context.options.contents.cover && introduction_fits_cover(context);
    if (told.isEmpty() || on_cover) return;
    blocks.push_back(
        section_heading(Pattern::tr("About this toy"), QStringLiteral("about"), context.frame.width()));
    add_text(blocks, told, context.frame.width());
}

void add_making(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.making) return;
    add_assembly(blocks, context);
    add_made_section(blocks, context, Pattern::tr("Finishing"), QStringLiteral("finishing"),
                     finishing_words(context.toy(), context.options.terms));
}

void add_safety(Blocks& blocks, const PageContext& context) {
    const double width = context.frame.width();
    const std::size_t first = blocks.size();
    blocks.push_back(section_heading(Pattern::tr("Safety"), QStringLiteral("safety"), width));
    const QStringList paragraphs = safety_words(context.toy());
    for (qsizetype i = 0; i < paragraphs.size(); ++i) {
        ParagraphStyle style;
        if (i == 0) style.font = bold_font();
        blocks.push_back(paragraph_block(Paragraph(paragraphs[i], width, style)));
    }
    keep_on_one_page(blocks, first, context.frame.height());
}

void add_notes(Blocks& blocks, const PageContext& context) {
    const double width = context.frame.width();
    const QStringList notes = paragraphs_of(context.toy().notes);
    if (context.options.contents.notes && !notes.isEmpty()) {
        blocks.push_back(section_heading(Pattern::tr("Notes"), QStringLiteral("notes"), width));
        add_text(blocks, notes, width);
    }
    ParagraphStyle style;
    style.font = body_font(8);
    style.colour = page_colour::soft_ink;
    const std::size_t first = blocks.size();
    add_text(blocks, paragraphs_of(context.toy().text.copyright), width, style);
    if (first < blocks.size()) blocks[first].shape.space_before = mm(9);
}

}  // namespace roundwright::render
