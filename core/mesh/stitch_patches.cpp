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

void lay(StitchPatch& patch, const LaidStitch& cell, const RevolvedSurface& surface, std::size_t round,
         std::size_t place) {
    const auto at = [&](std::size_t edge, double along) {
        return surface.place(surface.on_loop(edge, along));
    };
    const auto above = static_cast<double>(place);
    patch.corners = {at(round, cell.below_last), at(round, cell.below_first), at(round + 1, above),
                     at(round + 1, above + 1)};
    const Vec3 across = (patch.corners[2] - patch.corners[0]).cross(patch.corners[3] - patch.corners[1]);
    patch.normal = across.norm() > 1e-9 ? Vec3(across.normalized())
                                        : surface.normal(surface.on_loop(round + 1, above + 0.5));
}

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
        for (std::size_t c = 0; c < rounds[i].cells.size(); ++c) {
            const auto& cell = rounds[i].cells[c];
            if (cell.carried) continue;
            const std::size_t number = first[i] + static_cast<std::size_t>(cell.stitch);
            lay(patches[number], cell, surface, i, c);
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
