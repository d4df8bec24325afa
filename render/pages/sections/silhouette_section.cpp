#include <algorithm>
#include <cmath>
#include <utility>

#include <QFontMetricsF>
#include <QPainter>

#include "core/study/coil_stage.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/drawable_text.h"
#include "render/pages/page_context.h"
#include "render/pages/sections/full_size_outline.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

constexpr double calibration_mm = 50;
constexpr double bar_height = mm(9);
constexpr double label_height = pt(14);
constexpr double gap = mm(6);
constexpr double overlap = mm(10);
constexpr int most_sheets = 12;
constexpr double narrowest_place = mm(27);

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
        scale == 1 ? Pattern::tr("50 mm (1.97 in) when printed at full size, 100 %")
                   : Pattern::tr("50 mm (1.97 in) at 100 %; the piece is drawn at 1 to %1").arg(1 / scale);
    painter.drawText(at + QPointF(mm(calibration_mm) + mm(4), tick + pt(1)), text);
}

/// A piece's outline under its name and size.
struct Labelled {
    FullSizeOutline outline;
    QString label;

    [[nodiscard]] Paragraph set_label(double width) const {
        ParagraphStyle style;
        style.font = bold_font(8.5);
        style.leading = 1.3;
        style.most_lines = most_name_lines;
        return {label, width, style};
    }
    /// Width of its place in a row: the outline's, or that of the label in narrow lines.
    [[nodiscard]] double place_width() const {
        const double width = std::max(outline.size().width(), narrowest_place);
        return std::max(outline.size().width(), set_label(width).natural_width() + mm(1));
    }
};

Labelled labelled(const PageContext& context, std::size_t i) {
    const FinishedSize& size = *context.study.sizes[i];
    const QString measured = piece_size_words(size, context.options.units);
    return {FullSizeOutline(context.toy().pieces[i], context.study.pieces[i], lies_flat(size)),
            Pattern::tr("%1, %2").arg(piece_name_words(context.toy(), i),
                                      QString(measured).replace(QLatin1Char(' '), QChar::Nbsp))};
}

/// Pieces that stand side by side on the paper, above one calibration bar.
struct Row {
    std::vector<Labelled> pieces;
    double width = 0;
    double height = 0;  ///< of the outlines

    [[nodiscard]] double widened_by(const Labelled& piece) const {
        return width + (pieces.empty() ? 0 : gap) + piece.place_width();
    }
    void add(const Labelled& piece) {
        width = widened_by(piece);
        height = std::max(height, piece.outline.size().height());
        pieces.push_back(piece);
    }
};

Block row_block(const Row& row) {
    double labels = 0;
    for (const Labelled& piece : row.pieces) {
        labels = std::max(labels, piece.set_label(piece.place_width()).height() + mm(1.5));
    }
    Block block;
    block.shape.height = labels + row.height + mm(4) + bar_height;
    block.shape.space_before = mm(8);
    block.paint = [row, labels](QPainter& painter, QPointF at, const PageNumbers&) {
        double x = at.x();
        const double foot = at.y() + labels + row.height;
        for (const Labelled& piece : row.pieces) {
            piece.set_label(piece.place_width()).paint(painter, {x, at.y()});
            piece.outline.paint(painter, {x, foot - piece.outline.size().height()});
            x += piece.place_width() + gap;
        }
        paint_calibration_bar(painter, {at.x(), foot + mm(4)}, 1);
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

/// No sheet is larger than it needs to be.
Tiling tiling_at(QSizeF outline, QSizeF sheet, double scale) {
    const QSizeF drawn = outline * scale;
    return {parts(drawn.width(), sheet.width()), parts(drawn.height(), sheet.height()),
            sheet.boundedTo(drawn), scale};
}

/// Full size if it takes a bearable number of sheets, or the first of a half, a third, ... that does.
Tiling tiling_of(QSizeF outline, QSizeF sheet) {
    int part = 1;
    while (tiling_at(outline, sheet, 1.0 / part).sheets() > most_sheets && part < 1'000) ++part;
    return tiling_at(outline, sheet, 1.0 / part);
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
    return Pattern::tr("sheet %1 of %2: row %3, column %4; lay the dashed lines over each other")
        .arg(row * tiling.columns + column + 1)
        .arg(tiling.sheets())
        .arg(row + 1)
        .arg(column + 1);
}

void paint_sheet(QPainter& painter, const QRectF& sheet, const FullSizeOutline& outline, const Tiling& tiling,
                 int column, int row) {
    const QPointF corner(column * (sheet.width() - overlap), row * (sheet.height() - overlap));
    painter.save();
    painter.setClipRect(sheet, Qt::IntersectClip);
    painter.translate(sheet.topLeft() - corner);
    painter.scale(tiling.scale, tiling.scale);
    outline.paint(painter, {});
    painter.restore();
    paint_cut_marks(painter, sheet, tiling, column, row);
}

void paint_sheet_label(QPainter& painter, QPointF at, double width, const QString& label,
                       const QString& sheet) {
    painter.setFont(bold_font(8.5));
    painter.setPen(page_colour::ink);
    const QString text = drawable(sheet.isEmpty() ? label : Pattern::tr("%1: %2").arg(label, sheet));
    const QFontMetricsF metrics(painter.font());
    painter.drawText(at + QPointF(0, pt(9)), metrics.elidedText(text, Qt::ElideRight, width));
}

Block sheet_block(const PageContext& context, const Labelled& piece, const Tiling& tiling, int column,
                  int row) {
    Block block;
    block.shape.height = label_height + tiling.sheet.height() + mm(4) + bar_height;
    block.shape.space_before = mm(8);
    block.paint = [width = context.frame.width(), piece, tiling, column, row](QPainter& painter, QPointF at,
                                                                              const PageNumbers&) {
        paint_sheet_label(painter, at, width, piece.label, sheet_words(tiling, column, row));
        const QRectF sheet(at + QPointF(0, label_height), tiling.sheet);
        paint_sheet(painter, sheet, piece.outline, tiling, column, row);
        paint_calibration_bar(painter, sheet.bottomLeft() + QPointF(0, mm(4)), tiling.scale);
    };
    return block;
}

void add_sheets(Blocks& blocks, const PageContext& context, const Labelled& piece, QSizeF sheet) {
    const Tiling tiling = tiling_of(piece.outline.size(), sheet);
    for (int row = 0; row < tiling.rows; ++row) {
        for (int column = 0; column < tiling.columns; ++column) {
            blocks.push_back(sheet_block(context, piece, tiling, column, row));
        }
    }
}

bool same_outline(const PageContext& context, std::size_t a, std::size_t b) {
    return context.study.pieces[a].measures() == context.study.pieces[b].measures() &&
           context.toy().pieces[a].starts_at_top == context.toy().pieces[b].starts_at_top;
}

/// Pieces with a shape, each outline once.
std::vector<Labelled> outlines(const PageContext& context) {
    std::vector<std::size_t> shown;
    for (std::size_t i = 0; i < context.study.pieces.size(); ++i) {
        const auto known = [&](std::size_t other) { return same_outline(context, i, other); };
        // What curls is wound up before it can be held against anything.
        if (is_coil(context.study.pieces[i])) continue;
        if (context.study.sizes[i] && std::ranges::none_of(shown, known)) shown.push_back(i);
    }
    std::vector<Labelled> found;
    for (const std::size_t i : shown) found.push_back(labelled(context, i));
    return found;
}

/// Fills rows with the pieces that fit the sheet, in order; the others get sheets of their own after them.
void add_outlines(Blocks& blocks, const PageContext& context, const std::vector<Labelled>& shown,
                  QSizeF sheet) {
    Row row;
    std::vector<const Labelled*> large;
    for (const Labelled& piece : shown) {
        if (piece.place_width() > sheet.width() || piece.outline.size().height() > sheet.height()) {
            large.push_back(&piece);
            continue;
        }
        if (row.widened_by(piece) > sheet.width()) blocks.push_back(row_block(std::exchange(row, {})));
        row.add(piece);
    }
    if (!row.pieces.empty()) blocks.push_back(row_block(row));
    for (const Labelled* piece : large) add_sheets(blocks, context, *piece, sheet);
}

QString using_words() {
    return Pattern::tr(
        "The outlines are full size: hold the work against them as it grows. Print at 100 %, without fitting "
        "to the page, and check the bar with a ruler. Thin lines mark every fifth round.");
}

}  // namespace

void add_silhouettes(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.silhouette) return;
    const std::vector<Labelled> shown = outlines(context);
    if (shown.empty()) return;
    const double width = context.frame.width();
    const std::size_t first = blocks.size();
    blocks.push_back(section_heading(Pattern::tr("Full-size outlines"), QStringLiteral("silhouette"), width));
    blocks.push_back(paragraph_block(Paragraph(using_words(), width)));
    blocks.back().shape.keep_with_next = true;
    // So that the first sheet finds room below the heading, however large.
    const double heading = height_of(blocks, first);
    add_outlines(blocks, context, shown,
                 {width, context.frame.height() - heading - mm(8) - label_height - mm(4) - bar_height});
    keep_on_one_page(blocks, first, context.frame.height());
}

}  // namespace roundwright::render
