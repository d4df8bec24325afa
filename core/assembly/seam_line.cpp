#include "core/assembly/seam_line.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/shape/curled_strip.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// Over the distance at which a circle of that length is a ball's widest.
constexpr double farthest_circle = 1.2;
constexpr double least_mm = 1e-6;

double face_radians(const SolvedPiece& piece) { return piece.piece->face_degrees * pi / 180; }

Vec3 sideways(double angle) { return {std::sin(angle), 0, std::cos(angle)}; }

double angle_of_point(const SolvedPiece& piece, std::size_t k) {
    return face_radians(piece) + 2 * pi * static_cast<double>(k) / points_of_seam;
}

std::size_t loop_of(const SolvedPiece& piece, JoinedEnd end) {
    return end == JoinedEnd::start ? 0 : piece.measures.loops.size() - 1;
}

int rounds_of(const SolvedPiece& piece) { return piece.surface.loops() - 1; }

/// Which end of a piece a place is at, if it is at one.
std::optional<JoinedEnd> end_at(const SolvedPiece& piece, const JoinPlace& place) {
    if (place.round == -1) return JoinedEnd::start;
    if (place.round == rounds_of(piece) - 1) return JoinedEnd::end;
    return std::nullopt;
}

bool is_open(const SolvedPiece& piece, JoinedEnd end) {
    if (end == JoinedEnd::end) return piece.piece->end == End::left_open;
    return std::holds_alternative<OpenTube>(piece.piece->start) ||
           std::holds_alternative<WorkedOn>(piece.piece->start);
}

/// The turn that a join gives its piece, not leant.
Eigen::Matrix3d upright_turn(Join join, const JoinFrame& end, const JoinFrame& place) {
    join.lean_degrees = join.lean_right_degrees = 0;
    return pose_of_join(join, end, place).linear();
}

SurfacePlace place_on(const SolvedPiece& onto, const JoinPlace& place) {
    if (place.round == -1) return {0, 0};
    const auto count = static_cast<double>(onto.stitches[static_cast<std::size_t>(place.round)]);
    return {onto.surface.along_of_loop(place.round + 1),
            2 * pi * place.stitches_right / std::max(1.0, count)};
}

std::vector<Vec3> directions_of(const SolvedPiece& piece, const Eigen::Matrix3d& turn) {
    std::vector<Vec3> directions;
    for (std::size_t k = 0; k < points_of_seam; ++k)
        directions.push_back(turn * sideways(angle_of_point(piece, k)));
    return directions;
}

/// The loop at a height along the fabric, at the angles of the directions.
std::vector<FabricSpot> ring(const SolvedPiece& onto, double along_mm, const std::vector<Vec3>& directions) {
    std::vector<FabricSpot> points;
    for (const Vec3& direction : directions) {
        const double angle = std::atan2(direction.x(), direction.z()) - face_radians(onto);
        const SurfacePoint at = onto.surface.at({along_mm, angle});
        points.push_back({{at.point, at.normal}, {along_mm, angle}});
    }
    return points;
}

double length_of(const std::vector<SurfaceSpot>& points) {
    double length = 0;
    for (std::size_t k = 0; k < points.size(); ++k)
        length += (points[(k + 1) % points.size()].place - points[k].place).norm();
    return length;
}

/// Over the length of a circle's chords.
double arc_over_chord() {
    const double half = pi / static_cast<double>(points_of_seam);
    return half / std::sin(half);
}

class LineFinder {
  public:
    LineFinder(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto, const JoinFrame& end,
               const JoinFrame& place)
        : join_(join),
          piece_(piece),
          onto_(onto),
          edge_(sewn_edge(piece, join.end)),
          place_(place),
          turn_(upright_turn(join, end, place)) {}

    SeamLine find(SeamForm form) {
        line_.form = form;
        switch (form) {
            case SeamForm::none:
                break;
            case SeamForm::ring:
                take_ring();
                break;
            case SeamForm::circle:
                take_circle();
                break;
            case SeamForm::straight:
                take_straight();
                break;
            case SeamForm::patch:
                take_patch();
                break;
        }
        return std::move(line_);
    }

  private:
    void take_ring() {
        const auto end = end_at(onto_, join_.at);
        const double along = end ? along_of_end(*end) : onto_.surface.along_of_loop(join_.at.round + 1);
        finish(ring(onto_, along, directions_of(piece_, turn_)));
    }

    void take_circle() {
        if (!(edge_.stitches_mm > least_mm)) return;
        const auto directions = directions_of(piece_, turn_);
        const GeodesicRays rays = rays_in(directions, farthest_circle * edge_.stitches_mm / 4);
        finish(at_distance(rays, rays.distance_of_circle_mm(edge_.stitches_mm)));
    }

    /// From fold to fold along its front, and back behind.
    void take_straight() {
        if (!(edge_.stitches_mm > least_mm)) return;
        const double half = edge_.stitches_mm / 4;
        // A flattened piece has its folds to the sides, whichever way its face looks.
        const double face = piece_.measures.flattened ? 0 : face_radians(piece_);
        const Vec3 across = turn_ * Vec3(std::cos(face), 0, -std::sin(face));
        const GeodesicRays rays = rays_in({-across, across}, half);
        std::vector<FabricSpot> points;
        for (std::size_t k = 0; k < points_of_seam; ++k) {
            const double share = 2 / pi * std::asin(std::sin(angle_of_point(piece_, k) - face));
            points.push_back(rays.on_surface(share < 0 ? 0 : 1, half * std::abs(share)));
        }
        finish(points);
        line_.length_mm /= 2;
    }

    /// A flat piece keeps its lengths from the middle outwards.
    void take_patch() {
        const double reach = piece_.surface.end_mm();
        if (!(reach > least_mm)) return;
        const GeodesicRays rays = rays_in(directions_of(piece_, turn_), reach);
        for (std::size_t circle = 0; circle <= circles_of_patch; ++circle) {
            auto points = at_distance(rays, reach * static_cast<double>(circle) / circles_of_patch);
            for (const FabricSpot& point : points) line_.within.push_back(point.spot);
            if (circle == circles_of_patch) finish(points);
        }
    }

    GeodesicRays rays_in(const std::vector<Vec3>& directions, double reach_mm) const {
        if (const auto end = end_at(onto_, join_.at))
            return {onto_, {place_.point, place_.out}, along_of_end(*end), directions, reach_mm};
        return {onto_, place_on(onto_, join_.at), directions, reach_mm};
    }

    double along_of_end(JoinedEnd end) const { return end == JoinedEnd::start ? 0 : onto_.surface.end_mm(); }

    static std::vector<FabricSpot> at_distance(const GeodesicRays& rays, double distance_mm) {
        std::vector<FabricSpot> points;
        for (std::size_t k = 0; k < rays.rays(); ++k) points.push_back(rays.on_surface(k, distance_mm));
        return points;
    }

    void finish(const std::vector<FabricSpot>& points) {
        for (const FabricSpot& point : points) {
            line_.points.push_back(point.spot);
            line_.places.push_back(point.at);
        }
        line_.length_mm = length_of(line_.points) * (line_.form == SeamForm::straight ? 1 : arc_over_chord());
    }

    const Join& join_;
    const SolvedPiece& piece_;
    const SolvedPiece& onto_;
    SewnEdge edge_;
    JoinFrame place_;
    Eigen::Matrix3d turn_;
    SeamLine line_;
};

bool has_shape(const SolvedPiece& piece) { return !piece.surface.empty() && piece.measures.usable(); }

SeamForm form_of_edge(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto) {
    if (!is_open(piece, join.end)) return SeamForm::none;
    if (const auto end = end_at(onto, join.at))
        return is_open(onto, *end) ? SeamForm::ring : SeamForm::circle;
    return join.at.around ? SeamForm::ring : SeamForm::circle;
}

SeamForm form_of_layers(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto) {
    const bool disc = std::holds_alternative<MagicRing>(piece.piece->start) && join.end == JoinedEnd::end;
    const SeamForm edge = form_of_edge(join, piece, onto);
    return disc && edge == SeamForm::circle ? SeamForm::patch : edge;
}

}  // namespace

Vec3 SeamLine::middle() const {
    Vec3 sum = Vec3::Zero();
    for (const SurfaceSpot& spot : points) sum += spot.place;
    return points.empty() ? sum : Vec3(sum / static_cast<double>(points.size()));
}

SewnEdge sewn_edge(const SolvedPiece& piece, JoinedEnd end) {
    const std::size_t at = loop_of(piece, end);
    const LoopMeasures& loop = piece.measures.loops[at];
    SewnEdge edge;
    edge.middle = {0, height_of_loop(piece, static_cast<int>(at)), 0};
    edge.radius_mm = loop.radius_mm;
    edge.stitches_mm = loop.length_mm() / std::max(1e-3, 1 + loop.course_stretch);
    return edge;
}

std::vector<Vec3> edge_points(const SolvedPiece& piece, JoinedEnd end) {
    const double along = end == JoinedEnd::start ? 0 : piece.surface.end_mm();
    std::vector<Vec3> points;
    for (std::size_t k = 0; k < points_of_seam; ++k)
        points.push_back(piece.surface.at({along, 2 * pi * static_cast<double>(k) / points_of_seam}).point);
    return points;
}

SeamForm seam_form(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto) {
    if (!has_shape(piece) || !has_shape(onto)) return SeamForm::none;
    if (curls(*piece.piece, piece.stitches) || curls(*onto.piece, onto.stitches)) return SeamForm::none;
    switch (join.seam) {
        case Seam::edge:
            return form_of_edge(join, piece, onto);
        case Seam::straight:
            return SeamForm::straight;
        case Seam::layers:
            return form_of_layers(join, piece, onto);
        case Seam::worked_on:
            return join.at.round == -1 ? SeamForm::none : form_of_edge(join, piece, onto);
        case Seam::closed:
        case Seam::hung:
            break;
    }
    return SeamForm::none;
}

SeamLine seam_line(const Join& join, const SolvedPiece& piece, const SolvedPiece& onto, const JoinFrame& end,
                   const JoinFrame& place) {
    return LineFinder(join, piece, onto, end, place).find(seam_form(join, piece, onto));
}

}  // namespace roundwright
