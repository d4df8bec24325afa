#include "render/scene/gl_probe.h"

#include <utility>

#include <QGuiApplication>
#include <QOffscreenSurface>
#include <QOpenGLContext>
#include <QOpenGLFunctions>
#include <QSurfaceFormat>

namespace roundwright::render {

namespace {

bool is_by_processor(QOpenGLContext& context) {
    const auto* text = reinterpret_cast<const char*>(context.functions()->glGetString(GL_RENDERER));
    const QByteArray renderer = QByteArray(text).toLower();
    for (const char* name : {"llvmpipe", "softpipe", "swrast", "swiftshader", "software"}) {
        if (renderer.contains(name)) return true;
    }
    return false;
}

OpenGlFound probe() {
    // These platforms show no windows, so there is none to draw into.
    const QString platform = QGuiApplication::platformName();
    if (platform == QLatin1String("offscreen") || platform == QLatin1String("minimal")) return {};
    QSurfaceFormat format;
    format.setVersion(3, 2);
    format.setProfile(QSurfaceFormat::CoreProfile);
    QOffscreenSurface surface;
    surface.setFormat(format);
    surface.create();
    QOpenGLContext context;
    context.setFormat(format);
    if (!surface.isValid() || !context.create() || !context.makeCurrent(&surface)) return {};
    const bool usable = !context.isOpenGLES() && context.format().version() >= std::pair(3, 2);
    const OpenGlFound found{usable, is_by_processor(context)};
    context.doneCurrent();
    return found;
}

}  // namespace

const OpenGlFound& opengl_found() {
    static const OpenGlFound found = probe();
    return found;
}

}  // namespace roundwright::render
