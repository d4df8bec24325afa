#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/block_builders.h"
#include "render/pages/outline.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"

namespace roundwright::render {
namespace {

constexpr double calibration_mm = 50;
constexpr double bar_height = mm(9);
constexpr double label_height = pt(14);
constexpr double gap = mm(8);
constexpr double overlap = mm(10);
constexpr int most_sheets = 12;
constexpr int marked_rounds = 5;

double width_of(const Shape& shape) { return mm(shape.width_mm); }
double height_of(const Shape& shape) { return mm(shape.height_mm); }

/// A bar to check the printer by: exactly 50 mm, in five parts.
void paint_calibration_bar(QPainter& painter, QPointF at, double scale) {
    const double tick = mm(2);
    painter.setPen(QPen(page_colour::ink, pt(0.8), Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(at + QPointF(0, tick), at + QPointF(mm(calibration_mm), tick));
    for (int i = 0; i <= 5; ++i) {
        const QPointF x(mm(calibration_mm) * i / 5, 0);
        const double up = i % 5 == 0 ? 0 : tick / 2;
        painter.drawLine(at + x + QPointF(0, up), at + x + QPointF(0, tick));
    }
    painter.setFont(body_font(7.5));
    painter.setPen(page_colour::soft_ink);
    const QString text =
        scale == 1 ? words("50 mm (1.97 in) when printed at full size, 100 %")
                   : words("50 mm (1.97 in) at 100 %; the piece is drawn at 1 to %1").arg(1 / scale);
    painter.drawText(at + QPointF(mm(calibration_mm) + mm(4), tick + pt(1)), text);
}

void paint_round_line(QPainter& painter, const Shape& shape, const Piece& piece, std::size_t loop) {
    const double y = -mm(standing_height_mm(shape, piece.starts_at_top, loop));
    const double r = mm(shape.radius_mm[loop]);
    painter.setPen(QPen(page_colour::rule, pt(0.5)));
    painter.drawLine(QPointF(-r, y), QPointF(r, y));
    painter.setPen(page_colour::soft_ink);
    painter.drawText(QPointF(-r + mm(1.5), y - pt(1.5)), QString::number(loop));
}

/// The outline with its axis and every fifth round, the middle of its foot at the painter's origin.
void paint_silhouette(QPainter& painter, const Shape& shape, const Piece& piece) {
    painter.setFont(body_font(6.5));
    for (std::size_t loop = marked_rounds; loop < shape.radius_mm.size(); loop += marked_rounds) {
        if (shape.radius_mm[loop] > 8) paint_round_line(painter, shape, piece, loop);
    }
    painter.setPen(QPen(page_colour::drawn, pt(0.4), Qt::DashDotLine));
    painter.drawLine(QPointF(0, 0), QPointF(0, -height_of(shape)));
    painter.setPen(QPen(page_colour::ink, pt(1), Qt::SolidLine, Qt::FlatCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(
        QTransform::fromScale(units_per_mm, units_per_mm).map(silhouette_mm(shape, piece.starts_at_top)));
}

QString label_of(const PageContext& context, std::size_t i) {
    const QString name = printable_line(context.toy().pieces[i].name);
    const Shape& shape = context.study.pieces[i].shape;
    return words("%1, %2").arg(name.isEmpty() ? words("Piece %1").arg(i + 1) : name,
                               size_words(shape.width_mm, shape.height_mm, context.options.units));
}

/// Width of a piece's place in a row: its outline's, or its label's.
double place_width(const PageContext& context, std::size_t i) {
    const QFontMetricsF metrics(bold_font(8.5));
    const double label = std::min(metrics.horizontalAdvance(label_of(context, i)) + mm(4), mm(60));
    return std::max(width_of(context.study.pieces[i].shape), label);
}

void paint_label(QPainter& painter, QPointF baseline, double width, const QString& text) {
    painter.setFont(bold_font(8.5));
    painter.setPen(page_colour::ink);
    painter.drawText(baseline, QFontMetricsF(painter.font()).elidedText(text, Qt::ElideRight, width));
}

/// Pieces that stand side by side on the paper, above one calibration bar.
struct Row {
    std::vector<std::size_t> pieces;
    double width = 0;
    double height = 0;
};

Block row_block(const PageContext& context, const Row& row) {
    Block block;
    block.shape.height = label_height + row.height + mm(4) + bar_height;
    block.shape.space_before = mm(8);
    block.paint = [&context, row](QPainter& painter, QPointF at, const PageNumbers&) {
        double x = at.x();
        for (const std::size_t i : row.pieces) {
            const Shape& shape = context.study.pieces[i].shape;
            const double width = place_width(context, i);
            paint_label(painter, {x, at.y() + pt(9)}, width, label_of(context, i));
            painter.save();
            painter.translate(x + width_of(shape) / 2, at.y() + label_height + row.height);
            paint_silhouette(painter, shape, context.toy().pieces[i]);
            painter.restore();
            x += width + gap;
        }
        paint_calibration_bar(painter, at + QPointF(0, label_height + row.height + mm(4)), 1);
    };
    return block;
}

/// Cuts a piece larger than the page into sheets that overlap.
struct Tiling {
    int columns = 1;
    int rows = 1;
    QSizeF sheet;
    double scale = 1;

    [[nodiscard]] int sheets() const { return columns * rows; }
};

int parts(double length, double sheet) {
    return length <= sheet ? 1 : 1 + static_cast<int>(std::ceil((length - sheet) / (sheet - overlap)));
}

Tiling tiling_at(const Shape& shape, QSizeF sheet, double scale) {
    return {parts(width_of(shape) * scale, sheet.width()), parts(height_of(shape) * scale, sheet.height()),
            sheet, scale};
}

/// Full size if it takes a bearable number of sheets, or the first of a half, a third, ... that does.
Tiling tiling_of(const Shape& shape, QSizeF sheet) {
    int part = 1;
    while (tiling_at(shape, sheet, 1.0 / part).sheets() > most_sheets && part < 1'000) ++part;
    return tiling_at(shape, sheet, 1.0 / part);
}

void paint_cut_marks(QPainter& painter, const QRectF& sheet, const Tiling& tiling, int column, int row) {
    painter.setPen(QPen(page_colour::drawn, pt(0.5), Qt::DashLine));
    if (column > 0) {
        painter.drawLine(sheet.topLeft() + QPointF(overlap, 0), sheet.bottomLeft() + QPointF(overlap, 0));
    }
    if (column + 1 < tiling.columns) painter.drawLine(sheet.topRight(), sheet.bottomRight());
    if (row > 0)
        painter.drawLine(sheet.topLeft() + QPointF(0, overlap), sheet.topRight() + QPointF(0, overlap));
    if (row + 1 < tiling.rows) painter.drawLine(sheet.bottomLeft(), sheet.bottomRight());
}

QString sheet_words(const Tiling& tiling, int column, int row) {
    if (tiling.sheets() == 1) return {};
    return words("sheet %1 of %2: row %3, column %4; lay the dashed lines over each other")
        .arg(row * tiling.columns + column + 1)
        .arg(tiling.sheets())
        .arg(row + 1)
        .arg(column + 1);
}

void paint_sheet(QPainter& painter, const QRectF& sheet, const Shape& shape, const Piece& piece,
                 const Tiling& tiling, int column, int row) {
    const QPointF corner(column * (sheet.width() - overlap), row * (sheet.height() - overlap));
    painter.save();
    painter.setClipRect(sheet, Qt::IntersectClip);
    painter.translate(sheet.topLeft() - corner);
    painter.scale(tiling.scale, tiling.scale);
    painter.translate(width_of(shape) / 2, height_of(shape));
    paint_silhouette(painter, shape, piece);
    painter.restore();
    paint_cut_marks(painter, sheet, tiling, column, row);
}

Block sheet_block(const PageContext& context, std::size_t i, const Tiling& tiling, int column, int row) {
    Block block;
    block.shape.height = context.frame.height();
    block.shape.starts_page = true;
    block.paint = [&context, i, tiling, column, row](QPainter& painter, QPointF at, const PageNumbers&) {
        const QString sheet_name = sheet_words(tiling, column, row);
        const QString label = label_of(context, i);
        paint_label(painter, at + QPointF(0, pt(9)), context.frame.width(),
                    sheet_name.isEmpty() ? label : words("%1: %2").arg(label, sheet_name));
        const QRectF sheet(at + QPointF(0, label_height), tiling.sheet);
        paint_sheet(painter, sheet, context.study.pieces[i].shape, context.toy().pieces[i], tiling, column,
                    row);
        paint_calibration_bar(painter, sheet.bottomLeft() + QPointF(0, mm(4)), tiling.scale);
    };
    return block;
}

void add_sheets(Blocks& blocks, const PageContext& context, std::size_t i, QSizeF sheet) {
    const Tiling tiling = tiling_of(context.study.pieces[i].shape, sheet);
    for (int row = 0; row < tiling.rows; ++row) {
        for (int column = 0; column < tiling.columns; ++column) {
            blocks.push_back(sheet_block(context, i, tiling, column, row));
        }
    }
}

bool same_outline(const PageContext& context, std::size_t a, std::size_t b) {
    const Shape& first = context.study.pieces[a].shape;
    const Shape& second = context.study.pieces[b].shape;
    return first.radius_mm == second.radius_mm && first.z_mm == second.z_mm &&
           context.toy().pieces[a].starts_at_top == context.toy().pieces[b].starts_at_top;
}

/// Pieces with a shape, each outline once.
std::vector<std::size_t> outlines(const PageContext& context) {
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < context.study.pieces.size(); ++i) {
        if (!context.study.pieces[i].shape.usable()) continue;
        const bool known = std::any_of(shown.begin(), shown.end(),
                                       [&](std::size_t j) { return same_outline(context, i, j); });
        if (!known) shown.push_back(i);
    }
    return shown;
}

/// Fills rows with the pieces that fit the sheet, in order; the others get sheets of their own.
class Rows {
  public:
    Rows(Blocks& blocks, const PageContext& context, QSizeF sheet)
        : blocks_(blocks), context_(context), sheet_(sheet) {}

    void add(std::size_t i) {
        const Shape& shape = context_.study.pieces[i].shape;
        const double width = place_width(context_, i);
        if (width > sheet_.width() || height_of(shape) > sheet_.height()) {
            flush();
            return add_sheets(blocks_, context_, i, sheet_);
        }
        if (!row_.pieces.empty() && row_.width + gap + width > sheet_.width()) flush();
        row_.width += width + (row_.pieces.empty() ? 0 : gap);
        row_.height = std::max(row_.height, height_of(shape));
        row_.pieces.push_back(i);
    }

    void flush() {
        if (!row_.pieces.empty()) blocks_.push_back(row_block(context_, row_));
        row_ = {};
    }

  private:
    Blocks& blocks_;
    const PageContext& context_;
    QSizeF sheet_;
    Row row_;
};

QString using_words() {
    return words(
        "The outlines are full size: hold the work against them as it grows. Print at 100 %, without fitting "
        "to "
        "the page, and check the bar with a ruler. Thin lines mark every fifth round.");
}

}  // namespace

void add_silhouettes(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.silhouette) return;
    const std::vector<std::size_t> shown = outlines(context);
    if (shown.empty()) return;
    const double width = context.frame.width();
    blocks.push_back(section_heading(words("Full-size outlines"), QStringLiteral("silhouette"), width));
    blocks.push_back(paragraph_block(Paragraph(using_words(), width)));
    blocks.back().shape.keep_with_next = true;
    const QSizeF sheet(width, context.frame.height() - label_height - mm(4) - bar_height);
    Rows rows(blocks, context, sheet);
    for (const std::size_t i : shown) rows.add(i);
    rows.flush();
}

}  // namespace roundwright::render
