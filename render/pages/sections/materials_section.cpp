#include <algorithm>

#include <QPainter>

#include "core/language/round/write.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/table.h"
#include "render/pages/page_context.h"
#include "render/pages/swatch.h"
#include "render/wording/pattern/feature_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

ParagraphStyle soft(double points = 8) {
    ParagraphStyle style;
    style.font = body_font(points);
    style.colour = page_colour::soft_ink;
    return style;
}

std::vector<TableColumn> yarn_columns(double width, Terms terms) {
    const double swatch = mm(17);
    const double length = mm(28);
    const double amount = mm(34);
    const double weight = mm(32);
    return {{by_terms(terms, Pattern::tr("COLOR"), Pattern::tr("COLOUR")), swatch, Qt::AlignLeft},
            {Pattern::tr("YARN"), width - swatch - length - amount - weight, Qt::AlignLeft},
            {Pattern::tr("WEIGHT"), weight, Qt::AlignLeft},
            {Pattern::tr("LENGTH"), length, Qt::AlignRight},
            {Pattern::tr("AMOUNT"), amount, Qt::AlignRight}};
}

Cell swatch_cell(const Yarn& yarn, std::size_t place) {
    const Paragraph letter(QString::fromStdString(yarn_letter(static_cast<int>(place))), mm(8),
                           ParagraphStyle{bold_font()});
    return {letter.height(), [letter, colour = yarn.colour, place](QPainter& painter, QPointF at) {
                paint_swatch(painter, QRectF(at + QPointF(0, pt(1.5)), QSizeF(mm(6.5), pt(10))), colour,
                             place);
                letter.paint(painter, at + QPointF(mm(8.5), 0));
            }};
}

void add_yarn_table(Blocks& blocks, const PageContext& context) {
    const Toy& toy = context.toy();
    if (toy.yarns.empty()) return;
    Table table(blocks, yarn_columns(context.frame.width(), context.options.terms));
    ParagraphStyle name_style;
    name_style.most_lines = most_name_lines;
    for (std::size_t i = 0; i < toy.yarns.size(); ++i) {
        const YarnUse& use = context.study.materials.yarns[i];
        if (use.metres.high <= 0) continue;
        const Yarn& yarn = toy.yarns[i];
        table.add_row({swatch_cell(yarn, i), table.text(1, yarn_name_words(yarn), name_style),
                       table.text(2, yarn_weight_words(yarn.weight, context.options.terms)),
                       table.text(3, yarn_length_range_words(use, context.options.units)),
                       table.text(4, yarn_amount_words(yarn, use, context.options.units))});
    }
    table.finish();
}

/// A label in a column of its own, and what belongs to it.
Block labelled(const QString& label, const QString& text, double width) {
    ParagraphStyle name;
    name.font = bold_font();
    const double indent = mm(32);
    const Paragraph left(label, indent - mm(3), name);
    const Paragraph right(text, width - indent);
    Block block;
    block.shape.height = std::max(left.height(), right.height());
    block.shape.space_before = pt(6);
    block.paint = [left, right, indent](QPainter& painter, QPointF at, const PageNumbers&) {
        left.paint(painter, at);
        right.paint(painter, at + QPointF(indent, 0));
    };
    return block;
}

}  // namespace

void add_materials(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.materials) return;
    const double width = context.frame.width();
    blocks.push_back(section_heading(Pattern::tr("Materials"), QStringLiteral("materials"), width));
    add_yarn_table(blocks, context);
    if (!context.toy().yarns.empty() && context.study.materials.stitches > 0) {
        blocks.push_back(paragraph_block(Paragraph(yarn_estimate_words(context.toy()), width, soft())));
    }
    blocks.push_back(labelled(Pattern::tr("Hook"), hook_with_names(context.toy().hook_mm), width));
    blocks.back().shape.space_before = mm(4);
    const QString stuffing = stuffing_words(context.study, context.options.terms, context.options.units);
    if (!stuffing.isEmpty())
        blocks.push_back(
            labelled(by_terms(context.options.terms, Pattern::tr("Stuffing"), Pattern::tr("Toy filling")),
                     stuffing, width));
    const QString pellets = pellets_words(context.study, context.options.units);
    if (!pellets.isEmpty()) blocks.push_back(labelled(Pattern::tr("Pellets"), pellets, width));
    const QString bought = bought_feature_words(context.toy()).join(QLatin1Char('\n'));
    if (!bought.isEmpty()) blocks.push_back(labelled(bought_heading_words(context.toy()), bought, width));
    const QString notions = notions_words(context.toy()).join(QLatin1Char('\n'));
    blocks.push_back(
        labelled(by_terms(context.options.terms, Pattern::tr("Notions"), Pattern::tr("You also need")),
                 notions, width));
}

}  // namespace roundwright::render
