#pragma once

namespace roundwright::render {

struct OpenGlFound {
    bool has_3_2 = false;
    bool by_processor = false;  ///< drawn without a graphics card
};

/// What OpenGL this platform has, found out by making a context; once.
[[nodiscard]] const OpenGlFound& opengl_found();

}  // namespace roundwright::render
