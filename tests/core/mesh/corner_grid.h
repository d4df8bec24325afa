#pragma once

#include <Eigen/Geometry>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "core/mesh/fabric_geometry.h"
#include "core/mesh/stitch_surface.h"

namespace roundwright::test {

/// Any fabric of which nothing is known but where the corners of its stitches lie: for every edge its points
/// in the order worked, and the poles of its closed ends. An edge of one point is a start drawn to a point.
class CornerGrid final : public FabricGeometry {
  public:
    using Edges = std::vector<std::vector<Vec3>>;
    CornerGrid(Edges edges, std::optional<Vec3> pole_below, std::optional<Vec3> pole_above)
        : edges_(std::move(edges)), pole_below_(pole_below), pole_above_(pole_above) {
        take_normals();
    }

    /// The grid of a surface whose stitches take one loop each, in order.
    [[nodiscard]] static CornerGrid of(const StitchSurface& surface) {
        const auto& first = surface.first_stitch_of_round;
        Edges edges(first.size());
        for (std::size_t i = 0; i + 1 < first.size(); ++i)
            for (std::size_t s = first[i]; s < first[i + 1]; ++s) {
                if (i == 0) edges[0].push_back(surface.stitches[s].corners[1]);
                edges[i + 1].push_back(surface.stitches[s].corners[2]);
            }
        const bool point = (edges[0].front() - edges[0].back()).norm() < 1e-9;
        if (point) edges[0].resize(1);
        return {std::move(edges), surface.first_pole, surface.last_pole};
    }

    [[nodiscard]] std::size_t rounds() const override { return edges_.size() - 1; }
    [[nodiscard]] FabricEnds ends() const override {
        return {edges_.front().size() == 1, pole_below_.has_value(), pole_above_.has_value()};
    }
    [[nodiscard]] double girth_radius_mm(std::size_t round, double up) const override {
        return ((1 - up) * girth(round) + up * girth(round + 1)) / (2 * std::numbers::pi);
    }
    [[nodiscard]] double loops(std::size_t edge) const override {
        return static_cast<double>(edges_[edge].size());
    }
    /// The turn of the normals over the way, around only.
    [[nodiscard]] double mean_curvature(std::size_t edge) const override {
        double turn = 0;
        for (std::size_t k = 0; k < edges_[edge].size(); ++k) {
            const std::size_t next = (k + 1) % edges_[edge].size();
            const Vec3 way = edges_[edge][next] - edges_[edge][k];
            if (way.norm() > 0) turn += (normals_[edge][next] - normals_[edge][k]).dot(way.normalized());
        }
        return girth(edge) > 0 ? turn / girth(edge) / 2 : 0;
    }
    [[nodiscard]] double room_below_mm(std::size_t edge) const override {
        return edges_[edge].size() == 1 ? std::numeric_limits<double>::infinity()
                                        : girth(edge) / (4 * std::numbers::pi);
    }
    [[nodiscard]] bool is_layer(std::size_t) const override { return false; }

    void place_row(const CellRow& row, const double* lifts_mm, Vec3* places, Vec3* normals) const override {
        for (std::size_t q = 0; q < row.columns; ++q) {
            const double share = static_cast<double>(q) / static_cast<double>(row.columns);
            const auto at = [&](double from, double to) { return from + share * (to - from); };
            const FabricPoint below = on_edge(row.round, at(row.below_first, row.below_last), 0, 0);
            const FabricPoint above = on_edge(row.round + 1, at(row.above_first, row.above_last), 0, 0);
            const Vec3 normal = ((1 - row.up) * below.normal + row.up * above.normal).normalized();
            places[q] = (1 - row.up) * below.place + row.up * above.place + lifts_mm[q] * normal;
            if (normals) normals[q] = normal;
        }
    }
    [[nodiscard]] FabricPoint on_edge(std::size_t edge, double along, double lift_mm,
                                      std::uint32_t) const override {
        const std::size_t many = edges_[edge].size();
        const auto whole = static_cast<std::size_t>(std::floor(along));
        const double share = along - std::floor(along);
        const std::size_t from = whole % many, to = (whole + 1) % many;
        const Vec3 normal = ((1 - share) * normals_[edge][from] + share * normals_[edge][to]).normalized();
        return {(1 - share) * edges_[edge][from] + share * edges_[edge][to] + lift_mm * normal, normal};
    }
    [[nodiscard]] std::optional<FabricPoint> pole_below(double lift_mm) const override {
        return pole(pole_below_, edges_.front(), -1, lift_mm);
    }
    [[nodiscard]] std::optional<FabricPoint> pole_above(double lift_mm) const override {
        return pole(pole_above_, edges_.back(), 1, lift_mm);
    }
    [[nodiscard]] double loops_at(std::size_t edge, double cell, double cells) const override {
        return cell / cells * loops(edge);
    }
    [[nodiscard]] std::unique_ptr<FabricGeometry> coarser(const std::vector<std::size_t>& kept,
                                                          const std::vector<double>& cells) const override {
        Edges coarse;
        for (std::size_t k = 0; k < kept.size(); ++k) {
            auto& edge = coarse.emplace_back();
            if (edges_[kept[k]].size() == 1) {
                edge = edges_[kept[k]];
                continue;
            }
            for (double cell = 0; cell < cells[k]; ++cell)
                edge.push_back(on_edge(kept[k], loops_at(kept[k], cell, cells[k]), 0, 0).place);
        }
        return std::make_unique<CornerGrid>(std::move(coarse), pole_below_, pole_above_);
    }

  private:
    [[nodiscard]] double girth(std::size_t edge) const {
        double sum = 0;
        for (std::size_t k = 0; k < edges_[edge].size(); ++k)
            sum += (edges_[edge][(k + 1) % edges_[edge].size()] - edges_[edge][k]).norm();
        return sum;
    }
    [[nodiscard]] Vec3 at_share(std::size_t edge, double share) const {
        const double along = share * loops(edge);
        const std::size_t many = edges_[edge].size(), from = static_cast<std::size_t>(along) % many;
        const double part = along - std::floor(along);
        return (1 - part) * edges_[edge][from] + part * edges_[edge][(from + 1) % many];
    }
    /// Outwards is up times left.
    void take_normals() {
        for (std::size_t e = 0; e < edges_.size(); ++e) {
            auto& normals = normals_.emplace_back();
            const std::size_t many = edges_[e].size();
            for (std::size_t k = 0; k < many; ++k) {
                const double share = static_cast<double>(k) / static_cast<double>(many);
                const Vec3 up =
                    at_share(std::min(e + 1, edges_.size() - 1), share) - at_share(e > 0 ? e - 1 : 0, share);
                const Vec3 left = edges_[e][(k + 1) % many] - edges_[e][(k + many - 1) % many];
                normals.push_back(many == 1 ? Vec3(-up) : Vec3(up.cross(left)));
                normals.back().normalize();
            }
        }
        if (edges_.front().size() == 1)
            normals_.front().front() = facing(edges_.front().front(), edges_[1], -1);
    }
    /// The way that a flat end looks: around its middle to the left, seen from outside.
    [[nodiscard]] static Vec3 facing(const Vec3& pole, const std::vector<Vec3>& edge, double side) {
        Vec3 area = Vec3::Zero();
        for (std::size_t k = 0; k < edge.size(); ++k)
            area += (edge[(k + 1) % edge.size()] - pole).cross(edge[k] - pole);
        return (side * area).normalized();
    }
    [[nodiscard]] static std::optional<FabricPoint> pole(const std::optional<Vec3>& at,
                                                         const std::vector<Vec3>& edge, double side,
                                                         double lift_mm) {
        if (!at) return {};
        const Vec3 normal = facing(*at, edge, side);
        return FabricPoint{*at + lift_mm * normal, normal};
    }

    Edges edges_;
    std::vector<std::vector<Vec3>> normals_;
    std::optional<Vec3> pole_below_, pole_above_;
};

}  // namespace roundwright::test
