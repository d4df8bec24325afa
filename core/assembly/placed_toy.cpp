#include "core/assembly/placed_toy.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <numbers>

#include "core/assembly/join_frames.h"
#include "core/assembly/join_tree.h"
#include "core/assembly/seam_line.h"
#include "core/assembly/worked_on_legs.h"

namespace roundwright {
namespace {

/// Between pieces that stand by themselves.
constexpr double gap_mm = 10;

std::atomic<std::uint64_t> lines_found = 0;

bool is_leg(const Join& join) { return join.seam == Seam::worked_on && join.at.round == -1; }

Vec3 down(Stance stance) { return stance == Stance::lying ? Vec3(-Vec3::UnitZ()) : Vec3(-Vec3::UnitY()); }

class Placer {
  public:
    Placer(const Toy& toy, std::span<const SolvedPiece> solved, const PlacedBefore* before)
        : toy_(toy), solved_(solved), before_(before) {}

    PlacedToy place() {
        JoinTree tree = join_tree(toy_);
        placed_.problems = std::move(tree.problems);
        for (const JoinedCopy& copy : tree.copies) placed_.pieces.push_back(place(copy));
        return std::move(placed_);
    }

  private:
    PlacedPiece place(const JoinedCopy& copy) {
        PlacedPiece placed{.copy = copy.copy,
                           .solved = copy.piece,
                           .join = copy.join,
                           .onto = copy.onto,
                           .mirrored = copy.mirrored,
                           .pose = Pose::Identity(),
                           .line = {}};
        if (copy.join && !stand_on(placed)) {
            placed.join.reset();
            placed.onto.reset();
            placed.mirrored = false;
        }
        if (!placed.join) stand_beside(placed);
        return placed;
    }

    bool stand_on(PlacedPiece& placed) {
        const Join& join = toy_.joins[*placed.join];
        const PlacedPiece& onto = placed_.pieces[*placed.onto];
        const SolvedPiece& piece = solved_[placed.solved];
        const SolvedPiece& other = solved_[onto.solved];
        const auto end = frame_of_end(piece, join.end);
        auto place = frame_of_place(other, join.at);
        if (!end || !place) {
            const bool shapes = end && !other.surface.empty();
            report(*placed.join, shapes ? JoinFault::no_such_place : JoinFault::no_shape);
            return false;
        }
        if (join.seam == Seam::hung) hang(onto.pose, *place);
        if (is_leg(join)) stand_aside(*placed.join, other, *place);
        placed.line = line_of(placed, join, piece, other, *end, *place);
        sink_to_line(placed, *place);
        const Pose pose = pose_of_join(join, *end, *place);
        placed.pose = onto.pose * (placed.mirrored ? mirrored(pose, *piece.piece, *other.piece) : pose);
        return true;
    }

    void hang(const Pose& onto, JoinFrame& place) const {
        place.out = onto.linear().transpose() * down(toy_.stance);
        if (place.out.cross(place.front).norm() < 1e-3) place.front = place.out.unitOrthogonal();
        place.front = (place.front - place.front.dot(place.out) * place.out).normalized();
        place.up = place.front;
        place.right = place.out.cross(place.front);
    }

    /// The legs that a body begins on stand side by side.
    void stand_aside(std::size_t join, const SolvedPiece& body, JoinFrame& place) const {
        std::vector<double> radii;
        std::vector<bool> pairs;
        std::size_t own = 0;
        for (std::size_t i = 0; i < toy_.joins.size(); ++i) {
            const Join& other = toy_.joins[i];
            const auto piece = toy_.pieces.index_of(other.piece.piece);
            if (!is_leg(other) || other.onto != toy_.joins[join].onto || !piece) continue;
            if (!solved_[*piece].measures.usable()) continue;
            if (i == join) own = radii.size();
            radii.push_back(sewn_edge(solved_[*piece], other.end).radius_mm);
            pairs.push_back(other.pair);
        }
        const LegPlace leg = leg_places(radii, pairs, chains_between_mm(body))[own];
        const double angle = leg.angle + body.piece->face_degrees * std::numbers::pi / 180;
        place.point += leg.radius_mm * Vec3(std::sin(angle), 0, std::cos(angle));
    }

    static double chains_between_mm(const SolvedPiece& body) {
        const auto* on = std::get_if<WorkedOn>(&body.piece->start);
        const double stitches = on ? on->stitches : 0;
        if (!on || !(stitches > 0)) return 0;
        return sewn_edge(body, JoinedEnd::start).stitches_mm / stitches * on->chains_between;
    }

    [[nodiscard]] std::shared_ptr<const SeamLine> line_of(const PlacedPiece& placed, const Join& join,
                                                          const SolvedPiece& piece, const SolvedPiece& onto,
                                                          const JoinFrame& end,
                                                          const JoinFrame& place) const {
        if (seam_form(join, piece, onto) == SeamForm::none) return nullptr;
        if (auto kept = line_before(placed.copy, join, piece, onto)) return kept;
        ++lines_found;
        return std::make_shared<const SeamLine>(seam_line(join, piece, onto, end, place));
    }

    /// A line follows from its place and the turn of the piece, not from how that leans or sinks.
    [[nodiscard]] std::shared_ptr<const SeamLine> line_before(const PieceCopy& copy, const Join& join,
                                                              const SolvedPiece& piece,
                                                              const SolvedPiece& onto) const {
        if (!before_) return nullptr;
        const auto& pieces = before_->placed.pieces;
        const auto old = std::ranges::find(pieces, copy, &PlacedPiece::copy);
        if (old == pieces.end() || !old->line || !old->join) return nullptr;
        const Join& then = before_->toy.joins[*old->join];
        const bool same = then.onto.piece == join.onto.piece && then.end == join.end &&
                          then.seam == join.seam && then.at == join.at &&
                          then.turn_degrees == join.turn_degrees &&
                          lies_alike(before_->solved[old->solved], piece) &&
                          lies_alike(before_->solved[pieces[*old->onto].solved], onto);
        return same ? old->line : nullptr;
    }

    /// So deep that the middle of the edge is that of the line.
    static void sink_to_line(const PlacedPiece& placed, JoinFrame& place) {
        if (!placed.line || placed.line->empty() || placed.line->form == SeamForm::patch) return;
        place.point += (placed.line->middle() - place.point).dot(place.out) * place.out;
    }

    void report(std::size_t join, JoinFault fault) {
        const JoinProblem problem{join, fault};
        if (std::ranges::find(placed_.problems, problem) == placed_.problems.end())
            placed_.problems.push_back(problem);
    }

    void stand_beside(PlacedPiece& placed) {
        const double half = solved_[placed.solved].measures.width_mm / 2;
        const double x = first_ ? 0 : right_mm_ + gap_mm + half;
        placed.pose.translation().x() = x;
        right_mm_ = x + half;
        first_ = false;
    }

    const Toy& toy_;
    std::span<const SolvedPiece> solved_;
    const PlacedBefore* before_;
    PlacedToy placed_;
    double right_mm_ = 0;
    bool first_ = true;
};

}  // namespace

bool lies_alike(const SolvedPiece& a, const SolvedPiece& b) {
    return a.made_of && a.made_of == b.made_of && a.piece->face_degrees == b.piece->face_degrees &&
           a.piece->starts_at_top == b.piece->starts_at_top && a.piece->start == b.piece->start &&
           a.piece->end == b.piece->end;
}

std::uint64_t seam_lines_found() { return lines_found; }

PlacedToy place_toy(const Toy& toy, std::span<const SolvedPiece> solved, const PlacedBefore* before) {
    return Placer(toy, solved, before).place();
}

}  // namespace roundwright
