#include "app/assembly/join_handles.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/assembly/join_frames.h"

namespace roundwright::app {
namespace {

using std::numbers::pi;

constexpr double degrees_per_radian = 180 / pi;
constexpr double off_the_fabric_mm = 6;
constexpr double hoop_thickness_mm = 1.1;
constexpr double stem_mm = 12;
constexpr double stem_thickness_mm = 0.8;
constexpr double knob_radius_mm = 3.5;
constexpr double most_lean_degrees = 90;

/// A surface (u, v) -> point with its normal, of so many quadrangles each way, u and v from 0 to 1.
template <class At>
void add_patch(Mesh& mesh, const Colour& colour, int across, int along, At at) {
    const auto first = static_cast<std::uint32_t>(mesh.vertex_count());
    for (int i = 0; i <= across; ++i) {
        for (int k = 0; k <= along; ++k) {
            const auto [point, normal] = at(static_cast<double>(i) / across, static_cast<double>(k) / along);
            for (int axis = 0; axis < 3; ++axis) {
                mesh.positions.push_back(static_cast<float>(point[axis]));
                mesh.normals.push_back(static_cast<float>(normal[axis]));
            }
            for (const int channel : {colour.red, colour.green, colour.blue})
                mesh.colours.push_back(static_cast<float>(channel) / 255.0F);
        }
    }
    const auto row = static_cast<std::uint32_t>(along + 1);
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(across); ++i) {
        for (std::uint32_t k = 0; k < static_cast<std::uint32_t>(along); ++k) {
            const std::uint32_t a = first + i * row + k, b = a + row;
            for (const std::uint32_t corner : {a, b, b + 1, a, b + 1, a + 1}) mesh.indices.push_back(corner);
            mesh.stitch_of_triangle.insert(mesh.stitch_of_triangle.end(), 2, -1);
        }
    }
}

struct Spot {
    Vec3 point;
    Vec3 normal;
};

/// Two directions square to `axis`.
std::pair<Vec3, Vec3> square_pair(const Vec3& axis) {
    const Vec3 one = axis.unitOrthogonal();
    return {one, axis.cross(one)};
}

std::optional<Vec3> on_plane(const Ray& ray, const Vec3& point, const Vec3& normal) {
    const double along = ray.direction.dot(normal);
    if (std::abs(along) < 1e-3 * ray.direction.norm()) return std::nullopt;
    const double t = (point - ray.origin).dot(normal) / along;
    return t > 0 ? std::optional<Vec3>(ray.origin + t * ray.direction) : std::nullopt;
}

/// About the plane through the axis of a piece and the middle of its face.
Vec3 mirrored_about(const Piece& piece, const Vec3& direction) {
    const double turn = piece.face_degrees / degrees_per_radian;
    const Vec3 right(std::cos(turn), 0, -std::sin(turn));
    return direction - 2 * direction.dot(right) * right;
}

}  // namespace

std::optional<JoinHandles> join_handles(const Toy& toy, const roundwright::AssembledToy& whole,
                                        std::size_t placed, const Pose& in_picture) {
    const PlacedPiece& piece = whole.placed.pieces[placed];
    if (!piece.join || !piece.onto || *piece.join >= toy.joins.size()) return std::nullopt;
    const Join& join = toy.joins[*piece.join];
    const PlacedPiece& onto = whole.placed.pieces[*piece.onto];
    const auto end = frame_of_end(whole.solved[piece.solved], join.end);
    const auto at = frame_of_place(whole.solved[onto.solved], join.at);
    if (!end || !at) return std::nullopt;
    const SolvedPiece& solved = whole.solved[piece.solved];
    const Piece& below = *whole.solved[onto.solved].piece;
    JoinHandles handles;
    handles.mirrored = piece.mirrored;
    handles.place = in_picture * piece.pose * end->point;
    handles.axis = (in_picture.linear() * piece.pose.linear() * -end->out).normalized();
    const auto seen = [&](const Vec3& direction) -> Vec3 {
        return in_picture.linear() * onto.pose.linear() *
               (piece.mirrored ? mirrored_about(below, direction) : direction);
    };
    handles.out = seen(at->out);
    handles.up = seen(at->up);
    handles.right = seen(at->right);
    const double length = std::max(solved.measures.height_mm, off_the_fabric_mm);
    handles.hoop_middle = handles.place + length / 2 * handles.axis;
    handles.hoop_radius = solved.measures.width_mm / 2 + off_the_fabric_mm;
    handles.knob_reach = length + stem_mm;
    return handles;
}

Mesh hoop_mesh(const JoinHandles& handles, const Colour& colour) {
    const auto [one, other] = square_pair(handles.axis);
    Mesh mesh;
    constexpr int around = 64, through = 8;
    add_patch(mesh, colour, around, through, [&, one = one, other = other](double u, double v) {
        const Vec3 away = std::cos(2 * pi * u) * one + std::sin(2 * pi * u) * other;
        const Vec3 normal = std::cos(2 * pi * v) * away + std::sin(2 * pi * v) * handles.axis;
        return Spot{handles.hoop_middle + handles.hoop_radius * away + hoop_thickness_mm * normal, normal};
    });
    return mesh;
}

Mesh knob_mesh(const JoinHandles& handles, const Colour& colour) {
    const auto [one, other] = square_pair(handles.axis);
    Mesh mesh;
    constexpr int around = 16, along = 10;
    const Vec3 middle = handles.place + handles.knob_reach * handles.axis;
    add_patch(mesh, colour, around, along, [&, one = one, other = other](double u, double v) {
        const Vec3 away = std::cos(2 * pi * u) * one + std::sin(2 * pi * u) * other;
        const Vec3 normal = std::sin(pi * v) * away - std::cos(pi * v) * handles.axis;
        return Spot{middle + knob_radius_mm * normal, normal};
    });
    add_patch(mesh, colour, 8, 1, [&, one = one, other = other](double u, double v) {
        const Vec3 away = std::cos(2 * pi * u) * one + std::sin(2 * pi * u) * other;
        return Spot{middle - (1 - v) * stem_mm * handles.axis + stem_thickness_mm * away, away};
    });
    return mesh;
}

std::optional<double> turned_by(const JoinHandles& handles, const Ray& from, const Ray& to) {
    const auto a = on_plane(from, handles.hoop_middle, handles.axis);
    const auto b = on_plane(to, handles.hoop_middle, handles.axis);
    if (!a || !b) return std::nullopt;
    const Vec3 before = *a - handles.hoop_middle, now = *b - handles.hoop_middle;
    const double turned = std::atan2(handles.axis.dot(before.cross(now)), before.dot(now));
    return (handles.mirrored ? -1 : 1) * turned * degrees_per_radian;
}

Lean leant_to(const JoinHandles& handles, const Ray& ray) {
    const Vec3 along = ray.direction.normalized();
    const Vec3 nearest = ray.origin + (handles.place - ray.origin).dot(along) * along;
    const double off = (nearest - handles.place).norm();
    // Where the ray meets the ball that the knob moves on, else where it passes closest by.
    const double back = std::sqrt(std::max(0.0, handles.knob_reach * handles.knob_reach - off * off));
    const Vec3 far = (nearest - back * along - handles.place).normalized();
    const double up = std::asin(std::clamp(far.dot(handles.up), -1.0, 1.0)) * degrees_per_radian;
    const double right = std::atan2(far.dot(handles.right), far.dot(handles.out)) * degrees_per_radian;
    const auto whole = [](double degrees) {
        return std::clamp(std::round(degrees), -most_lean_degrees, most_lean_degrees);
    };
    return {whole(up), whole(right)};
}

}  // namespace roundwright::app
