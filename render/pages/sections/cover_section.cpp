#include <algorithm>
#include <cmath>
#include <functional>

#include <QFontMetricsF>
#include <QPainter>

#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/drawable_text.h"
#include "render/pages/page_context.h"
#include "render/pages/piece_figure.h"
#include "render/pages/toy_figure.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"
#include "render/wording/printable.h"
#include "render/wording/terms_words.h"

namespace roundwright::render {
namespace {

constexpr int most_introduction_lines = 6;
constexpr std::size_t most_figures = 6;

struct Fact {
    QString label;
    QString value;
};

/// Lines of the list of sizes; further pieces are told with their rounds.
constexpr std::size_t most_sizes = 6;

/// "Body: 62 × 95 mm", a line for every piece; of a toy in one piece its size alone.
QString size_fact(const PageContext& context) {
    const PatternStudy& study = context.study;
    QStringList lines;
    for (std::size_t i = 0; i < study.sizes.size(); ++i) {
        if (!study.sizes[i]) continue;
        const QString size = QString(piece_size_words(*study.sizes[i], context.options.units))
                                 .replace(QLatin1Char(' '), QChar::Nbsp);
        lines += study.sizes.size() == 1
                     ? size
                     : Pattern::tr("%1: %2").arg(piece_name_words(study.toy, i).left(40), size);
    }
    const auto more = lines.size() - static_cast<qsizetype>(most_sizes);
    if (more > 1) lines = lines.mid(0, most_sizes) + QStringList{Pattern::tr("and %1 more").arg(more)};
    return lines.join(QLatin1Char('\n'));
}

QString yarn_fact(const Toy& toy, Terms terms) {
    QStringList weights;
    for (const Yarn& yarn : toy.yarns) {
        const QString weight = yarn_weight_words(yarn.weight, terms);
        if (!weights.contains(weight)) weights += weight;
    }
    return weights.join(QStringLiteral(", "));
}

std::vector<Fact> facts(const PageContext& context) {
    const Toy& toy = context.toy();
    std::vector<Fact> all;
    const auto add = [&](const QString& label, const QString& value) {
        if (!value.isEmpty()) all.push_back({label, value});
    };
    add(context.study.sizes.size() == 1 ? Pattern::tr("FINISHED SIZE") : Pattern::tr("SIZE OF EACH PIECE"),
        size_fact(context));
    if (toy.text.level) add(Pattern::tr("LEVEL"), level_words(*toy.text.level));
    add(Pattern::tr("YARN"), yarn_fact(toy, context.options.terms));
    add(Pattern::tr("HOOK"), hook_with_names(toy.hook_mm));
    if (context.study.materials.stitches > 0) {
        add(Pattern::tr("CROCHET TIME"),
            Pattern::tr("about %1").arg(time_words(context.study.materials.minutes.likely)));
    }
    add(Pattern::tr("TERMS"), terms_name(context.options.terms));
    return all;
}

ParagraphStyle label_style() {
    ParagraphStyle label;
    label.font = label_font(6.5);
    label.colour = page_colour::soft_ink;
    label.most_lines = 1;
    return label;
}

ParagraphStyle value_style() {
    ParagraphStyle value;
    value.font = body_font(8.5);
    value.most_lines = static_cast<int>(most_sizes) + 2;
    return value;
}

/// Facts side by side, a label over a value each, every column as wide as its words ask for.
class FactStrip {
  public:
    FactStrip(const std::vector<Fact>& facts, double width) {
        const ParagraphStyle label = label_style();
        const ParagraphStyle value = value_style();
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

/// The size of a toy that is joined together, a row of its own: with three lengths and their ranges it is as
/// wide as the page.
class WholeSize {
  public:
    WholeSize(const PageContext& context, double width)
        : label_(Pattern::tr("FINISHED SIZE"), width, label_style()),
          value_(whole_size_words(context.study, context.options.units), width, value_style()) {
        const bool said = !whole_size_words(context.study, context.options.units).isEmpty();
        height_ = said ? label_.height() + pt(3) + value_.height() + mm(4) : 0;
    }

    /// With the room below it; 0 where there is nothing to say.
    [[nodiscard]] double height() const { return height_; }

    void paint(QPainter& painter, QPointF at) const {
        if (!(height_ > 0)) return;
        label_.paint(painter, at);
        value_.paint(painter, at + QPointF(0, label_.height() + pt(3)));
    }

  private:
    Paragraph label_, value_;
    double height_ = 0;
};

Paragraph title_paragraph(const Toy& toy, double width) {
    QString title = printable_line(toy.title);
    if (title.isEmpty()) title = Pattern::tr("Untitled toy");
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
        if (study.pieces[i].measures().usable()) drawn.push_back(i);
    }
    return drawn;
}

bool is_drawn_as_round(const PieceStudy& study) {
    return study.measures().fidelity == Fidelity::equivalent_round;
}

/// The name under a figure, and whether the piece is another shape than the figure's.
QString figure_name(const PatternStudy& study, std::size_t piece) {
    const QString name = piece_name_words(study.toy, piece);
    return is_drawn_as_round(study.pieces[piece]) ? Pattern::tr("%1, drawn round").arg(name) : name;
}

/// A piece on the cover, and where it stands.
struct Shown {
    PieceModel model;
    QRectF seen_mm;
    QString name;
    QPointF foot;  ///< from the upper left corner of the room
};

/// The pieces of a toy in rows, all at one scale, as large as the room allows.
class Showcase {
  public:
    Showcase(const PageContext& context, QSizeF room) : room_(room) {
        for (const std::size_t i : drawn_pieces(context.study)) {
            PieceModel model(context.toy(), i, context.study.pieces[i]);
            const QRectF seen = model.seen_mm(FigureView::above);
            shown_.push_back({std::move(model), seen, figure_name(context.study, i), {}});
        }
        names_ = shown_.size() > 1 || std::ranges::any_of(context.study.pieces, is_drawn_as_round);
        find_scale();
        std::size_t stitches = 0;
        for (const Shown& one : shown_) stitches += one.model.stitches();
        for (const Shown& one : shown_) {
            figures_.emplace_back(one.model, scale_, FigureView::above, detail_for_stitches(stitches));
        }
    }

    void paint(QPainter& painter, QPointF at) const {
        for (std::size_t k = 0; k < shown_.size(); ++k) {
            const QPointF middle(shown_[k].seen_mm.center().x(), shown_[k].seen_mm.bottom());
            figures_[k].paint(painter, at + shown_[k].foot - middle * scale_);
            if (names_) paint_name(painter, at + shown_[k].foot, shown_[k].name);
        }
    }

  private:
    static constexpr double gap = mm(10);
    static constexpr double name_room = mm(9);
    /// Never more than twice life size: a small toy stays small on the page.
    static constexpr double largest_scale = 2 * units_per_mm;

    [[nodiscard]] double name_height() const { return names_ ? name_room : 0; }
    [[nodiscard]] double place_width(const Shown& one, double scale) const {
        return std::max(one.seen_mm.width() * scale, mm(18)) + gap;
    }

    void find_scale() {
        double low = 0;
        double high = largest_scale;
        if (place(high) > room_.height()) {
            for (int i = 0; i < 40; ++i) {
                const double middle = (low + high) / 2;
                (place(middle) <= room_.height() ? low : high) = middle;
            }
            high = low;
        }
        scale_ = high;
        const double height = place(scale_);
        for (Shown& one : shown_) one.foot += QPointF(0, std::max(0.0, room_.height() - height) / 2);
    }

    /// Stands the pieces in rows at a scale; the height they take, or more than there is if one is too wide.
    double place(double scale) {
        double y = 0;
        for (std::size_t first = 0; first < shown_.size();) {
            const std::size_t end = end_of_row(first, scale);
            if (place_width(shown_[first], scale) - gap > room_.width()) return 2 * room_.height() + 1;
            y += place_row(first, end, scale, y) + (end < shown_.size() ? gap / 2 : 0);
            first = end;
        }
        return y;
    }

    [[nodiscard]] std::size_t end_of_row(std::size_t first, double scale) const {
        double width = place_width(shown_[first], scale);
        std::size_t end = first + 1;
        while (end < shown_.size() && width + place_width(shown_[end], scale) - gap <= room_.width()) {
            width += place_width(shown_[end++], scale);
        }
        return end;
    }

    double place_row(std::size_t first, std::size_t end, double scale, double top) {
        double width = -gap;
        double height = 0;
        for (std::size_t k = first; k < end; ++k) {
            width += place_width(shown_[k], scale);
            height = std::max(height, shown_[k].seen_mm.height() * scale);
        }
        double x = (room_.width() - width) / 2;
        for (std::size_t k = first; k < end; ++k) {
            const double own = place_width(shown_[k], scale);
            shown_[k].foot = QPointF(x + (own - gap) / 2, top + height);
            x += own;
        }
        return height + name_height();
    }

    static void paint_name(QPainter& painter, QPointF foot, const QString& name) {
        painter.setFont(body_font(8));
        painter.setPen(page_colour::soft_ink);
        const QRectF below(foot + QPointF(-mm(20), mm(2.5)), QSizeF(mm(40), mm(6)));
        const QString fits =
            QFontMetricsF(painter.font()).elidedText(drawable(name), Qt::ElideRight, below.width());
        painter.drawText(below, Qt::AlignHCenter | Qt::AlignTop | Qt::TextSingleLine, fits);
    }

    QSizeF room_;
    std::vector<Shown> shown_;
    std::vector<PieceFigure> figures_;
    bool names_ = false;  ///< stand under the figures
    double scale_ = 0;
};

/// The toy put together, as large as the room allows.
class WholeToy {
  public:
    WholeToy(const PageContext& context, QSizeF room) : room_(room) {
        const ToyModel model(context.study);
        seen_mm_ = model.seen_mm(ToyView::aside);
        constexpr double most = 2 * units_per_mm;
        scale_ = std::min({room.width() / std::max(seen_mm_.width(), 1.0),
                           room.height() / std::max(seen_mm_.height(), 1.0), most});
        figure_ = ToyFigure(model, scale_, ToyView::aside, detail_for_stitches(model.stitches()));
    }

    void paint(QPainter& painter, QPointF at) const {
        const QPointF middle = at + QPointF(room_.width(), room_.height()) / 2;
        figure_.paint(painter, middle - seen_mm_.center() * scale_);
    }

  private:
    QSizeF room_;
    QRectF seen_mm_;
    double scale_ = 0;
    ToyFigure figure_;
};

using Picture = std::function<void(QPainter&, QPointF)>;

Picture picture_of(const PageContext& context, QSizeF room) {
    if (shows_whole_toy(context.study)) {
        return [whole = WholeToy(context, room)](QPainter& painter, QPointF at) { whole.paint(painter, at); };
    }
    return [pieces = Showcase(context, room)](QPainter& painter, QPointF at) { pieces.paint(painter, at); };
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
    const Paragraph by = small_paragraph(maker.isEmpty() ? Pattern::tr("Crochet pattern") : maker, width,
                                         page_colour::accent, 2);
    const Paragraph title = title_paragraph(context.toy(), width);
    const QString told = paragraphs_of(context.toy().text.introduction).join(QLatin1Char('\n'));
    const Paragraph introduction = introduction_paragraph(told, width, most_introduction_lines);
    const WholeSize whole(context, width);
    const FactStrip strip(facts(context), width);
    const ContentsList contents(entries_of(body), width);

    const double title_top = by.height() + mm(2);
    const double text_top = title_top + title.height() + mm(4);
    const double figure_top = text_top + (told.isEmpty() ? 0 : introduction.height()) + mm(6);
    const double contents_top = height - contents.height();
    const double strip_top = contents_top - mm(9) - strip.height();
    const double whole_top = strip_top - whole.height();
    const QRectF room(0, figure_top, width, std::max(0.0, whole_top - mm(8) - figure_top));

    const Picture picture = picture_of(context, room.size());

    Block cover;
    cover.shape.height = height;
    cover.shape.starts_page = true;
    cover.anchor = QStringLiteral("cover");
    cover.links = contents.links({0, contents_top});
    cover.paint = [=](QPainter& painter, QPointF at, const PageNumbers& pages) {
        by.paint(painter, at);
        title.paint(painter, at + QPointF(0, title_top));
        if (!told.isEmpty()) introduction.paint(painter, at + QPointF(0, text_top));
        picture(painter, at + room.topLeft());
        paint_accent(painter, at + QPointF(0, whole_top - mm(4)), mm(12));
        whole.paint(painter, at + QPointF(0, whole_top));
        strip.paint(painter, at + QPointF(0, strip_top));
        contents.paint(painter, at + QPointF(0, contents_top), pages);
    };
    return cover;
}

}  // namespace roundwright::render
