#pragma once

#include <vector>

#include <QStringList>

#include "render/pages/layout/block.h"
#include "render/pages/layout/paragraph.h"

namespace roundwright::render {

/// A paragraph as a block, `indent` from the left.
[[nodiscard]] Block paragraph_block(const Paragraph& paragraph, double space_before = pt(6),
                                    double indent = 0);

/// A section's heading: an entry in the outline, kept with what follows.
[[nodiscard]] Block section_heading(const QString& text, const QString& anchor, double width);
/// A heading within a section.
[[nodiscard]] Block sub_heading(const QString& text, double width);

/// A longer text as blocks that may part between pages: one for every paragraph, or for every stretch of a
/// paragraph so long that it would not fit on a page.
void add_text(Blocks& blocks, const QStringList& paragraphs, double width, const ParagraphStyle& style = {});

/// A numbered list, one entry a paragraph.
void add_steps(Blocks& blocks, const QStringList& paragraphs, double width);

/// Height of the blocks from `first` on one page, below others.
[[nodiscard]] double height_of(const Blocks& blocks, std::size_t first);
/// Keeps the blocks from `first` on one page, if together they are no higher than `most_height`.
void keep_on_one_page(Blocks& blocks, std::size_t first, double most_height);

/// A filled line from `top_left`, as painted above headings.
void paint_accent(QPainter& painter, QPointF top_left, double length = mm(12));
/// A hair line.
void paint_rule(QPainter& painter, QPointF from, QPointF to);

}  // namespace roundwright::render
