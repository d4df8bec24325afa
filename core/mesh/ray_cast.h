#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright {

/// A half line; `direction` need not be of unit length, but not zero.
struct Ray {
    Vec3 origin;
    Vec3 direction;
};

/// Where a ray meets a triangle.
struct RayHit {
    double t = 0;  ///< point = origin + t * direction
    double u = 0;  ///< share of the triangle's second corner
    double v = 0;  ///< share of its third
};

/// Meets from either side; an edge belongs to the triangles beside it, so that a ray cannot slip between
/// them. T. Moller, B. Trumbore, Fast, Minimum Storage Ray/Triangle Intersection, J. Graphics Tools 2 (1997)
/// 21-28.
[[nodiscard]] std::optional<RayHit> meet(const Ray& ray, const std::array<Vec3, 3>& triangle);

/// Where a ray first meets a mesh.
struct MeshHit {
    std::uint32_t triangle = 0;
    std::int32_t stitch = -1;  ///< index into StitchSurface::stitches; -1 for none
    Vec3 point;                ///< mm
    Vec3 normal;               ///< the mesh's smooth normal there, of unit length
    double t = 0;              ///< point = origin + t * direction
    bool from_outside = true;  ///< met on the side from which the triangle is anticlockwise
};

/// The hit of least t > 0; of several in one place, the triangle of lowest number. Tries every triangle: the
/// same answer as a tree's, and quicker than building one for a single ray (about 10 ns a triangle).
[[nodiscard]] std::optional<MeshHit> first_hit_by_trying_all(const Mesh& mesh, const Ray& ray);

/// Answers rays against one mesh, by a tree of boxes around its triangles. Building takes O(n log n); an
/// answer O(log n) on an ordinary mesh. Holds what it needs of the mesh, which may go away.
class RayCaster {
  public:
    explicit RayCaster(const Mesh& mesh);

    /// As `first_hit_by_trying_all`.
    [[nodiscard]] std::optional<MeshHit> first_hit(const Ray& ray) const;

  private:
    struct Box {
        std::array<float, 3> low;
        std::array<float, 3> high;
    };
    /// An inner node's children are `first` and `first + 1`; a leaf holds `order_[first, first + count)`.
    struct Node {
        Box box;
        std::uint32_t first = 0;
        std::uint32_t count = 0;
    };

    [[nodiscard]] Box box_of(std::uint32_t triangle) const;
    void sort_by_place();
    void build(std::uint32_t node, std::uint32_t first, std::uint32_t last);

    std::vector<float> positions_;
    std::vector<float> normals_;
    std::vector<std::uint32_t> indices_;
    std::vector<std::int32_t> stitch_of_triangle_;
    std::vector<std::uint32_t> order_;
    std::vector<Node> nodes_;
};

}  // namespace roundwright
