#include "render/illustration/piece_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>

#include <QPainter>

#include "core/base/units.h"
#include "render/drawing/item_buffer.h"
#include "render/drawing/region_outline.h"
#include "render/drawing/shape_batches.h"
#include "render/illustration/stitch_shapes.h"
#include "render/illustration/visible_stitches.h"
#include "render/illustration/yarn_tone.h"

namespace roundwright::render {
namespace {

constexpr double pale_share = 0.68;
constexpr double rim_light = 0.6, inside_light = 0.4;
constexpr int parts_order = 1 << 20;

/// Typical side of a stitch.
double stitch_size(const StitchSurface& surface) {
    double sum = 0;
    for (const auto& patch : surface.stitches)
        sum += (patch.corners[2] - patch.corners[3]).norm() + (patch.corners[3] - patch.corners[0]).norm();
    return surface.stitches.empty()
               ? 5
               : std::max(1e-3, sum / (2 * static_cast<double>(surface.stitches.size())));
}

/// How far the stitches are apart on paper or screen decides how much of them is worth drawing.
YarnDetail detail_for(const QPainter& painter, double stitch_units) {
    const QTransform& device = painter.combinedTransform();
    const double scale = std::sqrt(std::abs(device.determinant()));
    const double per_inch = painter.device() ? painter.device()->logicalDpiX() : 96;
    const double stitch_mm = stitch_units * scale / per_inch * mm_per_inch;
    if (stitch_mm < 1.2) return YarnDetail::cords;
    return stitch_mm < 2.4 ? YarnDetail::highlights : YarnDetail::twist;
}

class PiecePainter {
  public:
    PiecePainter(const StitchSurface& surface, const DrawOptions& options)
        : surface_(surface),
          options_(options),
          projection_(options.view),
          sides_(sides_of_triangles(surface)),
          seen_(area(), std::max(0.08, std::max(area().width(), area().height()) / 1'000)) {
        seen_.draw(surface.mesh, projection_, 0);
        auto first = static_cast<std::uint32_t>(surface.mesh.triangle_count());
        for (const auto& part : options.parts) {
            seen_.draw(part.mesh, projection_, first);
            first += static_cast<std::uint32_t>(part.mesh.triangle_count());
        }
    }

    void draw(QPainter& painter, const QTransform& to_painter, const StitchStyle& style) {
        ShapeBatches batches;
        add_ground(batches);
        for (const auto& seen : visible_stitches(surface_, seen_, sides_, projection_)) {
            const auto& patch = surface_.stitches[seen.stitch];
            add_stitch(batches, patch, colour_of(patch), seen, projection_, style);
        }
        add_parts(batches);
        batches.draw(painter, to_painter);
    }

  private:
    [[nodiscard]] QRectF area() const {
        QRectF bounds = projected_bounds(surface_.mesh, projection_);
        for (const auto& part : options_.parts)
            bounds = bounds.united(projected_bounds(part.mesh, projection_));
        return bounds;
    }

    [[nodiscard]] Colour colour_of(const StitchPatch& patch) const {
        const auto& lit = options_.lit_rounds;
        const bool pale = !lit.empty() && std::find(lit.begin(), lit.end(), patch.round) == lit.end();
        return pale ? paled(patch.colour, pale_share) : patch.colour;
    }

    /// What is seen of the fabric behind the cords, by colour: hollows, rims and the inside.
    void add_ground(ShapeBatches& batches) const {
        std::vector<QRgb> colours(sides_.size());
        for (std::uint32_t item = 0; item < colours.size(); ++item) {
            const std::int32_t stitch = surface_.mesh.stitch_of_triangle[item];
            const Colour colour = stitch < 0 ? colour_of_vertex(surface_.mesh, item)
                                             : colour_of(surface_.stitches[static_cast<std::size_t>(stitch)]);
            const double light = sides_[item] == FabricSide::outside ? hollow_light
                                 : sides_[item] == FabricSide::rim   ? rim_light
                                                                     : inside_light;
            colours[item] = yarn_tone(colour, light).rgb();
        }
        add_regions(batches, -1, 0, colours);
    }

    static Colour colour_of_vertex(const Mesh& mesh, std::uint32_t triangle) {
        const float* shade = &mesh.colours[3u * mesh.indices[3u * triangle]];
        const auto channel = [](float x) {
            return static_cast<std::uint8_t>(std::lround(std::clamp(x, 0.0F, 1.0F) * 255));
        };
        return {channel(shade[0]), channel(shade[1]), channel(shade[2])};
    }

    /// Fills what is seen of the items from `first` on, one region for each of their colours.
    void add_regions(ShapeBatches& batches, int order, std::uint32_t first,
                     const std::vector<QRgb>& colours) const {
        std::map<QRgb, CellRegion> regions;
        QRgb last = 0;
        CellRegion* region = nullptr;
        for (int row = 0; row < seen_.height(); ++row) {
            for (int column = 0; column < seen_.width(); ++column) {
                const std::uint32_t item = seen_.at(column, row) - first;
                if (item >= colours.size()) continue;
                if (!region || colours[item] != last) {
                    last = colours[item];
                    region = &regions.try_emplace(last, seen_.width(), seen_.height()).first->second;
                }
                region->add(column, row);
            }
        }
        for (const auto& [rgb, found] : regions)
            for (const auto& boundary : region_boundaries(found, 0.6, 6))
                batches.fill(order, QColor::fromRgb(rgb), in_plane(boundary));
    }

    [[nodiscard]] QPolygonF in_plane(const QPolygonF& cells) const {
        QPolygonF found;
        for (const auto& point : cells) found.append(seen_.corner(point.x(), point.y()));
        return found;
    }

    void add_parts(ShapeBatches& batches) const {
        auto first = static_cast<std::uint32_t>(surface_.mesh.triangle_count());
        for (std::size_t k = 0; k < options_.parts.size(); ++k) {
            const auto& part = options_.parts[k];
            std::vector<QRgb> colours(part.mesh.triangle_count());
            for (std::uint32_t item = 0; item < colours.size(); ++item) {
                const Colour colour = colour_of_vertex(part.mesh, item);
                colours[item] = qRgb(colour.red, colour.green, colour.blue);
            }
            const int order = parts_order + static_cast<int>(k) * 2;
            const auto last = first + static_cast<std::uint32_t>(colours.size());
            add_regions(batches, order, first, colours);
            if (part.glossy) add_highlight(batches, part, order + 1, first, last);
            first = last;
        }
    }

    /// A bright spot where a glossy part throws the lamp back, if it is seen there.
    void add_highlight(ShapeBatches& batches, const DrawnPart& part, int order, std::uint32_t first,
                       std::uint32_t last) const {
        const QRectF bounds = projected_bounds(part.mesh, projection_);
        const QPointF spot = bounds.center() + QPointF(-0.16 * bounds.width(), 0.18 * bounds.height());
        const std::uint32_t item = seen_.item_at(spot);
        if (item < first || item >= last) return;
        const double across = 0.11 * std::min(bounds.width(), bounds.height());
        QPolygonF round;
        for (int k = 0; k < 10; ++k)
            round.append(spot + across * QPointF(std::cos(k * 0.628318530718), std::sin(k * 0.628318530718)));
        batches.fill_smooth(order, QColor(250, 251, 252), round);
    }

    const StitchSurface& surface_;
    const DrawOptions& options_;
    Projection projection_;
    std::vector<FabricSide> sides_;
    ItemBuffer seen_;
};

}  // namespace

DrawnPiece place_piece(const StitchSurface& surface, const DrawOptions& options) {
    DrawnPiece drawn;
    drawn.projection = Projection(options.view);
    QRectF bounds = projected_bounds(surface.mesh, drawn.projection);
    for (const auto& part : options.parts)
        bounds = bounds.united(projected_bounds(part.mesh, drawn.projection));
    drawn.units_per_mm = options.units_per_mm;
    if (drawn.units_per_mm <= 0 && bounds.width() > 0 && bounds.height() > 0)
        drawn.units_per_mm =
            std::min(options.target.width() / bounds.width(), options.target.height() / bounds.height());
    const QPointF middle = bounds.center();
    drawn.origin = options.target.center() - QPointF(middle.x(), -middle.y()) * drawn.units_per_mm;
    drawn.bounds = QRectF(drawn.origin + QPointF(bounds.left(), -bounds.bottom()) * drawn.units_per_mm,
                          bounds.size() * drawn.units_per_mm);
    return drawn;
}

DrawnPiece draw_piece(QPainter& painter, const StitchSurface& surface, const DrawOptions& options) {
    const DrawnPiece drawn = place_piece(surface, options);
    if (surface.mesh.triangle_count() == 0 || drawn.units_per_mm <= 0) return drawn;
    StitchStyle style;
    style.stitch_mm = stitch_size(surface);
    style.detail = std::min(options.most_detail, detail_for(painter, style.stitch_mm * drawn.units_per_mm));
    QTransform to_painter = QTransform::fromTranslate(drawn.origin.x(), drawn.origin.y());
    to_painter.scale(drawn.units_per_mm, -drawn.units_per_mm);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    PiecePainter(surface, options).draw(painter, to_painter, style);
    painter.restore();
    return drawn;
}

}  // namespace roundwright::render
