#include "render/pages/chart_sheet.h"

#include <algorithm>

#include <QPainter>

#include "render/pages/layout/page_style.h"

namespace roundwright::render {
namespace {

constexpr double gap = mm(8);
constexpr double least_width = mm(46);  // the caption's

/// The numbers are scaled by the chart from a font set in points.
QFont number_font() {
    QFont font = body_font();
    font.setPointSizeF(8);
    return font;
}

std::vector<Paragraph> captions(const QString& name, const QString& rounds, double width) {
    ParagraphStyle bold;
    bold.font = bold_font(10);
    bold.most_lines = most_name_lines;
    ParagraphStyle soft;
    soft.colour = page_colour::soft_ink;
    return {Paragraph(name, width, bold), Paragraph(rounds, width, soft)};
}

Block row_block(const std::vector<ChartSheet>& sheets, double page_width) {
    double caption = 0;
    double chart = 0;
    double spare = page_width - gap * static_cast<double>(sheets.size() - 1);
    for (const ChartSheet& sheet : sheets) {
        caption = std::max(caption, sheet.caption_height());
        chart = std::max(chart, sheet.chart_height());
        spare -= sheet.width();
    }
    // A narrow one by itself stays at the left, under its caption.
    if (spare > page_width / 2) spare = 0;
    Block block;
    block.shape.height = caption + chart;
    block.shape.space_before = mm(7);
    block.paint = [sheets, caption, wider = spare / static_cast<double>(sheets.size())](
                      QPainter& painter, QPointF at, const PageNumbers&) {
        for (const ChartSheet& sheet : sheets) {
            sheet.paint(painter, at, sheet.width() + wider, caption);
            at += QPointF(sheet.width() + wider + gap, 0);
        }
    };
    return block;
}

}  // namespace

ChartSheet::ChartSheet(std::shared_ptr<const ChartLayout> layout, const ChartOptions& options,
                       const QString& name, const QString& rounds, double page_width)
    : layout_(std::move(layout)), options_(options) {
    options_.target = QRectF(0, 0, page_width, 0);
    size_ = place_chart(*layout_, options_).bounds.size();
    width_ = std::clamp(size_.width(), least_width, page_width);
    captions_ = captions(name, rounds, width_);
}

double ChartSheet::caption_height() const { return captions_[0].height() + captions_[1].height() + mm(3); }

void ChartSheet::paint(QPainter& painter, QPointF at, double width, double caption_height) const {
    captions_[0].paint(painter, at);
    captions_[1].paint(painter, at + QPointF(0, captions_[0].height()));
    ChartOptions placed = options_;
    placed.target = QRectF(at + QPointF(0, caption_height), QSizeF(width, size_.height()));
    painter.setFont(number_font());
    (void)draw_chart(painter, *layout_, placed);
}

Blocks chart_rows(const std::vector<ChartSheet>& sheets, double page_width) {
    Blocks rows;
    for (std::size_t i = 0; i < sheets.size();) {
        std::vector<ChartSheet> row{sheets[i]};
        double width = sheets[i++].width();
        while (i < sheets.size() && width + gap + sheets[i].width() <= page_width) {
            width += gap + sheets[i].width();
            row.push_back(sheets[i++]);
        }
        rows.push_back(row_block(row, page_width));
    }
    return rows;
}

}  // namespace roundwright::render
