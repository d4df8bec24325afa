#pragma once

#include "core/mesh/stitch_surface.h"

namespace roundwright::render {

/// How a surface meets the light.
enum class Finish {
    yarn,   ///< matte and fuzzy; a fabric's triangles show the cords of their stitches
    pile,   ///< fibres brushed up from yarn
    felt,   ///< matte and smooth
    glossy  ///< hard plastic, with a bright spot
};

/// A thing on or beside the piece: an eye, a felt patch, another piece. Same axes and unit as the surface.
struct ScenePart {
    Mesh mesh;
    Finish finish = Finish::glossy;
    bool movable = false;  ///< a drag that starts on it moves it instead of turning the view
};

/// A place on the surface under a point of the window.
struct SceneHit {
    int round = 0;   ///< from 0; -1 where the fabric belongs to no stitch
    int stitch = 0;  ///< from 0; -1 likewise
    Vec3 point;      ///< mm
    Vec3 normal;
};

}  // namespace roundwright::render
