#pragma once

#include <Eigen/Core>

#include <QImage>

#include "render/raster/depth_buffer.h"
#include "render/raster/drawing_job.h"
#include "render/raster/pixel_patches.h"

namespace roundwright::render {

/// Draws one tile of a picture after the other, with buffers of its own: one for each thread.
class TilePainter {
  public:
    TilePainter(const DrawingJob& job, QImage& image);

    void paint(int tile);

  private:
    void fill_buffers(int tile, const QRect& part, bool veiled);
    [[nodiscard]] float middle(int sample) const;
    QRgb solid_pixel(int x, int y);
    [[nodiscard]] QRgb veiled_pixel(int x, int y) const;

    const DrawingJob& job_;
    uchar* bytes_;
    qsizetype stride_;
    float behind_alpha_;
    Eigen::Vector3f behind_, behind_levels_, veil_levels_;
    QRgb plain_;
    DepthBuffer solid_, veil_;
    PixelPatches patches_;
};

}  // namespace roundwright::render
