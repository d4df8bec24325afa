#include "core/shape/fabric/cell_triangles.h"

#include <array>
#include <cmath>

namespace roundwright {
namespace {

using Chain = std::vector<CellCorner>;

/// Twice the area between two lines, by the diagonals of the four corners.
double twice_area(const Chain& below, const Chain& above) {
    const Vec2 a = above.back().rest - below.front().rest, b = above.front().rest - below.back().rest;
    return std::abs(a.x() * b.y() - a.y() * b.x());
}

/// About the apex of the trapezoid; cells of parallel sides have it infinitely far off.
void turn_about_apex(Chain& above, double wide_below, double wide_above, double height, double slant) {
    const double widening = wide_above - wide_below;
    if (std::abs(widening) < 1e-6 * (wide_above + wide_below)) {
        for (CellCorner& corner : above) corner.rest.x() += slant;
        return;
    }
    const Vec2 apex(0, -wide_below * height / widening);
    const double turn = -slant / (height - apex.y());
    const double c = std::cos(turn), s = std::sin(turn);
    for (CellCorner& corner : above) {
        const Vec2 from = corner.rest - apex;
        corner.rest = apex + Vec2(c * from.x() - s * from.y(), s * from.x() + c * from.y());
    }
}

/// Whether the four corners still turn left one after the other.
bool is_convex(const Chain& below, const Chain& above) {
    const std::array<Vec2, 4> corners{below.back().rest, below.front().rest, above.front().rest,
                                      above.back().rest};
    for (std::size_t k = 0; k < 4; ++k) {
        const Vec2 in = corners[(k + 1) % 4] - corners[k], out = corners[(k + 2) % 4] - corners[(k + 1) % 4];
        if (!(in.x() * out.y() - in.y() * out.x() > 0)) return false;
    }
    return true;
}

/// Its area stays: by itself where both sides are equally high, else the line above is raised or lowered.
void lean(const Chain& below, Chain& above, const CellOutline& outline) {
    const double wide_below = outline.below.back().rest.x(), wide_above = outline.above.back().rest.x();
    const double height = (outline.side_before + outline.side_after) / 2;
    const double upright = twice_area(below, above);
    const Chain before = above;
    turn_about_apex(above, wide_below, wide_above, height, outline.slant_mm);
    const double across = wide_below + above.front().rest.x() - above.back().rest.x();
    const double raised = (upright - twice_area(below, above)) / across;
    for (CellCorner& corner : above) corner.rest.y() += raised;
    if (wide_below > 0 && !is_convex(below, above)) above = before;
}

/// The plane seen from outside: work goes to the left.
void lay_out(const CellOutline& outline, Chain& below, Chain& above) {
    below = outline.below;
    above = outline.above;
    const double wide_below = below.back().rest.x(), wide_above = above.back().rest.x();
    for (CellCorner& corner : below) corner.rest.x() = wide_below / 2 - corner.rest.x();
    for (CellCorner& corner : above) {
        const double share = wide_above > 0 ? corner.rest.x() / wide_above : 0;
        const double up = outline.side_before + share * (outline.side_after - outline.side_before);
        corner.rest = Vec2(wide_above / 2 - corner.rest.x(), up);
    }
    if (outline.slant_mm != 0 && outline.side_before > 0 && outline.side_after > 0)
        lean(below, above, outline);
    if (above.front().node == below.front().node) above.front().rest = below.front().rest;
    if (above.back().node == below.back().node) above.back().rest = below.back().rest;
}

CellCorner on_side(const CellCorner& side, const CellCorner& low, const CellCorner& high, double height) {
    const double share = side.rest.y() / height;
    return {side.node, low.rest + share * (high.rest - low.rest)};
}

/// Cuts the strip between two chains.
class Zipper {
  public:
    Zipper(Chain below, Chain above, std::size_t before, std::size_t after, bool first_diagonal,
           std::vector<FabricTriangle>& out)
        : below_(std::move(below)),
          above_(std::move(above)),
          before_(before),
          after_(after),
          first_diagonal_(first_diagonal),
          out_(out) {}

    void run() {
        while (b_ + 1 < below_.size() || t_ + 1 < above_.size()) {
            const bool step_below = goes_below();
            const CellCorner& next = step_below ? below_[b_ + 1] : above_[t_ + 1];
            add(below_[b_], above_[t_], next);
            (step_below ? b_ : t_) += 1;
        }
    }

  private:
    [[nodiscard]] bool goes_below() const {
        if (b_ + 1 == below_.size()) return false;
        if (t_ + 1 == above_.size()) return true;
        // Where a side has no height, a corner above is one of those below, and makes no triangle with two
        // others of theirs.
        if (t_ == 0 && b_ > 0 && above_.front().node == below_.front().node) return false;
        if (t_ + 2 == above_.size() && above_.back().node == below_.back().node)
            return b_ + 2 < below_.size();
        // Nodes on a side lie in line with the corner above it, and make no triangle with it.
        if (b_ < before_ && t_ == 0) return false;
        if (after_ > 0 && t_ + 2 == above_.size()) return true;
        if (b_ + 2 == below_.size() && turns_back(below_.back(), t_)) return false;
        const double by_below = (below_[b_ + 1].rest - above_[t_].rest).squaredNorm();
        const double by_above = (below_[b_].rest - above_[t_ + 1].rest).squaredNorm();
        if (std::abs(by_below - by_above) <= 1e-9 * (by_below + by_above)) return first_diagonal_;
        return by_below < by_above;
    }

    /// Whether a corner below, with what is left above, would make triangles that are turned over: the line
    /// above can slope so steeply that the cell is not convex.
    [[nodiscard]] bool turns_back(const CellCorner& from, std::size_t first) const {
        for (std::size_t k = first; k + 1 < above_.size(); ++k) {
            if (above_[k].node == from.node || above_[k + 1].node == from.node) continue;
            const Vec2 a = above_[k].rest - from.rest, b = above_[k + 1].rest - from.rest;
            if (!(a.x() * b.y() - a.y() * b.x() > 0)) return true;
        }
        return false;
    }

    void add(const CellCorner& a, const CellCorner& b, const CellCorner& c) {
        if (a.node == b.node || b.node == c.node || c.node == a.node) return;
        out_.push_back({{a.node, b.node, c.node}, {a.rest, b.rest, c.rest}});
    }

    Chain below_, above_;
    std::size_t before_, after_;
    bool first_diagonal_;
    std::vector<FabricTriangle>& out_;
    std::size_t b_ = 0, t_ = 0;
};

}  // namespace

void add_cell_triangles(const CellOutline& outline, bool first_diagonal, std::vector<FabricTriangle>& out) {
    Chain below, above;
    lay_out(outline, below, above);
    std::size_t before = 0, after = 0;
    if (outline.on_side_after) {
        below.push_back(on_side(*outline.on_side_after, below.back(), above.back(), outline.side_after));
        after = 1;
    }
    if (outline.on_side_before) {
        below.insert(below.begin(),
                     on_side(*outline.on_side_before, below.front(), above.front(), outline.side_before));
        before = 1;
    }
    Zipper(std::move(below), std::move(above), before, after, first_diagonal, out).run();
}

}  // namespace roundwright
