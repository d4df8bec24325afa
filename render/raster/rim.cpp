#include "render/raster/rim.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "render/drawing/contrast.h"
#include "render/raster/standing_out.h"

namespace roundwright::render {

namespace {

constexpr double rim_contrast = 4.5;
constexpr int least_solid = 204;  ///< of 255: above the densest outline of a comparison surface

struct Dab {
    int right, down;
    double share;
};

/// A disc with a soft edge. It is dabbed at the middle of pixels, which are solid half a pixel further.
std::vector<Dab> disc(double radius) {
    const int reach = static_cast<int>(std::ceil(radius + 1));
    std::vector<Dab> dabs;
    for (int down = -reach; down <= reach; ++down) {
        for (int right = -reach; right <= reach; ++right) {
            const double share = std::clamp(radius + 1 - std::hypot(right, down), 0.0, 1.0);
            if (share > 0) dabs.push_back({right, down, share});
        }
    }
    return dabs;
}

/// How much of each pixel lies within reach of what is solid, 0..255, where that is not solid itself.
class Cover {
  public:
    Cover(const QImage& image, double radius)
        : image_(image),
          width_(image.width()),
          height_(image.height()),
          cover_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_)) {
        const std::vector<Dab> dabs = disc(radius);
        for (int y = 0; y < height_; ++y)
            for (int x = 0; x < width_; ++x)
                if (is_edge(x, y)) dab(x, y, dabs);
    }
    [[nodiscard]] int at(int x, int y) const { return cover_[index(x, y)]; }

  private:
    [[nodiscard]] std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x);
    }
    [[nodiscard]] int alpha(int x, int y) const {
        return qAlpha(reinterpret_cast<const QRgb*>(image_.constScanLine(y))[x]);
    }
    [[nodiscard]] bool is_open(int x, int y) const {
        return x >= 0 && y >= 0 && x < width_ && y < height_ && alpha(x, y) < 255;
    }
    [[nodiscard]] bool is_edge(int x, int y) const {
        return alpha(x, y) > least_solid && (alpha(x, y) < 255 || is_open(x - 1, y) || is_open(x + 1, y) ||
                                             is_open(x, y - 1) || is_open(x, y + 1));
    }
    void dab(int x, int y, const std::vector<Dab>& dabs) {
        const double solid = static_cast<double>(alpha(x, y) - least_solid) / (255 - least_solid);
        for (const auto& [right, down, share] : dabs) {
            if (!is_open(x + right, y + down)) continue;
            std::uint8_t& cover = cover_[index(x + right, y + down)];
            cover = std::max(cover, static_cast<std::uint8_t>(std::lround(255 * share * solid)));
        }
    }

    const QImage& image_;
    int width_, height_;
    std::vector<std::uint8_t> cover_;
};

/// Premultiplied: `over` on `under`, each level.
QRgb laid_over(QRgb over, QRgb under) {
    const int rest = 255 - qAlpha(over);
    const auto level = [rest](int a, int b) { return a + (b * rest + 127) / 255; };
    return qRgba(level(qRed(over), qRed(under)), level(qGreen(over), qGreen(under)),
                 level(qBlue(over), qBlue(under)), level(qAlpha(over), qAlpha(under)));
}

QRgb faded(QRgb premultiplied, int share) {
    const auto level = [share](int value) { return (value * share + 127) / 255; };
    return qRgba(level(qRed(premultiplied)), level(qGreen(premultiplied)), level(qBlue(premultiplied)),
                 level(qAlpha(premultiplied)));
}

}  // namespace

Standing standing_of(const std::vector<double>& luminances, const QColor& usual) {
    const QColor ground = standing_ground(luminances, usual);
    if (outline_contrast(luminances, ground) >= least_outline_contrast) return {ground};
    return {usual, rim_on(usual)};
}

QColor rim_on(const QColor& ground) {
    const std::vector<QColor> greys = ground_greys();
    QColor nearest = relative_luminance(ground) > 0.18 ? Qt::black : Qt::white;
    for (const QColor& grey : greys) {
        const double contrast = contrast_ratio(grey, ground);
        if (contrast >= rim_contrast && contrast < contrast_ratio(nearest, ground)) nearest = grey;
    }
    return nearest;
}

QImage with_rim(const QImage& on_clear_ground, const QColor& rim, double width_px, const QColor& ground) {
    QImage image = on_clear_ground.convertToFormat(QImage::Format_ARGB32_Premultiplied);
    const QImage source = image;
    const Cover cover(source, width_px);
    const QRgb line = qPremultiply(rim.rgba()), behind = qPremultiply(ground.rgba());
    for (int y = 0; y < image.height(); ++y) {
        auto* row = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < image.width(); ++x) {
            if (qAlpha(row[x]) == 255) continue;
            row[x] = laid_over(row[x], laid_over(faded(line, cover.at(x, y)), behind));
        }
    }
    return image;
}

}  // namespace roundwright::render
