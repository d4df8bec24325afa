#pragma once

#include <cstdint>
#include <vector>

#include <Qt3DCore/QEntity>

#include "core/mesh/stitch_surface.h"
#include "render/raster/shading.h"

namespace Qt3DCore {
class QAttribute;
class QBuffer;
}  // namespace Qt3DCore
namespace Qt3DRender {
class QGeometryRenderer;
class QMaterial;
}  // namespace Qt3DRender

namespace roundwright::render {

/// A mesh in buffers that stay: position, normal, colour, lit, place on the stitch, index.
class Qt3dMesh : public Qt3DCore::QEntity {
    Q_OBJECT
  public:
    Qt3dMesh(Qt3DRender::QMaterial* material, Qt3DCore::QNode* parent);

    /// Fills all buffers in this turn of the event loop, so that one frame shows all of it. `lit` has one
    /// value a vertex of the mesh, or none.
    void set_mesh(const Mesh& mesh, const std::vector<float>& lit);
    void set_lit(const std::vector<float>& lit);
    /// Draws the same mesh once more, as often as `directions`, with this material.
    void add_rim(Qt3DRender::QMaterial* material, int directions);
    void show_rim(bool shown);

  private:
    struct Column {
        Qt3DCore::QBuffer* buffer;
        Qt3DCore::QAttribute* attribute;
    };
    Column add_column(const QString& name, uint components);

    Column position_, normal_, colour_, lit_, place_, index_;
    std::vector<std::uint32_t> source_;  ///< the mesh's vertex of each
    void fit_rim();

    Qt3DRender::QGeometryRenderer* renderer_;
    Qt3DCore::QEntity* rim_ = nullptr;
    Qt3DRender::QGeometryRenderer* rim_renderer_ = nullptr;
    bool rim_shown_ = false;
};

}  // namespace roundwright::render
