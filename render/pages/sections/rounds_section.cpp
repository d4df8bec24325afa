#include <algorithm>
#include <utility>

#include <QPainter>

#include "core/language/pattern/written_rounds.h"
#include "core/language/round/write.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/table.h"
#include "render/pages/page_context.h"
#include "render/pages/piece_figure.h"
#include "render/pages/swatch.h"
#include "render/wording/pattern/assembly_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/round_remarks.h"
#include "render/wording/pattern/section_words.h"
#include "render/wording/printable.h"

namespace roundwright::render {
namespace {

constexpr double box_side = mm(2.4);
constexpr double box_step = mm(3.3);
constexpr double box_line = pt(9 * 1.45);
constexpr int boxes_a_line = 6;
constexpr int most_boxes = 50;                    // of one row of the table; more rounds go on in the next
constexpr qsizetype most_words_of_a_row = 1'200;  // characters; longer rounds go on in a further row

/// Pieces are pictured, stitch by stitch, until so many stitches are: some twenty megabytes of drawings.
constexpr std::size_t most_pictured_stitches = 150'000;

ParagraphStyle soft(double points = 8.5) {
    ParagraphStyle style;
    style.font = body_font(points);
    style.colour = page_colour::soft_ink;
    return style;
}

PieceFigure heading_figure(const PageContext& context, std::size_t i, QSizeF box) {
    const PieceStudy& study = context.study.pieces[i];
    const PieceModel model(context.toy(), i, study);
    const FigureView view = measured_view(study);
    return {model, std::min(measured_scale(model, view, box), units_per_mm), view, YarnDetail::cords};
}

std::size_t stitches_of(const PieceStudy& study) {
    std::size_t stitches = 0;
    for (const GraphRound& round : study.graph().graph.rounds) stitches += round.stitches.size();
    return stitches;
}

/// The first piece that is not pictured any more; as many as there are pieces: all are.
std::size_t first_without_picture(const PatternStudy& study) {
    std::size_t stitches = 0;
    std::size_t i = 0;
    for (; i < study.pieces.size() && stitches < most_pictured_stitches; ++i)
        stitches += stitches_of(study.pieces[i]);
    return i;
}

Block piece_heading(const PageContext& context, std::size_t i, bool pictured) {
    const bool drawn = pictured && context.study.pieces[i].measures().converged();
    const double figure_width = drawn ? mm(52) : 0;
    const double figure_height = drawn ? mm(42) : 0;
    const double width = context.frame.width() - figure_width - (drawn ? mm(6) : 0);
    ParagraphStyle style;
    style.font = title_font(13);
    style.leading = 1.2;
    style.most_lines = 3;
    const Paragraph name(piece_name_words(context.toy(), i), width, style);
    const Paragraph facts(piece_fact_words(context.study, i, context.options.terms, context.options.units)
                              .join(QLatin1Char('\n')),
                          width, soft());
    Block block;
    block.shape.height = std::max(name.height() + pt(5) + facts.height(), figure_height);
    block.shape.space_before = mm(9);
    block.shape.keep_with_next = true;
    block.anchor = QStringLiteral("piece-%1").arg(i);
    block.heading = piece_name_words(context.toy(), i);
    block.level = 2;
    const PieceFigure figure =
        drawn ? heading_figure(context, i, QSizeF(figure_width, figure_height)) : PieceFigure();
    const QRectF box(context.frame.width() - figure_width, 0, figure_width, figure_height);
    block.paint = [=, units = context.options.units](QPainter& painter, QPointF at, const PageNumbers&) {
        name.paint(painter, at);
        facts.paint(painter, at + QPointF(0, name.height() + pt(5)));
        figure.paint_measured(painter, box.translated(at), units);
    };
    return block;
}

bool shows_yarn(const PageContext& context, const std::vector<WrittenRounds>& lines) {
    if (context.toy().yarns.size() < 2) return false;
    return std::any_of(lines.begin(), lines.end(), [&](const WrittenRounds& line) {
        return line.several_yarns || line.yarn != lines.front().yarn || line.yarn != 0;
    });
}

Cell boxes(int count) {
    const int lines = (count + boxes_a_line - 1) / boxes_a_line;
    return {lines * box_line, [count](QPainter& painter, QPointF at) {
                painter.setPen(QPen(page_colour::drawn, pt(0.7)));
                painter.setBrush(Qt::NoBrush);
                QList<QRectF> all;
                for (int i = 0; i < count; ++i) {
                    const QPointF place((i % boxes_a_line) * box_step,
                                        (i / boxes_a_line) * box_line + (box_line - box_side) / 2);
                    all += QRectF(at + place, QSizeF(box_side, box_side));
                }
                painter.drawRects(all);
            }};
}

Cell yarn_cell(const PageContext& context, const WrittenRounds& line) {
    const auto& yarns = context.toy().yarns;
    const auto yarn = static_cast<std::size_t>(line.yarn);
    if (yarn >= yarns.size()) return {};
    const Paragraph letter(QString::fromStdString(yarn_letter(line.yarn)), mm(8),
                           ParagraphStyle{body_font()});
    return {letter.height(), [letter, colour = yarns[yarn].colour, yarn](QPainter& painter, QPointF at) {
                paint_swatch(painter, QRectF(at + QPointF(0, pt(2.5)), QSizeF(mm(5), pt(8))), colour, yarn);
                letter.paint(painter, at + QPointF(mm(6.5), 0));
            }};
}

QString range_words(int first, int last) {
    if (first == last) return QString::number(first + 1);
    return QStringLiteral("%1–%2").arg(first + 1).arg(last + 1);
}

/// A long round's words in stretches, parted after commas.
QStringList stretches(const QString& text) {
    QStringList parts;
    qsizetype from = 0;
    while (text.size() - from > most_words_of_a_row) {
        qsizetype end = text.lastIndexOf(QStringLiteral(", "), from + most_words_of_a_row) + 1;
        if (end <= from) end = from + most_words_of_a_row;
        parts += text.mid(from, end - from).trimmed();
        from = end;
    }
    parts += text.mid(from).trimmed();
    return parts;
}

/// The table of one piece's rounds.
class RoundsTable {
  public:
    RoundsTable(Blocks& blocks, const PageContext& context, std::size_t piece)
        : context_(context),
          piece_(context.toy().pieces[piece]),
          study_(context.study.pieces[piece]),
          remarks_(round_remarks(piece_, study_, context.options.terms)),
          lines_(written_rounds(piece_, study_.graph(), context.options.terms, remarked_rounds(remarks_))),
          with_yarn_(shows_yarn(context, lines_)),
          table_(blocks, columns(),
                 Pattern::tr("%1, continued").arg(piece_name_words(context.toy(), piece))) {}

    void add() {
        for (const WrittenRounds& line : lines_) {
            add_change(line);
            for (int first = line.first; first <= line.last; first += most_boxes) {
                add_row(line, first, std::min(line.last, first + most_boxes - 1));
            }
            add_remarks(line);
        }
        table_.finish();
    }

  private:
    [[nodiscard]] std::vector<TableColumn> columns() const {
        const double yarn = with_yarn_ ? mm(17) : 0;
        const double text = context_.frame.width() - mm(22) - mm(17) - yarn - mm(20);
        std::vector<TableColumn> all{
            {Pattern::tr("DONE"), mm(22)},
            {piece_.joining == Joining::rows ? Pattern::tr("ROW") : Pattern::tr("ROUND"), mm(17)}};
        if (with_yarn_) all.push_back({Pattern::tr("YARN"), yarn});
        all.push_back({Pattern::tr("INSTRUCTION"), text});
        all.push_back({Pattern::tr("STITCHES"), mm(20), Qt::AlignRight});
        return all;
    }

    void add_row(const WrittenRounds& line, int first, int last) {
        const QStringList parts = stretches(QString::fromStdString(line.words));
        for (qsizetype i = 0; i < parts.size(); ++i) {
            const bool head = i == 0;
            const bool tail = i + 1 == parts.size();
            std::vector<Cell> cells{head ? boxes(last - first + 1) : Cell{}};
            cells.push_back(
                table_.text(1, head ? range_words(first, last) : QString(), ParagraphStyle{bold_font()}));
            if (with_yarn_) cells.push_back(head ? yarn_cell(context_, line) : Cell{});
            cells.push_back(table_.text(cells.size(), parts[i]));
            cells.push_back(table_.text(cells.size(),
                                        tail ? QStringLiteral("(%1)").arg(line.stitches) : QString(),
                                        ParagraphStyle{bold_font()}));
            table_.add_row(std::move(cells));
        }
    }

    void add_change(const WrittenRounds& line) {
        const QString change = change_words(context_.toy(), line);
        if (!change.isEmpty()) remark(change, page_colour::ink, Table::Belongs::below);
    }

    void add_remarks(const WrittenRounds& line) {
        const QString note = printable(QString::fromStdString(line.note)).trimmed();
        if (!note.isEmpty()) remark(note, page_colour::ink);
        if (line.does_not_fit) remark(does_not_fit_words(), page_colour::warning);
        for (const RoundRemark& due : remarks_) {
            if (due.after == line.last) remark(due.text, page_colour::ink);
        }
    }

    void remark(const QString& text, const QColor& colour, Table::Belongs belongs = Table::Belongs::above) {
        ParagraphStyle style = soft();
        style.colour = colour;
        const double indent = mm(22);
        for (const QString& part : stretches(text)) {
            table_.add_line(Paragraph(part, context_.frame.width() - indent - mm(2), style), indent, belongs);
        }
    }

    const PageContext& context_;
    const Piece& piece_;
    const PieceStudy& study_;
    std::vector<RoundRemark> remarks_;
    std::vector<WrittenRounds> lines_;
    bool with_yarn_;
    Table table_;
};

/// A piece that takes up less of a page is kept on one: it is easier to follow than to save paper.
constexpr double short_piece = 0.6;

void add_piece(Blocks& blocks, const PageContext& context, std::size_t i, bool pictured) {
    const double width = context.frame.width();
    blocks.push_back(piece_heading(context, i, pictured));
    if (context.study.pieces[i].graph().graph.rounds.empty()) {
        blocks.push_back(
            paragraph_block(Paragraph(Pattern::tr("This piece has no rounds that can be printed."), width)));
        return;
    }
    const QString start = start_line_words(context.toy(), i, context.options.terms);
    if (!start.isEmpty()) {
        blocks.push_back(paragraph_block(Paragraph(start, width)));
        blocks.back().shape.keep_with_next = true;
    }
    RoundsTable(blocks, context, i).add();
    blocks.back().shape.keep_with_next = true;
    blocks.push_back(paragraph_block(Paragraph(end_words(context.toy(), i), width), pt(7)));
}

}  // namespace

void add_rounds(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.rounds || context.toy().pieces.empty()) return;
    blocks.push_back(section_heading(Pattern::tr("Rounds"), QStringLiteral("rounds"), context.frame.width()));
    const std::size_t pictured = first_without_picture(context.study);
    if (pictured < context.toy().pieces.size()) {
        const QString told = Pattern::tr(
                                 "There are too many stitches to picture every piece: from %1 on, only "
                                 "the rounds are given.")
                                 .arg(piece_name_words(context.toy(), pictured));
        blocks.push_back(paragraph_block(Paragraph(told, context.frame.width(), soft())));
    }
    const QString order = working_order_words(context.toy());
    if (!order.isEmpty()) blocks.push_back(paragraph_block(Paragraph(order, context.frame.width())));
    bool first = order.isEmpty();
    for (const std::size_t i : working_order(context.toy())) {
        const std::size_t heading = blocks.size();
        add_piece(blocks, context, i, i < pictured);
        if (std::exchange(first, false)) blocks[heading].shape.space_before = pt(6);
        keep_on_one_page(blocks, heading, context.frame.height() * short_piece);
    }
}

}  // namespace roundwright::render
