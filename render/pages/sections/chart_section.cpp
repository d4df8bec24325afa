#include <algorithm>
#include <array>

#include <QImage>
#include <QPainter>

#include "render/pages/chart_sheet.h"
#include "render/pages/chart_words.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/page_context.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

/// A whole chart in smaller stitches is drawn in sectors; what would be smaller even so is left out.
constexpr double least_stitch = mm(2.6);
constexpr double least_readable_stitch = mm(1.8);
constexpr int most_sectors = 12;
/// Pieces are charted until so many stitches are: some twenty megabytes of drawings.
constexpr std::size_t most_charted_stitches = 60'000;
/// Sizes a stitch may have on the page; of those that take the fewest pages, the largest is used.
constexpr std::array stitch_sizes{mm(5), mm(4.6), mm(4.3), mm(4), mm(3.7), mm(3.5), mm(3.3)};

Block key_block(const std::vector<ChartSymbol>& symbols, Terms terms, double width) {
    const auto told = [terms](ChartSymbol symbol) { return chart_symbol_words(symbol, terms); };
    const QImage device(1, 1, QImage::Format_RGB32);
    const QFont font = body_font(8);
    Block block;
    block.shape.space_before = mm(5);
    block.shape.keep_with_next = true;
    block.shape.height =
        draw_chart_key(nullptr, device, font, QRectF(0, 0, width, 0), symbols, told, ChartOptions{});
    block.paint = [=, height = block.shape.height](QPainter& painter, QPointF at, const PageNumbers&) {
        (void)draw_chart_key(&painter, *painter.device(), font, QRectF(at, QSizeF(width, height)), symbols,
                             told, ChartOptions{});
    };
    return block;
}

QString range_words(const Piece& piece, const ChartPart& part) {
    const bool rows = piece.joining == Joining::rows;
    if (part.rounds == 1) return (rows ? Pattern::tr("Row %1") : Pattern::tr("Round %1")).arg(part.first + 1);
    return (rows ? Pattern::tr("Rows %1 to %2") : Pattern::tr("Rounds %1 to %2"))
        .arg(part.first + 1)
        .arg(part.first + part.rounds);
}

QString part_words(const Piece& piece, const ChartPart& part, const ChartPlan& plan, int sector) {
    QStringList told{range_words(piece, part) + QLatin1Char('.')};
    if (part.inwards) told += Pattern::tr("Where it narrows: drawn inwards, as seen from outside.");
    if (plan.sectors > plan.shown) {
        told += Pattern::tr("One part of %1 that are all alike.").arg(plan.sectors);
    } else if (plan.sectors > 1) {
        told += Pattern::tr("Sector %1 of %2.").arg(sector + 1).arg(plan.sectors);
    }
    return told.join(QLatin1Char(' '));
}

QString left_out_words(const QString& name, const Piece& piece, const ChartPart& part,
                       const ChartLayout& layout) {
    return Pattern::tr(
               "%1, %2: not charted, since on this paper its %n stitch(es) would be too small to read.",
               nullptr, static_cast<int>(layout.stitches.size()))
        .arg(name, range_words(piece, part).toLower());
}

/// A part that is drawn.
struct Charted {
    std::size_t piece = 0;
    ChartPart part;
    std::shared_ptr<const ChartLayout> layout;
    ChartPlan plan;
};

class ChartSection {
  public:
    explicit ChartSection(const PageContext& context) : context_(context), width_(context.frame.width()) {}

    void add_piece(std::size_t i) {
        const Piece& piece = context_.toy().pieces[i];
        const StitchGraph& graph = context_.study.pieces[i].graph().graph;
        if (graph.rounds.empty()) return;
        if (charted_ >= most_charted_stitches) {
            if (first_beyond_.isEmpty()) first_beyond_ = piece_name_words(context_.toy(), i);
            return;
        }
        for (const ChartPart& part : chart_parts(piece, graph)) {
            auto layout = std::make_shared<const ChartLayout>(chart_layout(piece, graph, part));
            if (!layout->stitches.empty()) add_part(i, part, layout);
        }
    }

    void put(Blocks& blocks) const {
        if (parts_.empty() && left_out_.isEmpty()) return;
        blocks.push_back(section_heading(Pattern::tr("Charts"), QStringLiteral("charts"), width_));
        if (!parts_.empty()) {
            blocks.push_back(key_block(symbols_, context_.options.terms, width_));
            const Blocks rows = rows_on_fewest_pages(blocks);
            blocks.insert(blocks.end(), rows.begin(), rows.end());
        }
        ParagraphStyle soft;
        soft.colour = page_colour::soft_ink;
        QStringList told = left_out_;
        if (!first_beyond_.isEmpty())
            told +=
                Pattern::tr("There are too many stitches to chart every piece: from %1 on, none is charted.")
                    .arg(first_beyond_);
        for (const QString& line : told) blocks.push_back(paragraph_block(Paragraph(line, width_, soft)));
    }

  private:
    void add_part(std::size_t i, const ChartPart& part, const std::shared_ptr<const ChartLayout>& layout) {
        const QSizeF room(width_, context_.frame.height() - mm(55));
        const ChartPlan plan = plan_chart(*layout, room, least_stitch);
        if (plan.units_per_stitch < least_readable_stitch || plan.shown > most_sectors) {
            left_out_ +=
                left_out_words(piece_name_words(context_.toy(), i), context_.toy().pieces[i], part, *layout);
            return;
        }
        parts_.push_back({i, part, layout, plan});
        charted_ += layout->stitches.size() * static_cast<std::size_t>(plan.shown) /
                    static_cast<std::size_t>(std::max(1, plan.sectors));
        for (const ChartSymbol symbol : symbols_used(*layout)) {
            if (std::ranges::find(symbols_, symbol) == symbols_.end()) symbols_.push_back(symbol);
        }
    }

    [[nodiscard]] std::vector<ChartSheet> sheets(double stitch) const {
        ChartOptions options;
        for (const Yarn& yarn : context_.toy().yarns) options.yarns.push_back(yarn.colour);
        if (options.yarns.size() < 2) options.yarns.clear();
        std::vector<ChartSheet> all;
        for (const Charted& charted : parts_) {
            options.units_per_stitch = std::min(charted.plan.units_per_stitch, stitch);
            for (int sector = 0; sector < charted.plan.shown; ++sector) {
                options.sector = {sector, charted.plan.sectors};
                all.emplace_back(
                    charted.layout, options, piece_name_words(context_.toy(), charted.piece),
                    part_words(context_.toy().pieces[charted.piece], charted.part, charted.plan, sector),
                    width_);
            }
        }
        return all;
    }

    [[nodiscard]] Blocks rows_on_fewest_pages(const Blocks& before) const {
        Blocks best;
        int fewest = 0;
        for (const double stitch : stitch_sizes) {
            Blocks rows = chart_rows(sheets(stitch), width_);
            const int pages = pages_with(before, rows);
            if (!best.empty() && pages >= fewest) continue;
            fewest = pages;
            best = std::move(rows);
        }
        return best;
    }

    [[nodiscard]] int pages_with(const Blocks& before, const Blocks& rows) const {
        std::vector<BlockShape> shapes;
        for (const Block& block : before) shapes.push_back(block.shape);
        for (const Block& block : rows) shapes.push_back(block.shape);
        return page_count(lay_out(shapes, context_.frame.height()));
    }

    const PageContext& context_;
    double width_;
    std::vector<Charted> parts_;
    QStringList left_out_;
    std::size_t charted_ = 0;  ///< stitches
    QString first_beyond_;     ///< the first piece that is not charted, since enough are
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
