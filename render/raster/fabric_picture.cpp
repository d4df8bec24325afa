#include "render/raster/fabric_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <mutex>
#include <numbers>

#include "core/mesh/stitch_field.h"

namespace roundwright::render {
namespace {

using Eigen::Array4f;

constexpr int rays = 8, steps = 6;
constexpr double step_in_stitches = 0.045;
constexpr float ply_depth = 0.16F, pile_depth = 0.14F, fibre_depth = 0.10F;

static_assert(FacePicture::size == StitchField::size);

/// A share of 0..1 that looks like chance (the finaliser of MurmurHash3).
float chance(std::uint32_t x) {
    x *= 0x9E3779B9U;
    x = (x ^ (x >> 16)) * 0x85EBCA6BU;
    x = (x ^ (x >> 13)) * 0xC2B2AE35U;
    return static_cast<float>(x ^ (x >> 16)) / 4294967296.0F;
}

/// Where a ray over a field looks for its horizon.
struct RayStep {
    int across, up;
    float one_over_way;  ///< a stitch width
};

const std::vector<RayStep>& ray_steps() {
    static const std::vector<RayStep> all = [] {
        std::vector<RayStep> made;
        for (int k = 0; k < rays; ++k) {
            const double angle = 2 * std::numbers::pi * k / rays;
            for (int step = 1; step <= steps; ++step) {
                const double way = step_in_stitches * step;
                const auto off = [way](double share) {
                    return static_cast<int>(std::lround(way * share * StitchField::size));
                };
                made.push_back({off(std::cos(angle)), off(std::sin(angle)), static_cast<float>(1 / way)});
            }
        }
        return made;
    }();
    return all;
}

/// Share of the sky over a point of a field: in each direction one less the sine of the horizon's height
/// (horizon-based occlusion: Bavoil, Sainz and Dimitrov, SIGGRAPH 2008 talks).
float sky_over(const StitchField& field, int column, int row) {
    const float here = field.height[StitchField::at(column, row)];
    const RayStep* at = ray_steps().data();
    float open = 0;
    for (int k = 0; k < rays; ++k) {
        float slope = 0;
        for (int step = 0; step < steps; ++step, ++at)
            slope =
                std::max(slope, (field.height[StitchField::at(column + at->across, row + at->up)] - here) *
                                    at->one_over_way);
        open += 1 - slope / std::sqrt(1 + slope * slope);
    }
    return open / rays;
}

float mean(const std::vector<FabricPoint>& points, float FabricPoint::*member) {
    float sum = 0;
    for (const auto& point : points) sum += point.*member;
    return sum / static_cast<float>(points.size());
}

/// Brushed pile from above: short fibres laid over each other every way, most of them hanging down.
StitchField pile_field() {
    StitchField field{std::vector<float>(1U * StitchField::size * StitchField::size, 0), {}};
    field.twist.assign(field.height.size(), 0.4F);
    constexpr std::uint32_t fibres = 260;
    constexpr int points = 48;
    for (std::uint32_t k = 0; k < fibres; ++k) {
        const auto share = [k](std::uint32_t draw) { return chance(8 * k + draw); };
        const float u = share(0), v = share(1), shade = 0.35F + 0.65F * share(5);
        const float du = 0.5F * (share(2) - 0.5F), dv = -0.1F - 0.3F * share(3),
                    curl = 0.12F * (share(4) - 0.5F);
        for (int p = 0; p < points; ++p) {
            const float t = static_cast<float>(p) / points;
            const auto at = [](float place) {
                return static_cast<int>(std::floor(place * StitchField::size));
            };
            const int column = at(u + t * du + t * (1 - t) * curl), row = at(v + t * dv);
            const float height = 0.10F * static_cast<float>(k) / fibres + 0.05F * t;
            for (const auto& [across, up] : {std::pair(0, 0), std::pair(1, 0), std::pair(0, 1)}) {
                const std::size_t place = StitchField::at(column + across, row + up);
                if (height <= field.height[place]) continue;
                field.height[place] = height;
                field.twist[place] = shade;
            }
        }
    }
    return field;
}

/// Fibres let light through to each other and bend what they send back.
void soften(std::vector<FabricPoint>& points) {
    for (auto& point : points) {
        point.slope_u *= 0.2F;
        point.slope_v *= 0.2F;
        point.open = 0.6F + 0.4F * point.open;
    }
}

std::vector<FabricPoint> points_of(StitchFace face) {
    const StitchField field = face == StitchFace::pile ? pile_field() : stitch_field(face);
    const float depth = face == StitchFace::pile ? pile_depth : ply_depth;
    std::vector<FabricPoint> points;
    points.reserve(field.height.size());
    constexpr float half_a_side = StitchField::size / 2.0F;
    for (int row = 0; row < StitchField::size; ++row) {
        for (int column = 0; column < StitchField::size; ++column) {
            const auto height = [&](int across, int up) {
                return field.height[StitchField::at(column + across, row + up)];
            };
            const std::size_t k = StitchField::at(column, row);
            const float fibre =
                chance(static_cast<std::uint32_t>(k) * 16U + static_cast<std::uint32_t>(face));
            points.push_back({(height(1, 0) - height(-1, 0)) * half_a_side,
                              (height(0, 1) - height(0, -1)) * half_a_side, sky_over(field, column, row),
                              1 - depth * (1 - field.twist[k]) + fibre_depth * (fibre - 0.5F)});
        }
    }
    if (face == StitchFace::pile) soften(points);
    // Seen from afar a fabric has its yarn's own tone.
    const float lift = 1 / mean(points, &FabricPoint::tone);
    for (auto& point : points) point.tone *= lift;
    return points;
}

std::vector<Array4f> as_stored(const std::vector<FabricPoint>& points) {
    std::vector<Array4f> square;
    square.reserve(points.size());
    for (const auto& point : points) {
        const Array4f texel(0.5F + 0.5F * point.slope_u / FacePicture::steepest,
                            0.5F + 0.5F * point.slope_v / FacePicture::steepest, point.open,
                            0.5F * point.tone);
        square.emplace_back(texel.max(0).min(1));
    }
    return square;
}

std::vector<Array4f> halved(const std::vector<Array4f>& square, int side) {
    std::vector<Array4f> half;
    for (int row = 0; row + 1 < side; row += 2) {
        for (int column = 0; column + 1 < side; column += 2) {
            const auto first = static_cast<std::size_t>(row * side + column);
            const auto above = first + static_cast<std::size_t>(side);
            half.emplace_back((square[first] + square[first + 1] + square[above] + square[above + 1]) / 4);
        }
    }
    return half;
}

constexpr int first_row(int level) { return FacePicture::height - (FacePicture::height >> level); }

}  // namespace

const FacePicture& FacePicture::of(StitchFace face) {
    static std::array<std::once_flag, stitch_faces> made;
    static std::array<std::unique_ptr<const FacePicture>, stitch_faces> pictures;
    const auto k = static_cast<std::size_t>(face);
    std::call_once(made[k], [&] { pictures[k].reset(new FacePicture(face)); });
    return *pictures[k];
}

FacePicture::FacePicture(StitchFace face)
    : texels_(4U * width * height, 0), numbers_(1U * width * height, Array4f::Zero()) {
    std::vector<Array4f> square = as_stored(points_of(face));
    for (int level = 0; level < levels; ++level) {
        store(square, level);
        square = halved(square, size >> level);
    }
}

void FacePicture::store(const std::vector<Array4f>& square, int level) {
    const int side = size >> level;
    for (int row = 0; row < side; ++row) {
        for (int column = 0; column < side; ++column) {
            const auto at = static_cast<std::size_t>((first_row(level) + row) * width + column);
            std::uint8_t* texel = &texels_[4 * at];
            const Array4f& from = square[static_cast<std::size_t>(row * side + column)];
            for (int c = 0; c < 4; ++c) texel[c] = static_cast<std::uint8_t>(std::lround(255 * from[c]));
            numbers_[at] = Array4f(texel[0], texel[1], texel[2], texel[3]);
        }
    }
}

Array4f FacePicture::at_level(float u, float v, int level) const {
    const int side = size >> level, mask = side - 1;
    const float x = u * static_cast<float>(side) - 0.5F, y = v * static_cast<float>(side) - 0.5F;
    const float left = std::floor(x), low = std::floor(y), a = x - left, b = y - low;
    const int i = static_cast<int>(left), j = static_cast<int>(low);
    const Array4f* first = &numbers_[static_cast<std::size_t>(first_row(level) * width)];
    const auto texel = [&](int column, int row) -> const Array4f& {
        return first[(row & mask) * width + (column & mask)];
    };
    const Array4f below = texel(i, j) * (1 - a) + texel(i + 1, j) * a;
    const Array4f above = texel(i, j + 1) * (1 - a) + texel(i + 1, j + 1) * a;
    return (below * (1 - b) + above * b) / 255;
}

FabricPoint FacePicture::at(float u, float v, float level) const {
    level = std::clamp(level, 0.0F, static_cast<float>(levels - 1));
    const int fine = static_cast<int>(level);
    const float share = level - static_cast<float>(fine);
    Array4f found = at_level(u, v, fine);
    if (share > 0) found += share * (at_level(u, v, fine + 1) - found);
    return {(2 * found[0] - 1) * steepest, (2 * found[1] - 1) * steepest, found[2], 2 * found[3]};
}

std::array<const FacePicture*, stitch_faces> face_pictures(const Mesh& mesh) {
    std::array<const FacePicture*, stitch_faces> pictures{};
    for (const std::uint8_t face : mesh.faces)
        if (pictures[face] == nullptr) pictures[face] = &FacePicture::of(static_cast<StitchFace>(face));
    return pictures;
}

std::vector<std::uint8_t> texels_of_all_faces() {
    constexpr std::size_t row_bytes = 4U * FacePicture::width, all_bytes = row_bytes * stitch_faces;
    std::vector<std::uint8_t> texels(all_bytes * FacePicture::height);
    for (std::size_t face = 0; face < stitch_faces; ++face) {
        const auto& from = FacePicture::of(static_cast<StitchFace>(face)).texels();
        for (std::size_t row = 0; row < FacePicture::height; ++row)
            std::copy_n(&from[row * row_bytes], row_bytes, &texels[row * all_bytes + face * row_bytes]);
    }
    return texels;
}

}  // namespace roundwright::render
