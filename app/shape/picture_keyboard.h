#pragma once

class QWidget;

namespace roundwright::render {
class SceneView;
}

namespace roundwright::app {

/// Gives the keyboard to a panel's picture, or, where none is shown (null) or it takes no keys, to the first
/// control that does. False: there is none.
bool give_keyboard_to_picture(render::SceneView* shown, QWidget* panel);

}  // namespace roundwright::app
