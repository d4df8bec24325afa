#pragma once

#include <Eigen/Core>
#include <string>

#include "render/scene/scene_view.h"

namespace roundwright::render {

/// How one finish answers the light.
struct FinishValues {
    float wrap;   ///< how far the headlight reaches round the form
    float fuzz;   ///< light caught by fibres that stand off at the outline
    float broad;  ///< faint wide highlight
    float sharp;  ///< small bright one
};
[[nodiscard]] FinishValues values_of(Finish finish);

/// One visible point, in the eye's frame: x right, y up, z towards the viewer, mm.
struct ShadedPoint {
    Eigen::Vector3f position;
    Eigen::Vector3f normal;  ///< unit, turned towards the viewer
    Eigen::Vector3f place;   ///< mm, in the piece's own axes: where the fibre's grain is taken from
    Eigen::Vector3f colour;  ///< linear 0..1
    float openness = 1;      ///< 1 on ridges and flats, less in hollows
    float lit = 0;           ///< 1 in a lit round, 0 outside, between on the seam
    float lit_step = 0;      ///< change of `lit` across one pixel
    bool inside = false;     ///< the inner side of the fabric
};

/// What holds for the whole picture.
struct ShadingSetup {
    Finish finish = Finish::yarn;
    bool any_lit = false;
    float grain_per_mm = 1.2F;                             ///< fibres across one millimetre
    float pixel_angle = 0.001F;                            ///< radians one pixel takes up
    Eigen::Matrix3f to_eye = Eigen::Matrix3f::Identity();  ///< turns the piece's axes into the eye's
};

/// Linear light, 0..1 each, of one point. A headlight over the viewer's left shoulder with soft wrapping,
/// ambient light from above, a velvet rim for the fuzz and a faint broad highlight. Pale yarn stays below
/// white, black yarn stays readable.
[[nodiscard]] Eigen::Vector3f shade(const ShadedPoint& point, const ShadingSetup& setup);

/// Opacity of the comparison surface: faint where it faces the viewer, denser towards its outline.
[[nodiscard]] float ghost_opacity(float facing, bool behind);

/// Its colour, linear: slate before a light background, pale before a dark one.
[[nodiscard]] Eigen::Vector3f ghost_colour(const QColor& background);

/// Fibres a millimetre, and the size of the hollows that darken, for stitches of this size.
[[nodiscard]] double grain_per_mm(double stitch_mm);
[[nodiscard]] double hollow_scale(double stitch_mm);

/// The same computations for the graphics card, GLSL 1.50 core.
[[nodiscard]] std::string vertex_shader_text();
[[nodiscard]] std::string fragment_shader_text();
[[nodiscard]] std::string ghost_fragment_shader_text(bool behind);

/// The transfer function of sRGB, IEC 61966-2-1, as the power 2.2 that the shader uses.
[[nodiscard]] float to_linear(float srgb);
[[nodiscard]] float to_srgb(float linear);

}  // namespace roundwright::render
