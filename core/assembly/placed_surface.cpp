#include "core/assembly/placed_surface.h"

#include <algorithm>
#include <utility>

namespace roundwright {
namespace {

Vec3 vertex(const std::vector<float>& values, std::size_t i) {
    return {values[i], values[i + 1], values[i + 2]};
}

void set_vertex(std::vector<float>& values, std::size_t i, const Vec3& to) {
    for (int axis = 0; axis < 3; ++axis)
        values[i + static_cast<std::size_t>(axis)] = static_cast<float>(to[axis]);
}

void place_mesh(Mesh& mesh, const PlacedForm& form) {
    const bool normals = mesh.normals.size() == mesh.positions.size();
    for (std::size_t i = 0; i + 2 < mesh.positions.size(); i += 3) {
        const Vec3 at = vertex(mesh.positions, i);
        if (!normals) {
            set_vertex(mesh.positions, i, form.place(at));
            continue;
        }
        const SurfaceSpot spot = form.place(SurfaceSpot{at, vertex(mesh.normals, i)});
        set_vertex(mesh.positions, i, spot.place);
        set_vertex(mesh.normals, i, spot.normal);
    }
}

Vec3 middle_of(const Mesh& mesh) {
    Vec3 sum = Vec3::Zero();
    for (std::size_t i = 0; i + 2 < mesh.positions.size(); i += 3) sum += vertex(mesh.positions, i);
    return mesh.vertex_count() > 0 ? Vec3(sum / static_cast<double>(mesh.vertex_count())) : sum;
}

}  // namespace

StitchSurface placed_surface(const StitchSurface& own, const PlacedForm& form) {
    StitchSurface placed = own;
    place_mesh(placed.mesh, form);
    for (StitchPatch& patch : placed.stitches) {
        Vec3 middle = Vec3::Zero();
        for (const Vec3& corner : patch.corners) middle += corner / 4;
        patch.normal = form.place(SurfaceSpot{middle, patch.normal}).normal;
        for (Vec3& corner : patch.corners) corner = form.place(corner);
    }
    for (auto* pole : {&placed.first_pole, &placed.last_pole})
        if (*pole) *pole = form.place(**pole);
    return placed;
}

Mesh placed_mesh(const Mesh& own, const PlacedForm& form) {
    const Vec3 middle = middle_of(own);
    Pose pose = form.pose();
    pose.translation() += form.place(middle) - pose * middle;
    Mesh placed = own;
    place_mesh(placed, PlacedForm(pose));
    return placed;
}

Solid placed_solid(const Solid& own, const PlacedForm& form) {
    Solid placed = own;
    for (Vec3& point : placed.points) point = form.place(point);
    return placed;
}

namespace {

/// Copies of another assembled toy that may be shared.
class Shareable {
  public:
    Shareable(const AssembledToy* before, const AssembledToy& now) : before_(before), now_(now) {}

    /// Its index there, if copy `i` lies there as it does now.
    [[nodiscard]] std::optional<std::size_t> find(std::size_t i) const {
        if (!before_) return std::nullopt;
        const PlacedPiece& piece = now_.placed.pieces[i];
        const auto& old = before_->placed.pieces;
        const auto found = std::ranges::find(old, piece.copy, &PlacedPiece::copy);
        if (found == old.end()) return std::nullopt;
        const auto k = static_cast<std::size_t>(found - old.begin());
        const bool same = lies_alike(before_->solved[found->solved], now_.solved[piece.solved]) &&
                          before_->forms[k] == now_.forms[i];
        return same ? std::optional(k) : std::nullopt;
    }
    [[nodiscard]] bool has_own_of(std::size_t i, std::size_t k) const {
        return before_->own[before_->placed.pieces[k].solved] == now_.own[now_.placed.pieces[i].solved];
    }

  private:
    const AssembledToy* before_;
    const AssembledToy& now_;
};

void place_copy(AssembledToy& made, std::size_t i, const AssembledToy* before, const Shareable& shareable) {
    const std::size_t piece = made.placed.pieces[i].solved;
    const auto old = shareable.find(i);
    const auto& own = made.own[piece];
    if (old && shareable.has_own_of(i, *old)) {
        made.surfaces[i] = before->surfaces[*old];
    } else if (own) {
        made.surfaces[i] = std::make_shared<const StitchSurface>(placed_surface(*own, made.forms[i]));
        ++made.placed_again;
    }
    const auto& solid = made.solved[piece].solid;
    if (old)
        made.solids[i] = before->solids[*old];
    else if (solid)
        made.solids[i] = std::make_shared<const Solid>(placed_solid(*solid, made.forms[i]));
}

}  // namespace

AssembledToy assemble(const Toy& toy, std::vector<SolvedPiece> solved,
                      std::vector<std::shared_ptr<const StitchSurface>> own, const AssembledToy* before) {
    AssembledToy made;
    made.toy = toy;
    made.solved = std::move(solved);
    made.own = std::move(own);
    made.own.resize(made.solved.size());
    std::optional<PlacedBefore> then;
    if (before) then.emplace(PlacedBefore{before->toy, before->solved, before->placed});
    made.placed = place_toy(toy, made.solved, then ? &*then : nullptr);
    made.forms = placed_forms(toy, made.placed, made.solved);
    made.surfaces.resize(made.placed.pieces.size());
    made.solids.resize(made.placed.pieces.size());
    const Shareable shareable(before, made);
    for (std::size_t i = 0; i < made.placed.pieces.size(); ++i) place_copy(made, i, before, shareable);
    return made;
}

std::vector<std::shared_ptr<const StitchSurface>> placed_surfaces(
    const Toy& toy, std::vector<SolvedPiece> solved, std::vector<std::shared_ptr<const StitchSurface>> own) {
    return std::move(assemble(toy, std::move(solved), std::move(own)).surfaces);
}

}  // namespace roundwright
