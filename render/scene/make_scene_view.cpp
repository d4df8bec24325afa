#include "render/scene/gl_probe.h"
#include "render/scene/painter_scene_view.h"
#include "render/scene/qt3d_scene_view.h"
#include "render/scene/scene_view.h"

namespace roundwright::render {

SceneView* make_scene_view(QWidget* parent) {
    const bool by_processor = qgetenv("ROUNDWRIGHT_VIEW") == "painter" || !opengl_found().has_3_2;
    if (by_processor) return new PainterSceneView(parent);
    return new Qt3dSceneView(parent);
}

}  // namespace roundwright::render
