#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/table.h"
#include "render/pages/page_context.h"
#include "render/pages/used_stitches.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"
#include "render/wording/pattern/technique_words.h"

namespace roundwright::render {
namespace {

std::vector<UsedTechnique> used(const PageContext& context) {
    std::vector<const PieceGraph*> graphs;
    for (const PieceStudy& study : context.study.pieces) graphs.push_back(&study.graph());
    return used_techniques(context.toy(), graphs);
}

// Other languages say more in words.
std::vector<TableColumn> columns(double width, Terms terms) {
    const double short_name = is_english(terms) ? mm(20) : mm(36);
    const double name = mm(42);
    return {{Pattern::tr("ABBR."), short_name},
            {Pattern::tr("MEANING"), name},
            {Pattern::tr("HOW TO WORK IT"), width - short_name - name}};
}

void add_plain_row(Table& table, const QString& short_name, const QString& name) {
    table.add_row(
        {table.text(0, short_name, ParagraphStyle{bold_font()}), table.text(1, name), table.text(2, {})});
}

}  // namespace

void add_abbreviations(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.abbreviations) return;
    const double width = context.frame.width();
    const Terms terms = context.options.terms;
    blocks.push_back(
        section_heading(Pattern::tr("Abbreviations and stitches"), QStringLiteral("abbreviations"), width));
    blocks.push_back(
        paragraph_block(Paragraph(terms_words(terms) + QLatin1Char(' ') + reading_words(terms), width)));
    blocks.back().shape.keep_with_next = true;
    Table table(blocks, columns(width, terms));
    for (const TechniqueWords& told : place_words(terms)) add_plain_row(table, told.short_name, told.name);
    for (const UsedTechnique& technique : used(context)) {
        const TechniqueWords told = technique_words(technique.technique, terms);
        table.add_row({table.text(0, told.short_name, ParagraphStyle{bold_font()}), table.text(1, told.name),
                       table.text(2, told.working)});
    }
    table.finish();
}

}  // namespace roundwright::render
