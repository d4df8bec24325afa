#include "app/assembly/toy_scene.h"

#include <algorithm>
#include <cmath>

#include "app/assembly/join_edits.h"
#include "app/assembly/overlap_marks.h"
#include "app/kit/theme.h"
#include "app/session/assembled_toy.h"
#include "core/assembly/join_frames.h"
#include "core/assembly/move_join.h"
#include "core/assembly/one_surface.h"
#include "core/face/feature_mesh.h"
#include "core/face/place_feature.h"
#include "core/mesh/ray_cast.h"
#include "render/scene/feature_scene_part.h"
#include "render/wording/join_place.h"

namespace roundwright::app {
namespace {

constexpr double gap_apart_mm = 12;

Vec3 middle_of(const StitchSurface& surface) {
    Vec3 sum = Vec3::Zero();
    for (const StitchPatch& patch : surface.stitches) sum += patch.corners[0];
    return sum / std::max<double>(1, static_cast<double>(surface.stitches.size()));
}

Vec3 middle_of(const std::vector<std::shared_ptr<const StitchSurface>>& surfaces) {
    Vec3 sum = Vec3::Zero();
    double count = 0;
    for (const auto& surface : surfaces) {
        if (surface == nullptr) continue;
        const auto stitches = static_cast<double>(surface->stitches.size());
        sum += stitches * middle_of(*surface);
        count += stitches;
    }
    return sum / std::max(1.0, count);
}

/// Largest reach of a surface from its middle.
double reach_of(const StitchSurface& surface, const Vec3& middle) {
    double reach = 0;
    for (const StitchPatch& patch : surface.stitches)
        reach = std::max(reach, (patch.corners[0] - middle).norm());
    return reach;
}

Colour colour_of(const QColor& colour) {
    const auto channel = [](int value) { return static_cast<std::uint8_t>(value); };
    return {channel(colour.red()), channel(colour.green()), channel(colour.blue())};
}

/// Measured again, a toy that rests as it did is not drawn again.
bool is_alike(const Pose& a, const Pose& b) { return a.isApprox(b, 1e-4); }

}  // namespace

ToyScene::ToyScene(DocumentSession& session, ToyState& state, render::SceneView& scene, QObject* parent)
    : QObject(parent), session_(session), state_(state), scene_(scene) {
    connect(&session_, &DocumentSession::assembled_changed, this, &ToyScene::follow);
    connect(&session_, &DocumentSession::selection_changed, this, &ToyScene::light);
    connect(&session_, &DocumentSession::current_piece_changed, this, &ToyScene::light);
    connect(&state_, &ToyState::picked_changed, this, &ToyScene::repick);
    connect(&state_, &ToyState::hidden_changed, this, &ToyScene::show);
    connect(&state_, &ToyState::apart_changed, this, &ToyScene::show);
    connect(&scene_, &render::SceneView::hovered, this,
            [this](int round, int stitch) { Q_EMIT hovered(pointed(round, stitch)); });
    connect(&scene_, &render::SceneView::clicked, this, [this](int round, int) { click(round); });
    connect(&scene_, &render::SceneView::opened, this, [this](int round, int) { open(round); });
    connect(&scene_, &render::SceneView::part_clicked, this, &ToyScene::pick_part);
    connect(&scene_, &render::SceneView::part_dragged, this, &ToyScene::drag_part);
    connect(&scene_, &render::SceneView::part_dropped, this, &ToyScene::drop_part);
    connect(&scene_, &render::SceneView::fabric_dragged, this, &ToyScene::drag_fabric);
    connect(&scene_, &render::SceneView::fabric_dropped, this, &ToyScene::drop_fabric);
    connect(&scene_, &render::SceneView::drag_given_up, this, &ToyScene::give_up);
    scene_.set_opens(true);
    show();
}

// A drag that is under way is taken back; its scene may be gone by then.
ToyScene::~ToyScene() { session_.disconnect(this); }

const PlacedPiece& ToyScene::placed(std::size_t drawn) const {
    return shown_->placed().pieces[drawn_[drawn].placed];
}

// --- what is shown

/// Where nothing but sizes is new, the picture stays; how it rests, and what runs into each other, come with
/// them.
void ToyScene::follow() {
    shown_ = session_.assembled();
    const bool lies_alike = shown_ != nullptr && (is_dragging() || is_alike(shown_->on_table, on_table_));
    if (shown_ == nullptr || shown_->whole != drawn_whole_ || !lies_alike) return show();
    if (shown_->measures != drawn_measures_) show_parts();
}

void ToyScene::show() {
    shown_ = session_.assembled();
    drawn_whole_ = shown_ ? shown_->whole : nullptr;
    drawn_.clear();
    first_round_ = {0};
    if (shown_ == nullptr) return;
    for (std::size_t at = 0; at < shown_->placed().pieces.size(); ++at) {
        if (shown_->surfaces()[at] != nullptr && !state_.is_hidden(shown_->placed().pieces[at].copy))
            drawn_.push_back({at, Vec3::Zero()});
    }
    shift_apart();
    if (!is_dragging()) on_table_ = shown_->on_table;
    show_surface();
    show_parts();
    if (drawn_stance_ && *drawn_stance_ != shown_->toy->stance) scene_.fit();
    drawn_stance_ = shown_->toy->stance;
}

void ToyScene::show_surface() {
    std::vector<ShiftedSurface> parts;
    for (const Drawn& drawn : drawn_) parts.push_back({shown_->surfaces()[drawn.placed].get(), drawn.shift});
    OneSurface whole = one_surface(parts, on_table_);
    first_round_ = std::move(whole.first_round);
    light();
    scene_.share_surface(std::make_shared<const StitchSurface>(std::move(whole.surface)));
}

Pose ToyScene::in_picture(std::size_t drawn) const {
    return on_table_ * Eigen::Translation3d(drawn_[drawn].shift);
}

std::optional<std::size_t> ToyScene::drawn_of(std::size_t placed) const {
    const auto found = std::ranges::find(drawn_, placed, &Drawn::placed);
    if (found == drawn_.end()) return std::nullopt;
    return static_cast<std::size_t>(found - drawn_.begin());
}

/// Each away from what it is sewn to, so that what hangs on it goes along.
void ToyScene::shift_apart() {
    if (state_.apart() <= 0) return;
    const std::size_t count = shown_->placed().pieces.size();
    std::vector<Vec3> shifts(count, Vec3::Zero()), middles(count, Vec3::Zero());
    for (std::size_t at = 0; at < count; ++at) {
        if (shown_->surfaces()[at] == nullptr) continue;
        middles[at] = middle_of(*shown_->surfaces()[at]);
        const auto& onto = shown_->placed().pieces[at].onto;
        if (!onto) continue;
        const Vec3 away = middles[at] - middles[*onto];
        const double length = away.norm();
        const Vec3 direction = length > 1e-6 ? Vec3(away / length) : Vec3(Vec3::UnitY());
        const double reach = gap_apart_mm + reach_of(*shown_->surfaces()[at], middles[at]);
        shifts[at] = shifts[*onto] + state_.apart() * reach * direction;
    }
    for (Drawn& drawn : drawn_) drawn.shift = shifts[drawn.placed];
}

void ToyScene::show_parts() {
    std::vector<render::ScenePart> parts;
    parts_.clear();
    for (std::size_t at = 0; at < drawn_.size(); ++at) {
        const PlacedPiece& piece = placed(at);
        const SolvedPiece& solved = shown_->solved()[piece.solved];
        const auto& study = shown_->pieces[piece.solved].study;
        if (study == nullptr) continue;
        for (FeaturePart& part :
             feature_parts(solved.piece->features, solved.surface, solved.stitches, study->fabric.mm)) {
            parts_.push_back({PartKind::face, at, part.feature});
            render::ScenePart shown = render::scene_part(std::move(part));
            shown.mesh = placed_mesh(placed_mesh(shown.mesh, shown_->whole->forms[drawn_[at].placed]),
                                     PlacedForm(in_picture(at)));
            parts.push_back(std::move(shown));
        }
    }
    show_overlaps(parts);
    add_handles(parts);
    scene_.set_parts(std::move(parts));
}

/// Of pieces that are both on show, and not moved apart.
void ToyScene::show_overlaps(std::vector<render::ScenePart>& parts) {
    drawn_measures_ = shown_->measures;
    std::vector<const OverlapRegion*> seen;
    for (const OverlapRegion& region : shown_->overlaps) {
        const auto drawn = drawn_of(region.other);
        if (state_.apart() > 0 || !drawn || !drawn_of(region.one)) continue;
        seen.push_back(&region);
        Mesh beads = beads_mesh(region, on_table_, colour_of(Theme::colours().warning_text));
        if (beads.indices.empty()) continue;
        parts.push_back({std::move(beads), render::Finish::glossy});
        parts_.push_back({PartKind::overlap, *drawn, 0});
    }
    scene_.set_ghost(seen.empty() ? std::nullopt : std::optional(layer_mesh(seen, on_table_)));
}

void ToyScene::look_at_overlap(std::size_t overlap) {
    if (shown_ == nullptr || overlap >= shown_->overlaps.size()) return;
    const OverlapRegion& region = shown_->overlaps[overlap];
    state_.set_apart(0);
    state_.set_hidden({shown_->placed().pieces[region.one].copy, shown_->placed().pieces[region.other].copy},
                      false);
    state_.pick(shown_->placed().pieces[region.other].copy);
    if (const auto yaw = direction_of(region, on_table_, on_table_ * middle_of(shown_->surfaces())))
        scene_.face(*yaw);
}

void ToyScene::add_handles(std::vector<render::ScenePart>& parts) {
    const auto now = picked();
    if (!now || session_.read_only()) return;
    const auto handles = join_handles(*shown_->toy, *shown_->whole, drawn_[*now].placed, in_picture(*now));
    if (!handles) return;
    const Colour colour = colour_of(Theme::colours().accent);
    parts.push_back({hoop_mesh(*handles, colour), render::Finish::glossy, true});
    parts_.push_back({PartKind::hoop, *now, 0});
    parts.push_back({knob_mesh(*handles, colour), render::Finish::glossy, true});
    parts_.push_back({PartKind::knob, *now, 0});
}

void ToyScene::repick() {
    light();
    recolour();
}

void ToyScene::recolour() {
    if (shown_ != nullptr) show_parts();
}

std::optional<std::size_t> ToyScene::picked() const {
    for (std::size_t at = 0; at < drawn_.size(); ++at)
        if (placed(at).copy == state_.picked()) return at;
    return std::nullopt;
}

void ToyScene::light() {
    if (shown_ == nullptr) return;
    std::vector<int> lit;
    for (std::size_t at = 0; at < drawn_.size(); ++at) {
        if (placed(at).copy.piece != state_.picked().piece) continue;
        for (const int round : session_.selection())
            if (first_round_[at] + round < first_round_[at + 1]) lit.push_back(first_round_[at] + round);
    }
    scene_.set_lit_rounds(lit);
    const auto now = picked();
    const bool moves = now && placed(*now).join && !session_.read_only();
    scene_.set_movable_rounds(
        moves ? std::optional<RoundSpan>({first_round_[*now], first_round_[*now + 1] - 1}) : std::nullopt);
}

// --- pointing

std::optional<ToyScene::Pointed> ToyScene::pointed(int round, int stitch) const {
    if (shown_ == nullptr || round < 0 || round >= first_round_.back()) return std::nullopt;
    const auto after = std::upper_bound(first_round_.begin(), first_round_.end(), round);
    const auto at = static_cast<std::size_t>(after - first_round_.begin()) - 1;
    return Pointed{placed(at).copy, round - first_round_[at], stitch};
}

void ToyScene::click(int round) {
    const auto at = pointed(round, 0);
    if (!at) return session_.select_rounds({});
    state_.pick(at->copy);
    session_.select_rounds({at->round});
}

void ToyScene::open(int round) {
    if (const auto at = pointed(round, 0)) state_.pick(at->copy);
    Q_EMIT opened();
}

void ToyScene::pick_part(int part) {
    const auto index = static_cast<std::size_t>(part);
    if (index >= parts_.size()) return;
    const Part picked = parts_[index];
    if (picked.kind != PartKind::face && picked.kind != PartKind::overlap) return;
    state_.pick(placed(picked.drawn).copy);
    if (picked.kind == PartKind::face) Q_EMIT feature_picked(picked.feature);
}

// --- dragging

std::optional<ToyScene::Met> ToyScene::met(QPointF position,
                                           const std::function<bool(std::size_t)>& counts) const {
    const Ray ray = scene_.ray(position);
    std::optional<Met> first;
    double distance = 0;
    for (std::size_t at = 0; at < drawn_.size(); ++at) {
        if (!counts(at)) continue;
        const Pose to_toy = in_picture(at).inverse();
        const Ray in_the_toy{to_toy * ray.origin, to_toy.linear() * ray.direction};
        const auto hit = first_hit_by_trying_all(shown_->surfaces()[drawn_[at].placed]->mesh, in_the_toy);
        if (!hit || (first && hit->t >= distance)) continue;
        distance = hit->t;
        first = Met{at, placed(at).pose.inverse() * hit->point};
    }
    return first;
}

/// The place that a drawn piece is sewn to, in the picture.
std::optional<Vec3> ToyScene::place_of(std::size_t drawn) const {
    const PlacedPiece& piece = placed(drawn);
    if (!piece.join || !piece.onto) return std::nullopt;
    JoinPlace place = shown_->toy->joins[*piece.join].at;
    if (piece.mirrored) place.stitches_right = -place.stitches_right;
    const PlacedPiece& onto = shown_->placed().pieces[*piece.onto];
    const auto frame = frame_of_place(shown_->solved()[onto.solved], place);
    if (!frame) return std::nullopt;
    return Vec3(in_picture(drawn) * onto.pose * frame->point);
}

/// Whether the toy still has that join where the picture, which may be of the toy before, has it.
bool ToyScene::is_as_shown(std::size_t join) const {
    const auto &said = session_.said_toy().joins, &shown = shown_->toy->joins;
    return join < said.size() && join < shown.size() && said[join].piece == shown[join].piece;
}

/// The toy with the dragged piece sewn to what is under the pointer.
std::optional<Toy> ToyScene::sewn_at(QPointF position) const {
    const auto now = picked();
    if (!now || !placed(*now).join) return std::nullopt;
    const std::size_t join = *placed(*now).join;
    Toy toy = session_.said_toy();
    if (!is_as_shown(join)) return std::nullopt;
    const auto hangs_on_it = [&](std::size_t at) {
        const auto& pieces = shown_->placed().pieces;
        for (std::size_t other = 0; other < pieces.size(); ++other)
            if (pieces[other].join == join && hangs_on(shown_->placed(), drawn_[at].placed, other))
                return true;
        return false;
    };
    const auto found = met(position, [&](std::size_t at) { return !hangs_on_it(at); });
    if (!found) return std::nullopt;
    const PlacedPiece& onto = placed(found->drawn);
    Join& moved = toy.joins[join];
    const bool around = moved.at.around && moved.onto == onto.copy;
    moved.at = place_near(shown_->solved()[onto.solved], found->point);
    if (placed(*now).mirrored) moved.at.stitches_right = -moved.at.stitches_right;
    moved.at.around = around;
    moved.onto = onto.copy;
    return toy;
}

void ToyScene::drag_fabric(QPointF position) {
    const auto now = picked();
    if (!now || !placed(*now).join) return;
    if (!grip_) {
        const auto place = place_of(*now);
        grip_ = place ? scene_.on_screen(*place) - position : QPointF();
        dragged_ = placed(*now).copy;
    }
    const auto toy = sewn_at(position + *grip_);
    if (!toy) return;
    if (preview_ == nullptr)
        preview_ =
            std::make_unique<LivePreview>(session_, tr("Move %1").arg(copy_name(session_.toy(), dragged_)));
    preview_->show(*toy);
}

void ToyScene::drop_fabric(QPointF position) {
    drag_fabric(position);
    if (preview_ != nullptr) preview_->commit();
    give_up();
}

void ToyScene::give_up() {
    const bool was_dragging = is_dragging();
    preview_.reset();
    grip_.reset();
    pull_.reset();
    if (was_dragging) follow();
}

/// The toy with the picked piece turned or leant by its handle.
std::optional<Toy> ToyScene::turned_at(const Part& part, QPointF position) const {
    const auto& join = placed(part.drawn).join;
    Toy toy = session_.said_toy();
    if (!join || !is_as_shown(*join)) return std::nullopt;
    Join& moved = toy.joins[*join];
    if (part.kind == PartKind::knob) {
        const Lean lean = leant_to(pull_->handles, scene_.ray(position));
        moved.lean_degrees = lean.up_degrees;
        moved.lean_right_degrees = lean.right_degrees;
        return toy;
    }
    const auto turned = turned_by(pull_->handles, pull_->from, scene_.ray(position));
    if (!turned) return std::nullopt;
    moved.turn_degrees = within_a_turn(std::round(pull_->join.turn_degrees + *turned));
    return toy;
}

QString ToyScene::step_of(PartKind kind) const {
    if (kind == PartKind::face) return tr("Move on the face");
    const QString name = copy_name(session_.toy(), state_.picked());
    return kind == PartKind::hoop ? tr("Turn %1").arg(name) : tr("Lean %1").arg(name);
}

std::optional<Toy> ToyScene::feature_at(const Part& part, QPointF position) const {
    const auto found = met(position, [&](std::size_t at) { return at == part.drawn; });
    const SolvedPiece& solved = shown_->solved()[placed(part.drawn).solved];
    Toy toy = session_.said_toy();
    const auto index = toy.pieces.index_of(solved.id);
    if (!found || !index) return std::nullopt;
    auto& features = toy.pieces[*index].features;
    const auto at = static_cast<std::size_t>(part.feature);
    if (at >= features.size()) return std::nullopt;
    features[at] =
        moved_to(features[at], solved.surface.nearest(found->point), solved.surface, solved.stitches);
    return toy;
}

void ToyScene::drag_part(int index, QPointF position) {
    if (shown_ == nullptr || static_cast<std::size_t>(index) >= parts_.size()) return;
    const Part part = parts_[static_cast<std::size_t>(index)];
    if (part.kind == PartKind::overlap) return;
    if (part.kind != PartKind::face && !pull_) {
        const auto handles =
            join_handles(*shown_->toy, *shown_->whole, drawn_[part.drawn].placed, in_picture(part.drawn));
        if (handles)
            pull_ = Pull{*handles, scene_.ray(position), shown_->toy->joins[*placed(part.drawn).join]};
    }
    if (part.kind != PartKind::face && !pull_) return;
    const auto toy = part.kind == PartKind::face ? feature_at(part, position) : turned_at(part, position);
    if (!toy) return;
    if (preview_ == nullptr) {
        preview_ = std::make_unique<LivePreview>(session_, step_of(part.kind));
        pick_part(index);
    }
    preview_->show(*toy);
}

void ToyScene::drop_part(int part, QPointF position) {
    drag_part(part, position);
    if (preview_ != nullptr) preview_->commit();
    give_up();
}

}  // namespace roundwright::app
