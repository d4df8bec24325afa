#include <algorithm>
#include <memory>

#include <QImage>
#include <QPainter>

#include "render/drawing/round_chart.h"
#include "render/pages/block_builders.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"
#include "render/pages/section_words.h"
#include "render/pages/technique_words.h"

namespace roundwright::render {
namespace {

constexpr double least_stitch = mm(2.6);
constexpr double largest_stitch = mm(5);

/// A chart of more symbols than this would take many sheets and be read by nobody; the words tell it all.
constexpr std::size_t most_symbols = 2'500;

Technique technique_of(ChartSymbol symbol) {
    switch (symbol) {
        case ChartSymbol::magic_ring:
            return Technique::magic_ring;
        case ChartSymbol::chain:
            return Technique::chain;
        case ChartSymbol::slip_stitch:
            return Technique::slip_stitch;
        case ChartSymbol::single_crochet:
            return Technique::single_crochet;
        case ChartSymbol::half_double_crochet:
            return Technique::half_double_crochet;
        case ChartSymbol::double_crochet:
            return Technique::double_crochet;
        case ChartSymbol::treble_crochet:
            return Technique::treble_crochet;
        case ChartSymbol::bobble:
            return Technique::bobble;
        case ChartSymbol::increase:
            return Technique::increase;
        case ChartSymbol::decrease:
            return Technique::decrease;
        case ChartSymbol::front_loop:
            return Technique::front_loop;
        case ChartSymbol::back_loop:
            return Technique::back_loop;
    }
    return Technique::single_crochet;
}

QString symbol_words(ChartSymbol symbol, Terms terms) {
    const TechniqueWords told = technique_words(technique_of(symbol), terms);
    return told.short_name.isEmpty() ? told.name : words("%1, %2").arg(told.short_name, told.name);
}

/// The numbers are scaled by the chart from a font set in points.
QFont number_font() {
    QFont font = body_font();
    font.setPointSizeF(8);
    return font;
}

/// One drawing: a chart, or a sector of it.
struct ChartSheet {
    std::shared_ptr<const ChartLayout> layout;
    ChartOptions options;
};

Block sheet_block(const ChartSheet& sheet, double width) {
    ChartOptions options = sheet.options;
    options.target = QRectF(0, 0, width, 0);
    const double height = place_chart(*sheet.layout, options).bounds.height();
    Block block;
    block.shape.height = height;
    block.shape.space_before = mm(5);
    block.paint = [layout = sheet.layout, options, width, height](QPainter& painter, QPointF at,
                                                                  const PageNumbers&) {
        ChartOptions placed = options;
        placed.target = QRectF(at, QSizeF(width, height));
        painter.setFont(number_font());
        (void)draw_chart(painter, *layout, placed);
    };
    return block;
}

Block key_block(const std::vector<ChartSymbol>& symbols, Terms terms, double width) {
    const auto told = [terms](ChartSymbol symbol) { return symbol_words(symbol, terms); };
    const QImage device(1, 1, QImage::Format_RGB32);
    const QFont font = body_font(8);
    Block block;
    block.shape.space_before = mm(5);
    block.shape.height =
        draw_chart_key(nullptr, device, font, QRectF(0, 0, width, 0), symbols, told, ChartOptions{});
    block.paint = [=, height = block.shape.height](QPainter& painter, QPointF at, const PageNumbers&) {
        (void)draw_chart_key(&painter, *painter.device(), font, QRectF(at, QSizeF(width, height)), symbols,
                             told, ChartOptions{});
    };
    return block;
}

QString part_words(const Piece& piece, const ChartPart& part, const ChartPlan& plan) {
    const bool rows = piece.joining == Joining::rows;
    QString text = (rows ? words("Rows %1 to %2.") : words("Rounds %1 to %2."))
                       .arg(part.first + 1)
                       .arg(part.first + part.rounds);
    if (part.inwards)
        text += QLatin1Char(' ') + words("The closing end, drawn as seen from outside: inwards.");
    if (plan.sectors > plan.shown) {
        text += QLatin1Char(' ') + words("One part of %1 that are all alike.").arg(plan.sectors);
    }
    return text;
}

class ChartSection {
  public:
    ChartSection(Blocks& blocks, const PageContext& context) : blocks_(blocks), context_(context) {}

    void add_piece(std::size_t i) {
        const Piece& piece = context_.toy().pieces[i];
        const StitchGraph& graph = context_.study.pieces[i].graph.graph;
        if (graph.rounds.empty()) return;
        bool first = true;
        for (const ChartPart& part : chart_parts(piece, graph)) {
            auto layout = std::make_shared<const ChartLayout>(chart_layout(piece, graph, part));
            const std::size_t drawn = layout->stitches.size() / static_cast<std::size_t>(layout->repeats);
            if (layout->stitches.empty() || drawn > most_symbols) continue;
            add_headings(i, first);
            first = false;
            add_part(piece, part, layout);
        }
    }

    /// The key comes under the heading, once it is known what it has to explain.
    void finish() {
        if (symbols_.empty()) return;
        Block key = key_block(symbols_, context_.options.terms, context_.frame.width());
        key.shape.keep_with_next = true;
        blocks_.insert(blocks_.begin() + key_place_, std::move(key));
    }

  private:
    void add_headings(std::size_t i, bool first_of_piece) {
        const double width = context_.frame.width();
        if (symbols_.empty()) {
            blocks_.push_back(section_heading(words("Charts"), QStringLiteral("charts"), width));
            key_place_ = static_cast<std::ptrdiff_t>(blocks_.size());
        }
        if (first_of_piece) blocks_.push_back(sub_heading(piece_name_words(context_.toy(), i), width));
    }

    void add_part(const Piece& piece, const ChartPart& part,
                  const std::shared_ptr<const ChartLayout>& layout) {
        const QSizeF page(context_.frame.width(), context_.frame.height() - mm(45));
        const ChartPlan plan = plan_chart(*layout, page, least_stitch);
        ParagraphStyle style;
        style.colour = page_colour::soft_ink;
        blocks_.push_back(paragraph_block(Paragraph(part_words(piece, part, plan), page.width(), style)));
        blocks_.back().shape.keep_with_next = true;
        for (int sector = 0; sector < plan.shown; ++sector) {
            ChartSheet sheet{layout, {}};
            sheet.options.units_per_stitch = std::min(plan.units_per_stitch, largest_stitch);
            sheet.options.sector = {sector, plan.sectors};
            for (const Yarn& yarn : context_.toy().yarns) sheet.options.yarns.push_back(yarn.colour);
            if (sheet.options.yarns.size() < 2) sheet.options.yarns.clear();
            blocks_.push_back(sheet_block(sheet, page.width()));
        }
        for (const ChartSymbol symbol : symbols_used(*layout)) add_symbol_used(symbol);
    }

    void add_symbol_used(ChartSymbol symbol) {
        if (std::find(symbols_.begin(), symbols_.end(), symbol) == symbols_.end()) symbols_.push_back(symbol);
    }

    Blocks& blocks_;
    const PageContext& context_;
    std::vector<ChartSymbol> symbols_;
    std::ptrdiff_t key_place_ = 0;
};

}  // namespace

void add_charts(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.round_chart) return;
    ChartSection section(blocks, context);
    for (std::size_t i = 0; i < context.toy().pieces.size(); ++i) section.add_piece(i);
    section.finish();
}

}  // namespace roundwright::render
