#pragma once

#include <Eigen/Core>
#include <cstdint>

#include "render/raster/drawing_job.h"

namespace roundwright::render {

/// Light (linear) from a triangle where the ray through a point of the picture, in pixels, meets it.
[[nodiscard]] Eigen::Vector3f colour_at(const DrawingJob& job, std::uint32_t id, float x, float y);

/// How much the comparison surface's triangle hides there of what is behind it or, with `behind`, before it.
[[nodiscard]] float veil_opacity(const DrawingJob& job, std::uint32_t triangle, float x, float y,
                                 bool behind);

}  // namespace roundwright::render
