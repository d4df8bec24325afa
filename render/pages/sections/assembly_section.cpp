#include <algorithm>
#include <array>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/join_marks.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/page_context.h"
#include "render/pages/piece_figure.h"
#include "render/pages/sections/join_drawing.h"
#include "render/pages/toy_figure.h"
#include "render/wording/as_sentence.h"
#include "render/wording/pattern/assembly_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

constexpr double most_figure_height = mm(72);
constexpr double view_name_room = mm(7);
constexpr double between_views = mm(4);
constexpr double join_room_height = mm(50);
constexpr double between_joins = mm(8);

/// Drawings beyond these would fill a book; their steps say it all.
constexpr std::size_t most_join_drawings = 60;

bool has_own_words(const PageContext& context) {
    return !paragraphs_of(context.toy().text.assembly).isEmpty();
}

std::vector<SewingStep> sewn(const PageContext& context) {
    std::vector<SewingStep> steps = context.study.sewing;
    std::erase_if(steps, [](const SewingStep& step) { return step.seam == Seam::worked_on; });
    return steps;
}

/// "A", ..., "Z", "A1", ...: beside words of the maker's own, whose steps have numbers.
QString letter(std::size_t i) {
    const QString of_alphabet(QChar(u'A' + static_cast<int>(i % 26)));
    return i < 26 ? of_alphabet : of_alphabet + QString::number(i / 26);
}

/// The mark of each sewn join: the number of its step, or a letter.
QString mark_of(const PageContext& context, std::size_t i) {
    if (has_own_words(context)) return letter(i);
    const auto steps = sewn(context).size();
    const auto all = static_cast<std::size_t>(
        worked_out_assembly(context.toy(), context.study.sewing, context.options.terms).size());
    const std::size_t before = all - steps - 1;  // what is worked on comes first; ends are woven in last
    return QString::number(before + i + 1);
}

QString view_name(ToyView view) {
    switch (view) {
        case ToyView::side:
            return Pattern::tr("from the side");
        case ToyView::back:
            return Pattern::tr("from the back");
        default:
            return Pattern::tr("from the front");
    }
}

/// The toy in three views at one scale, its joins marked.
class Views {
  public:
    Views(const PageContext& context, const ToyModel& model) : width_(context.frame.width()) {
        double across = 0;
        double up = 0;
        for (const ToyView view : views) {
            seen_.push_back(model.seen_mm(view));
            across += seen_.back().width();
            up = std::max(up, seen_.back().height());
        }
        const double room = width_ - 2 * between_views - 6 * join_mark_room();
        scale_ =
            std::min({room / std::max(across, 1.0), most_figure_height / std::max(up, 1.0), units_per_mm});
        height_ = up * scale_;
        for (const ToyView view : views)
            figures_.emplace_back(model, scale_, view, detail_for_stitches(3 * model.stitches()));
        mark(context);
    }

    [[nodiscard]] double height() const { return mm(3) + std::max(height_, column_) + view_name_room; }

    void paint(QPainter& painter, QPointF at) const {
        double total = 2 * between_views + 6 * join_mark_room();
        for (const QRectF& seen : seen_) total += seen.width() * scale_;
        double x = at.x() + (width_ - total) / 2;
        const double foot = at.y() + mm(3) + std::max(height_, column_);
        for (std::size_t i = 0; i < seen_.size(); ++i) {
            const double left = x + join_mark_room();
            paint_view(painter, i, {left, foot});
            x = left + seen_[i].width() * scale_ + join_mark_room() + between_views;
        }
    }

  private:
    static constexpr std::array views{ToyView::front, ToyView::side, ToyView::back};

    void mark(const PageContext& context) {
        const std::vector<SewingStep> steps = sewn(context);
        for (const ToyView view : views) {
            std::vector<JoinMark> marks;
            for (const SeenJoin& seen : seen_joins(context.study, view)) {
                const auto step = std::ranges::find(steps, seen.join, &SewingStep::join);
                if (step == steps.end()) continue;
                const auto number = static_cast<std::size_t>(step - steps.begin());
                marks.push_back({mark_of(context, number), seen.place_mm * scale_});
            }
            column_ = std::max(column_, join_mark_column((marks.size() + 1) / 2));
            marks_.push_back(std::move(marks));
        }
    }

    void paint_view(QPainter& painter, std::size_t i, QPointF foot_left) const {
        const QRectF seen(seen_[i].topLeft() * scale_, seen_[i].size() * scale_);
        const QPointF origin = foot_left - QPointF(seen.left(), seen.bottom());
        figures_[i].paint(painter, origin);
        std::vector<JoinMark> marks = marks_[i];
        for (JoinMark& one : marks) one.place += origin;
        paint_join_marks(painter, seen.translated(origin), marks);
        painter.setFont(body_font(8));
        painter.setPen(page_colour::soft_ink);
        const QRectF below(foot_left.x() - join_mark_room(), foot_left.y() + mm(2),
                           seen.width() + 2 * join_mark_room(), mm(5));
        painter.drawText(below, Qt::AlignHCenter | Qt::AlignTop, view_name(views[i]));
    }

    double width_;
    double scale_ = 0;
    double height_ = 0;
    double column_ = 0;
    std::vector<QRectF> seen_;
    std::vector<ToyFigure> figures_;
    std::vector<std::vector<JoinMark>> marks_;
};

void add_views(Blocks& blocks, const PageContext& context) {
    if (!shows_whole_toy(context.study)) return;
    const ToyModel model(context.study);
    const Views views(context, model);
    Block block;
    block.shape.height = views.height();
    block.shape.space_before = mm(3);
    block.paint = [views](QPainter& painter, QPointF at, const PageNumbers&) { views.paint(painter, at); };
    blocks.push_back(std::move(block));
}

/// One join to pin by: its mark, what is sewn, where, and the drawing.
struct JoinCell {
    QString mark;
    Paragraph name;
    Paragraph where;
    JoinDrawing drawing;

    JoinCell(const PageContext& context, const SewingStep& step, QString its_mark, double width)
        : mark(std::move(its_mark)),
          name(joined_name_words(context.toy(), step), width - mm(7), ParagraphStyle{bold_font()}),
          where(as_sentence(sewn_place_words(step)), width, soft()),
          drawing(context, step, {width, join_room_height}) {}

    [[nodiscard]] double height() const {
        return head() + mm(1) + drawing.height() + seen_room + where.height();
    }

    void paint(QPainter& painter, QPointF at, double width) const {
        paint_join_ring(painter, at + QPointF(mm(2.5), name.height() / 2), mark);
        name.paint(painter, at + QPointF(mm(7), 0));
        drawing.paint(painter, at + QPointF(0, head() + mm(1)));
        const double below = head() + mm(1) + drawing.height();
        painter.setFont(body_font(7.5));
        painter.setPen(page_colour::soft_ink);
        painter.drawText(QRectF(at + QPointF(0, below), QSizeF(width, seen_room)),
                         Qt::AlignHCenter | Qt::AlignTop | Qt::TextSingleLine, drawing.seen_words());
        where.paint(painter, at + QPointF(0, below + seen_room));
    }

  private:
    static constexpr double seen_room = mm(5.5);
    static ParagraphStyle soft() {
        ParagraphStyle style;
        style.font = body_font(8.5);
        style.alignment = Qt::AlignHCenter;
        return style;
    }
    [[nodiscard]] double head() const { return std::max(name.height(), mm(5)); }
};

bool can_be_drawn(const PageContext& context, const SewingStep& step) {
    return context.study.pieces[step.onto].measures().usable() &&
           !context.study.together->solved[step.onto].surface.empty();
}

void add_join_drawings(Blocks& blocks, const PageContext& context) {
    const double width = (context.frame.width() - between_joins) / 2;
    const std::vector<SewingStep> steps = sewn(context);
    std::vector<JoinCell> row;
    const auto put_row = [&] {
        if (row.empty()) return;
        Block block;
        for (const JoinCell& cell : row) block.shape.height = std::max(block.shape.height, cell.height());
        block.shape.space_before = mm(7);
        block.paint = [row, width](QPainter& painter, QPointF at, const PageNumbers&) {
            for (std::size_t i = 0; i < row.size(); ++i)
                row[i].paint(painter, at + QPointF(static_cast<double>(i) * (width + between_joins), 0),
                             width);
        };
        blocks.push_back(std::move(block));
        row.clear();
    };
    for (std::size_t i = 0; i < std::min(steps.size(), most_join_drawings); ++i) {
        if (!can_be_drawn(context, steps[i])) continue;
        row.emplace_back(context, steps[i], mark_of(context, i), width);
        if (row.size() == 2) put_row();
    }
    put_row();
}

}  // namespace

void add_assembly(Blocks& blocks, const PageContext& context) {
    const QStringList steps = assembly_words(context.toy(), context.study.sewing, context.options.terms);
    if (steps.isEmpty()) return;
    const std::size_t first = blocks.size();
    blocks.push_back(
        section_heading(Pattern::tr("Assembly"), QStringLiteral("assembly"), context.frame.width()));
    add_views(blocks, context);
    add_steps(blocks, steps, context.frame.width());
    keep_on_one_page(blocks, first, context.frame.height() * 0.9);
    add_join_drawings(blocks, context);
}

}  // namespace roundwright::render
