#include "core/assembly/one_surface.h"

#include <Eigen/Core>
#include <algorithm>
#include <utility>

#include "core/mesh/build_mesh.h"

namespace roundwright {
namespace {

class Gatherer {
  public:
    void add(const ShiftedSurface& part) {
        add_mesh(part.surface->mesh, part.shift.cast<float>());
        add_stitches(*part.surface, part.shift);
        whole_.first_round.push_back(rounds_);
    }

    OneSurface take() { return std::move(whole_); }

    Gatherer() {
        whole_.first_round.push_back(0);
        whole_.surface.first_stitch_of_round.push_back(0);
    }

  private:
    void add_mesh(const Mesh& from, const Eigen::Vector3f& shift) {
        Mesh& to = whole_.surface.mesh;
        const std::size_t first_place = to.positions.size();
        append(to, from, static_cast<std::int32_t>(whole_.surface.stitches.size()));
        for (std::size_t at = first_place; at + 2 < to.positions.size(); at += 3)
            Eigen::Map<Eigen::Vector3f>(to.positions.data() + at) += shift;
        // A part without the places of its stitches' faces shows none.
        to.places.resize(6 * to.triangle_count(), 0);
        to.faces.resize(to.triangle_count(), 0);
        to.stitch_of_triangle.resize(to.triangle_count(), -1);
    }

    void add_stitches(const StitchSurface& from, const Vec3& shift) {
        StitchSurface& to = whole_.surface;
        const auto first = static_cast<std::uint32_t>(to.stitches.size());
        for (StitchPatch patch : from.stitches) {
            patch.round += rounds_;
            for (Vec3& corner : patch.corners) corner += shift;
            to.stitches.push_back(patch);
        }
        for (std::size_t round = 1; round < from.first_stitch_of_round.size(); ++round)
            to.first_stitch_of_round.push_back(first + from.first_stitch_of_round[round]);
        rounds_ = static_cast<int>(to.first_stitch_of_round.size()) - 1;
    }

    OneSurface whole_;
    int rounds_ = 0;
};

void move_each(std::vector<float>& vectors, const Eigen::Matrix3f& turn, const Eigen::Vector3f& shift) {
    for (std::size_t at = 0; at + 2 < vectors.size(); at += 3) {
        Eigen::Map<Eigen::Vector3f> vector(vectors.data() + at);
        vector = turn * Eigen::Vector3f(vector) + shift;
    }
}

void move(StitchSurface& surface, const Eigen::Isometry3d& pose) {
    const Eigen::Matrix3f turn = pose.linear().cast<float>();
    move_each(surface.mesh.positions, turn, pose.translation().cast<float>());
    move_each(surface.mesh.normals, turn, Eigen::Vector3f::Zero());
    for (StitchPatch& patch : surface.stitches) {
        for (Vec3& corner : patch.corners) corner = pose * corner;
        patch.normal = pose.linear() * patch.normal;
    }
}

}  // namespace

int OneSurface::part_of(int round) const {
    const auto after = std::upper_bound(first_round.begin(), first_round.end(), round);
    return static_cast<int>(after - first_round.begin()) - 1;
}

OneSurface one_surface(std::span<const ShiftedSurface> parts, const Eigen::Isometry3d& pose) {
    Gatherer gatherer;
    for (const ShiftedSurface& part : parts) gatherer.add(part);
    OneSurface whole = gatherer.take();
    if (pose.matrix() != Eigen::Matrix4d::Identity()) move(whole.surface, pose);
    return whole;
}

}  // namespace roundwright
