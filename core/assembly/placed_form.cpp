#include "core/assembly/placed_form.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/assembly/worked_on_legs.h"

namespace roundwright {
namespace {

using std::numbers::pi;

/// For directions on a bent piece.
constexpr double small_step_mm = 0.05;

Eigen::Matrix3d mirror_of(const Piece& piece) {
    const double turn = piece.face_degrees * pi / 180;
    const Vec3 right(std::cos(turn), 0, -std::sin(turn));
    return Eigen::Matrix3d::Identity() - 2 * right * right.transpose();
}

}  // namespace

/// A flat piece laid on a surface: the distance from its middle and the angle about it are kept.
struct PlacedForm::Patch {
    FabricProfile profile;
    std::vector<SurfaceSpot> circles;
    Eigen::Matrix3d own;
    double first_angle = 0;
    double lift_mm = 0;

    [[nodiscard]] Vec3 place(const Vec3& seen) const {
        const Vec3 point = own * seen;
        const FabricProfile::Spot spot = profile.nearest(point);
        const double out = std::clamp(spot.distance_mm / profile.length_mm(), 0.0, 1.0) * circles_of_patch;
        const auto circle = std::min(static_cast<std::size_t>(out), circles_of_patch - 1);
        const double turns = (std::atan2(point.x(), point.z()) - first_angle) / (2 * pi);
        const double around = (turns - std::floor(turns)) * points_of_seam;
        const auto k = static_cast<std::size_t>(around) % points_of_seam;
        const auto blend = [&](std::size_t ring) {
            const SurfaceSpot& a = circles[ring * points_of_seam + k];
            const SurfaceSpot& b = circles[ring * points_of_seam + (k + 1) % points_of_seam];
            const double share = around - std::floor(around);
            return SurfaceSpot{(1 - share) * a.place + share * b.place,
                               (1 - share) * a.normal + share * b.normal};
        };
        const SurfaceSpot inner = blend(circle), outer = blend(circle + 1);
        const double share = out - static_cast<double>(circle);
        const Vec3 normal = ((1 - share) * inner.normal + share * outer.normal).normalized();
        return (1 - share) * inner.place + share * outer.place + (lift_mm + spot.outwards_mm) * normal;
    }

    friend bool operator==(const Patch& a, const Patch& b) {
        return a.profile == b.profile && a.own == b.own && a.first_angle == b.first_angle &&
               a.lift_mm == b.lift_mm && a.circles == b.circles;
    }
};

void PlacedForm::bend(std::shared_ptr<const EdgeBend> bend, const Eigen::Matrix3d& own) {
    bends_.push_back({std::move(bend), own});
}

void PlacedForm::lay(const SolvedPiece& piece, std::vector<SurfaceSpot> circles, const Eigen::Matrix3d& own) {
    auto patch = std::make_shared<Patch>();
    patch->profile = FabricProfile(piece, JoinedEnd::start, piece.surface.end_mm());
    patch->circles = std::move(circles);
    patch->own = own;
    patch->first_angle = piece.piece->face_degrees * pi / 180;
    patch->lift_mm = piece.fabric_mm;
    patch_ = std::move(patch);
}

Vec3 PlacedForm::place(const Vec3& point) const {
    if (patch_) return patch_->place(point);
    Vec3 placed = pose_ * point;
    for (const OwnBend& bend : bends_) placed += bend.bend->shift(bend.own * point);
    return placed;
}

SurfaceSpot PlacedForm::place(const SurfaceSpot& spot) const {
    if (patch_) return place_by_differences(spot);
    Vec3 here = pose_ * spot.place;
    const Vec3 rigid = pose_.linear() * spot.normal;
    if (bends_.empty()) return {here, rigid};
    Eigen::Matrix3d derivative = pose_.linear();
    for (const OwnBend& bend : bends_) {
        const EdgeBend::Shift shift = bend.bend->shift_with_derivative(bend.own * spot.place);
        here += shift.by;
        derivative += shift.derivative * bend.own;
    }
    // A normal goes over to the cross product of what two directions at right angles to it become.
    const Vec3 aside = spot.normal.unitOrthogonal();
    const Vec3 normal = (derivative * aside).cross(derivative * spot.normal.cross(aside));
    const double length = normal.norm();
    return {here, length > 1e-9 ? Vec3(normal / length) : rigid};
}

SurfaceSpot PlacedForm::place_by_differences(const SurfaceSpot& spot) const {
    const Vec3 here = place(spot.place);
    const Vec3 aside = spot.normal.unitOrthogonal(), other = spot.normal.cross(aside);
    const Vec3 a = place(Vec3(spot.place + small_step_mm * aside)) - here;
    const Vec3 b = place(Vec3(spot.place + small_step_mm * other)) - here;
    const Vec3 normal = a.cross(b);
    const double length = normal.norm();
    return {here, length > 1e-9 ? Vec3(normal / length) : Vec3(pose_.linear() * spot.normal)};
}

bool operator==(const PlacedForm& a, const PlacedForm& b) {
    const auto same = [](const auto& x, const auto& y) { return x == y || (x && y && *x == *y); };
    const auto same_bend = [&](const PlacedForm::OwnBend& x, const PlacedForm::OwnBend& y) {
        return x.own == y.own && same(x.bend, y.bend);
    };
    return a.pose_.matrix() == b.pose_.matrix() && std::ranges::equal(a.bends_, b.bends_, same_bend) &&
           same(a.patch_, b.patch_);
}

namespace {

/// Bends every copy of a toy to what it is sewn to, each after that.
class Former {
  public:
    Former(const Toy& toy, const PlacedToy& placed, std::span<const SolvedPiece> solved)
        : toy_(toy), placed_(placed), solved_(solved) {}

    std::vector<PlacedForm> form() {
        for (const PlacedPiece& piece : placed_.pieces) forms_.push_back(form_of(piece));
        return std::move(forms_);
    }

  private:
    PlacedForm form_of(const PlacedPiece& placed) {
        PlacedForm form(placed.pose);
        if (placed.line && !placed.line->empty()) sew_on(placed, form);
        const SolvedPiece& piece = solved_[placed.solved];
        const std::size_t index = forms_.size();
        const auto legs = loop_around_legs(toy_, placed_, solved_, index);
        if (!legs.empty()) bend_to(form, piece, JoinedEnd::start, legs, Eigen::Matrix3d::Identity());
        return form;
    }

    void sew_on(const PlacedPiece& placed, PlacedForm& form) {
        const SolvedPiece& piece = solved_[placed.solved];
        const Eigen::Matrix3d own =
            placed.mirrored ? mirror_of(*piece.piece) : Eigen::Matrix3d(Eigen::Matrix3d::Identity());
        if (placed.line->form == SeamForm::patch)
            return form.lay(piece, on_parent(placed, placed.line->within), own);
        const double below = placed.line->form == SeamForm::straight ? piece.fabric_mm : 0;
        std::vector<Vec3> places;
        for (const SurfaceSpot& spot : on_parent(placed, placed.line->points))
            places.push_back(spot.place - below * spot.normal);
        bend_to(form, piece, toy_.joins[*placed.join].end, places, own);
    }

    std::vector<SurfaceSpot> on_parent(const PlacedPiece& placed,
                                       const std::vector<SurfaceSpot>& spots) const {
        const PlacedForm& onto = forms_[*placed.onto];
        const Eigen::Matrix3d mirror = placed.mirrored
                                           ? mirror_of(*solved_[placed_.pieces[*placed.onto].solved].piece)
                                           : Eigen::Matrix3d(Eigen::Matrix3d::Identity());
        std::vector<SurfaceSpot> found;
        for (const SurfaceSpot& spot : spots)
            found.push_back(onto.place(SurfaceSpot{mirror * spot.place, mirror * spot.normal}));
        return found;
    }

    static void bend_to(PlacedForm& form, const SolvedPiece& piece, JoinedEnd end,
                        const std::vector<Vec3>& places, const Eigen::Matrix3d& own) {
        std::vector<Vec3> edge = edge_points(piece, end);
        std::vector<Vec3> shifts;
        for (std::size_t k = 0; k < edge.size(); ++k)
            shifts.push_back(places[k] - form.pose() * Vec3(own * edge[k]));
        form.bend(std::make_shared<const EdgeBend>(piece, end, std::move(edge), std::move(shifts)), own);
    }

    const Toy& toy_;
    const PlacedToy& placed_;
    std::span<const SolvedPiece> solved_;
    std::vector<PlacedForm> forms_;
};

}  // namespace

std::vector<PlacedForm> placed_forms(const Toy& toy, const PlacedToy& placed,
                                     std::span<const SolvedPiece> solved) {
    return Former(toy, placed, solved).form();
}

}  // namespace roundwright
