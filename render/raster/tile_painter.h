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
    void paint_pixels(const QRect& part, bool veiled);
    void paint_every_other_pixel(const QRect& part);
    QRgb solid_pixel(int x, int y);
    [[nodiscard]] bool are_of_one_yarn(std::uint32_t id, std::uint32_t other) const;
    [[nodiscard]] bool is_on_a_lit_seam(std::uint32_t id) const;
    QRgb between(int x, int y, const QRect& part);
    [[nodiscard]] QRgb veiled_pixel(int x, int y) const;

    [[nodiscard]] QRgb* line(int y) const { return reinterpret_cast<QRgb*>(bytes_ + y * stride_); }

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
