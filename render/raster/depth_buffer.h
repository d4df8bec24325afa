#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

namespace roundwright::render {

/// A vertex on the screen, in samples from the upper left; one over the depth, 1/mm, is affine there.
struct ScreenPoint {
    float x, y, nearness;
};

/// The nearest triangle at each sample of a part of a picture.
class DepthBuffer {
  public:
    static constexpr std::uint32_t none = 0xffffffffU;

    /// Of samples `left`, `top` and on.
    void begin(int left, int top, int width, int height);
    void fill(const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t id);

    [[nodiscard]] std::uint32_t id(int x, int y) const { return ids_[index(x, y)]; }
    /// Whether one triangle, or none, is the nearest at all of a square of samples.
    [[nodiscard]] bool is_one(int x, int y, int side) const {
        const std::uint32_t first = id(x, y);
        for (int row = y; row < y + side; ++row) {
            const std::uint32_t* at = &ids_[index(x, row)];
            if (std::any_of(at, at + side, [first](std::uint32_t other) { return other != first; }))
                return false;
        }
        return true;
    }
    /// 0 where nothing was drawn.
    [[nodiscard]] float nearness(int x, int y) const { return nearness_[index(x, y)]; }

  private:
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y - top_) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(x - left_);
    }

    int left_ = 0, top_ = 0, width_ = 0, height_ = 0;
    std::vector<float> nearness_;
    std::vector<std::uint32_t> ids_;
};

}  // namespace roundwright::render
