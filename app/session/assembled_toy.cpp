#include "app/session/assembled_toy.h"

#include <algorithm>

#include "core/assembly/one_surface.h"
#include "core/assembly/study_solved.h"

namespace roundwright::app {
namespace {

const AssembledPiece* find_piece(const AssembledToy* in, PieceId id, std::size_t& at) {
    if (in == nullptr) return nullptr;
    const auto found = std::ranges::find(in->pieces, id, &AssembledPiece::id);
    if (found == in->pieces.end()) return nullptr;
    at = static_cast<std::size_t>(found - in->pieces.begin());
    return &*found;
}

bool has_shape(const PieceStudy* study) {
    return study != nullptr && study->measures().usable() && study->measures().converged();
}

bool same_pose(const Pose& a, const Pose& b) { return (a.matrix().array() == b.matrix().array()).all(); }

class Assembler {
  public:
    Assembler(std::shared_ptr<const Toy> toy, const AssembledToy* before, const RevolveOptions& options)
        : before_(before), options_(options) {
        made_.toy = std::move(toy);
    }

    AssembledToy assemble(const std::vector<std::shared_ptr<const PieceStudy>>& studies) {
        for (std::size_t piece = 0; piece < made_.toy->pieces.size(); ++piece) add(piece, studies[piece]);
        made_.placed = place_toy(*made_.toy, made_.solved);
        std::vector<const StitchSurface*> surfaces;
        for (const PlacedPiece& placed : made_.placed.pieces) {
            made_.surfaces.push_back(surface_of(placed));
            surfaces.push_back(made_.surfaces.back().get());
        }
        made_.hidden = hidden_features(made_.placed, made_.solved, surfaces);
        return std::move(made_);
    }

  private:
    void add(std::size_t index, const std::shared_ptr<const PieceStudy>& study) {
        const PieceId id = made_.toy->pieces.id(index);
        auto said = made_.toy->pieces.shared(index);
        std::size_t at = 0;
        const AssembledPiece* known = find_piece(before_, id, at);
        const bool no_news = known != nullptr && known->said == said && known->study == study;
        const bool keeps_shape = known != nullptr && !has_shape(study.get()) && has_shape(known->study.get());
        const auto& shaped = keeps_shape ? known->study : study;
        made_.pieces.push_back({id, said, shaped, nullptr});
        if (shaped == nullptr) {
            made_.solved.push_back({id, std::move(said), {*made_.toy->pieces.shared(index), Shape{}}, {}, {}});
            return;
        }
        made_.pieces.back().drawn =
            surface_stage(*made_.toy, index, *shaped, options_, known ? known->drawn : nullptr);
        made_.solved.push_back(no_news ? before_->solved[at] : solved_piece(*made_.toy, index, *shaped));
    }

    [[nodiscard]] std::shared_ptr<const StitchSurface> surface_of(const PlacedPiece& placed) {
        const Shared<SurfaceStage>& drawn = made_.pieces[placed.solved].drawn;
        if (drawn == nullptr || drawn->surface.stitches.empty()) return nullptr;
        if (auto known = surface_before(placed, drawn)) return known;
        ++made_.placed_anew;
        return std::make_shared<const StitchSurface>(posed(drawn->surface, placed.pose));
    }

    [[nodiscard]] std::shared_ptr<const StitchSurface> surface_before(const PlacedPiece& placed,
                                                                      const Shared<SurfaceStage>& drawn) const {
        if (before_ == nullptr) return nullptr;
        const auto found = std::ranges::find(before_->placed.pieces, placed.copy, &PlacedPiece::copy);
        if (found == before_->placed.pieces.end()) return nullptr;
        if (before_->pieces[found->solved].drawn != drawn || !same_pose(found->pose, placed.pose))
            return nullptr;
        return before_->surfaces[static_cast<std::size_t>(found - before_->placed.pieces.begin())];
    }

    const AssembledToy* before_;
    RevolveOptions options_;
    AssembledToy made_;
};

}  // namespace

AssembledToy assemble(std::shared_ptr<const Toy> toy,
                      const std::vector<std::shared_ptr<const PieceStudy>>& studies,
                      const AssembledToy* before, const RevolveOptions& options) {
    return Assembler(std::move(toy), before, options).assemble(studies);
}

}  // namespace roundwright::app
