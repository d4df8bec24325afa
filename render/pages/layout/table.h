#pragma once

#include <functional>
#include <vector>

#include "render/pages/layout/block.h"
#include "render/pages/layout/paragraph.h"

namespace roundwright::render {

/// What stands in one field of a table: text, or a small drawing.
struct Cell {
    double height = 0;
    std::function<void(QPainter&, QPointF top_left)> paint;
};

struct TableColumn {
    QString title;
    double width = 0;
    Qt::Alignment alignment = Qt::AlignLeft;
};

/// A table whose rows never part and whose head is repeated on every page.
class Table {
  public:
    /// `name`: what the head says where it is repeated ("Body, continued"); may be empty.
    Table(Blocks& blocks, std::vector<TableColumn> columns, const QString& name = {});

    /// Width that text of a column has.
    [[nodiscard]] double text_width(std::size_t column) const;
    [[nodiscard]] Cell text(std::size_t column, const QString& text, ParagraphStyle style = {}) const;

    void add_row(std::vector<Cell> cells);
    /// A line across all columns that belongs to the row above it, or to the one below.
    enum class Belongs { above, below };
    void add_line(const Paragraph& paragraph, double indent, Belongs belongs = Belongs::above);
    /// Keeps the first two rows together, and the last two, so that none is left alone on a page.
    void finish();

  private:
    void add_head();
    void name_head(const QString& name);
    [[nodiscard]] double left_of(std::size_t column) const;
    void push(Block block);

    Blocks& blocks_;
    std::vector<TableColumn> columns_;
    std::size_t head_;
};

}  // namespace roundwright::render
