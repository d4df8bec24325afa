#include "render/raster/depth_buffer.h"

#include <algorithm>
#include <cmath>

namespace roundwright::render {

namespace {

/// Samples of a row, counted from its first, on the inner side of a triangle's edges.
struct Run {
    float first, last;

    /// Of those where a value that grows evenly is not below 0, or by less than what rounding does to it.
    void keep(float at_first, float step) {
        constexpr float slack = 1e-5F;
        const float value = at_first + slack;
        if (step > 0)
            first = std::max(first, -value / step);
        else if (step < 0)
            last = std::min(last, value / -step);
        else if (value < 0)
            last = -1;
    }
};

}  // namespace

void DepthBuffer::begin(int left, int top, int width, int height) {
    left_ = left;
    top_ = top;
    width_ = width;
    height_ = height;
    const auto samples = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    nearness_.assign(samples, 0);
    ids_.assign(samples, none);
}

// Edge functions after Pineda, "A parallel algorithm for polygon rasterization", SIGGRAPH 1988.
void DepthBuffer::fill(const ScreenPoint& a, const ScreenPoint& b, const ScreenPoint& c, std::uint32_t id) {
    const float area = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
    if (!(std::abs(area) > 1e-12F)) return;
    const auto sample = [](float v, int least, int most) {
        return static_cast<int>(std::clamp(v, static_cast<float>(least), static_cast<float>(most)));
    };
    const int left = sample(std::ceil(std::min({a.x, b.x, c.x}) - 0.5F), left_, left_ + width_);
    const int right = sample(std::floor(std::max({a.x, b.x, c.x}) - 0.5F) + 1, left_, left_ + width_);
    const int first = sample(std::ceil(std::min({a.y, b.y, c.y}) - 0.5F), top_, top_ + height_);
    const int last = sample(std::floor(std::max({a.y, b.y, c.y}) - 0.5F) + 1, top_, top_ + height_);
    const float inverse = 1 / area;
    const float wb_x = (c.y - a.y) * inverse, wb_y = -(c.x - a.x) * inverse;
    const float wc_x = -(b.y - a.y) * inverse, wc_y = (b.x - a.x) * inverse;
    const float near_b = b.nearness - a.nearness, near_c = c.nearness - a.nearness;
    const float near_x = wb_x * near_b + wc_x * near_c;
    for (int y = first; y < last; ++y) {
        const float px = static_cast<float>(left) + 0.5F - a.x, py = static_cast<float>(y) + 0.5F - a.y;
        const float wb = px * wb_x + py * wb_y, wc = px * wc_x + py * wc_y;
        Run run{0, static_cast<float>(right - left - 1)};
        run.keep(wb, wb_x);
        run.keep(wc, wc_x);
        run.keep(1 - wb - wc, -wb_x - wc_x);
        if (!(run.first <= run.last)) continue;
        const int from = static_cast<int>(std::ceil(run.first)), to = static_cast<int>(std::floor(run.last));
        const float near = a.nearness + wb * near_b + wc * near_c;
        const std::size_t at = index(left, y);
        for (int k = from; k <= to; ++k) {
            const float here = near + static_cast<float>(k) * near_x;
            float& nearest = nearness_[at + static_cast<std::size_t>(k)];
            if (here <= nearest) continue;
            nearest = here;
            ids_[at + static_cast<std::size_t>(k)] = id;
        }
    }
}

}  // namespace roundwright::render
