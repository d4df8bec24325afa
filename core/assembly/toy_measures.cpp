#include "core/assembly/toy_measures.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/assembly/pieces_overlap.h"
#include "core/assembly/worked_pieces.h"
#include "core/face/feature_mesh.h"
#include "core/materials/materials.h"

namespace roundwright {
namespace {

constexpr double grams_of_mm3_at_1_kg_per_m3 = 1e-6;

Estimate density_of(Finish finish) { return finish == Finish::glossy ? eye_kg_per_m3 : felt_kg_per_m3; }

/// Weighs the copies of one toy.
class Scales {
  public:
    Scales(const AssembledToy& toy, std::span<const PieceStudy> studies)
        : toy_(toy), worked_(worked_pieces(toy.toy, studies)) {}

    ToyMass weigh() {
        for (std::size_t i = 0; i < toy_.placed.pieces.size(); ++i) weigh(i);
        return std::move(mass_);
    }

  private:
    void weigh(std::size_t i) {
        const SolvedPiece& solved = toy_.solved[toy_.placed.pieces[i].solved];
        const Materials taken = taken_by(solved, worked_[toy_.placed.pieces[i].solved]);
        const double made = std::max(1, solved.piece->make);
        Estimate yarn;
        for (const YarnUse& use : taken.yarns) yarn += use.grams;
        const Solid* solid = toy_.solids[i].get();
        const Vec3 middle = toy_.forms[i].pose().translation();
        mass_.fabric.push_back({yarn * (1 / made), solid ? measure_area(*solid).centre : middle});
        mass_.stuffing.push_back({taken.stuffing_g * (1 / made), middle_of_stuffing(i, solved, middle)});
        mass_.features.push_back(features_of(i, solved));
        mass_.pellets.push_back(pellets_of(solved, solid, middle));
    }

    [[nodiscard]] Materials taken_by(const SolvedPiece& solved, WorkedPiece worked) const {
        worked.volume_mm3 = stuffed_volume_mm3(solved);
        return materials(toy_.toy, {worked});
    }

    [[nodiscard]] Vec3 middle_of_stuffing(std::size_t i, const SolvedPiece& solved, const Vec3& none) const {
        if (!solved.stuffed) return none;
        if (solved.stuffed == solved.solid) return measure_volume(*toy_.solids[i]).centre;
        return measure_volume(placed_solid(*solved.stuffed, toy_.forms[i])).centre;
    }

    [[nodiscard]] PlacedMass features_of(std::size_t i, const SolvedPiece& solved) const {
        PlacedMass sum;
        Vec3 moment = Vec3::Zero();
        for (const FeaturePart& part :
             feature_parts(solved.piece->features, solved.surface, solved.stitches, solved.fabric_mm)) {
            const VolumeMeasure found = measure_volume(solid_of(part.mesh));
            const Estimate grams =
                density_of(part.finish) * (std::max(0.0, found.volume_mm3) * grams_of_mm3_at_1_kg_per_m3);
            sum.grams += grams;
            moment += grams.likely * toy_.forms[i].place(found.centre);
        }
        if (sum.grams.likely > 0) sum.centre = moment / sum.grams.likely;
        return sum;
    }

    [[nodiscard]] PlacedMass pellets_of(const SolvedPiece& solved, const Solid* solid,
                                        const Vec3& none) const {
        const double grams = solved.piece->weight_grams;
        if (!solid || !(grams > 0)) return {exactly(std::max(0.0, grams)), none};
        const Vec3 down = toy_.toy.stance == Stance::lying ? Vec3(-Vec3::UnitZ()) : Vec3(-Vec3::UnitY());
        const double volume = grams * 1e6 / pellets_kg_per_m3;
        return {exactly(grams), lowest_part(*solid, down, volume).centre};
    }

    const AssembledToy& toy_;
    std::vector<WorkedPiece> worked_;
    ToyMass mass_;
};

/// Sums of masses and moments, so that their middle can be taken at any weights.
struct Moment {
    double grams = 0;
    Vec3 moment = Vec3::Zero();

    void add(double some, const Vec3& at) {
        grams += some;
        moment += some * at;
    }
    [[nodiscard]] Vec3 centre() const { return grams > 0 ? Vec3(moment / grams) : Vec3(Vec3::Zero()); }
};

double at_end(const Estimate& grams, int end) {
    return end < 0 ? grams.low : end > 0 ? grams.high : grams.likely;
}

Moment moment_of(const ToyMass& mass, int fabric_end, int stuffing_end) {
    Moment sum;
    for (const PlacedMass& part : mass.fabric) sum.add(at_end(part.grams, fabric_end), part.centre);
    for (const PlacedMass& part : mass.stuffing) sum.add(at_end(part.grams, stuffing_end), part.centre);
    for (const PlacedMass& part : mass.features) sum.add(part.grams.likely, part.centre);
    for (const PlacedMass& part : mass.pellets) sum.add(part.grams.likely, part.centre);
    return sum;
}

}  // namespace

Estimate ToyMass::grams() const {
    Estimate sum;
    for (const auto* parts : {&fabric, &stuffing, &features, &pellets})
        for (const PlacedMass& part : *parts) sum += part.grams;
    return sum;
}

Vec3 ToyMass::centre() const { return moment_of(*this, 0, 0).centre(); }

std::vector<Vec3> ToyMass::possible_centres() const {
    std::vector<Vec3> centres;
    for (const int of_fabric : {-1, 1})
        for (const int of_stuffing : {-1, 1})
            centres.push_back(moment_of(*this, of_fabric, of_stuffing).centre());
    return centres;
}

ToyMass toy_mass(const AssembledToy& toy, std::span<const PieceStudy> studies) {
    return Scales(toy, studies).weigh();
}

namespace {

/// The least and the most of a coordinate.
struct Span {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    [[nodiscard]] double size() const { return std::max(0.0, high - low); }
};
using Spans = std::array<Span, 3>;

Spans spans_of(const Solid& solid, const Pose& pose) {
    Spans spans;
    for (const Vec3& point : solid.points) {
        const Vec3 at = pose * point;
        for (std::size_t axis = 0; axis < 3; ++axis) spans[axis].take(at[static_cast<int>(axis)]);
    }
    return spans;
}

/// How much smaller or larger a piece may come out along a direction, as a logarithm: between what its height
/// and its width allow.
struct LogRange {
    double low = 0, high = 0;
};
LogRange log_range(const Range& range, double likely) {
    if (!(likely > 0) || !(range.low > 0) || !(range.high > 0)) return {};
    return {std::log(range.low / likely), std::log(range.high / likely)};
}

/// Measures one toy.
class Tape {
  public:
    Tape(const AssembledToy& toy, std::span<const PieceStudy> studies) : toy_(toy), studies_(studies) {}

    ToyMeasures measure() {
        group_ = together(toy_.placed);
        note_missing();
        const ToyMass mass = mass_of_group();
        measures_.mass_g = mass.grams();
        rest(mass);
        take_sizes();
        measures_.overlaps = pieces_that_overlap(toy_);
        return std::move(measures_);
    }

    Rest find_rest() {
        group_ = together(toy_.placed);
        rest(mass_of_group());
        return std::move(measures_.rest);
    }

  private:
    void note_missing() {
        measures_.apart = toy_.placed.pieces.size() - group_.size();
        for (const SolvedPiece& solved : toy_.solved)
            if (!solved.measures.converged()) measures_.complete = false;
    }

    [[nodiscard]] ToyMass mass_of_group() const {
        const ToyMass all = toy_mass(toy_, studies_);
        ToyMass kept;
        for (const std::size_t i : group_) {
            kept.fabric.push_back(all.fabric[i]);
            kept.stuffing.push_back(all.stuffing[i]);
            kept.features.push_back(all.features[i]);
            kept.pellets.push_back(all.pellets[i]);
        }
        return kept;
    }

    void rest(const ToyMass& mass) {
        std::vector<Vec3> points;
        for (const std::size_t i : group_)
            if (toy_.solids[i])
                points.insert(points.end(), toy_.solids[i]->points.begin(), toy_.solids[i]->points.end());
        if (points.empty()) return;
        measures_.rest = rest_of(points, mass.centre(), toy_.toy.stance);
        Span degrees;
        degrees.take(measures_.rest.stable_degrees);
        for (const Vec3& centre : mass.possible_centres())
            degrees.take(stable_degrees(measures_.rest, measures_.rest.pose * centre));
        measures_.stable_degrees = {measures_.rest.stable_degrees, degrees.low, degrees.high};
        measures_.weight_to_hold_g =
            weight_to_hold_g(measures_.rest, measures_.mass_g.likely, well_stable_degrees);
    }

    void take_sizes() {
        Spans whole;
        std::vector<Spans> parts(toy_.placed.pieces.size());
        for (const std::size_t i : group_) {
            if (!toy_.solids[i]) continue;
            parts[i] = spans_of(*toy_.solids[i], measures_.rest.pose);
            for (std::size_t axis = 0; axis < 3; ++axis) {
                whole[axis].take(parts[i][axis].low);
                whole[axis].take(parts[i][axis].high);
            }
        }
        measures_.width_mm = size_along(0, whole, parts);
        measures_.height_mm = size_along(1, whole, parts);
        measures_.depth_mm = size_along(2, whole, parts);
    }

    /// One gauge makes all pieces larger or smaller together: the whole has the mean of their ranges, each as
    /// far as it reaches that way.
    [[nodiscard]] SizeEstimate size_along(std::size_t axis, const Spans& whole,
                                          const std::vector<Spans>& parts) const {
        double reach = 0;
        LogRange sum;
        for (const std::size_t i : group_) {
            const double size = parts[i][axis].size();
            if (!toy_.solids[i] || !(size > 0)) continue;
            const LogRange range = range_along(i, static_cast<int>(axis));
            sum.low += size * range.low;
            sum.high += size * range.high;
            reach += size;
        }
        const double likely = whole[axis].size();
        if (!(reach > 0)) return {};
        return {likely, likely * std::exp(sum.low / reach), likely * std::exp(sum.high / reach)};
    }

    [[nodiscard]] LogRange range_along(std::size_t i, int axis) const {
        const PlacedPiece& placed = toy_.placed.pieces[i];
        const PieceStudy& study = studies_[placed.solved];
        const Eigen::Matrix3d turn = measures_.rest.pose.linear() * placed.pose.linear();
        const double upright = turn(axis, 1) * turn(axis, 1);
        const LogRange tall = log_range(study.size().height_mm, study.measures().height_mm);
        const LogRange wide = log_range(study.size().width_mm, study.measures().width_mm);
        return {upright * tall.low + (1 - upright) * wide.low,
                upright * tall.high + (1 - upright) * wide.high};
    }

    const AssembledToy& toy_;
    std::span<const PieceStudy> studies_;
    std::vector<std::size_t> group_;
    ToyMeasures measures_;
};

}  // namespace

std::vector<std::size_t> together(const PlacedToy& placed) {
    std::vector<std::size_t> root, count(placed.pieces.size(), 0);
    for (std::size_t i = 0; i < placed.pieces.size(); ++i) {
        const auto& onto = placed.pieces[i].onto;
        root.push_back(onto ? root[*onto] : i);
        ++count[root[i]];
    }
    if (count.empty()) return {};
    const auto most = static_cast<std::size_t>(std::ranges::max_element(count) - count.begin());
    std::vector<std::size_t> group;
    for (std::size_t i = 0; i < root.size(); ++i)
        if (root[i] == most) group.push_back(i);
    return group;
}

Rest toy_rest(const AssembledToy& toy, std::span<const PieceStudy> studies) {
    return Tape(toy, studies).find_rest();
}

ToyMeasures toy_measures(const AssembledToy& toy, std::span<const PieceStudy> studies) {
    return Tape(toy, studies).measure();
}

}  // namespace roundwright
