#include "render/pages/toy_figure.h"

#include <algorithm>
#include <cmath>

#include "core/assembly/join_frames.h"
#include "core/assembly/one_surface.h"
#include "core/face/feature_mesh.h"

namespace roundwright::render {
namespace {

/// The least cosine between a place's normal and the way to the viewer at which it counts as seen.
constexpr double least_facing = -0.15;

void move_points(std::vector<float>& points, const Pose& pose, bool turn_only) {
    for (std::size_t i = 0; i + 2 < points.size(); i += 3) {
        const Vec3 point(points[i], points[i + 1], points[i + 2]);
        const Vec3 moved = turn_only ? Vec3(pose.linear() * point) : pose * point;
        for (std::size_t k = 0; k < 3; ++k) points[i + k] = static_cast<float>(moved[static_cast<int>(k)]);
    }
}

void move_mesh(Mesh& mesh, const Pose& pose) {
    move_points(mesh.positions, pose, false);
    move_points(mesh.normals, pose, true);
}

void move_surface(StitchSurface& surface, const Pose& pose) {
    move_mesh(surface.mesh, pose);
    for (StitchPatch& stitch : surface.stitches) {
        for (Vec3& corner : stitch.corners) corner = pose * corner;
        stitch.normal = pose.linear() * stitch.normal;
        // No round of a whole toy is its first or last: rims are within, where they are sewn.
        ++stitch.round;
    }
    surface.first_stitch_of_round.clear();
}

void add_parts(std::vector<DrawnPart>& parts, const PatternStudy& study, std::size_t copy) {
    const AssembledToy& toy = *study.together;
    const std::size_t piece = toy.placed.pieces[copy].solved;
    const SolvedPiece& solved = toy.solved[piece];
    if (solved.piece->features.empty() || solved.surface.empty()) return;
    for (FeaturePart& part : feature_parts(solved.piece->features, solved.surface, solved.stitches,
                                           study.pieces[piece].fabric.mm)) {
        if (part.inside) continue;
        Mesh mesh = placed_mesh(part.mesh, toy.forms[copy]);
        move_mesh(mesh, study.measures.rest.pose);
        parts.push_back({std::move(mesh), part.finish == Finish::glossy});
    }
}

Vec3 towards_viewer(ToyView view) {
    constexpr double radians_per_degree = 3.14159265358979323846 / 180;
    const DrawingView from = drawing_view(view);
    const double yaw = from.yaw_degrees * radians_per_degree;
    const double pitch = from.pitch_degrees * radians_per_degree;
    return {std::sin(yaw) * std::cos(pitch), std::sin(pitch), std::cos(yaw) * std::cos(pitch)};
}

/// What stands all round is seen from every side.
bool is_all_round(const Join& join, const SolvedPiece& onto) {
    return join.at.around || join.at.round < 0 || join.at.round + 1 >= static_cast<int>(onto.stitches.size());
}

}  // namespace

DrawingView drawing_view(ToyView view) {
    switch (view) {
        case ToyView::front:
            return {0, 0};
        case ToyView::side:
            return {90, 0};
        case ToyView::back:
            return {180, 0};
        case ToyView::aside:
            return {24, 12};
    }
    return {};
}

ToyModel::ToyModel(const PatternStudy& study) {
    const AssembledToy& toy = *study.together;
    std::vector<ShiftedSurface> shown;
    for (std::size_t i = 0; i < toy.surfaces.size(); ++i) {
        if (!toy.surfaces[i]) continue;
        shown.push_back({toy.surfaces[i].get(), Vec3::Zero()});
        add_parts(parts_, study, i);
    }
    surface_ = one_surface(shown).surface;
    move_surface(surface_, study.measures.rest.pose);
}

DrawOptions ToyModel::options(ToyView view, double scale) const {
    DrawOptions drawing;
    drawing.view = drawing_view(view);
    drawing.units_per_mm = scale;
    drawing.parts = parts_;
    return drawing;
}

QRectF ToyModel::seen_mm(ToyView view) const {
    const DrawnPiece placed = place_piece(surface_, options(view, 1));
    return placed.bounds.translated(-placed.origin);
}

ToyFigure::ToyFigure(const ToyModel& model, double scale, ToyView view, YarnDetail most_detail) {
    if (model.empty() || scale <= 0) return;
    DrawOptions drawing = model.options(view, scale);
    drawing.most_detail = most_detail;
    recording_ =
        record([&](QPainter& painter) { origin_ = draw_piece(painter, model.surface_, drawing).origin; });
}

void ToyFigure::paint(QPainter& painter, QPointF origin) const {
    if (recording_) recording_->paint(painter, origin - origin_);
}

std::vector<SeenJoin> seen_joins(const PatternStudy& study, ToyView view) {
    std::vector<SeenJoin> seen;
    const AssembledToy& toy = *study.together;
    const Pose& rest = study.measures.rest.pose;
    const Projection projection(drawing_view(view));
    const Vec3 viewer = towards_viewer(view);
    for (const PlacedPiece& placed : toy.placed.pieces) {
        if (!placed.join) continue;
        Join join = study.toy.joins[*placed.join];
        if (placed.mirrored) join.at.stitches_right = -join.at.stitches_right;
        const SolvedPiece& onto = toy.solved[toy.placed.pieces[*placed.onto].solved];
        const auto frame = frame_of_place(onto, join.at);
        if (!frame) continue;
        const SurfaceSpot spot = toy.forms[*placed.onto].place(SurfaceSpot{frame->point, frame->out});
        if ((rest.linear() * spot.normal).dot(viewer) < least_facing && !is_all_round(join, onto)) continue;
        const QPointF flat = projection.flat(rest * spot.place);
        seen.push_back({*placed.join, {flat.x(), -flat.y()}});
    }
    return seen;
}

bool shows_whole_toy(const PatternStudy& study) {
    const auto has_shape = [](const PieceStudy& piece) { return piece.measures().usable(); };
    const auto is_joined = [](const PlacedPiece& placed) { return placed.join.has_value(); };
    return std::ranges::any_of(study.together->placed.pieces, is_joined) &&
           std::ranges::all_of(study.pieces, has_shape);
}

}  // namespace roundwright::render
