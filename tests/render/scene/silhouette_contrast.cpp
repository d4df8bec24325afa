#include "tests/render/scene/silhouette_contrast.h"

#include <algorithm>

#include <QColor>

#include "render/drawing/contrast.h"

namespace roundwright::test {

namespace {

constexpr int reach = 3;
constexpr int clear = 5;  ///< of 255

/// Solid, and the ground begins two pixels further on at most: not in a notch that is narrower than a pixel.
bool is_on_outline(const QImage& image, int x, int y) {
    if (qAlpha(image.pixel(x, y)) < 255) return false;
    const auto is_ground = [&](int right, int down) {
        return qAlpha(image.pixel(x + right, y + down)) <= clear;
    };
    return is_ground(-2, 0) || is_ground(2, 0) || is_ground(0, -2) || is_ground(0, 2);
}

double most_around(const QImage& seen, int x, int y, const QColor& ground) {
    double most = 0;
    for (int at_y = y - reach; at_y <= y + reach; ++at_y)
        for (int at_x = x - reach; at_x <= x + reach; ++at_x)
            most = std::max(most, render::contrast_ratio(seen.pixelColor(at_x, at_y), ground));
    return most;
}

}  // namespace

double least_contrast_along(const QImage& on_clear_ground, const QImage& seen, const QColor& ground) {
    double least = 21;
    for (int y = reach; y < seen.height() - reach; ++y)
        for (int x = reach; x < seen.width() - reach; ++x)
            if (is_on_outline(on_clear_ground, x, y))
                least = std::min(least, most_around(seen, x, y, ground));
    return least;
}

}  // namespace roundwright::test
