#include <algorithm>
#include <cmath>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/block_builders.h"
#include "render/pages/figure.h"
#include "render/pages/page_context.h"
#include "render/pages/pattern_words.h"
#include "render/pages/section_words.h"

namespace roundwright::render {
namespace {

constexpr int most_introduction_lines = 6;
constexpr std::size_t most_figures = 6;

struct Fact {
    QString label;
    QString value;
};

QString size_fact(const PageContext& context) {
    const PatternStudy& study = context.study;
    for (std::size_t i = 0; i < study.sizes.size(); ++i) {
        if (!study.sizes[i]) continue;
        const FinishedSize& size = *study.sizes[i];
        const QString words = size_words(size.width_mm.likely, size.height_mm.likely, context.options.units);
        if (study.sizes.size() == 1) return words;
        return printable_line(study.toy.pieces[i].name) + QStringLiteral("\n") + words;
    }
    return {};
}

QString yarn_fact(const Toy& toy) {
    QStringList weights;
    for (const Yarn& yarn : toy.yarns) {
        const QString weight = yarn_weight_words(yarn.weight);
        if (!weights.contains(weight)) weights += weight;
    }
    return weights.join(QStringLiteral(", "));
}

std::vector<Fact> facts(const PageContext& context) {
    const Toy& toy = context.toy();
    std::vector<Fact> all;
    const auto add = [&](const char* label, const QString& value) {
        if (!value.isEmpty()) all.push_back({words(label), value});
    };
    add("FINISHED SIZE", size_fact(context));
    if (toy.text.level) add("LEVEL", level_words(*toy.text.level));
    add("YARN", yarn_fact(toy));
    add("HOOK", hook_words(toy.hook_mm));
    if (context.study.materials.stitches > 0) {
        add("AT THE HOOK", words("about %1").arg(time_words(context.study.materials.minutes.likely)));
    }
    add("TERMS", context.options.terms == Terms::us ? words("US") : words("UK"));
    return all;
}

/// Facts side by side, a label over a value each, every column as wide as its words ask for.
class FactStrip {
  public:
    FactStrip(const std::vector<Fact>& facts, double width) {
        ParagraphStyle label;
        label.font = label_font(6.5);
        label.colour = page_colour::soft_ink;
        label.most_lines = 1;
        ParagraphStyle value;
        value.font = body_font(8.5);
        value.most_lines = 4;
        const std::vector<double> widths = column_widths(facts, width, label, value);
        double left = 0;
        for (std::size_t i = 0; i < facts.size(); ++i) {
            lefts_.push_back(left);
            labels_.emplace_back(facts[i].label, widths[i] - gap, label);
            values_.emplace_back(facts[i].value, widths[i] - gap, value);
            left += widths[i];
        }
    }

    [[nodiscard]] double height() const {
        double tallest = 0;
        for (std::size_t i = 0; i < values_.size(); ++i) {
            tallest = std::max(tallest, labels_[i].height() + pt(3) + values_[i].height());
        }
        return tallest;
    }

    void paint(QPainter& painter, QPointF at) const {
        for (std::size_t i = 0; i < values_.size(); ++i) {
            const QPointF left = at + QPointF(lefts_[i], 0);
            labels_[i].paint(painter, left);
            values_[i].paint(painter, left + QPointF(0, labels_[i].height() + pt(3)));
        }
    }

  private:
    static constexpr double gap = mm(4);

    /// Natural widths, with what is left over shared out, or all made narrower alike.
    static std::vector<double> column_widths(const std::vector<Fact>& facts, double width,
                                             const ParagraphStyle& label, const ParagraphStyle& value) {
        std::vector<double> widths;
        double sum = 0;
        for (const Fact& fact : facts) {
            const double wish = std::max(Paragraph(fact.label, width, label).natural_width(),
                                         Paragraph(fact.value, width, value).natural_width());
            widths.push_back(std::min(wish, mm(55)) + pt(2) + gap);
            sum += widths.back();
        }
        const double spare = (width - sum) / static_cast<double>(std::max<std::size_t>(facts.size(), 1));
        for (double& each : widths) each = sum <= width ? each + spare : each * width / sum;
        return widths;
    }

    std::vector<double> lefts_;
    std::vector<Paragraph> labels_;
    std::vector<Paragraph> values_;
};

Paragraph title_paragraph(const Toy& toy, double width) {
    QString title = printable_line(toy.title);
    if (title.isEmpty()) title = words("A toy without a name yet");
    ParagraphStyle style;
    style.leading = 1.15;
    for (const double points : {34.0, 26.0, 20.0}) {
        style.font = title_font(points);
        style.most_lines = points > 20 ? 0 : 4;
        Paragraph set(title.left(600), width, style);
        if (set.lines() <= 2 || points == 20.0) return set;
    }
    return {title, width, style};
}

Paragraph small_paragraph(const QString& text, double width, const QColor& colour, int most_lines) {
    ParagraphStyle style;
    style.font = body_font(9.5);
    style.colour = colour;
    style.most_lines = most_lines;
    return {text, width, style};
}

Paragraph introduction_paragraph(const QString& told, double width, int most_lines) {
    return small_paragraph(told, std::min(width, mm(130)), page_colour::soft_ink, most_lines);
}

/// Where the parts of the pattern are: a name, dots, a page; two columns.
struct Entry {
    QString heading;
    QString anchor;
};

class ContentsList {
  public:
    ContentsList(std::vector<Entry> entries, double width)
        : entries_(std::move(entries)), column_((width - mm(10)) / 2) {}

    [[nodiscard]] std::size_t rows() const { return (entries_.size() + 1) / 2; }
    [[nodiscard]] double height() const { return line * static_cast<double>(rows()); }

    [[nodiscard]] std::vector<BlockLink> links(QPointF at) const {
        std::vector<BlockLink> links;
        for (std::size_t i = 0; i < entries_.size(); ++i) {
            links.push_back({QRectF(place(i) + at, QSizeF(column_, line)), entries_[i].anchor});
        }
        return links;
    }

    void paint(QPainter& painter, QPointF at, const PageNumbers& pages) const {
        for (std::size_t i = 0; i < entries_.size(); ++i) paint_entry(painter, at + place(i), i, pages);
    }

  private:
    static constexpr double line = pt(15);

    [[nodiscard]] QPointF place(std::size_t i) const {
        const bool second = i >= rows();
        return {second ? column_ + mm(10) : 0.0, line * static_cast<double>(second ? i - rows() : i)};
    }

    void paint_entry(QPainter& painter, QPointF at, std::size_t i, const PageNumbers& pages) const {
        painter.setFont(body_font(8.5));
        const QFontMetricsF metrics(painter.font());
        const QString page = QString::number(pages.page_of(entries_[i].anchor));
        const QString name = metrics.elidedText(entries_[i].heading, Qt::ElideRight, column_ - mm(12));
        const double base = at.y() + pt(10.5);
        painter.setPen(page_colour::ink);
        painter.drawText(QPointF(at.x(), base), name);
        painter.drawText(QPointF(at.x() + column_ - metrics.horizontalAdvance(page), base), page);
        paint_rule(painter, {at.x(), at.y() + line}, {at.x() + column_, at.y() + line});
    }

    std::vector<Entry> entries_;
    double column_;
};

std::vector<std::size_t> drawn_pieces(const PatternStudy& study) {
    std::vector<std::size_t> drawn;
    for (std::size_t i = 0; i < study.pieces.size() && drawn.size() < most_figures; ++i) {
        if (study.pieces[i].shape.usable()) drawn.push_back(i);
    }
    return drawn;
}

struct Grid {
    int columns = 1;
    int rows = 1;
    double scale = 0;
};

Grid grid_with(const PageContext& context, const std::vector<std::size_t>& drawn, QSizeF room, int columns) {
    const int rows = (static_cast<int>(drawn.size()) + columns - 1) / columns;
    const double names = drawn.size() > 1 ? mm(8) : 0;
    const QSizeF cell(room.width() / columns, room.height() / rows - names);
    double scale = 1e9;
    for (const std::size_t i : drawn) {
        scale = std::min(scale, figure_scale(context.study.pieces[i].shape, cell, drawn.size() == 1));
    }
    return {columns, rows, scale};
}

/// The columns that let the pieces be drawn largest, all at one scale.
Grid best_grid(const PageContext& context, const std::vector<std::size_t>& drawn, QSizeF room) {
    Grid best;
    for (int columns = 1; columns <= std::min(3, static_cast<int>(drawn.size())); ++columns) {
        const Grid grid = grid_with(context, drawn, room, columns);
        if (grid.scale > best.scale) best = grid;
    }
    // Never more than twice life size: a small toy stays small on the page.
    best.scale = std::min(best.scale, 2 * units_per_mm);
    return best;
}

void paint_name(QPainter& painter, const QRectF& below, const QString& name) {
    painter.setFont(body_font(8));
    painter.setPen(page_colour::soft_ink);
    const QString fits = QFontMetricsF(painter.font()).elidedText(name, Qt::ElideRight, below.width());
    painter.drawText(below, Qt::AlignHCenter | Qt::AlignBottom | Qt::TextSingleLine, fits);
}

void paint_figures(QPainter& painter, const QRectF& room, const PageContext& context) {
    const std::vector<std::size_t> drawn = drawn_pieces(context.study);
    if (drawn.empty()) return;
    const Grid grid = best_grid(context, drawn, room.size());
    const QSizeF cell(room.width() / grid.columns, room.height() / grid.rows);
    const bool alone = drawn.size() == 1;
    for (std::size_t k = 0; k < drawn.size(); ++k) {
        const QPointF corner(cell.width() * static_cast<double>(k % static_cast<std::size_t>(grid.columns)),
                             cell.height() * static_cast<double>(k / static_cast<std::size_t>(grid.columns)));
        QRectF box(room.topLeft() + corner, cell);
        const Piece& piece = context.toy().pieces[drawn[k]];
        const PieceStudy& study = context.study.pieces[drawn[k]];
        if (alone) {
            const double height = study.shape.height_mm * grid.scale + mm(9);
            box.setBottom(box.bottom() - std::max(0.0, box.height() - height) / 2);
        } else {
            paint_name(painter, box, printable_line(piece.name));
            box.setBottom(box.bottom() - mm(8));
        }
        paint_figure(painter, box, grid.scale, context.toy(), piece, study, context.options.units, alone);
    }
}

std::vector<Entry> entries_of(const Blocks& blocks) {
    std::vector<Entry> entries;
    for (const Block& block : blocks) {
        if (!block.heading.isEmpty() && block.level == 1) entries.push_back({block.heading, block.anchor});
    }
    return entries;
}

}  // namespace

bool introduction_fits_cover(const PageContext& context) {
    const QString told = paragraphs_of(context.toy().text.introduction).join(QLatin1Char('\n'));
    return introduction_paragraph(told, context.frame.width(), 0).lines() <= most_introduction_lines;
}

Block cover_block(const Blocks& body, const PageContext& context) {
    const double width = context.frame.width();
    const double height = context.frame.height();
    const QString maker = printable_line(context.toy().designer);
    const Paragraph by =
        small_paragraph(maker.isEmpty() ? words("Crochet pattern") : maker, width, page_colour::accent, 2);
    const Paragraph title = title_paragraph(context.toy(), width);
    const QString told = paragraphs_of(context.toy().text.introduction).join(QLatin1Char('\n'));
    const Paragraph introduction = introduction_paragraph(told, width, most_introduction_lines);
    const FactStrip strip(facts(context), width);
    const ContentsList contents(entries_of(body), width);

    const double title_top = by.height() + mm(2);
    const double text_top = title_top + title.height() + mm(4);
    const double figure_top = text_top + (told.isEmpty() ? 0 : introduction.height()) + mm(6);
    const double contents_top = height - contents.height();
    const double strip_top = contents_top - mm(9) - strip.height();
    const QRectF room(0, figure_top, width, std::max(0.0, strip_top - mm(8) - figure_top));

    Block cover;
    cover.shape.height = height;
    cover.shape.starts_page = true;
    cover.anchor = QStringLiteral("cover");
    cover.links = contents.links({0, contents_top});
    cover.paint = [=, &context](QPainter& painter, QPointF at, const PageNumbers& pages) {
        by.paint(painter, at);
        title.paint(painter, at + QPointF(0, title_top));
        if (!told.isEmpty()) introduction.paint(painter, at + QPointF(0, text_top));
        paint_figures(painter, room.translated(at), context);
        paint_accent(painter, at + QPointF(0, strip_top - mm(4)), mm(12));
        strip.paint(painter, at + QPointF(0, strip_top));
        contents.paint(painter, at + QPointF(0, contents_top), pages);
    };
    return cover;
}

}  // namespace roundwright::render
