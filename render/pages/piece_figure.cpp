#include "render/pages/piece_figure.h"

#include <algorithm>

#include "core/face/face_surface.h"
#include "core/face/feature_mesh.h"
#include "core/study/study_surface.h"
#include "render/pages/layout/dimension_line.h"
#include "render/wording/pattern/pattern_words.h"

namespace roundwright::render {
namespace {

/// So many that a single one is not looked at; its outline may have corners then.
constexpr std::size_t many_stitches = 3'000;

double shortest_curve_for(std::size_t stitches) {
    if (stitches <= many_stitches) return shortest_curve;
    return mm(1.3) * static_cast<double>(stitches) / many_stitches;
}

/// Height over width below which a piece counts as flat.
constexpr double flat_share = 0.35;

std::vector<DrawnPart> parts_of(const Piece& piece, const PieceStudy& study) {
    std::vector<DrawnPart> parts;
    if (piece.features.empty()) return parts;
    const FaceSurface surface = study_face(piece, study);
    for (FeaturePart& part :
         feature_parts(piece.features, surface, stitch_counts(study.graph().graph), study.fabric.mm)) {
        if (!part.inside) parts.push_back({std::move(part.mesh), part.finish == Finish::glossy});
    }
    return parts;
}

/// What the dimension lines stand beside, the foot of the axis at the origin, mm: the solved size; of a piece
/// seen from above and aside, its width over what is seen of it.
QRectF measured_mm(const PieceModel& model, FigureView view) {
    const double width = model.measures().width_mm;
    switch (view) {
        case FigureView::front:
            return {-width / 2, -model.measures().height_mm, width, model.measures().height_mm};
        case FigureView::above: {
            const QRectF seen = model.seen_mm(view);
            return {-width / 2, seen.top(), width, seen.height()};
        }
        case FigureView::top:
            return {-width / 2, -model.measures().depth_mm / 2, width, model.measures().depth_mm};
    }
    return {};
}

bool ruffles(const PieceStudy& study) {
    return std::any_of(study.lies().begin(), study.lies().end(),
                       [](const RoundLie& lie) { return lie.lie == Lie::ruffles; });
}

}  // namespace

PieceModel::PieceModel(const Toy& toy, std::size_t piece, const PieceStudy& study)
    : face_degrees_(toy.pieces[piece].face_degrees), measures_(&study.measures()) {
    RevolveOptions options;
    options.most_triangles = most_page_triangles;
    surface_ = study_surface(toy, piece, study, options);
    parts_ = parts_of(toy.pieces[piece], study);
}

FigureView measured_view(const PieceStudy& study) {
    if (study.measures().flattened) return FigureView::front;
    if (study.measures().height_mm >= flat_share * study.measures().width_mm) return FigureView::front;
    return ruffles(study) ? FigureView::above : FigureView::top;
}

double measured_scale(const PieceModel& model, FigureView view, QSizeF box) {
    const QRectF measured = measured_mm(model, view);
    const double across = (box.width() - 2 * dimension_room()) / std::max(measured.width(), 1.0);
    const double up = (box.height() - dimension_room()) / std::max(measured.height(), 1.0);
    return std::max(0.0, std::min(across, up));
}

YarnDetail detail_for_stitches(std::size_t stitches) {
    if (stitches <= 1'500) return YarnDetail::twist;
    return stitches <= many_stitches ? YarnDetail::highlights : YarnDetail::cords;
}

DrawingView PieceModel::view_of(FigureView view) const {
    switch (view) {
        case FigureView::front:
            return {face_degrees_, 0};
        case FigureView::above:
            return parts_.empty() ? DrawingView{face_degrees_ + 18, 16} : DrawingView{face_degrees_, 12};
        case FigureView::top:
            return {face_degrees_, 90};
    }
    return {face_degrees_, 0};
}

QRectF PieceModel::seen_mm(FigureView view) const {
    DrawOptions drawing;
    drawing.view = view_of(view);
    drawing.units_per_mm = 1;
    drawing.parts = parts_;
    const DrawnPiece placed = place_piece(surface_, drawing);
    return placed.bounds.translated(-placed.origin);
}

PieceFigure::PieceFigure(const PieceModel& model, double scale, FigureView view, YarnDetail most_detail)
    : units_per_mm_(scale),
      width_mm_(model.measures().width_mm),
      height_mm_(model.measures().height_mm),
      measured_mm_(measured_mm(model, view)),
      view_(view) {
    if (model.empty() || scale <= 0) return;
    DrawOptions drawing;
    drawing.view = model.view_of(view);
    drawing.units_per_mm = scale;
    drawing.parts = model.parts_;
    drawing.most_detail = most_detail;
    recording_ =
        record([&](QPainter& painter) { foot_ = draw_piece(painter, model.surface_, drawing).origin; },
               shortest_curve_for(model.stitches()));
}

void PieceFigure::paint(QPainter& painter, QPointF foot) const {
    if (recording_) recording_->paint(painter, foot - foot_);
}

void PieceFigure::paint_measured(QPainter& painter, const QRectF& box, LengthUnit units) const {
    if (!recording_) return;
    const QSizeF size = measured_mm_.size() * units_per_mm_;
    const double bottom = box.bottom() - dimension_room();
    const QRectF measured(QPointF(box.center().x() - size.width() / 2, bottom - size.height()), size);
    paint(painter, measured.topLeft() - measured_mm_.topLeft() * units_per_mm_);
    const double under = measured.bottom() + mm(3);
    paint_level_dimension(painter, {measured.left(), under}, {measured.right(), under},
                          length_words(width_mm_, units));
    if (view_ != FigureView::front) return;
    const double beside = measured.right() + mm(3);
    paint_upright_dimension(painter, {beside, measured.top()}, {beside, measured.bottom()},
                            length_words(height_mm_, units));
}

}  // namespace roundwright::render
