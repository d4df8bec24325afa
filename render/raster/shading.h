#pragma once

#include <Eigen/Core>
#include <string>

#include "render/raster/fabric_picture.h"
#include "render/raster/scene_part.h"

namespace roundwright::render {

/// How one finish answers the light.
struct FinishValues {
    float wrap;              ///< how far the headlight reaches round the form
    float fuzz;              ///< light caught by fibres that stand off at the outline
    float broad;             ///< faint wide highlight
    float sharp;             ///< small bright one
    bool two_sided = false;  ///< fibres, which have no inner side
};
[[nodiscard]] FinishValues values_of(Finish finish);

/// One visible point, in the eye's frame: x right, y up, z towards the viewer, mm.
struct ShadedPoint {
    Eigen::Vector3f position;
    Eigen::Vector3f normal;  ///< of the mean surface, unit, turned towards the viewer
    Eigen::Vector3f colour;  ///< linear 0..1
    FabricPoint fabric;      ///< of the stitch's face there; of a plain thing as it is
    Eigen::Vector3f across = Eigen::Vector3f::Zero();  ///< gradient of the place across the face, faces a mm
    Eigen::Vector3f up = Eigen::Vector3f::Zero();      ///< and up it
    float lit = 0;                                     ///< 1 in a lit round, 0 outside, between on the seam
    float lit_step = 0;                                ///< change of `lit` across one pixel
    bool inside = false;                               ///< the inner side of the fabric
};

/// What holds for the whole picture.
struct ShadingSetup {
    Finish finish = Finish::yarn;
    bool any_lit = false;
    float stitch_mm = 5;         ///< height of a relief of one stitch width
    float pixel_angle = 0.001F;  ///< radians one pixel takes up
};

/// The level of a FacePicture at which a texel is as large as a pixel, for a surface so far off and so
/// turned.
[[nodiscard]] float fabric_level(float depth_mm, float facing, const ShadingSetup& setup);

/// Linear light, 0..1 each, of one point. A headlight over the viewer's left shoulder with soft wrapping,
/// ambient light from above, a velvet rim for the fuzz and a faint broad highlight, on the cords of yarn that
/// the fabric's relief makes. White yarn reads as white and does not clip, black yarn stays readable.
[[nodiscard]] Eigen::Vector3f shade(const ShadedPoint& point, const ShadingSetup& setup);

/// Opacity of the comparison surface: faint where it faces the viewer, denser towards its outline.
[[nodiscard]] float ghost_opacity(float facing, bool behind);

/// Its colour, linear: slate before a light background, pale before a dark one.
[[nodiscard]] Eigen::Vector3f ghost_colour(const QColor& background);

/// The same computations for the graphics card, GLSL 1.50 core.
[[nodiscard]] std::string vertex_shader_text();
[[nodiscard]] std::string fragment_shader_text();
[[nodiscard]] std::string ghost_fragment_shader_text(bool behind);
/// A rim: the shape in one colour, moved `rimStep` (of the picture's half sides) each way, once an instance.
[[nodiscard]] std::string rim_vertex_shader_text();
[[nodiscard]] std::string rim_fragment_shader_text();
inline constexpr int rim_directions = 12;

/// The transfer function of sRGB, IEC 61966-2-1, as the power 2.2 that the shader uses.
[[nodiscard]] float to_linear(float srgb);
[[nodiscard]] float to_srgb(float linear);

}  // namespace roundwright::render
