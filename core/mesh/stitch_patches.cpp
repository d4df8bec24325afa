#include "core/mesh/stitch_patches.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cstdint>

#include "core/mesh/fabric_colours.h"

namespace roundwright {
namespace {

void lay_without_place(StitchPatch& patch, const GraphRound& round, const GraphStitch& stitch,
                       const FabricGeometry& geometry, std::size_t edge) {
    const double from = round.first_below + stitch.first_foot;
    const auto right = geometry.on_edge(edge, from), left = geometry.on_edge(edge, from + stitch.stitch.feet);
    patch.corners = {left.place, right.place, right.place, left.place};
    patch.normal = right.normal;
}

/// Lays the patches of a round one after the other: each begins where the one before it ends.
class RoundLayer {
  public:
    RoundLayer(const FabricGeometry& geometry, std::size_t round) : geometry_(geometry), round_(round) {}

    /// The cell at `place`, which may be the first or the one after the last one.
    void lay(StitchPatch& patch, const LaidStitch& cell, std::size_t place) {
        const auto above = static_cast<double>(place);
        const bool goes_on = reached_ && place == next_ && cell.below_first == below_;
        const Vec3 lower_right = goes_on ? lower_ : at(round_, cell.below_first);
        const Vec3 upper_right = goes_on ? upper_ : at(round_ + 1, above);
        lower_ = at(round_, cell.below_last);
        upper_ = at(round_ + 1, above + 1);
        below_ = cell.below_last;
        next_ = place + 1;
        reached_ = true;
        patch.corners = {lower_, lower_right, upper_right, upper_};
        const Vec3 across = (patch.corners[2] - patch.corners[0]).cross(patch.corners[3] - patch.corners[1]);
        patch.normal = across.norm() > 1e-9 ? Vec3(across.normalized())
                                            : geometry_.on_edge(round_ + 1, above + 0.5).normal;
    }

  private:
    [[nodiscard]] Vec3 at(std::size_t edge, double along) const {
        return geometry_.on_edge(edge, along).place;
    }

    const FabricGeometry& geometry_;
    std::size_t round_;
    bool reached_ = false;
    std::size_t next_ = 0;
    double below_ = 0;
    Vec3 lower_ = Vec3::Zero(), upper_ = Vec3::Zero();
};

}  // namespace

std::vector<std::uint32_t> first_stitches(const StitchGraph& graph) {
    std::vector<std::uint32_t> first{0};
    first.reserve(graph.rounds.size() + 1);
    for (const auto& round : graph.rounds)
        first.push_back(first.back() + static_cast<std::uint32_t>(round.stitches.size()));
    return first;
}

std::vector<StitchPatch> stitch_patches(const Toy& toy, const StitchGraph& graph,
                                        const std::vector<LaidRound>& rounds,
                                        const FabricGeometry& geometry) {
    const auto first = first_stitches(graph);
    std::vector<StitchPatch> patches(first.back());
    std::vector<bool> placed(patches.size(), false);
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        RoundLayer layer(geometry, i);
        for (std::size_t c = 0; c < rounds[i].cells.size(); ++c) {
            const auto& cell = rounds[i].cells[c];
            if (cell.carried) continue;
            const std::size_t number = first[i] + static_cast<std::size_t>(cell.stitch);
            layer.lay(patches[number], cell, c);
            placed[number] = true;
        }
    }
    for (std::size_t i = 0, number = 0; i < graph.rounds.size(); ++i) {
        for (std::size_t s = 0; s < graph.rounds[i].stitches.size(); ++s, ++number) {
            const auto& stitch = graph.rounds[i].stitches[s];
            if (!placed[number])
                lay_without_place(patches[number], graph.rounds[i], stitch, geometry,
                                  std::min(i, rounds.size()));
            patches[number].round = static_cast<int>(i);
            patches[number].stitch = static_cast<int>(s);
            patches[number].colour = yarn_colour(toy, stitch.stitch);
            patches[number].kind = stitch.stitch.kind;
            patches[number].part = stitch.stitch.part;
            patches[number].brushed = is_brushed(toy, stitch.stitch);
        }
    }
    return patches;
}

}  // namespace roundwright
