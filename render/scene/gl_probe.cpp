#include "render/scene/gl_probe.h"

#include <utility>

#include <QGuiApplication>
#include <QOffscreenSurface>
#include <QOpenGLContext>
#include <QSurfaceFormat>

namespace roundwright::render {

bool has_opengl_3_2() {
    // These platforms show no windows, so there is none to draw into.
    const QString platform = QGuiApplication::platformName();
    if (platform == QLatin1String("offscreen") || platform == QLatin1String("minimal")) return false;
    QSurfaceFormat format;
    format.setVersion(3, 2);
    format.setProfile(QSurfaceFormat::CoreProfile);
    QOffscreenSurface surface;
    surface.setFormat(format);
    surface.create();
    QOpenGLContext context;
    context.setFormat(format);
    if (!surface.isValid() || !context.create() || !context.makeCurrent(&surface)) return false;
    const auto version = context.format().version();
    const bool desktop = !context.isOpenGLES();
    context.doneCurrent();
    return desktop && version >= std::pair(3, 2);
}

}  // namespace roundwright::render
