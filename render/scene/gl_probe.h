#pragma once

namespace roundwright::render {

/// Whether OpenGL 3.2 can be had from this platform, found out by making a context.
[[nodiscard]] bool has_opengl_3_2();

}  // namespace roundwright::render
