#include "render/chart/round_chart.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include <QFontMetricsF>
#include <QPainter>

#include "render/drawing/ink.h"
#include "render/drawing/smooth_path.h"

namespace roundwright::render {
namespace {

constexpr double line_width = 0.065, number_height = 0.6, edge_room = 0.35;
constexpr double two_pi = 2 * std::numbers::pi;

bool is_part(const ChartSector& sector) { return sector.of > 1; }

bool in_sector(const ChartSector& sector, double share) {
    return !is_part(sector) || static_cast<int>(std::floor(share * sector.of)) == sector.number;
}

/// The angle of a share of the way around; a part that closes goes clockwise.
double angle_of(const ChartLayout& layout, double share) {
    return (layout.inwards ? -two_pi : two_pi) * share;
}

/// Turns a sector's middle to the top.
QTransform upright(const ChartLayout& layout, const ChartSector& sector) {
    QTransform turn;
    if (is_part(sector))
        turn.rotateRadians(std::numbers::pi / 2 - angle_of(layout, (sector.number + 0.5) / sector.of));
    return turn;
}

QRectF bounds_of(const ChartLayout& layout, const ChartSector& sector) {
    if (!is_part(sector)) return layout.bounds.adjusted(-edge_room, -edge_room, edge_room, edge_room);
    const QTransform turn = upright(layout, sector);
    QRectF bounds(-0.5, -0.5, 1, 1);
    for (const auto& stitch : layout.stitches) {
        if (!in_sector(sector, stitch.share)) continue;
        const QPointF head = turn.map(stitch.head);
        bounds = bounds.united(QRectF(head.x() - 0.5, head.y() - 0.5, 1, 1));
    }
    return bounds.adjusted(-1, -edge_room, 1, edge_room);
}

QColor ink_of(const ChartStitch& stitch, const ChartOptions& options) {
    static const QColor odd(38, 50, 62), even(150, 62, 32);
    if (options.yarns.empty()) return readable_ink(stitch.round % 2 == 0 ? odd : even, options.paper, 4.5);
    const Colour yarn = options.yarns[std::min<std::size_t>(stitch.made.yarn, options.yarns.size() - 1)];
    return readable_ink(QColor(yarn.red, yarn.green, yarn.blue), options.paper, 3);
}

class ChartPainter {
  public:
    ChartPainter(QPainter& painter, const ChartLayout& layout, const ChartOptions& options,
                 const DrawnChart& drawn)
        : painter_(painter), layout_(layout), options_(options), drawn_(drawn) {}

    void draw() {
        painter_.save();
        painter_.setRenderHint(QPainter::Antialiasing);
        draw_bands();
        if (is_part(options_.sector)) draw_sector_edges();
        draw_symbols();
        draw_numbers();
        painter_.restore();
    }

  private:
    [[nodiscard]] double size(double units) const { return units * drawn_.units_per_stitch; }

    /// Grounds from the outermost edge in, so that each covers what lies within it.
    void draw_bands() {
        if (layout_.in_rows) return;
        painter_.save();
        if (is_part(options_.sector)) painter_.setClipPath(sector_wedge(), Qt::IntersectClip);
        const auto rounds = static_cast<int>(layout_.edges.size());
        if (layout_.inwards) {
            fill_edge(layout_.start.chains, ground_of(0));
            for (int i = 0; i < rounds; ++i)
                if (layout_.edges[static_cast<std::size_t>(i)].whole)
                    fill_edge(layout_.edges[static_cast<std::size_t>(i)].line,
                              i + 1 < rounds ? ground_of(i + 1) : options_.paper);
        } else {
            for (int i = rounds; i-- > 0;)
                if (layout_.edges[static_cast<std::size_t>(i)].whole)
                    fill_edge(layout_.edges[static_cast<std::size_t>(i)].line, ground_of(i));
            if (layout_.start.kind == ChartStart::Kind::round_below)
                fill_edge(layout_.start.chains, options_.paper);
        }
        painter_.restore();
        if (layout_.start.kind == ChartStart::Kind::round_below) draw_round_below();
    }

    [[nodiscard]] QColor ground_of(int edge) const {
        const int round = layout_.edges[static_cast<std::size_t>(edge)].round;
        const auto& lit = options_.lit_rounds;
        if (std::find(lit.begin(), lit.end(), round) != lit.end()) return options_.lit;
        return round % 2 == 1 ? options_.band : options_.paper;
    }

    [[nodiscard]] QPainterPath through(const std::vector<QPointF>& heads) const {
        return drawn_.to_painter.map(
            smooth_path(QPolygonF(QList<QPointF>(heads.begin(), heads.end())), true, 100));
    }

    void fill_edge(const std::vector<QPointF>& heads, const QColor& ground) {
        if (heads.size() > 2) painter_.fillPath(through(heads), ground);
    }

    /// The edge that the part starts on, as a faint dotted line.
    void draw_round_below() {
        if (layout_.start.chains.size() < 3) return;
        painter_.save();
        if (is_part(options_.sector)) painter_.setClipPath(sector_wedge(), Qt::IntersectClip);
        QPen pen(QColor(150, 157, 164), size(0.05));
        pen.setDashPattern({1, 3});
        painter_.strokePath(through(layout_.start.chains), pen);
        painter_.restore();
    }

    [[nodiscard]] double outermost() const {
        double found = 1;
        for (const auto& stitch : layout_.stitches)
            found = std::max(found, std::hypot(stitch.head.x(), stitch.head.y()));
        return found;
    }

    [[nodiscard]] QPointF on_ray(double share, double distance) const {
        const double angle = angle_of(layout_, share);
        return drawn_.to_painter.map(QPointF(std::cos(angle), std::sin(angle)) * distance);
    }

    [[nodiscard]] QPainterPath sector_wedge() const {
        const auto& sector = options_.sector;
        const double far = outermost() + 0.2;
        QPolygonF wedge{on_ray(0, 0)};
        for (int k = 0; k <= 32; ++k) wedge.append(on_ray((sector.number + k / 32.0) / sector.of, far));
        QPainterPath path;
        path.addPolygon(wedge);
        path.closeSubpath();
        return path;
    }

    void draw_sector_edges() {
        QPen pen(QColor(170, 176, 182), size(0.04));
        pen.setDashPattern({4, 4});
        painter_.setPen(pen);
        for (const int side : {0, 1}) {
            const double share = static_cast<double>(options_.sector.number + side) / options_.sector.of;
            painter_.drawLine(on_ray(share, 0.3), on_ray(share, outermost() + 0.4));
        }
    }

    void draw_symbols() {
        std::map<QRgb, SymbolPaths> by_ink;
        for (const auto& stitch : layout_.stitches)
            if (in_sector(options_.sector, stitch.share))
                add_symbol(by_ink[ink_of(stitch, options_).rgb()], stitch, options_.cross);
        add_start(by_ink[options_.text.rgb()], layout_.start);
        for (const auto& [rgb, paths] : by_ink) {
            const QColor ink = QColor::fromRgb(rgb);
            painter_.strokePath(drawn_.to_painter.map(paths.lines),
                                QPen(ink, size(line_width), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
            painter_.fillPath(drawn_.to_painter.map(paths.fills), ink);
        }
    }

    [[nodiscard]] QPointF number_place(const ChartNumber& number) const {
        if (!is_part(options_.sector)) return drawn_.to_painter.map(number.place);
        // Beside the sector's first edge, where nothing else is drawn.
        const double angle =
            angle_of(layout_, static_cast<double>(options_.sector.number) / options_.sector.of);
        const double distance = std::hypot(number.place.x(), number.place.y());
        const QPointF out(std::cos(angle), std::sin(angle)), aside(out.y(), -out.x());
        return drawn_.to_painter.map(distance * out + (layout_.inwards ? -0.45 : 0.45) * aside);
    }

    void draw_numbers() {
        QFont font = painter_.font();
        const double now = QFontMetricsF(font, painter_.device()).height();
        if (now > 0 && font.pointSizeF() > 0)
            font.setPointSizeF(font.pointSizeF() * size(number_height) * 1.2 / now);
        painter_.setFont(font);
        painter_.setPen(options_.text);
        const double half = size(1);
        for (const auto& number : layout_.numbers) {
            const QPointF at = number_place(number);
            painter_.drawText(QRectF(at.x() - half, at.y() - half, 2 * half, 2 * half), Qt::AlignCenter,
                              QString::number(number.round + 1));
        }
    }

    QPainter& painter_;
    const ChartLayout& layout_;
    const ChartOptions& options_;
    const DrawnChart& drawn_;
};

}  // namespace

DrawnChart place_chart(const ChartLayout& layout, const ChartOptions& options) {
    const QRectF bounds = bounds_of(layout, options.sector);
    DrawnChart drawn;
    drawn.units_per_stitch = options.units_per_stitch;
    if (drawn.units_per_stitch <= 0)
        drawn.units_per_stitch =
            std::min(options.target.width() / bounds.width(), options.target.height() / bounds.height());
    QTransform place;
    place.translate(options.target.center().x(), options.target.center().y());
    place.scale(drawn.units_per_stitch, -drawn.units_per_stitch);
    place.translate(-bounds.center().x(), -bounds.center().y());
    drawn.to_painter = upright(layout, options.sector) * place;
    drawn.bounds = place.mapRect(bounds);
    return drawn;
}

DrawnChart draw_chart(QPainter& painter, const ChartLayout& layout, const ChartOptions& options) {
    if (layout.stitches.empty()) return {};
    const DrawnChart drawn = place_chart(layout, options);
    ChartPainter(painter, layout, options, drawn).draw();
    return drawn;
}

std::optional<std::size_t> stitch_at(const ChartLayout& layout, const DrawnChart& drawn,
                                     const QPointF& place) {
    bool can = false;
    const QPointF at = drawn.to_painter.inverted(&can).map(place);
    if (!can) return {};
    std::optional<std::size_t> found;
    double nearest = 0.7;
    for (std::size_t k = 0; k < layout.stitches.size(); ++k) {
        const auto& stitch = layout.stitches[k];
        QPointF foot = stitch.head;
        for (const auto& one : stitch.feet)
            foot += (one - stitch.head) / static_cast<double>(stitch.feet.size());
        const QPointF way = (foot + stitch.head) / 2 - at;
        const double distance = std::hypot(way.x(), way.y());
        if (distance >= nearest) continue;
        nearest = distance;
        found = k;
    }
    return found;
}

ChartPlan plan_chart(const ChartLayout& layout, const QSizeF& page, double least_units_per_stitch) {
    const auto scale = [&](int sectors) {
        ChartOptions options;
        options.target = QRectF(QPointF(), page);
        options.sector = {0, sectors};
        return place_chart(layout, options).units_per_stitch;
    };
    ChartPlan plan;
    plan.units_per_stitch = scale(1);
    const bool oval = layout.start.kind == ChartStart::Kind::chains &&
                      layout.bounds.width() > layout.bounds.height() * 1.05;
    if (plan.units_per_stitch >= least_units_per_stitch || layout.in_rows || oval) return plan;
    const bool repeats = layout.repeats > 1;
    const auto counts = repeats ? std::vector<int>{layout.repeats} : std::vector<int>{2, 3, 4, 6, 8, 12};
    for (const int sectors : counts) {
        const double units = scale(sectors);
        // Where the height alone limits the scale, narrower sectors gain nothing.
        if (units > plan.units_per_stitch) plan = {sectors, repeats ? 1 : sectors, units};
        if (units >= least_units_per_stitch) break;
    }
    return plan;
}

}  // namespace roundwright::render
