#include "app/shape/picture_keyboard.h"

#include <QWidget>

#include "app/kit/first_stop.h"
#include "render/scene/scene_view.h"

namespace roundwright::app {

bool give_keyboard_to_picture(render::SceneView* shown, QWidget* panel) {
    QWidget* picture = shown != nullptr ? shown->widget() : nullptr;
    if (picture != nullptr && (picture->focusPolicy() & Qt::TabFocus) == 0) picture = first_stop(picture);
    QWidget* stop = picture != nullptr ? picture : first_stop(panel);
    if (stop != nullptr) stop->setFocus(Qt::ShortcutFocusReason);
    return stop != nullptr;
}

}  // namespace roundwright::app
