#include <cmath>

#include "render/pages/block_builders.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"
#include "render/pages/table.h"

namespace roundwright::render {
namespace {

QString stitch_name(Terms terms) {
    const std::string_view name = full_name(StitchKind::single_crochet, terms);
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString gauge_words(const PageContext& context) {
    const Gauge& gauge = context.study.gauge;
    const Units units = context.options.units;
    return words("%1 stitches and %2 rounds of %3 measure %4 by %4, worked in the round before stuffing.")
        .arg(number_words(stitches_in_swatch(gauge.stitch_width_mm, units)),
             number_words(stitches_in_swatch(gauge.round_height_mm, units)),
             stitch_name(context.options.terms), swatch_words(units));
}

QString source_words(const PageContext& context) {
    if (!context.study.gauge_known) {
        return words(
            "No gauge has been measured for this toy: this one is usual for the hook, and the sizes in the "
            "pattern are only as good as that.");
    }
    if (std::holds_alternative<EstimatedGauge>(context.toy().gauge)) {
        return words(
            "The gauge is estimated from the yarn's weight and the hook (Craft Yarn Council, Standard Yarn "
            "Weight System); sizes show the range that leaves.");
    }
    return words(
        "A toy does not need an exact gauge, but its size follows it, and the fabric should be close enough "
        "to hide the stuffing.");
}

QString circle_words(Terms terms) {
    return words(
               "To measure yours, work five rounds of %1 with six increases each (30 stitches), lay the "
               "circle flat "
               "and measure across: the round height is a tenth of that.")
        .arg(stitch_name(terms));
}

std::vector<TableColumn> size_columns(const PageContext& context, const std::vector<std::size_t>& pieces) {
    const double first = mm(42);
    const double each = (context.frame.width() - first) / static_cast<double>(pieces.size());
    std::vector<TableColumn> columns{
        {words("STITCHES IN %1").arg(swatch_words(context.options.units)), first}};
    for (const std::size_t i : pieces) {
        QString name = printable_line(context.toy().pieces[i].name);
        columns.push_back(
            {name.isEmpty() ? words("Piece %1").arg(i + 1) : name.left(60), each, Qt::AlignLeft});
    }
    return columns;
}

bool is_own(const SizeAtGauge& row, const Gauge& gauge, Units units) {
    return std::lround(stitches_in_swatch(row.stitch_mm, units)) ==
           std::lround(stitches_in_swatch(gauge.stitch_width_mm, units));
}

void add_size_rows(Blocks& blocks, const PageContext& context, const std::vector<std::size_t>& pieces) {
    Table table(blocks, size_columns(context, pieces));
    const Units units = context.options.units;
    for (const SizeAtGauge& row : context.study.at_gauges) {
        ParagraphStyle style;
        if (is_own(row, context.study.gauge, units)) style.font = bold_font();
        const QString stitches = QString::number(std::lround(stitches_in_swatch(row.stitch_mm, units)));
        std::vector<Cell> cells{table.text(0, stitches, style)};
        for (std::size_t k = 0; k < pieces.size(); ++k) {
            const std::optional<FinishedSize>& size = row.pieces[pieces[k]];
            cells.push_back(table.text(
                k + 1, size ? size_words(size->width_mm.likely, size->height_mm.likely, units) : QString(),
                style));
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
    blocks.push_back(sub_heading(words("Size if your gauge differs"), context.frame.width()));
    blocks.push_back(paragraph_block(Paragraph(words("Width by height of the stuffed pieces, each worked out "
                                                     "anew for that gauge; the line in bold is "
                                                     "this pattern's own."),
                                               context.frame.width()),
                                     pt(3)));
    blocks.back().shape.keep_with_next = true;
    for (std::size_t from = 0; from < shown.size(); from += most_columns) {
        const std::size_t to = std::min(from + most_columns, shown.size());
        add_size_rows(blocks, context,
                      {shown.begin() + static_cast<std::ptrdiff_t>(from),
                       shown.begin() + static_cast<std::ptrdiff_t>(to)});
    }
}

}  // namespace

void add_gauge(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.materials) return;
    const double width = context.frame.width();
    blocks.push_back(section_heading(words("Gauge"), QStringLiteral("gauge"), width));
    ParagraphStyle bold;
    bold.font = bold_font();
    blocks.push_back(paragraph_block(Paragraph(gauge_words(context), width, bold)));
    blocks.push_back(paragraph_block(Paragraph(source_words(context), width)));
    blocks.push_back(paragraph_block(Paragraph(circle_words(context.options.terms), width)));
    add_size_table(blocks, context);
}

}  // namespace roundwright::render
