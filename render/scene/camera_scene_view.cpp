#include "render/scene/camera_scene_view.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

#include "render/raster/lit_rounds.h"
#include "render/raster/pile.h"
#include "render/raster/rim.h"
#include "render/raster/standing_out.h"
#include "render/raster/stitch_size.h"
#include "render/scene/stepping_ground.h"

namespace roundwright::render {

namespace {

constexpr int hover_every_ms = 30;
constexpr int at_rest_ms = 800;  ///< while a colour is being chosen the ground holds still
constexpr double facing_pitch_degrees = 8;
constexpr int rounds_of_a_cell = 4;   ///< at most, in a fabric of cells larger than its stitches
constexpr int rays_worth_a_tree = 3;  ///< at one surface; a drag brings a new one with each move
constexpr int the_fabric = std::numeric_limits<int>::max();  ///< among the numbers of movable parts
constexpr double least_margin = 1.04;  ///< a fitted view closer to its edges than this is fitted again

/// The stitch at a point of a triangle that `stitch` owns: that one, but where triangles are larger than
/// stitches the nearest of those around it.
const StitchPatch& stitch_at(const StitchSurface& surface, std::size_t stitch, const Vec3& point) {
    const auto& patches = surface.stitches;
    if (surface.mesh.triangle_count() >= 2 * patches.size()) return patches[stitch];
    const auto& first = surface.first_stitch_of_round;
    const int round = patches[stitch].round, rounds = static_cast<int>(first.size()) - 1;
    const auto begin =
        patches.begin() + first[static_cast<std::size_t>(std::max(0, round - rounds_of_a_cell))];
    const auto end =
        patches.begin() + first[static_cast<std::size_t>(std::min(rounds, round + rounds_of_a_cell + 1))];
    const auto distance = [&point](const StitchPatch& patch) {
        return ((patch.corners[0] + patch.corners[1] + patch.corners[2] + patch.corners[3]) / 4 - point)
            .squaredNorm();
    };
    return *std::min_element(
        begin, end, [&](const StitchPatch& a, const StitchPatch& b) { return distance(a) < distance(b); });
}

}  // namespace

CameraSceneView::CameraSceneView(QObject* parent) : SceneView(parent) {
    hover_timer_.setSingleShot(true);
    hover_timer_.setInterval(hover_every_ms);
    connect(&hover_timer_, &QTimer::timeout, this, &CameraSceneView::tell_hover);
    input_.set_movable_part_at([this](QPointF position) { return movable_at(position); });
    measure_later_.setSingleShot(true);
    connect(&measure_later_, &QTimer::timeout, this, &CameraSceneView::measure_outline);
    connect_input();
}

void CameraSceneView::connect_input() {
    connect(&input_, &ViewInput::turned, this, &CameraSceneView::turn);
    connect(&input_, &ViewInput::zoomed, this, &CameraSceneView::zoom);
    connect(&input_, &ViewInput::fit_asked, this, &CameraSceneView::fit);
    connect(&input_, &ViewInput::pointed, this, &CameraSceneView::point_at);
    connect(&input_, &ViewInput::clicked, this, &CameraSceneView::click_at);
    connect(&input_, &ViewInput::key_pressed, this, &CameraSceneView::key);
    connect(&input_, &ViewInput::double_clicked, this, &CameraSceneView::double_click_at);
    connect(&input_, &ViewInput::part_dragged, this, [this](int part, QPointF at) {
        part == the_fabric ? Q_EMIT fabric_dragged(at) : Q_EMIT part_dragged(part, at);
    });
    connect(&input_, &ViewInput::part_dropped, this, [this](int part, QPointF at) {
        part == the_fabric ? Q_EMIT fabric_dropped(at) : Q_EMIT part_dropped(part, at);
    });
    connect(&input_, &ViewInput::part_drag_given_up, this, &SceneView::drag_given_up);
    connect(&input_, &ViewInput::drag_began, this, [this] { show_dragging(true); });
    connect(&input_, &ViewInput::drag_ended, this, [this] { show_dragging(false); });
    connect(&input_, &ViewInput::wheeled, this, [this](double delta) {
        camera_.zoom_by_wheel(delta);
        moved_by_hand();
    });
    connect(&input_, &ViewInput::panned, this, [this](double right, double down) {
        camera_.pan(right, down);
        moved_by_hand();
    });
    connect(&input_, &ViewInput::pointer_left, this, [this] {
        hovering_ = false;
        hover_timer_.start();
    });
}

QString CameraSceneView::view_name() { return tr("Shape of the piece"); }

QString CameraSceneView::view_description() {
    return tr(
        "Arrow keys turn the shape, plus and minus zoom, Home fits it, F, S and T look from the front, the "
        "side "
        "and the top.");
}

std::vector<PointCloud> CameraSceneView::content() const {
    std::vector<PointCloud> clouds = {surface_->mesh.positions};
    for (const ScenePart& part : *parts_) clouds.emplace_back(part.mesh.positions);
    if (ghost_) clouds.emplace_back(ghost_->positions);
    return clouds;
}

void CameraSceneView::content_changed() {
    const std::vector<PointCloud> clouds = content();
    camera_.set_content(clouds);
    const bool first = !shown_before_ && !surface_->mesh.positions.empty();
    shown_before_ = shown_before_ || first;
    if (first || (fitted_ && !camera_.shows_all(clouds, least_margin))) camera_.fit(clouds);
    camera_moved();
    if (hovering_) hover_timer_.start();
}

void CameraSceneView::share_surface(std::shared_ptr<const StitchSurface> surface) {
    if (!surface) surface = std::make_shared<const StitchSurface>();
    if (surface == surface_) return;  // shared on while the face or words changed
    surface_ = std::move(surface);
    caster_.reset();
    growing_.cancel();
    asked_without_tree_ = 0;
    stitch_mm_ = stitch_size_mm(*surface_);
    pile_ = std::make_shared<const Mesh>(pile_mesh(*surface_));
    lit_.reset();
    show_surface();
    content_changed();
    if (usual_ground_) measure_later_.start(outline_.empty() ? 0 : at_rest_ms);
}

void CameraSceneView::set_parts(std::vector<ScenePart> parts) {
    if (parts.empty() && parts_->empty()) return;
    parts_ = std::make_shared<const std::vector<ScenePart>>(std::move(parts));
    show_parts();
    content_changed();
}

void CameraSceneView::set_ghost(std::optional<Mesh> ghost) {
    if (!ghost && !ghost_) return;
    ghost_ = ghost ? std::make_shared<const Mesh>(std::move(*ghost)) : nullptr;
    show_ghost();
    content_changed();
}

void CameraSceneView::set_lit_rounds(const std::vector<int>& rounds) {
    if (rounds == lit_rounds_) return;
    lit_rounds_ = rounds;
    lit_.reset();
    show_lit();
}

void CameraSceneView::light_rounds() const {
    if (lit_) return;
    const auto lit = [this](const Mesh& mesh) {
        return std::make_shared<const std::vector<float>>(lit_vertices(*surface_, mesh, lit_rounds_));
    };
    lit_ = lit(surface_->mesh);
    pile_lit_ = lit(*pile_);
}

void CameraSceneView::set_background(const QColor& colour) {
    usual_ground_.reset();
    background_ = colour;
    rim_.reset();
    show_background();
}

void set_stepping_ground(SceneView& view, const QColor& usual) {
    auto* shown = dynamic_cast<CameraSceneView*>(&view);
    shown == nullptr ? view.set_background(usual) : shown->step_aside_from(usual);
}

void CameraSceneView::step_aside_from(const QColor& usual) {
    usual_ground_ = usual;
    const Standing standing = standing_of(outline_, usual);
    background_ = standing.ground;
    rim_ = standing.rim;
    show_background();
    if (outline_.empty()) measure_later_.start(0);
}

void CameraSceneView::measure_outline() {
    measuring_.start_latest(Lane::longer, [this, surface = surface_](const TaskRun& run) -> Delivery {
        auto measured = outline_luminances(*surface, run.stop);
        if (run.stop.stop_requested()) return {};
        return [this, outline = std::move(measured)] {
            outline_ = outline;
            choose_ground();
        };
    });
}

/// One that still does is kept, so that it does not go to and fro about a limit.
void CameraSceneView::choose_ground() {
    if (!usual_ground_) return;
    const Standing wanted = standing_of(outline_, *usual_ground_);
    const bool now_does = !rim_ && outline_contrast(outline_, background_) >= least_outline_contrast;
    if (wanted == Standing{background_, rim_} || (now_does && wanted.ground != *usual_ground_)) return;
    background_ = wanted.ground;
    rim_ = wanted.rim;
    show_background();
}

void CameraSceneView::set_viewport(double width_px, double height_px) {
    if (width_px == camera_.viewport_width() && height_px == camera_.viewport_height()) return;
    camera_.set_viewport(width_px, height_px);
    if (fitted_) camera_.fit(content());
    camera_moved();
}

void CameraSceneView::camera_moved() {
    show_camera();
    Q_EMIT camera_changed();
}

void CameraSceneView::moved_by_hand() {
    fitted_ = false;
    camera_moved();
}

void CameraSceneView::fit() {
    camera_.fit(content());
    fitted_ = true;
    camera_moved();
}

void CameraSceneView::look_from(ViewDirection direction) {
    camera_.look_from(direction);
    fit();
}

void CameraSceneView::face(double yaw_degrees) {
    camera_.turn(yaw_degrees - camera_.yaw_degrees(), facing_pitch_degrees - camera_.pitch_degrees());
    if (fitted_) camera_.fit(content());
    camera_moved();
}

void CameraSceneView::turn(double yaw_degrees, double pitch_degrees) {
    camera_.turn(yaw_degrees, pitch_degrees);
    camera_moved();
}

void CameraSceneView::zoom(double factor) {
    camera_.zoom(factor);
    moved_by_hand();
}

double CameraSceneView::pixels_per_mm() const { return camera_.pixels_per_mm(); }

std::optional<MeshHit> CameraSceneView::fabric_hit(QPointF at) const {
    const Ray ray = camera_.ray(at.x(), at.y());
    if (caster_) return caster_->first_hit(ray);
    if (++asked_without_tree_ == rays_worth_a_tree) grow_tree();
    return first_hit_by_trying_all(surface_->mesh, ray);
}

void CameraSceneView::grow_tree() const {
    growing_.start_latest(Lane::longer, [this, surface = surface_](const TaskRun&) -> Delivery {
        const auto tree = std::make_shared<const RayCaster>(surface->mesh);
        return [this, tree] { caster_ = tree; };
    });
}

std::optional<SceneHit> CameraSceneView::hit(QPointF at) const {
    const auto found = fabric_hit(at);
    if (!found) return std::nullopt;
    SceneHit hit{-1, -1, found->point, found->from_outside ? found->normal : Vec3(-found->normal)};
    if (found->stitch < 0 || static_cast<std::size_t>(found->stitch) >= surface_->stitches.size()) return hit;
    const StitchPatch& patch = stitch_at(*surface_, static_cast<std::size_t>(found->stitch), found->point);
    hit.round = patch.round;
    hit.stitch = patch.stitch;
    return hit;
}

std::optional<int> CameraSceneView::part_at(QPointF at) const {
    if (parts_->empty()) return std::nullopt;
    const Ray ray = camera_.ray(at.x(), at.y());
    std::optional<int> nearest;
    double distance = 0;
    for (std::size_t i = 0; i < parts_->size(); ++i) {
        const auto found = first_hit_by_trying_all((*parts_)[i].mesh, ray);
        if (!found || (nearest && found->t >= distance)) continue;
        nearest = static_cast<int>(i);
        distance = found->t;
    }
    if (!nearest) return nearest;
    const auto fabric = fabric_hit(at);
    return fabric && fabric->t < distance ? std::nullopt : nearest;
}

void CameraSceneView::point_at(QPointF position) {
    pointer_ = position;
    hovering_ = true;
    if (!hover_timer_.isActive()) hover_timer_.start();
}

void CameraSceneView::tell_hover() {
    const auto found = hovering_ ? hit(pointer_) : std::nullopt;
    const int round = found ? found->round : -1;
    const int stitch = found ? found->stitch : -1;
    if (round == hover_round_ && stitch == hover_stitch_) return;
    hover_round_ = round;
    hover_stitch_ = stitch;
    Q_EMIT hovered(round, stitch);
}

void CameraSceneView::click_at(QPointF position) {
    if (const auto part = part_at(position)) {
        Q_EMIT part_clicked(*part);
        return;
    }
    const auto found = hit(position);
    Q_EMIT clicked(found ? found->round : -1, found ? found->stitch : -1);
}

/// On the fabric it may be told; beside it, and where nobody asks to be told, it fits the view.
void CameraSceneView::double_click_at(QPointF position) {
    const auto found = opens_ ? hit(position) : std::nullopt;
    found ? Q_EMIT opened(found->round, found->stitch) : fit();
}

int CameraSceneView::movable_at(QPointF position) const {
    if (const auto part = part_at(position))
        return parts()[static_cast<std::size_t>(*part)].movable ? *part : -1;
    if (!movable_rounds_) return -1;
    const auto found = hit(position);
    const bool moves =
        found && found->round >= movable_rounds_->first && found->round <= movable_rounds_->last;
    return moves ? the_fabric : -1;
}

Ray CameraSceneView::ray(QPointF at) const { return camera_.ray(at.x(), at.y()); }

QPointF CameraSceneView::on_screen(const Vec3& point) const {
    const Vec3 seen = camera_.project(point);
    return {seen.x(), seen.y()};
}

void CameraSceneView::key(int key) {
    switch (key) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (opens_) Q_EMIT opened(-1, -1);
            break;
        case Qt::Key_F:
            look_from(ViewDirection::front);
            break;
        case Qt::Key_S:
            look_from(ViewDirection::side);
            break;
        case Qt::Key_T:
            look_from(ViewDirection::top);
            break;
        default:
            break;
    }
}

SoftwareScene CameraSceneView::software_scene(const QColor& background) const {
    light_rounds();
    SoftwareScene scene;
    scene.background = background;
    scene.any_lit = any_lit();
    scene.stitch_mm = stitch_mm_;
    scene.owners = {surface_, lit_, pile_, pile_lit_, parts_, ghost_};
    scene.ghost = ghost_.get();
    scene.meshes.push_back({&surface_->mesh, lit_.get(), Finish::yarn});
    if (pile_->triangle_count() > 0) scene.meshes.push_back({pile_.get(), pile_lit_.get(), Finish::pile});
    for (const ScenePart& part : *parts_) scene.meshes.push_back({&part.mesh, nullptr, part.finish});
    return scene;
}

QImage CameraSceneView::picture(QSize pixels, const QColor& background) const {
    if (pixels.isEmpty()) return {};
    Camera camera = camera_;
    camera.set_viewport(pixels.width(), pixels.height());
    if (fitted_) camera.fit(content());
    return draw_software_picture(software_scene(background), camera, pixels, fine_samples);
}

}  // namespace roundwright::render
