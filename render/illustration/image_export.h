#pragma once

#include <QByteArray>
#include <QColor>
#include <QImage>
#include <QSize>
#include <QString>

#include "render/illustration/piece_drawing.h"

namespace roundwright::render {

/// A picture by itself.
struct ImageOptions {
    QSize pixels{1200, 1200};    ///< of a raster picture; a vector picture is as large as the piece
    QColor background;           ///< invalid: transparent
    double margin_share = 0.04;  ///< of the smaller side, left free all around
    QString title;               ///< kept in the file
};

/// The piece drawn as by `draw_piece`; the options' target and scale are set here.
[[nodiscard]] QImage piece_image(const StitchSurface& surface, DrawOptions drawing,
                                 const ImageOptions& options = {});

/// The bytes of a PNG file.
[[nodiscard]] QByteArray piece_png(const StitchSurface& surface, const DrawOptions& drawing,
                                   const ImageOptions& options = {});

/// The bytes of an SVG file, full size: one millimetre of the piece is one millimetre of the picture.
[[nodiscard]] QByteArray piece_svg(const StitchSurface& surface, DrawOptions drawing,
                                   const ImageOptions& options = {});

}  // namespace roundwright::render
