#include "core/mesh/revolve.h"

#include <algorithm>
#include <utility>

#include "core/mesh/fabric_surface.h"
#include "core/mesh/laid_meridian.h"
#include "core/mesh/revolved_surface.h"
#include "core/stitches/stitch_layout.h"

namespace roundwright {
namespace {

std::vector<LoopWaves> loop_waves(const std::vector<int>& waves, const std::vector<double>& height_mm,
                                  const std::vector<LaidRound>& rounds, const Shape& shape) {
    std::vector<LoopWaves> loops(rounds.size() + 1);
    std::vector<double> stitches(rounds.size() + 1, 0);
    for (std::size_t i = 0; i < rounds.size(); ++i)
        stitches[i + 1] = static_cast<double>(rounds[i].cells.size());
    stitches[0] = rounds.front().loops_below;
    const std::size_t given = std::min(waves.size(), height_mm.size());
    const std::size_t shift = given == rounds.size() ? 1 : 0;
    for (std::size_t i = 0; i < given && i + shift < loops.size(); ++i)
        loops[i + shift] = {std::max(0, waves[i]), std::max(0.0, height_mm[i] / 2)};
    return agreeing_waves(std::move(loops), shape.radius_mm, stitches);
}

std::unique_ptr<RevolvedSurface> revolved(const std::vector<LaidRound>& rounds, const Piece& piece,
                                          const Shape& shape, const std::vector<int>& ruffle_waves,
                                          const std::vector<double>& ruffle_height_mm) {
    if (rounds.empty() || shape.radius_mm.size() <= rounds.size() || shape.z_mm.size() <= rounds.size())
        return nullptr;
    const auto waves = loop_waves(ruffle_waves, ruffle_height_mm, rounds, shape);
    return std::make_unique<RevolvedSurface>(lay_meridian(rounds, piece, shape, waves), piece.starts_at_top);
}

}  // namespace

StitchSurface revolve(const Toy& toy, const Piece& piece, const StitchGraph& graph, const Shape& shape,
                      const std::vector<int>& ruffle_waves, const std::vector<double>& ruffle_height_mm,
                      const RevolveOptions& options) {
    const auto rounds = lay_fabric(piece, graph);
    const auto fabric = revolved(rounds, piece, shape, ruffle_waves, ruffle_height_mm);
    return fabric ? fabric_surface(toy, graph, rounds, *fabric, options) : StitchSurface{};
}

std::unique_ptr<FabricGeometry> revolved_fabric(const Piece& piece, const StitchGraph& graph,
                                                const Shape& shape, const std::vector<RoundLie>& lies) {
    std::vector<int> waves;
    std::vector<double> heights;
    for (const RoundLie& lie : lies) {
        waves.push_back(lie.waves);
        heights.push_back(lie.wave_height_mm);
    }
    return revolved(lay_fabric(piece, graph), piece, shape, waves, heights);
}

}  // namespace roundwright
