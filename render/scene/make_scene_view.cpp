#include "render/scene/gl_probe.h"
#include "render/scene/painter_scene_view.h"
#include "render/scene/qt3d_scene_view.h"
#include "render/scene/scene_view.h"

namespace roundwright::render {

SceneView* make_scene_view(QWidget* parent) {
    const QByteArray wanted = qgetenv("ROUNDWRIGHT_VIEW");
    if (wanted == "painter") return new PainterSceneView(parent);
    const OpenGlFound& found = opengl_found();
    const bool by_card = found.has_3_2 && (!found.by_processor || wanted == "qt3d");
    if (by_card) return new Qt3dSceneView(parent);
    return new PainterSceneView(parent);
}

}  // namespace roundwright::render
