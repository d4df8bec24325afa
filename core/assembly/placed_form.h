#pragma once

#include <memory>
#include <span>
#include <vector>

#include "core/assembly/edge_bend.h"
#include "core/assembly/seam_line.h"

namespace roundwright {

/// How a copy of a piece lies in the toy: where each of its points comes to.
class PlacedForm {
  public:
    PlacedForm() = default;
    /// Rigid.
    explicit PlacedForm(const Pose& pose) : pose_(pose) {}

    [[nodiscard]] const Pose& pose() const { return pose_; }
    [[nodiscard]] bool rigid() const { return bends_.empty() && !patch_; }

    /// Bent by these, each seen in the mirror of the piece's own frame where that is given.
    void bend(std::shared_ptr<const EdgeBend> bend, const Eigen::Matrix3d& own = Eigen::Matrix3d::Identity());
    /// Laid on a surface as a whole: `circles` are the points of its circles from the middle outwards, in the
    /// toy's frame (`SeamLine::within`).
    void lay(const SolvedPiece& piece, std::vector<SurfaceSpot> circles,
             const Eigen::Matrix3d& own = Eigen::Matrix3d::Identity());

    /// A point of the piece, in the toy.
    [[nodiscard]] Vec3 place(const Vec3& point) const;
    /// A point and a unit normal of the fabric there.
    [[nodiscard]] SurfaceSpot place(const SurfaceSpot& spot) const;

    /// The same to the last bit.
    friend bool operator==(const PlacedForm& a, const PlacedForm& b);

  private:
    [[nodiscard]] SurfaceSpot place_by_differences(const SurfaceSpot& spot) const;

    struct OwnBend {
        std::shared_ptr<const EdgeBend> bend;
        Eigen::Matrix3d own;
    };
    struct Patch;

    Pose pose_ = Pose::Identity();
    std::vector<OwnBend> bends_;
    std::shared_ptr<const Patch> patch_;
};

/// How every piece of a placed toy lies, one a copy: with open edges on the lines that they are sewn to, flat
/// pieces on what they are laid on, and what is worked on meeting edge to edge.
///
/// What is approximate: the rounds near an edge are moved along with it without a balance of forces, and the
/// body that begins on several legs has its first loop laid around their edges.
[[nodiscard]] std::vector<PlacedForm> placed_forms(const Toy& toy, const PlacedToy& placed,
                                                   std::span<const SolvedPiece> solved);

}  // namespace roundwright
