#include "render/illustration/stitch_shapes.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

#include "core/mesh/stitch_cords.h"
#include "render/illustration/yarn_tone.h"

namespace roundwright::render {
namespace {

const Vec3 lamp = Vec3(-0.42, 0.58, 0.70).normalized();

/// A cord's outline is drawn this much narrower, higher and nearer the lamp from its edge to its highlight.
struct CordLayer {
    double width, length;  ///< shares of the cord's
    double lift;           ///< of its radius
    double to_lamp;        ///< in stitch widths
    double light;          ///< added
};
constexpr CordLayer edge{1.06, 1.06, 0.0, 0, -0.24}, body{0.88, 0.96, 0.22, 0.015, 0.0},
    highlight{0.36, 0.62, 0.5, 0.05, 0.16};
constexpr double lying_over = 0.08;  ///< cords that lie higher cover the others
constexpr double twist_light = -0.12, twist_width_in_stitches = 0.035;

/// On paper cords keep near the fabric, or paper would show between them at the outline.
double lift_of(const Cord& cord) { return std::min(cord.over, 0.06); }

/// Strands that others half hide take no light.
bool lies_under(const Cord& cord) { return cord.dip > 0 && cord.over <= lying_over; }

/// A place on a stitch, u to the left (as worked), v up, lifted over the fabric.
class StitchFrame {
  public:
    StitchFrame(const StitchPatch& patch, bool inside, const Projection& projection, double stitch_mm)
        : patch_(patch),
          projection_(projection),
          out_((inside ? -stitch_mm : stitch_mm) * patch.normal),
          lamp_shift_(QPointF(lamp.x(), lamp.y()) * stitch_mm) {}

    [[nodiscard]] QPointF at(double u, double v, double lift, double to_lamp) const {
        const Vec3 below = patch_.corners[1] + u * (patch_.corners[0] - patch_.corners[1]);
        const Vec3 above = patch_.corners[2] + u * (patch_.corners[3] - patch_.corners[2]);
        return projection_.flat(below + v * (above - below) + lift * out_) + to_lamp * lamp_shift_;
    }

  private:
    const StitchPatch& patch_;
    const Projection& projection_;
    Vec3 out_;
    QPointF lamp_shift_;
};

/// A cord's own axes in the stitch: along it, from -1 to 1 between its round ends, and across it.
struct CordAxes {
    double u, v;
    double along_u, along_v;
    double across_u, across_v;

    explicit CordAxes(const Cord& cord) : u((cord.from_u + cord.to_u) / 2), v((cord.from_v + cord.to_v) / 2) {
        const double du = cord.to_u - cord.from_u, dv = cord.to_v - cord.from_v;
        const double length = std::hypot(du, dv), half = length / 2 + 0.95 * cord.radius;
        along_u = du / length * half;
        along_v = dv / length * half;
        across_u = -dv / length * cord.radius;
        across_v = du / length * cord.radius;
    }
    [[nodiscard]] QPointF on(const StitchFrame& frame, double along, double across, double lift,
                             double to_lamp) const {
        return frame.at(u + along * along_u + across * across_u, v + along * along_v + across * across_v,
                        lift, to_lamp);
    }
};

QPolygonF outline(const StitchFrame& frame, const Cord& cord, const CordLayer& layer) {
    // Half the outline; fuller than an ellipse, since a cord keeps its width along most of its length.
    static constexpr double along[] = {1, 0.55, -0.55}, across[] = {0, 0.9, 0.9};
    const CordAxes axes(cord);
    QPolygonF found;
    for (const double side : {1.0, -1.0})
        for (int k = 0; k < 3; ++k)
            found.append(axes.on(frame, side * layer.length * along[k], side * layer.width * across[k],
                                 lift_of(cord) + layer.lift * cord.radius, layer.to_lamp));
    return found;
}

/// Lines across a cord where its plies turn under each other.
void add_twist(ShapeBatches& batches, int order, const QColor& colour, const StitchFrame& frame,
               const Cord& cord, double width) {
    const CordAxes axes(cord);
    const double lift = lift_of(cord) + body.lift * cord.radius;
    const int turns = std::hypot(axes.along_u, axes.along_v) > 0.35 ? 3 : 2;
    for (int k = 0; k < turns; ++k) {
        const double middle = 1.3 * (k + 0.5) / turns - 0.65;
        batches.stroke(order, colour, width,
                       {axes.on(frame, middle - 0.15, -0.6, lift, body.to_lamp),
                        axes.on(frame, middle + 0.13, 0.6, lift, body.to_lamp)});
    }
}

/// A share of 0..1 that looks like chance, the same for the same stitch every time (the finaliser of
/// MurmurHash3).
double chance(std::uint32_t stitch, std::uint32_t draw) {
    std::uint32_t x = stitch * 0x9E3779B9U + draw * 0x85EBCA6BU;
    x = (x ^ (x >> 16)) * 0x85EBCA6BU;
    x = (x ^ (x >> 13)) * 0xC2B2AE35U;
    return (x ^ (x >> 16)) / 4294967296.0;
}

/// Brushed pile: tufts that cover the stitch, and over them fine fibres that stand off the fabric, light over
/// dark. Each has a tone of its own, by chance one step lighter or darker, so that the steps of tone between
/// stitches do not show.
class Pile {
  public:
    Pile(ShapeBatches& batches, const StitchFrame& frame, std::uint32_t number, double stitch_mm,
         const std::function<QColor(double)>& tone)
        : batches_(batches), frame_(frame), number_(number), stitch_mm_(stitch_mm), tone_(tone) {}

    void add(int order) {
        for (std::uint32_t k = 0; k < tufts; ++k) {
            const double u = (k % 3 + 0.2 + 0.6 * share(0)) / 3, v = (k / 3 + 0.2 + 0.6 * share(1)) / 3;
            add_fibre(order, tuft_light, 0.32, {u, v}, {0.3 * (share(2) - 0.5), -0.25 - 0.15 * share(3)},
                      0.0);
        }
        static constexpr double lights[] = {-0.14, -0.03, 0.06, 0.15};
        for (std::uint32_t k = 0; k < fibres; ++k) {
            const std::uint32_t shade = k * 4 / fibres;
            add_fibre(order + 1 + static_cast<int>(shade), lights[shade], 0.05, {share(0), share(1)},
                      {0.5 * (share(2) - 0.5), -0.12 - 0.3 * share(3)}, 0.4);
        }
    }

  private:
    static constexpr std::uint32_t tufts = 9, fibres = 16;
    static constexpr double tuft_light = -0.06;

    /// A new share of chance for each fibre.
    double share(std::uint32_t draw) const { return chance(number_, 8 * fibre_ + draw); }

    void add_fibre(int order, double light, double width, QPointF root, QPointF way, double lift) {
        const double by_chance = (share(4) - 0.5) * light_step;
        batches_.stroke(order, tone_(light + by_chance), width * stitch_mm_,
                        {frame_.at(root.x(), root.y(), lift / 8, 0),
                         frame_.at(root.x() + way.x(), root.y() + way.y(), lift, 0)});
        ++fibre_;
    }

    ShapeBatches& batches_;
    const StitchFrame& frame_;
    std::uint32_t number_;
    double stitch_mm_;
    const std::function<QColor(double)>& tone_;
    std::uint32_t fibre_ = 0;
};

/// Dark yarn gets more light, so that its stitches can be told apart.
double light_for_dark(Colour yarn) {
    const double brightness = (0.3 * yarn.red + 0.59 * yarn.green + 0.11 * yarn.blue) / 255;
    return 0.22 * std::pow(1 - brightness, 3);
}

}  // namespace

double light_on(const Vec3& view_normal, bool inside) {
    const Vec3 facing = view_normal.z() < 0 ? Vec3(-view_normal) : view_normal;
    const double direct = std::max(0.0, facing.dot(lamp));
    // The outline darkens a little, which makes the form round.
    const double rim = 0.82 + 0.18 * std::sqrt(std::clamp(facing.z(), 0.0, 1.0));
    return (0.56 + 0.52 * direct) * rim * (inside ? 0.74 : 1);
}

void add_stitch(ShapeBatches& batches, const StitchPatch& patch, Colour colour, const VisibleStitch& seen,
                const Projection& projection, const StitchStyle& style) {
    const StitchFrame frame(patch, seen.inside, projection, style.stitch_mm);
    const double light = light_on(projection(patch.normal), seen.inside) + light_for_dark(colour);
    const auto tone = [&](double added) { return yarn_tone(colour, stepped_light(light + added)); };
    const int lowest = seen.layer * orders_a_layer;
    if (seen.layer > 0)
        batches.fill(lowest, yarn_tone(colour, hollow_light),
                     QPolygonF({frame.at(0, 0, 0, 0), frame.at(1, 0, 0, 0), frame.at(1, 1, 0, 0),
                                frame.at(0, 1, 0, 0)}));
    if (patch.brushed && !seen.inside) {
        batches.fill(lowest + 1, tone(-0.06),
                     QPolygonF({frame.at(-0.04, -0.04, 0, 0), frame.at(1.04, -0.04, 0, 0),
                                frame.at(1.04, 1.04, 0, 0), frame.at(-0.04, 1.04, 0, 0)}));
        Pile(batches, frame, seen.stitch, style.stitch_mm, tone).add(lowest + 2);
        return;
    }
    const StitchFace face = seen.inside ? StitchFace::inside : face_of(patch.kind, patch.part);
    for (const auto& cord : cords_of(face)) {
        const int order = lowest + (cord.over > lying_over ? 6 : 1);
        batches.fill_smooth(order, tone(edge.light), outline(frame, cord, edge));
        batches.fill_smooth(order + 1, tone(body.light), outline(frame, cord, body));
        if (style.detail == YarnDetail::cords || lies_under(cord)) continue;
        batches.fill_smooth(order + 2, tone(highlight.light), outline(frame, cord, highlight));
        if (style.detail == YarnDetail::twist)
            add_twist(batches, order + 3, tone(twist_light), frame, cord,
                      twist_width_in_stitches * style.stitch_mm);
    }
}

}  // namespace roundwright::render
