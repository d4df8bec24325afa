#include "app/face/face_scene.h"

#include <cmath>
#include <numbers>

#include "core/face/face_guides.h"
#include "core/face/feature_mesh.h"
#include "core/face/place_feature.h"
#include "core/rounds/piece_graph.h"
#include "core/study/study_surface.h"
#include "render/scene/feature_scene_part.h"

namespace roundwright::app {

namespace {

constexpr Colour guide_colour{0x5A, 0x78, 0x8C};
constexpr double most_degrees_away = 50;

/// Of the middle of the face, by the vertices' mean: its right is where the angle about the axis grows.
int side_of(const Mesh& mesh, double face_degrees) {
    double x = 0;
    double z = 0;
    for (std::size_t at = 0; at + 2 < mesh.positions.size(); at += 3) {
        x += mesh.positions[at];
        z += mesh.positions[at + 2];
    }
    constexpr double pi = std::numbers::pi;
    return std::remainder(std::atan2(x, z) - face_degrees * pi / 180, 2 * pi) < 0 ? -1 : 1;
}

}  // namespace

FaceScene::FaceScene(DocumentSession& session, render::SceneView& scene, QObject* parent)
    : QObject(parent), session_(session), scene_(scene) {
    connect(&session_, &DocumentSession::toy_changed, this, &FaceScene::follow_features);
    connect(&session_, &DocumentSession::current_piece_changed, this, &FaceScene::show_parts);
    connect(&session_, &DocumentSession::surface_ready, this, &FaceScene::show_parts);
    connect(&scene_, &render::SceneView::part_dragged, this, &FaceScene::drag);
    connect(&scene_, &render::SceneView::part_dropped, this, &FaceScene::drop);
    connect(&scene_, &render::SceneView::clicked, this, &FaceScene::click);
    connect(&scene_, &render::SceneView::part_clicked, this, [this](int part) {
        const auto index = static_cast<std::size_t>(part);
        if (index < feature_of_part_.size() && feature_of_part_[index] >= 0)
            Q_EMIT feature_picked(feature_of_part_[index], side_of_part_[index]);
    });
    show_parts();
}

// A drag that is under way is taken back; its scene may be gone by then.
FaceScene::~FaceScene() { session_.disconnect(this); }

void FaceScene::set_guides(bool shown) {
    guides_ = shown;
    show_parts();
}

void FaceScene::show_face() {
    if (session_.piece() != nullptr) scene_.face(session_.piece()->face_degrees);
}

void FaceScene::show_face_if_hidden() {
    if (session_.piece() == nullptr) return;
    const double away = std::remainder(session_.piece()->face_degrees - scene_.yaw_degrees(), 360.0);
    if (std::abs(away) > most_degrees_away) show_face();
}

void FaceScene::place_by_click(int feature) { placing_ = feature; }

// What only changes the fabric shows with the new surface, in one frame.
void FaceScene::follow_features() {
    const Piece* piece = session_.piece();
    if (piece == nullptr || piece->features != shown_features_ || piece->face_degrees != shown_degrees_)
        show_parts();
}

void FaceScene::show_parts() {
    std::vector<render::ScenePart> parts;
    feature_of_part_.clear();
    side_of_part_.clear();
    const Piece* piece = session_.piece();
    shown_features_ = piece == nullptr ? std::vector<Feature>() : piece->features;
    shown_degrees_ = piece == nullptr ? 0 : piece->face_degrees;
    const auto shown = session_.shown_study(session_.current_piece());
    if (piece != nullptr && shown != nullptr) {
        const FaceSurface surface = study_face(*piece, *shown);
        for (FeaturePart& part :
             feature_parts(piece->features, surface, stitch_counts(shown->graph().graph), shown->fabric.mm)) {
            feature_of_part_.push_back(part.feature);
            side_of_part_.push_back(side_of(part.mesh, piece->face_degrees));
            parts.push_back(render::scene_part(std::move(part)));
        }
        if (guides_ && !surface.empty()) {
            parts.push_back({face_guides(surface, guide_colour), render::Finish::felt, false});
            feature_of_part_.push_back(-1);
            side_of_part_.push_back(1);
        }
    }
    scene_.set_parts(std::move(parts));
}

std::optional<Toy> FaceScene::moved(int feature, const SurfacePlace& place) const {
    const Piece* piece = session_.piece();
    const auto shown = session_.shown_study(session_.current_piece());
    const auto index = static_cast<std::size_t>(feature);
    // What is only being tried out has rounds that the piece has not.
    if (piece == nullptr || shown == nullptr || session_.shows_trial() || feature < 0 ||
        index >= piece->features.size())
        return std::nullopt;
    const FaceSurface surface = study_face(*piece, *shown);
    Toy toy = session_.said_toy();
    Feature& changed = toy.pieces[static_cast<std::size_t>(session_.current_piece())].features[index];
    changed = moved_to(changed, place, surface, stitch_counts(shown->graph().graph));
    return toy;
}

void FaceScene::drag(int part, QPointF position) {
    const auto index = static_cast<std::size_t>(part);
    if (index >= feature_of_part_.size() || session_.piece() == nullptr) return;
    const auto shown = session_.shown_study(session_.current_piece());
    const auto hit = scene_.hit(position);
    if (!hit || shown == nullptr) return;
    const int feature = feature_of_part_[index];
    const FaceSurface surface = study_face(*session_.piece(), *shown);
    auto toy = moved(feature, surface.nearest(hit->point));
    if (!toy) return;
    if (preview_ == nullptr) {
        preview_ = std::make_unique<LivePreview>(session_, tr("Move on the face"));
        Q_EMIT feature_picked(feature, side_of_part_[index]);
    }
    preview_->show(std::move(*toy));
}

void FaceScene::drop(int part, QPointF position) {
    drag(part, position);
    if (preview_ != nullptr) preview_->commit();
    preview_.reset();
}

// A click names a stitch; its upper edge is the gap above its round.
void FaceScene::click(int round, int stitch) {
    if (placing_ < 0) return;
    const auto surface = session_.surface(session_.current_piece());
    const auto shown = session_.shown_study(session_.current_piece());
    if (round < 0 || stitch < 0 || surface == nullptr || shown == nullptr || session_.piece() == nullptr)
        return;
    const std::size_t patch =
        surface->first_stitch_of_round[static_cast<std::size_t>(round)] + static_cast<std::size_t>(stitch);
    const auto& corners = surface->stitches[patch].corners;
    const FaceSurface face = study_face(*session_.piece(), *shown);
    const auto toy = moved(placing_, face.nearest((corners[2] + corners[3]) / 2));
    placing_ = -1;
    if (toy) session_.edit(tr("Move on the face"), *toy);
    Q_EMIT placing_ended();
}

}  // namespace roundwright::app
