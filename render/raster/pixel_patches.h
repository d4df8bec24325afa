#pragma once

#include <array>
#include <cstdint>

#include "render/raster/corner_vertices.h"
#include "render/raster/depth_buffer.h"
#include "render/raster/drawing_job.h"

namespace roundwright::render {

/// The samples of a pixel that one shading stands for.
struct Patch {
    std::uint32_t id = DepthBuffer::none;
    float nearness = 0;
    float x = 0, y = 0;  ///< sums
    int samples = 0;
};

/// What is seen through one pixel, each surface once: the picture of a fabric holds no more detail than
/// pixels do, so that only outlines and colours need several points.
class PixelPatches {
  public:
    explicit PixelPatches(const DrawingJob& job) : job_(job), alike_(4 * job.pixel_angle()) {}

    void clear() { count_ = 0; }
    void add(std::uint32_t id, float nearness, float x, float y) {
        Patch& patch = patches_[find(id, nearness)];
        patch.x += x;
        patch.y += y;
        ++patch.samples;
    }
    [[nodiscard]] const Patch* begin() const { return patches_.data(); }
    [[nodiscard]] const Patch* end() const { return patches_.data() + count_; }

  private:
    std::size_t find(std::uint32_t id, float nearness) {
        for (std::size_t k = 0; k < count_; ++k)
            if (patches_[k].id == id || is_like(patches_[k], id, nearness)) return k;
        patches_[count_] = {id, nearness, 0, 0, 0};
        return count_++;
    }
    [[nodiscard]] bool is_like(const Patch& patch, std::uint32_t id, float nearness) const {
        if (patch.id == DepthBuffer::none || id == DepthBuffer::none) return false;
        if (std::abs(patch.nearness - nearness) > alike_ * nearness) return false;
        const DrawnMesh& owner = job_.owner_of(id);
        if (&owner != &job_.owner_of(patch.id)) return false;
        const auto vertex = [&](std::uint32_t of) {
            return colour_vertex(*owner.source.mesh, of - owner.first_id);
        };
        const std::uint32_t here = vertex(id), there = vertex(patch.id);
        return owner.colours[here] == owner.colours[there] &&
               (owner.source.lit == nullptr || (*owner.source.lit)[here] == (*owner.source.lit)[there]);
    }

    const DrawingJob& job_;
    float alike_;
    std::array<Patch, 16> patches_;
    std::size_t count_ = 0;
};

}  // namespace roundwright::render
