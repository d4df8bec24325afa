#include "core/assembly/placed_toy.h"

#include <algorithm>

#include "core/assembly/join_frames.h"
#include "core/assembly/join_tree.h"

namespace roundwright {
namespace {

/// Between pieces that stand by themselves.
constexpr double gap_mm = 10;

class Placer {
  public:
    Placer(const Toy& toy, std::span<const SolvedPiece> solved) : toy_(toy), solved_(solved) {}

    PlacedToy place() {
        JoinTree tree = join_tree(toy_);
        placed_.problems = std::move(tree.problems);
        for (const JoinedCopy& copy : tree.copies) placed_.pieces.push_back(place(copy));
        return std::move(placed_);
    }

  private:
    PlacedPiece place(const JoinedCopy& copy) {
        PlacedPiece placed{copy.copy, copy.piece, copy.join, copy.onto, copy.mirrored};
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
        const auto end = frame_of_end(solved_[placed.solved], join.end);
        const auto place = frame_of_place(solved_[onto.solved], join.at);
        if (!end || !place) {
            const bool shapes = end && !solved_[onto.solved].surface.empty();
            report(*placed.join, shapes ? JoinFault::no_such_place : JoinFault::no_shape);
            return false;
        }
        const Pose pose = pose_of_join(join, *end, *place);
        placed.pose = onto.pose * (placed.mirrored ? mirrored(pose, *solved_[placed.solved].piece,
                                                              *solved_[onto.solved].piece)
                                                   : pose);
        return true;
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
    PlacedToy placed_;
    double right_mm_ = 0;
    bool first_ = true;
};

}  // namespace

PlacedToy place_toy(const Toy& toy, std::span<const SolvedPiece> solved) {
    return Placer(toy, solved).place();
}

}  // namespace roundwright
