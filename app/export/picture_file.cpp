#include "app/export/picture_file.h"

#include <array>

#include <QBuffer>

#include "render/illustration/image_export.h"
#include "render/raster/software_picture.h"
#include "render/scene/feature_scene_part.h"

namespace roundwright::app {
namespace {

constexpr std::array<PictureView, 6> views{{
    {"front", render::ViewDirection::front, {0, 0}},
    {"side", render::ViewDirection::side, {90, 0}},
    {"back", render::ViewDirection::back, {180, 0}},
    {"top", render::ViewDirection::top, {0, 90}},
    {"bottom", render::ViewDirection::bottom, {0, -90}},
    {"three-quarter", render::ViewDirection::three_quarter, {30, 18}},
}};

/// Qt makes level 2 of zlib's of it: of a fabric's picture the slower ones save few bytes and take longer
/// than drawing it.
constexpr int png_quality = 75;

}  // namespace

std::span<const PictureView> picture_views() { return views; }

QImage picture_of(const ShownPiece& shown, const PictureWanted& wanted) {
    std::vector<render::ScenePart> parts;
    for (const FeaturePart& part : shown.parts) parts.push_back(render::scene_part(part));
    return render::picture_of(shown.surface, parts, wanted.view.direction, wanted.pixels, wanted.background,
                              wanted.ground);
}

QByteArray png_bytes(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG", png_quality);
    return bytes;
}

QByteArray picture_svg(const ShownPiece& shown, const PictureWanted& wanted, const QString& title) {
    render::DrawOptions drawing;
    drawing.view = wanted.view.drawing;
    for (const FeaturePart& part : shown.parts) {
        if (!part.inside) drawing.parts.push_back({part.mesh, part.finish == Finish::glossy});
    }
    render::ImageOptions options;
    if (wanted.background.alpha() > 0) options.background = wanted.background;
    options.title = title;
    return render::piece_svg(shown.surface, drawing, options);
}

}  // namespace roundwright::app
