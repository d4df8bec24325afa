#include "render/raster/standing_out.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

#include "render/drawing/contrast.h"
#include "render/raster/software_picture.h"

namespace roundwright::render {

namespace {

constexpr int picture_side_px = 160;
constexpr int opaque = 250;
constexpr int clear = 5;
constexpr int reach_px = 2;
constexpr double share_beyond = 0.1;  ///< of the outline, that may stand out less: shades between stitches
constexpr double spare = 0.2;         ///< above the least contrast: other views of it differ a little

bool near_clear_ground(const QImage& image, int x, int y) {
    for (const QPoint way : {QPoint(1, 0), QPoint(-1, 0), QPoint(0, 1), QPoint(0, -1)}) {
        for (int step = 1; step <= reach_px; ++step) {
            const QPoint at = QPoint(x, y) + step * way;
            if (image.rect().contains(at) && qAlpha(image.pixel(at)) <= clear) return true;
        }
    }
    return false;
}

double contrast_of(double luminance, double ground) {
    return (std::max(luminance, ground) + 0.05) / (std::min(luminance, ground) + 0.05);
}

QColor between(const QColor& from, const QColor& to, double part) {
    const auto mix = [part](int a, int b) { return static_cast<int>(std::lround(a + (b - a) * part)); };
    return {mix(from.red(), to.red()), mix(from.green(), to.green()), mix(from.blue(), to.blue())};
}

}  // namespace

std::vector<QColor> ground_greys() {
    const QColor stops[] = {Qt::black, QColor(0x2a, 0x2f, 0x34), QColor(0xec, 0xea, 0xe5), Qt::white};
    const int counts[] = {4, 24, 4};
    std::vector<QColor> row;
    for (std::size_t leg = 0; leg < std::size(counts); ++leg)
        for (int step = 0; step < counts[leg]; ++step)
            row.push_back(between(stops[leg], stops[leg + 1], static_cast<double>(step) / counts[leg]));
    row.emplace_back(Qt::white);
    return row;
}

std::vector<double> outline_luminances(const QImage& on_clear_ground) {
    const QImage image = on_clear_ground.convertToFormat(QImage::Format_ARGB32);
    std::vector<double> luminances;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QRgb pixel = image.pixel(x, y);
            if (qAlpha(pixel) >= opaque && near_clear_ground(image, x, y))
                luminances.push_back(relative_luminance(QColor(pixel)));
        }
    }
    std::ranges::sort(luminances);
    return luminances;
}

std::vector<double> outline_luminances(const StitchSurface& surface, const std::stop_token& stop) {
    std::vector<double> all;
    for (const ViewDirection direction : {ViewDirection::front, ViewDirection::top}) {
        if (stop.stop_requested()) return {};
        const QImage picture =
            picture_of(surface, {}, direction, {picture_side_px, picture_side_px}, Qt::transparent);
        const auto seen = outline_luminances(picture);
        all.insert(all.end(), seen.begin(), seen.end());
    }
    std::ranges::sort(all);
    return all;
}

double outline_contrast(const std::vector<double>& luminances, const QColor& ground) {
    if (luminances.empty()) return 21;
    const double behind = relative_luminance(ground);
    std::vector<double> contrasts;
    contrasts.reserve(luminances.size());
    for (const double luminance : luminances) contrasts.push_back(contrast_of(luminance, behind));
    const auto tenth = contrasts.begin() +
                       static_cast<std::ptrdiff_t>(share_beyond * static_cast<double>(contrasts.size() - 1));
    std::ranges::nth_element(contrasts, tenth);
    return *tenth;
}

QColor standing_ground(const std::vector<double>& luminances, const QColor& usual) {
    if (outline_contrast(luminances, usual) >= least_outline_contrast + spare) return usual;
    std::vector<QColor> row = ground_greys();
    std::ranges::stable_sort(row, {}, [&usual](const QColor& grey) { return contrast_ratio(grey, usual); });
    QColor best = usual;
    double most = outline_contrast(luminances, usual);
    for (const QColor& grey : row) {
        const double contrast = outline_contrast(luminances, grey);
        if (contrast >= least_outline_contrast + spare) return grey;
        if (contrast <= most) continue;
        best = grey;
        most = contrast;
    }
    return best;
}

}  // namespace roundwright::render
