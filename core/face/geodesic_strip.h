#pragma once

#include <cstddef>
#include <vector>

#include "core/face/mesh_geodesic.h"

namespace roundwright {

/// A chain of faces from one point of a mesh to another, unfolded into the plane.
class GeodesicStrip {
  public:
    using HalfEdge = MeshGeodesics::HalfEdge;
    GeodesicStrip(const MeshGeodesics& mesh, const Vec3& from, const Vec3& to, std::vector<HalfEdge> crossed)
        : mesh_(mesh), from_(from), to_(to), crossed_(std::move(crossed)) {}

    /// Length of the shortest way in the strip, led around vertices until it is straight everywhere.
    [[nodiscard]] double straightened();

  private:
    /// The edge crossed on the way, as it lies in the plane.
    struct Portal {
        Vec2 left, right;
    };
    enum class Side { left, right };
    /// A vertex that the way bends around: on which side it stands, and the portals that meet there.
    struct Bend {
        Side side;
        std::size_t first, last;
        Vec2 at, before, after;
    };

    void unfold();
    void find_way();
    [[nodiscard]] Bend bend_at(std::size_t portal, Side side) const;
    [[nodiscard]] std::uint32_t vertex(std::size_t portal, Side side) const;
    [[nodiscard]] double angle_in_strip(const Bend& bend) const;
    /// False where nothing is gained.
    bool lead_around(const Bend& bend);

    const MeshGeodesics& mesh_;
    Vec3 from_, to_;
    std::vector<HalfEdge> crossed_;
    std::vector<Portal> portals_;
    Vec2 start_, end_;
    std::vector<Bend> bends_;
    double length_ = 0;
};

}  // namespace roundwright
