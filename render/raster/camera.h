#pragma once

#include <span>
#include <vector>

#include "core/base/vec.h"
#include "core/mesh/ray_cast.h"

namespace roundwright::render {

enum class ViewDirection { front, side, back, top, bottom, three_quarter };

/// The right-handed frame of the eye: `back` points from the piece to the eye.
struct ViewAxes {
    Vec3 right;
    Vec3 up;
    Vec3 back;
};

/// Vertex positions as the mesh holds them, three floats each, mm.
using PointCloud = std::span<const float>;

/// A turntable camera with a perspective lens: the piece turns about its upright axis, the horizon stays
/// level. It knows no window and no drawing library; pixels are logical, with the origin at the upper left.
///
/// The frame needs no fixed "up": with yaw a and pitch p,
/// back = (sin a cos p, sin p, cos a cos p), right = (cos a, 0, -sin a), up = back x right, which is defined
/// straight from above and below too.
class Camera {
  public:
    static constexpr double field_of_view_degrees = 28;  ///< upright
    static constexpr double most_pitch_degrees = 89;     ///< by turning; the top and bottom views go to 90
    static constexpr double fit_margin = 1.08;

    /// Sizes below one pixel count as one.
    void set_viewport(double width_px, double height_px);
    [[nodiscard]] double viewport_width() const { return width_px_; }
    [[nodiscard]] double viewport_height() const { return height_px_; }

    void turn(double yaw_degrees, double pitch_degrees);
    void look_from(ViewDirection direction);
    /// Above 1 comes nearer. The distance stays within sight of the piece.
    void zoom(double factor);
    /// A wheel's turn in eighths of a degree, 120 a notch: the distance becomes 0.999^delta of itself.
    void zoom_by_wheel(double delta);
    /// Moves the picture by this many pixels, right and down.
    void pan(double right_px, double down_px);

    /// Keeps the direction and shows every point as large as the viewport allows, centred, with the viewport
    /// `margin` times as large as the picture in the tighter direction. Nothing to show: no change.
    void fit(const std::vector<PointCloud>& clouds, double margin = fit_margin);
    /// Tells what is shown now, so that nothing of it is cut off by the near and far planes.
    void set_content(const std::vector<PointCloud>& clouds);
    /// Whether every point lies within the viewport, or its middle part that is `margin` times as small.
    [[nodiscard]] bool shows_all(const std::vector<PointCloud>& clouds, double margin = 1) const;

    [[nodiscard]] double yaw_degrees() const { return yaw_; }
    [[nodiscard]] double pitch_degrees() const { return pitch_; }
    [[nodiscard]] double distance() const { return distance_; }
    /// The point the piece turns about.
    [[nodiscard]] const Vec3& pivot() const { return pivot_; }
    [[nodiscard]] ViewAxes axes() const;
    [[nodiscard]] Vec3 eye() const;
    [[nodiscard]] double near_plane() const;
    [[nodiscard]] double far_plane() const;
    /// Half the picture's height and width at a distance of one.
    [[nodiscard]] double half_height() const;
    [[nodiscard]] double half_width() const;

    /// Where a point of space appears; x and y in pixels, z its depth before the eye in mm.
    [[nodiscard]] Vec3 project(const Vec3& point) const;
    /// From the eye through this point of the picture, of unit length.
    [[nodiscard]] Ray ray(double x_px, double y_px) const;
    /// Pixels that one millimetre takes up at the pivot's depth.
    [[nodiscard]] double pixels_per_mm() const;

  private:
    void keep_distance_in_bounds();

    double width_px_ = 1;
    double height_px_ = 1;
    double yaw_ = 30;
    double pitch_ = 18;
    double distance_ = 300;
    double pan_right_ = 0;
    double pan_up_ = 0;
    double radius_ = 50;  ///< of what is shown, about the pivot
    Vec3 pivot_ = Vec3::Zero();
};

}  // namespace roundwright::render
