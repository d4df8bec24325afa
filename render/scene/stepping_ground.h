#pragma once

#include <QColor>

namespace roundwright::render {

class SceneView;

/// The view's background from now on: `usual` as long as the shape's outline stands out from it at 3 to 1,
/// else the nearest grey that it stands out from (render/raster/standing_out.h). It is chosen once the
/// surface rests, and changes no more often than it must.
void set_stepping_ground(SceneView& view, const QColor& usual);

}  // namespace roundwright::render
