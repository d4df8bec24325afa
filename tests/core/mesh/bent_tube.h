#pragma once

#include <cmath>
#include <numbers>

#include "core/mesh/fabric_geometry.h"

namespace roundwright::test {

/// A tube bent along an arc in the plane of x and y, the exact segment of a torus, with the same stitches in
/// every round. It stands on y = 0 at the origin and bends towards -x.
class BentTube final : public FabricGeometry {
  public:
    struct Size {
        double tube_radius_mm = 15;
        double bend_radius_mm = 50;
        double bend = 1.2;  ///< radians
        std::size_t rounds = 10;
        double stitches = 18;
        bool closed = true;  ///< by flat fans at both ends
    };
    explicit BentTube(const Size& size) : size_(size) {}

    [[nodiscard]] std::size_t rounds() const override { return size_.rounds; }
    [[nodiscard]] FabricEnds ends() const override { return {false, size_.closed, size_.closed}; }
    [[nodiscard]] double girth_radius_mm(std::size_t, double) const override { return size_.tube_radius_mm; }
    [[nodiscard]] double loops(std::size_t) const override { return size_.stitches; }
    [[nodiscard]] double mean_curvature(std::size_t) const override { return 0.5 / size_.tube_radius_mm; }
    [[nodiscard]] double room_below_mm(std::size_t) const override { return size_.tube_radius_mm / 2; }
    [[nodiscard]] bool is_layer(std::size_t) const override { return false; }

    void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const override {
        const auto side = [&](double below, double above) { return below + row.up * (above - below); };
        const double first = side(row.below_first, row.above_first);
        const double last = side(row.below_last, row.above_last);
        for (std::size_t q = 0; q < row.columns; ++q) {
            const double along =
                first + (last - first) * static_cast<double>(q) / static_cast<double>(row.columns);
            const FabricPoint at =
                point(static_cast<double>(row.round) + row.up, along, lifts_mm[q], row.corners);
            places[q] = at.place;
            if (normals) normals[q] = at.normal;
        }
    }
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double along, double lift_mm,
                                      std::uint32_t corners) const override {
        return point(static_cast<double>(edge), along, lift_mm, corners);
    }
    [[nodiscard]] std::optional<FabricPoint> pole_below(double lift_mm) const override {
        return pole(0, -lift_mm);
    }
    [[nodiscard]] std::optional<FabricPoint> pole_above(double lift_mm) const override {
        return pole(size_.bend, lift_mm);
    }
    [[nodiscard]] double loops_at(std::size_t, double cell, double cells) const override {
        return cell / cells * size_.stitches;
    }
    [[nodiscard]] std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                          const std::vector<double>& cells) const override {
        Size coarse = size_;
        coarse.rounds = kept.size() - 1;
        coarse.stitches = cells.front();
        auto made = std::make_unique<BentTube>(coarse);
        for (const std::size_t edge : kept) made->edges_.push_back(bend_at(static_cast<double>(edge)));
        return made;
    }

    /// Volume by Pappus's theorem.
    [[nodiscard]] double volume_mm3() const {
        const double r = size_.tube_radius_mm;
        return std::numbers::pi * r * r * size_.bend_radius_mm * size_.bend;
    }
    [[nodiscard]] double fabric_mm2() const {
        return 2 * std::numbers::pi * size_.tube_radius_mm * size_.bend_radius_mm * size_.bend;
    }
    /// Where a point near the tube lies: round and stitch, both with their share.
    [[nodiscard]] Vec2 round_and_stitch(const Vec3& at) const {
        const double bend = std::atan2(at.y(), at.x() + size_.bend_radius_mm);
        const double out = std::hypot(at.x() + size_.bend_radius_mm, at.y()) - size_.bend_radius_mm;
        const double turns = -std::atan2(out, at.z()) / (2 * std::numbers::pi);
        return {bend / size_.bend * static_cast<double>(size_.rounds),
                (turns - std::floor(turns)) * size_.stitches};
    }
    [[nodiscard]] Vec3 outward(const Vec3& at) const {
        const double bend = std::atan2(at.y(), at.x() + size_.bend_radius_mm);
        return (at - centre(bend)).normalized();
    }

  private:
    [[nodiscard]] double bend_at(double edge) const {
        if (edges_.empty()) return size_.bend * edge / static_cast<double>(size_.rounds);
        const auto below = std::min(static_cast<std::size_t>(edge), edges_.size() - 2);
        return edges_[below] + (edge - static_cast<double>(below)) * (edges_[below + 1] - edges_[below]);
    }
    [[nodiscard]] Vec3 centre(double bend) const {
        return size_.bend_radius_mm * (Vec3(std::cos(bend), std::sin(bend), 0) - Vec3::UnitX());
    }
    [[nodiscard]] FabricPoint point(double edge, double along, double lift_mm, std::uint32_t corners) const {
        const double bend = bend_at(edge), angle = -2 * std::numbers::pi * along / size_.stitches;
        const double step = 2 * std::numbers::pi / std::max(3U, corners);
        const double wider = corners < 3 ? 1 : std::sqrt(step / std::sin(step));
        const Vec3 out =
            std::sin(angle) * Vec3(std::cos(bend), std::sin(bend), 0) + std::cos(angle) * Vec3::UnitZ();
        return {centre(bend) + wider * (size_.tube_radius_mm + lift_mm) * out, out};
    }
    [[nodiscard]] std::optional<FabricPoint> pole(double bend, double forward_mm) const {
        if (!size_.closed) return {};
        const Vec3 forward(-std::sin(bend), std::cos(bend), 0);
        return FabricPoint{centre(bend) + forward_mm * forward, bend > 0 ? forward : Vec3(-forward)};
    }

    Size size_;
    std::vector<double> edges_;  ///< of a coarser one: the bend at each of its edges
};

}  // namespace roundwright::test
