#include "render/pages/outline.h"

#include <algorithm>
#include <cmath>

#include "core/mesh/mean_surface.h"
#include "core/study/study_surface.h"
#include "render/drawing/drawing_view.h"
#include "render/illustration/silhouette.h"

namespace roundwright::render {
namespace {

constexpr std::size_t points_around = 128;
constexpr std::size_t most_steps = 6, most_rows = 800;

/// The face is to the viewer; what lies flat shows its layer.
DrawingView view_of(const Piece& piece, const PieceStudy& study, OutlineView view) {
    return {study.measures().flattened ? 0 : piece.face_degrees, view == OutlineView::above ? 90.0 : 0.0};
}

QPointF seen(const FabricPoint& point, const Projection& projection) {
    const QPointF at = projection.flat(point.place);
    return {at.x(), -at.y()};
}

QPolygonF whole_line(const std::vector<FabricPoint>& loop, const Projection& projection) {
    QPolygonF line;
    for (const FabricPoint& point : loop) line << seen(point, projection);
    line << line.front();
    return line;
}

/// The run of a loop's points that look to the viewer, in their order around; a point seen edge on counts.
QPolygonF facing_line(const std::vector<FabricPoint>& loop, const Projection& projection) {
    const std::size_t many = loop.size();
    const auto faces = [&](std::size_t k) { return projection(loop[k % many].normal).z() > -1e-6; };
    std::size_t first = 0;
    while (first < many && (!faces(first) || faces(first + many - 1))) ++first;
    if (first == many) return faces(0) ? whole_line(loop, projection) : QPolygonF();
    QPolygonF line;
    for (std::size_t k = first; faces(k); ++k) line << seen(loop[k % many], projection);
    return line;
}

}  // namespace

PieceOutline::PieceOutline(const Piece& piece, const PieceStudy& study, OutlineView view) {
    const auto fabric = study_fabric(piece, study);
    if (!fabric) return;
    const DrawingView from = view_of(piece, study, view);
    const MeanSurface surface = mean_surface(*fabric, points_around);
    const std::size_t steps = std::clamp<std::size_t>(most_rows / surface.loops.size(), 1, most_steps);
    Silhouette found = silhouette(smooth_mesh(surface, steps), from);
    path_ = std::move(found.path);
    bounds_ = found.bounds_mm;
    const Projection projection(from);
    for (const auto& loop : surface.loops)
        loops_.push_back(view == OutlineView::above ? whole_line(loop, projection)
                                                    : facing_line(loop, projection));
}

double PieceOutline::middle_of_loop(std::size_t loop) const {
    const QPolygonF& line = loops_[loop];
    const auto nearest =
        std::ranges::min_element(line, {}, [](const QPointF& at) { return std::abs(at.x()); });
    return nearest == line.end() ? 0 : nearest->y();
}

double PieceOutline::reach_of_loop(std::size_t loop) const {
    double reach = 0;
    for (const QPointF& at : loops_[loop]) reach = std::max(reach, at.x());
    return reach;
}

}  // namespace roundwright::render
