#include "render/pages/layout/block_builders.h"

#include <algorithm>

#include <QPainter>

namespace roundwright::render {
namespace {

constexpr double accent_to_heading = pt(7);

ParagraphStyle section_style() {
    ParagraphStyle style;
    style.font = title_font(17);
    style.leading = 1.2;
    style.most_lines = 4;
    return style;
}

/// Characters of a stretch that surely fits on a page.
constexpr qsizetype stretch_length = 1500;

QStringList stretches(const QString& paragraph) {
    QStringList parts;
    qsizetype from = 0;
    while (paragraph.size() - from > stretch_length) {
        qsizetype end = paragraph.lastIndexOf(QLatin1Char(' '), from + stretch_length);
        if (end <= from) end = from + stretch_length;
        parts += paragraph.mid(from, end - from).trimmed();
        from = end;
    }
    parts += paragraph.mid(from).trimmed();
    return parts;
}

constexpr double number_width = mm(8);

Block step_block(int number, const QString& text, double width) {
    ParagraphStyle style;
    style.font = bold_font();
    style.colour = page_colour::accent;
    const Paragraph label(number > 0 ? QString::number(number) : QString(), number_width, style);
    const Paragraph body(text, width - number_width);
    Block block;
    block.shape.height = std::max(label.height(), body.height());
    block.shape.space_before = pt(5);
    block.paint = [label, body](QPainter& painter, QPointF at, const PageNumbers&) {
        label.paint(painter, at);
        body.paint(painter, at + QPointF(number_width, 0));
    };
    return block;
}

}  // namespace

Block paragraph_block(const Paragraph& paragraph, double space_before, double indent) {
    Block block;
    block.shape.height = paragraph.height();
    block.shape.space_before = space_before;
    block.paint = [paragraph, indent](QPainter& painter, QPointF at, const PageNumbers&) {
        paragraph.paint(painter, at + QPointF(indent, 0));
    };
    return block;
}

Block section_heading(const QString& text, const QString& anchor, double width) {
    const Paragraph title(text, width, section_style());
    Block block;
    block.shape.height = accent_to_heading + title.height() + pt(3);
    block.shape.space_before = mm(11);
    block.shape.keep_with_next = true;
    block.anchor = anchor;
    block.heading = text;
    block.paint = [title](QPainter& painter, QPointF at, const PageNumbers&) {
        paint_accent(painter, at);
        title.paint(painter, at + QPointF(0, accent_to_heading));
    };
    return block;
}

Block sub_heading(const QString& text, double width) {
    ParagraphStyle style;
    style.font = bold_font(10);
    style.most_lines = 3;
    Block block = paragraph_block(Paragraph(text, width, style), mm(6));
    block.shape.keep_with_next = true;
    return block;
}

void add_text(Blocks& blocks, const QStringList& paragraphs, double width, const ParagraphStyle& style) {
    for (const QString& paragraph : paragraphs) {
        for (const QString& part : stretches(paragraph)) {
            if (part.isEmpty()) continue;
            blocks.push_back(paragraph_block(Paragraph(part, width, style)));
        }
    }
}

void add_steps(Blocks& blocks, const QStringList& paragraphs, double width) {
    int number = 0;
    for (const QString& paragraph : paragraphs) {
        bool first = true;
        for (const QString& part : stretches(paragraph)) {
            if (part.isEmpty()) continue;
            blocks.push_back(step_block(first ? ++number : 0, part, width));
            first = false;
        }
    }
}

double height_of(const Blocks& blocks, std::size_t first) {
    double height = 0;
    for (std::size_t i = first; i < blocks.size(); ++i) {
        height += blocks[i].shape.height + blocks[i].shape.space_before;
    }
    return height;
}

void keep_on_one_page(Blocks& blocks, std::size_t first, double most_height) {
    if (height_of(blocks, first) > most_height) return;
    for (std::size_t i = first; i + 1 < blocks.size(); ++i) blocks[i].shape.keep_with_next = true;
}

void paint_accent(QPainter& painter, QPointF top_left, double length) {
    painter.fillRect(QRectF(top_left, QSizeF(length, pt(1.6))), page_colour::accent);
}

void paint_rule(QPainter& painter, QPointF from, QPointF to) {
    painter.setPen(QPen(page_colour::rule, pt(0.5)));
    painter.drawLine(from, to);
}

}  // namespace roundwright::render
