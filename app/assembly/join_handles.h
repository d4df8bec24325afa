#pragma once

#include <optional>

#include "core/assembly/placed_surface.h"
#include "core/base/colour.h"
#include "core/mesh/ray_cast.h"

namespace roundwright::app {

/// What the picked piece is turned and leant by in the picture: a hoop around it, and a knob on a stem beyond
/// its far end. All in the picture's frame, mm.
struct JoinHandles {
    Vec3 place = Vec3::Zero();  ///< where it is sewn on
    Vec3 axis = Vec3::UnitY();  ///< of the piece, to its far end
    Vec3 hoop_middle = Vec3::Zero();
    double hoop_radius = 0;
    double knob_reach = 0;  ///< from the place
    // The directions that it leans in, of the join: of the second of a pair in the mirror.
    Vec3 out = Vec3::UnitY(), up = Vec3::UnitZ(), right = Vec3::UnitX();
    bool mirrored = false;
};

/// Of a placed copy that is sewn on, in a picture that shows the toy's frame so turned and shifted; nothing
/// where it is not, or has no place.
[[nodiscard]] std::optional<JoinHandles> join_handles(const Toy& toy, const roundwright::AssembledToy& whole,
                                                      std::size_t placed, const Pose& in_picture);

[[nodiscard]] Mesh hoop_mesh(const JoinHandles& handles, const Colour& colour);
[[nodiscard]] Mesh knob_mesh(const JoinHandles& handles, const Colour& colour);

/// By how many degrees a pull on the hoop from one ray to another turns the join; nothing where one of them
/// runs beside its plane.
[[nodiscard]] std::optional<double> turned_by(const JoinHandles& handles, const Ray& from, const Ray& to);

/// How far the join leans when its knob is under the ray.
struct Lean {
    double up_degrees = 0;
    double right_degrees = 0;
};
[[nodiscard]] Lean leant_to(const JoinHandles& handles, const Ray& ray);

}  // namespace roundwright::app
