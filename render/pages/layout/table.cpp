#include "render/pages/layout/table.h"

#include <algorithm>

#include <QPainter>

#include "render/pages/layout/block_builders.h"

namespace roundwright::render {
namespace {

constexpr double gutter = mm(3);
constexpr double row_air = pt(3.4);  // above and below the text of a row

}  // namespace

Table::Table(Blocks& blocks, std::vector<TableColumn> columns, const QString& name)
    : blocks_(blocks), columns_(std::move(columns)), head_(blocks.size()) {
    add_head();
    if (!name.isEmpty()) name_head(name);
}

double Table::left_of(std::size_t column) const {
    double x = 0;
    for (std::size_t i = 0; i < column; ++i) x += columns_[i].width;
    return x;
}

double Table::text_width(std::size_t column) const {
    const bool last = column + 1 == columns_.size();
    return columns_[column].width - (last ? 0 : gutter);
}

Cell Table::text(std::size_t column, const QString& text, ParagraphStyle style) const {
    style.alignment = columns_[column].alignment;
    const Paragraph paragraph(text, text_width(column), style);
    return {paragraph.height(), [paragraph](QPainter& painter, QPointF at) { paragraph.paint(painter, at); }};
}

void Table::add_head() {
    ParagraphStyle style;
    style.font = label_font();
    style.colour = page_colour::soft_ink;
    std::vector<Cell> cells;
    for (std::size_t i = 0; i < columns_.size(); ++i) cells.push_back(text(i, columns_[i].title, style));
    add_row(std::move(cells));
    Block& head = blocks_[head_];
    head.shape.header = -1;
    head.shape.keep_with_next = true;
    head.shape.space_before = pt(8);
}

/// Room for the name is left above the head, where it is repeated only.
void Table::name_head(const QString& name) {
    ParagraphStyle style;
    style.font = label_font();
    style.colour = page_colour::accent;
    style.most_lines = 1;
    double width = 0;
    for (const TableColumn& column : columns_) width += column.width;
    const Paragraph label(name, width, style);
    blocks_[head_].paint_repeated = [label](QPainter& painter, QPointF at) {
        label.paint(painter, at - QPointF(0, label.height()));
    };
}

void Table::add_row(std::vector<Cell> cells) {
    double height = 0;
    double width = 0;
    for (const Cell& cell : cells) height = std::max(height, cell.height);
    std::vector<double> lefts;
    for (std::size_t i = 0; i < cells.size(); ++i) lefts.push_back(left_of(i));
    for (const TableColumn& column : columns_) width += column.width;
    Block block;
    block.shape.height = height + 2 * row_air;
    block.paint = [cells = std::move(cells), lefts, width, height](QPainter& painter, QPointF at,
                                                                   const PageNumbers&) {
        const double bottom = at.y() + height + 2 * row_air;
        paint_rule(painter, {at.x(), bottom}, {at.x() + width, bottom});
        for (std::size_t i = 0; i < cells.size(); ++i) {
            if (cells[i].paint) cells[i].paint(painter, at + QPointF(lefts[i], row_air));
        }
    };
    push(std::move(block));
}

void Table::add_line(const Paragraph& paragraph, double indent, Belongs belongs) {
    if (belongs == Belongs::above) blocks_.back().shape.keep_with_next = true;
    double width = 0;
    for (const TableColumn& column : columns_) width += column.width;
    Block block;
    block.shape.height = paragraph.height() + 2 * row_air;
    block.shape.keep_with_next = belongs == Belongs::below;
    block.paint = [paragraph, indent, width](QPainter& painter, QPointF at, const PageNumbers&) {
        const double height = paragraph.height() + 2 * row_air;
        painter.fillRect(QRectF(at, QSizeF(width, height)), page_colour::tint);
        paint_rule(painter, {at.x(), at.y() + height}, {at.x() + width, at.y() + height});
        paragraph.paint(painter, at + QPointF(indent, row_air));
    };
    push(std::move(block));
}

void Table::push(Block block) {
    block.shape.header = static_cast<int>(head_);
    blocks_.push_back(std::move(block));
}

void Table::finish() {
    if (blocks_.size() < head_ + 3) return;
    blocks_[head_ + 1].shape.keep_with_next = true;
    blocks_[blocks_.size() - 2].shape.keep_with_next = true;
}

}  // namespace roundwright::render
