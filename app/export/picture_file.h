#pragma once

#include <span>

#include <QByteArray>
#include <QColor>
#include <QImage>
#include <QSize>
#include <QString>

#include "app/export/shown_piece.h"
#include "render/drawing/drawing_view.h"
#include "render/raster/camera.h"
#include "render/raster/software_picture.h"

namespace roundwright::app {

inline constexpr int most_picture_pixels = 8'000;  ///< a side

/// From where a piece can be seen in a picture.
struct PictureView {
    const char* name;  ///< for the command line
    render::ViewDirection direction;
    render::DrawingView drawing;
};
/// All of them, the front first.
[[nodiscard]] std::span<const PictureView> picture_views();

struct PictureWanted {
    PictureView view = picture_views().front();
    QSize pixels{1200, 1200};
    QColor background = Qt::transparent;
    render::Ground ground = render::Ground::none;
};

/// A side of the square picture that a listing in a shop shows.
inline constexpr int listing_pixels = 2'000;

/// The piece as the window shows it.
[[nodiscard]] QImage picture_of(const ShownPiece& shown, const PictureWanted& wanted);
[[nodiscard]] QByteArray png_bytes(const QImage& image);

/// The piece as a vector drawing, full size: one millimetre is one millimetre.
[[nodiscard]] QByteArray picture_svg(const ShownPiece& shown, const PictureWanted& wanted,
                                     const QString& title);

}  // namespace roundwright::app
