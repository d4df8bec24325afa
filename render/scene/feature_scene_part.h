#pragma once

#include "core/face/feature_mesh.h"
#include "render/scene/scene_view.h"

namespace roundwright::render {

/// A fitted feature's part as the scene shows it; washers, on the inside, are not for moving.
[[nodiscard]] ScenePart scene_part(FeaturePart part);

}  // namespace roundwright::render
