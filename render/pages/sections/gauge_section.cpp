#include <algorithm>

#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/table.h"
#include "render/pages/page_context.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

std::vector<TableColumn> size_columns(const PageContext& context, const std::vector<std::size_t>& pieces) {
    const double first = mm(42);
    const double each = (context.frame.width() - first) / static_cast<double>(pieces.size());
    std::vector<TableColumn> columns{
        {Pattern::tr("STITCHES IN %1").arg(swatch_words(context.options.units)), first}};
    for (const std::size_t i : pieces) {
        columns.push_back({piece_name_words(context.toy(), i).left(60), each, Qt::AlignLeft});
    }
    return columns;
}

void add_size_rows(Blocks& blocks, const PageContext& context, const std::vector<std::size_t>& pieces) {
    Table table(blocks, size_columns(context, pieces));
    const LengthUnit units = context.options.units;
    for (const SizeAtGauge& row : context.study.at_gauges) {
        ParagraphStyle style;
        if (row.own) style.font = bold_font();
        const QString stitches = number_words(row.stitches);
        std::vector<Cell> cells{table.text(0, stitches, style)};
        for (std::size_t k = 0; k < pieces.size(); ++k) {
            const std::optional<FinishedSize>& size = row.pieces[pieces[k]];
            cells.push_back(table.text(k + 1, size ? piece_size_words(*size, units) : QString(), style));
        }
        table.add_row(std::move(cells));
    }
    table.finish();
}

/// Pieces a table shows side by side.
constexpr std::size_t most_columns = 4;

void add_size_table(Blocks& blocks, const PageContext& context) {
    if (context.study.at_gauges.empty()) return;
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < context.study.sizes.size(); ++i) {
        if (context.study.sizes[i]) shown.push_back(i);
    }
    if (shown.empty()) return;
    const std::size_t first = blocks.size();
    blocks.push_back(sub_heading(other_gauges_heading_words(context.options.terms), context.frame.width()));
    blocks.push_back(
        paragraph_block(Paragraph(other_gauges_words(context.options.terms), context.frame.width()), pt(3)));
    blocks.back().shape.keep_with_next = true;
    for (std::size_t from = 0; from < shown.size(); from += most_columns) {
        const std::size_t to = std::min(from + most_columns, shown.size());
        add_size_rows(blocks, context,
                      {shown.begin() + static_cast<std::ptrdiff_t>(from),
                       shown.begin() + static_cast<std::ptrdiff_t>(to)});
    }
    keep_on_one_page(blocks, first, context.frame.height() / 2);
}

}  // namespace

void add_gauge(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.materials) return;
    const double width = context.frame.width();
    const Terms terms = context.options.terms;
    const LengthUnit units = context.options.units;
    blocks.push_back(section_heading(gauge_heading_words(terms), QStringLiteral("gauge"), width));
    ParagraphStyle bold;
    bold.font = bold_font();
    blocks.push_back(paragraph_block(Paragraph(gauge_words(context.study, terms, units), width, bold)));
    for (const QString& said :
         {gauge_source_words(context.study, terms), gauge_circle_words(context.study, terms, units),
          size_range_words(context.study, terms)}) {
        if (!said.isEmpty()) blocks.push_back(paragraph_block(Paragraph(said, width)));
    }
    add_size_table(blocks, context);
}

}  // namespace roundwright::render
