#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// A surface on its way from another of the same stitches, one of revolution. Triangles of the two may
/// differ: what is moved is the later surface, each vertex by as much as its place on its stitch is higher,
/// and farther from the axis, than on the earlier one, bilinear between the four corners. About the axis
/// nothing moves.
class SurfaceBlend {
  public:
    /// None where they are not of the same stitches.
    [[nodiscard]] static std::optional<SurfaceBlend> between(const StitchSurface& from,
                                                             std::shared_ptr<const StitchSurface> to);

    /// So far on the way, 0 to 1; at 1 it is the later surface itself.
    [[nodiscard]] std::shared_ptr<const StitchSurface> at(double share) const;
    /// The farthest that a vertex has to go, mm.
    [[nodiscard]] double farthest_mm() const;

  private:
    using Corners = std::array<Vec3, 4>;

    void move_vertices();

    std::shared_ptr<const StitchSurface> to_;
    std::vector<Corners> back_;       ///< from the corners of each stitch to where they were
    std::vector<float> vertex_back_;  ///< 3 a vertex, likewise
};

}  // namespace roundwright
