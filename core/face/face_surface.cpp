#include "core/face/face_surface.h"

#include "core/face/fabric_face.h"
#include "core/face/revolved_face.h"

namespace roundwright {

FaceSurface::FaceSurface(const Piece& piece, const Shape& shape) {
    if (!shape.usable() || shape.radius_mm.size() < 2) return;
    auto face = std::make_shared<const RevolvedFace>(piece, shape);
    if (!face->empty()) geometry_ = std::move(face);
}

FaceSurface::FaceSurface(const Piece& piece, std::shared_ptr<const FabricGeometry> fabric) {
    if (fabric && fabric->rounds() > 0)
        geometry_ = std::make_shared<const FabricFace>(piece, std::move(fabric));
}

}  // namespace roundwright
