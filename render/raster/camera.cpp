#include "render/raster/camera.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace roundwright::render {

namespace {

constexpr double radians_per_degree = std::numbers::pi / 180;
constexpr double nearest_in_radii = 0.05;
constexpr double farthest_in_radii = 40;

template <typename Visit>
void for_each_point(const std::vector<PointCloud>& clouds, Visit visit) {
    for (const PointCloud& cloud : clouds) {
        for (std::size_t i = 0; i + 2 < cloud.size(); i += 3) {
            visit(Vec3(cloud[i], cloud[i + 1], cloud[i + 2]));
        }
    }
}

struct Box {
    Vec3 low = Vec3::Constant(std::numeric_limits<double>::infinity());
    Vec3 high = Vec3::Constant(-std::numeric_limits<double>::infinity());
    [[nodiscard]] bool empty() const { return !(low.x() <= high.x()); }
};

Box box_of(const std::vector<PointCloud>& clouds) {
    Box box;
    for_each_point(clouds, [&box](const Vec3& p) {
        box.low = box.low.cwiseMin(p);
        box.high = box.high.cwiseMax(p);
    });
    return box;
}

double wrapped(double degrees) { return std::remainder(degrees, 360.0); }

}  // namespace

void Camera::set_viewport(double width_px, double height_px) {
    width_px_ = std::max(1.0, width_px);
    height_px_ = std::max(1.0, height_px);
}

void Camera::turn(double yaw_degrees, double pitch_degrees) {
    yaw_ = wrapped(yaw_ + yaw_degrees);
    pitch_ = std::clamp(pitch_ + pitch_degrees, -most_pitch_degrees, most_pitch_degrees);
}

void Camera::look_from(ViewDirection direction) {
    struct Angles {
        double yaw, pitch;
    };
    const Angles angles = [direction]() -> Angles {
        switch (direction) {
            case ViewDirection::front:
                return {0, 0};
            case ViewDirection::side:
                return {90, 0};
            case ViewDirection::back:
                return {180, 0};
            case ViewDirection::top:
                return {0, 90};
            case ViewDirection::bottom:
                return {0, -90};
            case ViewDirection::three_quarter:
                break;
        }
        return {30, 18};
    }();
    yaw_ = angles.yaw;
    pitch_ = angles.pitch;
}

void Camera::keep_distance_in_bounds() {
    distance_ = std::clamp(distance_, nearest_in_radii * radius_, farthest_in_radii * radius_);
}

void Camera::zoom(double factor) {
    if (!(factor > 0) || !std::isfinite(factor)) return;
    distance_ /= factor;
    keep_distance_in_bounds();
}

void Camera::zoom_by_wheel(double delta) { zoom(std::pow(0.999, -delta)); }

void Camera::pan(double right_px, double down_px) {
    const double mm = 1 / pixels_per_mm();
    const double most = 4 * radius_;
    pan_right_ = std::clamp(pan_right_ - right_px * mm, -most, most);
    pan_up_ = std::clamp(pan_up_ + down_px * mm, -most, most);
}

// With x, y along right and up and z towards the eye, all from the pivot, the point is inside the picture
// widened by k at distance D and pan c when |x - c| <= k (D - z). So k D >= max(x + k z) - c and
// k D >= max(-x + k z) + c: the least D is half the sum of the two maxima over k, c half their difference.
void Camera::fit(const std::vector<PointCloud>& clouds, double margin) {
    const Box box = box_of(clouds);
    if (box.empty()) return;
    pivot_ = (box.low + box.high) / 2;
    set_content(clouds);
    const ViewAxes a = axes();
    const double kx = half_width() / margin;
    const double ky = half_height() / margin;
    constexpr double lowest = -std::numeric_limits<double>::infinity();
    double right = lowest, left = lowest, top = lowest, bottom = lowest;
    for_each_point(clouds, [&](const Vec3& point) {
        const Vec3 q = point - pivot_;
        const double x = q.dot(a.right), y = q.dot(a.up), z = q.dot(a.back);
        right = std::max(right, x + kx * z);
        left = std::max(left, -x + kx * z);
        top = std::max(top, y + ky * z);
        bottom = std::max(bottom, -y + ky * z);
    });
    distance_ = std::max((right + left) / (2 * kx), (top + bottom) / (2 * ky));
    keep_distance_in_bounds();
    pan_right_ = (right - left) / 2;
    pan_up_ = (top - bottom) / 2;
}

void Camera::set_content(const std::vector<PointCloud>& clouds) {
    double square = 0;
    for_each_point(clouds, [&](const Vec3& p) { square = std::max(square, (p - pivot_).squaredNorm()); });
    if (square > 0) radius_ = std::sqrt(square);
}

bool Camera::shows_all(const std::vector<PointCloud>& clouds, double margin) const {
    const double slack = 1 / height_px_;
    const double most_x = half_width() * (1 / margin + slack), most_y = half_height() * (1 / margin + slack);
    const ViewAxes a = axes();
    const Vec3 from = eye();
    bool all = true;
    for_each_point(clouds, [&](const Vec3& point) {
        const Vec3 q = point - from;
        const double depth = -q.dot(a.back);
        all = all && depth > 0 && std::abs(q.dot(a.right)) <= most_x * depth &&
              std::abs(q.dot(a.up)) <= most_y * depth;
    });
    return all;
}

ViewAxes Camera::axes() const {
    const double a = yaw_ * radians_per_degree;
    const double p = pitch_ * radians_per_degree;
    const Vec3 back(std::sin(a) * std::cos(p), std::sin(p), std::cos(a) * std::cos(p));
    const Vec3 right(std::cos(a), 0, -std::sin(a));
    return {right, back.cross(right), back};
}

Vec3 Camera::eye() const {
    const ViewAxes a = axes();
    return pivot_ + distance_ * a.back + pan_right_ * a.right + pan_up_ * a.up;
}

double Camera::near_plane() const {
    return std::max(distance_ - 1.05 * radius_, 0.005 * std::max(radius_, distance_));
}

double Camera::far_plane() const { return distance_ + 1.05 * radius_; }

double Camera::half_height() const { return std::tan(field_of_view_degrees / 2 * radians_per_degree); }

double Camera::half_width() const { return half_height() * width_px_ / height_px_; }

Vec3 Camera::project(const Vec3& point) const {
    const ViewAxes a = axes();
    const Vec3 q = point - eye();
    const double depth = -q.dot(a.back);
    return {width_px_ / 2 * (1 + q.dot(a.right) / (depth * half_width())),
            height_px_ / 2 * (1 - q.dot(a.up) / (depth * half_height())), depth};
}

Ray Camera::ray(double x_px, double y_px) const {
    const ViewAxes a = axes();
    const double x = (2 * x_px / width_px_ - 1) * half_width();
    const double y = (1 - 2 * y_px / height_px_) * half_height();
    return {eye(), (x * a.right + y * a.up - a.back).normalized()};
}

double Camera::pixels_per_mm() const { return height_px_ / (2 * half_height() * distance_); }

}  // namespace roundwright::render
