#pragma once

#include <map>
#include <memory>
#include <vector>

#include "core/rounds/piece_graph.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// Hands out the graphs of pieces, each derived once however many ask: of the toy as it is said, as it is
/// shown, and as it is being tried. Pieces with the same stitches have the same graph.
class PieceGraphs {
  public:
    [[nodiscard]] std::shared_ptr<const SharedGraph> of(const PieceList& pieces, std::size_t piece);
    /// Lets go of those of pieces that are not there.
    void keep_only(const PieceList& pieces);

  private:
    std::map<PieceId, std::vector<std::shared_ptr<const SharedGraph>>> latest_;  ///< the last used last
};

}  // namespace roundwright::app
