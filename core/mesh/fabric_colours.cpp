#include "core/mesh/fabric_colours.h"

namespace roundwright {
namespace {

constexpr Colour no_yarn_colour{205, 198, 188};

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

}  // namespace roundwright
