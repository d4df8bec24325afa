#include <algorithm>
#include <memory>

#include <QImage>
#include <QPainter>

#include "render/drawing/round_chart.h"
#include "render/pages/block_builders.h"
#include "render/pages/chart_words.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"
#include "render/pages/section_words.h"

namespace roundwright::render {
namespace {

constexpr double least_stitch = mm(2.6);
constexpr double largest_stitch = mm(5);

/// A chart of more symbols than this would take many sheets and be read by nobody; the words tell it all.
constexpr std::size_t most_symbols = 2'500;

/// The numbers are scaled by the chart from a font set in points.
QFont number_font() {
    QFont font = body_font();
    font.setPointSizeF(8);
    return font;
}

/// One drawing, a chart or a sector of it, under its piece's name and its rounds.
class ChartSheet {
  public:
    ChartSheet(std::shared_ptr<const ChartLayout> layout, const ChartOptions& options, const QString& name,
               const QString& rounds, double page_width)
        : layout_(std::move(layout)), options_(options) {
        options_.target = QRectF(0, 0, page_width, 0);
        size_ = place_chart(*layout_, options_).bounds.size();
        width_ = size_.width() <= half(page_width) ? half(page_width) : page_width;
        ParagraphStyle bold;
        bold.font = bold_font(10);
        bold.most_lines = most_name_lines;
        ParagraphStyle soft;
        soft.colour = page_colour::soft_ink;
        captions_ = {Paragraph(name, width_, bold), Paragraph(rounds, width_, soft)};
    }

    [[nodiscard]] double width() const { return width_; }
    [[nodiscard]] double caption_height() const {
        return captions_[0].height() + captions_[1].height() + mm(3);
    }
    [[nodiscard]] double chart_height() const { return size_.height(); }

    void paint(QPainter& painter, QPointF at, double caption_height) const {
        captions_[0].paint(painter, at);
        captions_[1].paint(painter, at + QPointF(0, captions_[0].height()));
        ChartOptions placed = options_;
        placed.target = QRectF(at + QPointF(0, caption_height), QSizeF(width_, size_.height()));
        painter.setFont(number_font());
        (void)draw_chart(painter, *layout_, placed);
    }

    [[nodiscard]] static double half(double page_width) { return (page_width - mm(8)) / 2; }

  private:
    std::shared_ptr<const ChartLayout> layout_;
    ChartOptions options_;
    QSizeF size_;
    double width_ = 0;
    std::vector<Paragraph> captions_;
};

/// Sheets side by side: two small ones, or one.
Block row_block(const std::vector<ChartSheet>& sheets) {
    double caption = 0;
    double chart = 0;
    for (const ChartSheet& sheet : sheets) {
        caption = std::max(caption, sheet.caption_height());
        chart = std::max(chart, sheet.chart_height());
    }
    Block block;
    block.shape.height = caption + chart;
    block.shape.space_before = mm(7);
    block.paint = [sheets, caption](QPainter& painter, QPointF at, const PageNumbers&) {
        for (const ChartSheet& sheet : sheets) {
            sheet.paint(painter, at, caption);
            at += QPointF(sheet.width() + mm(8), 0);
        }
    };
    return block;
}

Block key_block(const std::vector<ChartSymbol>& symbols, Terms terms, double width) {
    const auto told = [terms](ChartSymbol symbol) { return chart_symbol_words(symbol, terms); };
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
    explicit ChartSection(const PageContext& context) : context_(context), width_(context.frame.width()) {}

    void add_piece(std::size_t i) {
        const Piece& piece = context_.toy().pieces[i];
        const StitchGraph& graph = context_.study.pieces[i].graph.graph;
        if (graph.rounds.empty()) return;
        for (const ChartPart& part : chart_parts(piece, graph)) {
            auto layout = std::make_shared<const ChartLayout>(chart_layout(piece, graph, part));
            const std::size_t drawn = layout->stitches.size() / static_cast<std::size_t>(layout->repeats);
            if (!layout->stitches.empty() && drawn <= most_symbols) add_part(i, part, layout);
        }
    }

    void put(Blocks& blocks) const {
        if (sheets_.empty()) return;
        blocks.push_back(section_heading(words("Charts"), QStringLiteral("charts"), width_));
        blocks.push_back(key_block(symbols_, context_.options.terms, width_));
        blocks.back().shape.keep_with_next = true;
        for (std::size_t i = 0; i < sheets_.size();) {
            std::vector<ChartSheet> row{sheets_[i++]};
            const bool small = row[0].width() < width_;
            if (small && i < sheets_.size() && sheets_[i].width() < width_) row.push_back(sheets_[i++]);
            blocks.push_back(row_block(row));
        }
    }

  private:
    void add_part(std::size_t i, const ChartPart& part, const std::shared_ptr<const ChartLayout>& layout) {
        const Piece& piece = context_.toy().pieces[i];
        const ChartPlan plan = plan_chart(*layout, {width_, context_.frame.height() - mm(55)}, least_stitch);
        ChartOptions options;
        options.units_per_stitch = std::min(plan.units_per_stitch, largest_stitch);
        for (const Yarn& yarn : context_.toy().yarns) options.yarns.push_back(yarn.colour);
        if (options.yarns.size() < 2) options.yarns.clear();
        for (int sector = 0; sector < plan.shown; ++sector) {
            options.sector = {sector, plan.sectors};
            sheets_.emplace_back(layout, options, piece_name_words(context_.toy(), i),
                                 part_words(piece, part, plan), width_);
        }
        for (const ChartSymbol symbol : symbols_used(*layout)) add_symbol_used(symbol);
    }

    void add_symbol_used(ChartSymbol symbol) {
        if (std::find(symbols_.begin(), symbols_.end(), symbol) == symbols_.end()) symbols_.push_back(symbol);
    }

    const PageContext& context_;
    double width_;
    std::vector<ChartSheet> sheets_;
    std::vector<ChartSymbol> symbols_;
};

}  // namespace

void add_charts(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.round_chart) return;
    ChartSection section(context);
    for (std::size_t i = 0; i < context.toy().pieces.size(); ++i) section.add_piece(i);
    section.put(blocks);
}

}  // namespace roundwright::render
