#include <algorithm>
#include <cmath>
#include <memory>

#include <QFontMetricsF>
#include <QPainter>

#include "core/face/place_feature.h"
#include "core/study/study_surface.h"
#include "render/pages/layout/block_builders.h"
#include "render/pages/layout/dimension_line.h"
#include "render/pages/layout/table.h"
#include "render/pages/outline.h"
#include "render/pages/page_context.h"
#include "render/pages/swatch.h"
#include "render/wording/pattern/feature_words.h"
#include "render/wording/pattern/pattern_words.h"
#include "render/wording/pattern/section_words.h"

namespace roundwright::render {
namespace {

/// A place as it is seen from the front of the face, mm: right of the middle, and above the lowest point.
struct SeenPlace {
    QPointF place;
    double width_share = 1;  ///< of a flat thing's width that is seen
    bool hidden = false;     ///< on the far side
};

struct SeenFeature {
    const Feature* feature = nullptr;
    std::vector<SeenPlace> starts;
    std::vector<SeenPlace> ends;
    FeatureMeasures measures;
};

SeenPlace seen(const PieceStudy& study, const FaceSurface& surface, const SurfacePlace& place) {
    const SurfacePoint at = surface.at(place);
    if (study.measures().flattened)
        return {{at.point.x(), at.height_mm}, std::abs(at.normal.z()), at.normal.z() <= 0};
    return {{at.radius_mm * std::sin(place.angle), at.height_mm},
            std::abs(std::cos(place.angle)),
            std::cos(place.angle) <= 0};
}

std::vector<SeenFeature> seen_features(const Piece& piece, const PieceStudy& study) {
    const FaceSurface surface = study_face(piece, study);
    const std::vector<int> counts = stitch_counts(study.graph().graph);
    std::vector<SeenFeature> all;
    for (const Feature& feature : piece.features) {
        const PlacedFeature placed = place_feature(feature, surface, counts);
        if (placed.starts.empty()) continue;
        SeenFeature one{&feature, {}, {}, measure_feature(placed, surface)};
        for (const SurfacePlace& place : placed.starts) one.starts.push_back(seen(study, surface, place));
        for (const SurfacePlace& place : placed.ends) one.ends.push_back(seen(study, surface, place));
        all.push_back(std::move(one));
    }
    return all;
}

/// The drawing of one face: the outline, the rounds that features sit between, the features, and the
/// measures of the first pair.
class FaceDrawing {
  public:
    FaceDrawing(const Piece& piece, const PieceStudy& study, std::vector<SeenFeature> features, double width,
                LengthUnit units)
        : outline_(std::make_shared<const PieceOutline>(piece, study, OutlineView::front)),
          starts_at_top_(piece.starts_at_top),
          study_(&study),
          features_(std::move(features)),
          width_(width),
          units_(units) {
        const QSizeF room(width - mm(50), mm(95));
        scale_ = std::min({room.width() / study.measures().width_mm,
                           room.height() / study.measures().height_mm, units_per_mm});
    }

    [[nodiscard]] double height() const { return above() + study_->measures().height_mm * scale_ + mm(4); }

    void paint(QPainter& painter, QPointF at) const {
        painter.save();
        painter.translate(at.x() + width_ / 2, at.y() + above() + study_->measures().height_mm * scale_);
        paint_outline(painter);
        paint_rounds(painter);
        for (std::size_t i = 0; i < features_.size(); ++i)
            if (is_on_fabric(features_[i])) paint_feature(painter, features_[i], i + 1);
        const auto pair = std::find_if(features_.begin(), features_.end(), [this](const SeenFeature& f) {
            return f.feature->pair && is_on_fabric(f);
        });
        if (pair != features_.end()) paint_pair_measures(painter, *pair);
        painter.restore();
    }

  private:
    [[nodiscard]] static double above() { return mm(11); }
    [[nodiscard]] QPointF on_page(QPointF seen) const { return {seen.x() * scale_, -seen.y() * scale_}; }

    /// A round that cannot be worked ends the fabric, and what sits above it is in the air.
    [[nodiscard]] bool is_on_fabric(const SeenFeature& seen) const {
        const int last =
            seen.ends.empty() ? seen.feature->round : std::max(seen.feature->round, seen.feature->end_round);
        return static_cast<std::size_t>(last) + 1 < outline_->loops();
    }

    void paint_outline(QPainter& painter) const {
        painter.setPen(QPen(page_colour::ink, pt(0.9)));
        painter.setBrush(page_colour::tint);
        const QTransform to_page = QTransform::fromScale(scale_, scale_);
        painter.drawPath(to_page.map(outline_->path()));
        painter.setPen(QPen(page_colour::drawn, pt(0.4), Qt::DashDotLine));
        painter.drawLine(QPointF(0, 0), QPointF(0, -study_->measures().height_mm * scale_));
    }

    /// Lines of the rounds on both sides of every gap used, named on the left.
    void paint_rounds(QPainter& painter) const {
        std::vector<std::size_t> loops;
        for (const SeenFeature& seen : features_) {
            if (!is_on_fabric(seen)) continue;
            loops.push_back(static_cast<std::size_t>(seen.feature->round) + 1);
            if (!seen.ends.empty()) loops.push_back(static_cast<std::size_t>(seen.feature->end_round) + 1);
        }
        std::sort(loops.begin(), loops.end());
        loops.erase(std::unique(loops.begin(), loops.end()), loops.end());
        if (!starts_at_top_) std::reverse(loops.begin(), loops.end());
        double last = -1e9;
        for (const std::size_t loop : loops) last = paint_round(painter, loop, last);
    }

    /// Names from the top down never stand closer than a line of type.
    [[nodiscard]] double paint_round(QPainter& painter, std::size_t loop, double above) const {
        const double y = outline_->middle_of_loop(loop) * scale_;
        const double r = outline_->reach_of_loop(loop) * scale_;
        const double left = -study_->measures().width_mm / 2 * scale_ - mm(4);
        painter.setPen(QPen(page_colour::drawn, pt(0.4), Qt::DotLine));
        painter.drawLine(QPointF(left, y), QPointF(r, y));
        painter.setFont(body_font(7));
        painter.setPen(page_colour::soft_ink);
        const QString name = Pattern::tr("rounds %1 | %2").arg(loop).arg(loop + 1);
        const QFontMetricsF metrics(painter.font());
        const double base = std::max(y + metrics.capHeight() / 2, above + pt(9));
        painter.drawText(QPointF(left - mm(1.5) - metrics.horizontalAdvance(name), base), name);
        return base;
    }

    void paint_feature(QPainter& painter, const SeenFeature& seen, std::size_t number) const {
        const QColor colour = to_qcolor(seen.feature->colour);
        for (std::size_t i = 0; i < seen.starts.size(); ++i) {
            if (seen.starts[i].hidden) continue;
            const QPointF centre = on_page(seen.starts[i].place);
            if (!seen.ends.empty()) {
                painter.setPen(QPen(colour, pt(1.6), Qt::SolidLine, Qt::RoundCap));
                painter.drawLine(centre, on_page(seen.ends[i].place));
            } else {
                painter.setPen(QPen(line_on(colour), pt(0.5)));
                painter.setBrush(colour);
                painter.drawEllipse(centre, seen.feature->width_mm / 2 * seen.starts[i].width_share * scale_,
                                    seen.feature->height_mm / 2 * scale_);
            }
            paint_number(painter, seen, i, centre, number);
        }
    }

    void paint_number(QPainter& painter, const SeenFeature& seen, std::size_t i, QPointF centre,
                      std::size_t number) const {
        const bool left = seen.starts.size() > 1 && i == 0;
        const double away = seen.ends.empty() ? seen.feature->width_mm / 2 * scale_ + mm(1.5) : mm(1.5);
        painter.setFont(bold_font(7.5));
        painter.setPen(page_colour::accent);
        const QString text = QString::number(number);
        const QFontMetricsF metrics(painter.font());
        const double x = left ? centre.x() - away - metrics.horizontalAdvance(text) : centre.x() + away;
        painter.drawText(QPointF(x, centre.y() - mm(0.8)), text);
    }

    /// From one of a pair to the other above the piece, and up from the foot on the right.
    void paint_pair_measures(QPainter& painter, const SeenFeature& pair) const {
        const QPointF left = on_page(pair.starts.front().place);
        const QPointF right = on_page(pair.starts.back().place);
        const QPointF half(pair.feature->width_mm / 2 * scale_, pair.feature->height_mm / 2 * scale_);
        const double top = -study_->measures().height_mm * scale_ - mm(4);
        paint_extension(painter, left - QPointF(0, half.y()), {left.x(), top});
        paint_extension(painter, right - QPointF(0, half.y()), {right.x(), top});
        paint_level_dimension(painter, {left.x(), top}, {right.x(), top},
                              length_words(pair.measures.straight_mm, units_), true);
        const double beside = study_->measures().width_mm / 2 * scale_ + mm(5);
        paint_extension(painter, right + QPointF(half.x(), 0), {beside, right.y()});
        paint_upright_dimension(painter, {beside, right.y()}, {beside, 0},
                                length_words(pair.measures.height_mm, units_));
    }

    static void paint_extension(QPainter& painter, QPointF from, QPointF to) {
        painter.setPen(QPen(page_colour::drawn, pt(0.35)));
        painter.drawLine(from, to);
    }

    std::shared_ptr<const PieceOutline> outline_;
    bool starts_at_top_;
    const PieceStudy* study_;
    std::vector<SeenFeature> features_;
    double width_;
    LengthUnit units_;
    double scale_ = 0;
};

void add_feature_table(Blocks& blocks, const PageContext& context, const std::vector<SeenFeature>& features) {
    const double width = context.frame.width();
    const double rest = width - mm(8) - mm(42);
    Table table(blocks, {{QString(), mm(8)},
                         {Pattern::tr("WHAT"), mm(42)},
                         {Pattern::tr("WHERE"), rest * 0.5},
                         {Pattern::tr("MEASUREMENTS"), rest * 0.5}});
    ParagraphStyle number;
    number.font = bold_font();
    number.colour = page_colour::accent;
    for (std::size_t i = 0; i < features.size(); ++i) {
        const Feature& feature = *features[i].feature;
        const QString own = own_feature_name(feature).left(120);
        const QString name =
            (own.isEmpty() ? QString() : own + QLatin1Char('\n')) + feature_kind_words(feature);
        table.add_row(
            {table.text(0, QString::number(i + 1), number), table.text(1, name),
             table.text(2, feature_place_words(feature, context.options.terms)),
             table.text(3, feature_measure_words(feature, features[i].measures, context.options.units))});
    }
    table.finish();
}

void add_face(Blocks& blocks, const PageContext& context, std::size_t i,
              const std::vector<SeenFeature>& features) {
    const double width = context.frame.width();
    blocks.push_back(sub_heading(piece_name_words(context.toy(), i), width));
    const FaceDrawing drawing(context.toy().pieces[i], context.study.pieces[i], features, width,
                              context.options.units);
    Block block;
    block.shape.height = drawing.height();
    block.shape.space_before = mm(4);
    block.shape.keep_with_next = true;
    block.paint = [drawing](QPainter& painter, QPointF at, const PageNumbers&) {
        drawing.paint(painter, at);
    };
    blocks.push_back(std::move(block));
    add_feature_table(blocks, context, features);
}

}  // namespace

void add_faces(Blocks& blocks, const PageContext& context) {
    if (!context.options.contents.face) return;
    bool first = true;
    for (std::size_t i = 0; i < context.toy().pieces.size(); ++i) {
        if (!context.study.pieces[i].measures().usable()) continue;
        const std::vector<SeenFeature> features =
            seen_features(context.toy().pieces[i], context.study.pieces[i]);
        if (features.empty()) continue;
        if (first)
            blocks.push_back(
                section_heading(Pattern::tr("Face"), QStringLiteral("face"), context.frame.width()));
        first = false;
        add_face(blocks, context, i, features);
    }
}

}  // namespace roundwright::render
