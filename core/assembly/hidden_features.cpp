#include "core/assembly/hidden_features.h"

#include <algorithm>
#include <optional>

#include "core/face/place_feature.h"
#include "core/mesh/ray_cast.h"

namespace roundwright {
namespace {

constexpr double widths_in_front = 3;
constexpr double off_the_fabric_mm = 0.5;  // so that nothing is met in the fabric that it lies on

struct Box {
    Vec3 low;
    Vec3 high;

    [[nodiscard]] bool is_within(const Vec3& point, double reach) const {
        return ((point.array() >= low.array() - reach) && (point.array() <= high.array() + reach)).all();
    }
};

Box box_of(const StitchSurface* surface) {
    constexpr double far = 1e9;
    Box box{Vec3::Constant(far), Vec3::Constant(-far)};
    if (surface == nullptr) return box;
    const auto& positions = surface->mesh.positions;
    for (std::size_t at = 0; at + 2 < positions.size(); at += 3) {
        const Vec3 point(positions[at], positions[at + 1], positions[at + 2]);
        box.low = box.low.cwiseMin(point);
        box.high = box.high.cwiseMax(point);
    }
    return box;
}

class Seeker {
  public:
    Seeker(const PlacedToy& placed, std::span<const SolvedPiece> solved,
           std::span<const StitchSurface* const> surfaces)
        : placed_(placed), solved_(solved), surfaces_(surfaces) {
        for (const StitchSurface* surface : surfaces_) boxes_.push_back(box_of(surface));
    }

    [[nodiscard]] std::optional<std::size_t> hidden_by(std::size_t own, const Feature& feature) const {
        const SolvedPiece& piece = solved_[placed_.pieces[own].solved];
        const PlacedFeature places = place_feature(feature, piece.surface, piece.stitches);
        for (const SurfacePlace& place : places.starts) {
            const SurfacePoint at = piece.surface.at(place);
            const Pose& pose = placed_.pieces[own].pose;
            const Ray out{pose * (at.point + off_the_fabric_mm * at.normal), pose.linear() * at.normal};
            const double reach = widths_in_front * std::max(feature.width_mm, feature.height_mm);
            if (const auto other = met_within(own, out, reach)) return other;
        }
        return std::nullopt;
    }

  private:
    [[nodiscard]] std::optional<std::size_t> met_within(std::size_t own, const Ray& ray, double reach) const {
        std::optional<std::size_t> first;
        double distance = reach;
        for (std::size_t other = 0; other < surfaces_.size(); ++other) {
            if (other == own || surfaces_[other] == nullptr) continue;
            // From within a piece its fabric may be met farther off than from outside.
            if (!boxes_[other].is_within(ray.origin, reach)) continue;
            const auto hit = first_hit_by_trying_all(surfaces_[other]->mesh, ray);
            if (!hit || (hit->from_outside && hit->t > distance)) continue;
            first = other;
            distance = std::min(distance, hit->t);
        }
        return first;
    }

    const PlacedToy& placed_;
    std::span<const SolvedPiece> solved_;
    std::span<const StitchSurface* const> surfaces_;
    std::vector<Box> boxes_;
};

}  // namespace

std::vector<HiddenFeature> hidden_features(const PlacedToy& placed, std::span<const SolvedPiece> solved,
                                           std::span<const StitchSurface* const> surfaces) {
    const Seeker seeker(placed, solved, surfaces);
    std::vector<HiddenFeature> hidden;
    for (std::size_t own = 0; own < placed.pieces.size(); ++own) {
        const SolvedPiece& piece = solved[placed.pieces[own].solved];
        if (piece.surface.empty()) continue;
        const auto& features = piece.piece->features;
        for (std::size_t feature = 0; feature < features.size(); ++feature) {
            if (const auto by = seeker.hidden_by(own, features[feature]))
                hidden.push_back({own, static_cast<int>(feature), *by});
        }
    }
    return hidden;
}

}  // namespace roundwright
