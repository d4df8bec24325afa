#include "core/mesh/stitch_patches.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cstdint>

namespace roundwright {
namespace {

constexpr Colour no_yarn_colour{205, 198, 188};

void lay_without_place(StitchPatch& patch, const GraphRound& round, const GraphStitch& stitch,
                       const RevolvedSurface& surface, std::size_t edge) {
    const double from = round.first_below + stitch.first_foot;
    const auto right = surface.on_loop(edge, from), left = surface.on_loop(edge, from + stitch.stitch.feet);
    patch.corners = {surface.place(left), surface.place(right), surface.place(right), surface.place(left)};
    patch.normal = surface.normal(right);
}

/// Lays the patches of a round one after the other: each begins where the one before it ends.
class RoundLayer {
  public:
    RoundLayer(const RevolvedSurface& surface, std::size_t round) : surface_(surface), round_(round) {}

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
                                            : surface_.normal(surface_.on_loop(round_ + 1, above + 0.5));
    }

  private:
    [[nodiscard]] Vec3 at(std::size_t edge, double along) const {
        return surface_.place(surface_.on_loop(edge, along));
    }

    const RevolvedSurface& surface_;
    std::size_t round_;
    bool reached_ = false;
    std::size_t next_ = 0;
    double below_ = 0;
    Vec3 lower_ = Vec3::Zero(), upper_ = Vec3::Zero();
};

}  // namespace

Colour yarn_colour(const Toy& toy, const Stitch& stitch) {
    return stitch.yarn < toy.yarns.size() ? toy.yarns[stitch.yarn].colour : no_yarn_colour;
}

Colour yarn_colour(const Toy& toy, const StitchGraph& graph, const LaidStitch& cell) {
    if (cell.stitch < 0) return no_yarn_colour;
    const auto& round = graph.rounds[static_cast<std::size_t>(cell.round)];
    return yarn_colour(toy, round.stitches[static_cast<std::size_t>(cell.stitch)].stitch);
}

bool is_brushed(const Toy& toy, const Stitch& stitch) {
    return stitch.yarn < toy.yarns.size() && toy.yarns[stitch.yarn].brushed;
}

std::vector<StitchFace> faces_of_stitches(const Toy& toy, const StitchGraph& graph) {
    std::vector<StitchFace> faces;
    for (const auto& round : graph.rounds) {
        for (const auto& [stitch, foot] : round.stitches) {
            const bool pile = is_brushed(toy, stitch) && stitch.kind != StitchKind::bobble;
            faces.push_back(pile ? StitchFace::pile : face_of(stitch.kind, stitch.part));
        }
    }
    return faces;
}

std::vector<std::uint32_t> first_stitches(const StitchGraph& graph) {
    std::vector<std::uint32_t> first{0};
    first.reserve(graph.rounds.size() + 1);
    for (const auto& round : graph.rounds)
        first.push_back(first.back() + static_cast<std::uint32_t>(round.stitches.size()));
    return first;
}

std::vector<StitchPatch> stitch_patches(const Toy& toy, const StitchGraph& graph,
                                        const std::vector<LaidRound>& rounds,
                                        const RevolvedSurface& surface) {
    const auto first = first_stitches(graph);
    std::vector<StitchPatch> patches(first.back());
    std::vector<bool> placed(patches.size(), false);
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        RoundLayer layer(surface, i);
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
                lay_without_place(patches[number], graph.rounds[i], stitch, surface,
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
