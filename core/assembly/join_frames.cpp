#include "core/assembly/join_frames.h"

#include <cmath>
#include <numbers>

#include "core/shape/curled_strip.h"

namespace roundwright {
namespace {

constexpr double radians_per_degree = std::numbers::pi / 180;
/// Of what has a direction.
constexpr double least_length = 1e-6;

/// A vector at right angles to `out`, as near to `wanted` as can be; to `instead` where that runs along
/// `out`.
Vec3 square_to(const Vec3& out, const Vec3& wanted, const Vec3& instead) {
    constexpr double along = 0.999;
    const Vec3& towards = std::abs(out.dot(wanted)) < along ? wanted : instead;
    const Vec3 square = towards - towards.dot(out) * out;
    return square.norm() > least_length ? Vec3(square.normalized()) : out.unitOrthogonal();
}

/// The axis about which `out` turns towards a direction.
Vec3 axis_towards(const Vec3& out, const Vec3& direction) {
    const Vec3 axis = out.cross(direction);
    return axis.norm() > least_length ? Vec3(axis.normalized()) : out.unitOrthogonal();
}

/// A frame's directions as columns: to the right of its front seen from outside, out, front.
Eigen::Matrix3d directions(const Vec3& out, const Vec3& front) {
    Eigen::Matrix3d columns;
    columns << out.cross(front), out, front;
    return columns;
}

/// Up the axis from the start of the piece to its end: 1, or -1 where it starts at the top.
double upwards(const SolvedPiece& piece) { return piece.piece->starts_at_top ? -1 : 1; }

/// The ends of a strip that curls are those of its coil, not its edges.
JoinFrame on_axis(const SolvedPiece& piece, JoinedEnd end) {
    const int loop = end == JoinedEnd::start ? 0 : piece.surface.loops() - 1;
    const double out = end == JoinedEnd::start ? -upwards(piece) : upwards(piece);
    // An end that is drawn to a point lies a little beyond its last loop.
    const SurfacePlace edge{end == JoinedEnd::start ? 0 : piece.surface.end_mm(), 0};
    const bool closed = end == JoinedEnd::end && piece.piece->end != End::left_open;
    const double height = curls(*piece.piece, piece.stitches) ? (out > 0 ? piece.measures.height_mm : 0)
                          : closed                            ? piece.surface.at(edge).point.y()
                                                              : height_of_loop(piece, loop);
    const double turn = piece.piece->face_degrees * radians_per_degree;
    const Vec3 front(std::sin(turn), 0, std::cos(turn));
    return {{0, height, 0}, {0, out, 0}, front, front, {std::cos(turn), 0, -std::sin(turn)}};
}

/// About the plane through the axis of a piece and the middle of its face.
Eigen::Matrix3d reflection(const Piece& piece) {
    const double turn = piece.face_degrees * radians_per_degree;
    const Vec3 right(std::cos(turn), 0, -std::sin(turn));
    return Eigen::Matrix3d::Identity() - 2 * right * right.transpose();
}

bool usable(const SolvedPiece& piece) { return !piece.surface.empty() && piece.measures.usable(); }

}  // namespace

double height_of_loop(const SolvedPiece& piece, int loop) {
    const double from_start = piece.measures.loops[static_cast<std::size_t>(loop)].height_mm;
    return piece.piece->starts_at_top ? piece.measures.height_mm - from_start : from_start;
}

std::optional<JoinFrame> frame_of_end(const SolvedPiece& piece, JoinedEnd end) {
    if (!usable(piece)) return std::nullopt;
    return on_axis(piece, end);
}

std::optional<JoinFrame> frame_of_place(const SolvedPiece& piece, const JoinPlace& place) {
    const int rounds = piece.surface.loops() - 1;
    if (!usable(piece) || place.round < -1 || place.round >= rounds) return std::nullopt;
    if (place.round == -1) return on_axis(piece, JoinedEnd::start);
    if (place.round == rounds - 1) return on_axis(piece, JoinedEnd::end);
    JoinFrame frame = on_axis(piece, JoinedEnd::end);
    if (place.around) {
        frame.point.y() = height_of_loop(piece, place.round + 1);
        const bool nearer_start = 2 * (place.round + 1) < rounds;
        if (nearer_start) frame.out = -frame.out;
        return frame;
    }
    const auto count = static_cast<double>(piece.stitches[static_cast<std::size_t>(place.round)]);
    const double angle = 2 * std::numbers::pi * place.stitches_right / std::max(1.0, count);
    const SurfacePoint at = piece.surface.at({piece.surface.along_of_loop(place.round + 1), angle});
    // In the fold of a layer that is bent the surface has no normal of unit length.
    const double length = at.normal.norm();
    const Vec3 normal = length > least_length ? Vec3(at.normal / length) : frame.front;
    return JoinFrame{at.point, normal, square_to(normal, frame.front, at.up), at.up, at.right};
}

Pose pose_of_join(const Join& join, const JoinFrame& end, const JoinFrame& place) {
    // The end's `out` meets the surface head on; its far end points away from it.
    const Eigen::Matrix3d of_end = directions(-end.out, square_to(-end.out, end.front, Vec3::UnitY()));
    const Eigen::Matrix3d of_place = directions(place.out, place.front);
    const Eigen::AngleAxisd leant(join.lean_degrees * radians_per_degree, axis_towards(place.out, place.up));
    const Eigen::AngleAxisd leant_right(join.lean_right_degrees * radians_per_degree,
                                        axis_towards(place.out, place.right));
    const Eigen::AngleAxisd turned(join.turn_degrees * radians_per_degree, place.out);
    const Eigen::Matrix3d turn =
        (leant_right * leant * turned).toRotationMatrix() * of_place * of_end.transpose();
    Pose pose = Pose::Identity();
    pose.linear() = turn;
    pose.translation() = place.point - join.sink_mm * place.out - turn * end.point;
    return pose;
}

Pose mirrored(const Pose& pose, const Piece& piece, const Piece& onto) {
    const Eigen::Matrix3d mirror = reflection(onto);
    Pose other = Pose::Identity();
    other.linear() = mirror * pose.linear() * reflection(piece);
    other.translation() = mirror * pose.translation();
    return other;
}

}  // namespace roundwright
