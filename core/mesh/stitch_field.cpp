#include "core/mesh/stitch_field.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <mutex>
#include <numbers>

namespace roundwright {
namespace {

constexpr double pile_flatness = 0.1;
/// A yarn of few plies: a ply takes so much of the cord's length, and runs so far along while it goes across.
constexpr double ply_length = 0.16, ply_slant = 0.9;

double sample_place(int index) { return (index + 0.5) / StitchField::size; }

/// A cord moved by whole stitches, laid over a field.
class CordLayer {
  public:
    CordLayer(const Cord& cord, int across, int up) : cord_(cord) {
        cord_.from_u += across;
        cord_.to_u += across;
        cord_.from_v += up;
        cord_.to_v += up;
        du_ = cord_.to_u - cord_.from_u;
        dv_ = cord_.to_v - cord_.from_v;
        length_ = std::hypot(du_, dv_);
    }

    void lay(StitchField& field) const {
        const double reach = cord_.radius * (1 + cord_belly);
        const auto [left, right] = samples(cord_.from_u, cord_.to_u, reach);
        const auto [low, high] = samples(cord_.from_v, cord_.to_v, reach);
        for (int row = low; row < high; ++row)
            for (int column = left; column < right; ++column) lay_at(field, column, row);
    }

  private:
    static std::pair<int, int> samples(double from, double to, double reach) {
        const auto clamped = [](double place) {
            return static_cast<int>(
                std::clamp(std::ceil(place * StitchField::size), 0.0, 1.0 * StitchField::size));
        };
        return {clamped(std::min(from, to) - reach - 1.0 / StitchField::size),
                clamped(std::max(from, to) + reach)};
    }

    void lay_at(StitchField& field, int column, int row) const {
        const double u = sample_place(column) - cord_.from_u, v = sample_place(row) - cord_.from_v;
        const double along = std::clamp((u * du_ + v * dv_) / (length_ * length_), 0.0, 1.0);
        const double radius = cord_.radius_at(along);
        const double across = std::hypot(u - along * du_, v - along * dv_) / radius;
        if (across >= 1) return;
        const double height = cord_.over_at(along) + radius * std::sqrt(1 - across * across);
        const std::size_t k = StitchField::at(column, row);
        if (height <= static_cast<double>(field.height[k])) return;
        const double aside = (u * dv_ - v * du_) / length_ / radius;
        const double plies = along * length_ / ply_length + ply_slant * aside;
        field.height[k] = static_cast<float>(height);
        const bool is_ball = length_ < cord_.radius;
        field.twist[k] =
            is_ball ? 1 : static_cast<float>(std::sqrt(std::abs(std::sin(std::numbers::pi * plies))));
    }

    Cord cord_;
    double du_, dv_, length_;
};

StitchField make_field(StitchFace face) {
    StitchField field;
    constexpr std::size_t samples = 1U * StitchField::size * StitchField::size;
    field.height.assign(samples, 0);
    field.twist.assign(samples, 1);
    for (const auto& cord : cords_of(face))
        for (int across = -1; across <= 1; ++across)
            for (int up = -1; up <= 1; ++up) CordLayer(cord, across, up).lay(field);
    if (face != StitchFace::pile) return field;
    for (auto& height : field.height) height *= static_cast<float>(pile_flatness);
    std::fill(field.twist.begin(), field.twist.end(), 1.0F);
    return field;
}

}  // namespace

const StitchField& stitch_field(StitchFace face) {
    static std::array<std::once_flag, stitch_faces> made;
    static std::array<std::unique_ptr<const StitchField>, stitch_faces> fields;
    const auto k = static_cast<std::size_t>(face);
    std::call_once(made[k], [&] { fields[k] = std::make_unique<const StitchField>(make_field(face)); });
    return *fields[k];
}

}  // namespace roundwright
