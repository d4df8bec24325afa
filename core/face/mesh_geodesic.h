#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// Shortest ways over any mesh, its relief left out. Vertices at one place are one.
///
/// A way starts as the chain of faces that a shortest path over a few points of every edge takes (Dijkstra).
/// The chain is unfolded into the plane, where the funnel algorithm (Lee and Preparata, Networks 14 (1984)
/// 393-410) finds its shortest way; where that bends around a vertex with less than a straight angle on its
/// other side, the chain is led around there, until none is left (Xin and Wang, Efficiently determining a
/// locally exact shortest path on polyhedral surfaces, Computer-Aided Design 39 (2007) 1081-1090). So the
/// length is exact on the mesh for the way that is found, and off by the mesh's own coarseness on a smooth
/// surface.
class MeshGeodesics {
  public:
    explicit MeshGeodesics(const Mesh& mesh);

    [[nodiscard]] bool empty() const { return faces_.empty(); }
    /// Length of the way between the points of the mesh nearest to two points, mm; 0 on an empty mesh, and
    /// the straight distance where no way leads over the mesh.
    [[nodiscard]] double distance_mm(const Vec3& from, const Vec3& to) const;

  private:
    friend class GeodesicStrip;
    class Search;
    /// Half-edge 3 f + k runs from corner k of face f to the next.
    using HalfEdge = std::uint32_t;
    static constexpr HalfEdge none = 0xFFFFFFFFU;

    struct OnMesh {
        std::uint32_t face = 0;
        Vec3 point = Vec3::Zero();
    };

    [[nodiscard]] const Vec3& corner(HalfEdge h) const { return points_[faces_[h / 3][h % 3]]; }
    [[nodiscard]] std::uint32_t vertex(HalfEdge h) const { return faces_[h / 3][h % 3]; }
    [[nodiscard]] static HalfEdge next(HalfEdge h) { return h % 3 == 2 ? h - 2 : h + 1; }

    void weld(const Mesh& mesh);
    void join_edges();
    void measure_angles();
    [[nodiscard]] OnMesh nearest(const Vec3& point) const;
    std::vector<Vec3> points_;
    std::vector<std::array<std::uint32_t, 3>> faces_;
    std::vector<HalfEdge> twins_;
    std::vector<double> angles_;  ///< of a vertex, all around; infinite at the mesh's edge
};

}  // namespace roundwright
