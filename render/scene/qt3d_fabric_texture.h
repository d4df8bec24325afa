#pragma once

namespace Qt3DCore {
class QNode;
}
namespace Qt3DRender {
class QAbstractTexture;
}

namespace roundwright::render {

/// The pictures of all stitches' faces for the graphics card, to be fetched texel by texel.
[[nodiscard]] Qt3DRender::QAbstractTexture* make_fabric_texture(Qt3DCore::QNode* parent);

}  // namespace roundwright::render
