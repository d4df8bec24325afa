#include "app/session/assembled_toy.h"

#include <algorithm>

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

SolvedPiece without_shape(PieceId id, std::shared_ptr<const Piece> piece) {
    FaceSurface nothing(*piece, Shape{});
    return {id, std::move(piece), std::move(nothing), {}, {}, 0, nullptr, nullptr, nullptr};
}

std::vector<PieceStudy> studies_of(const AssembledToy& toy) {
    std::vector<PieceStudy> studies;
    for (const AssembledPiece& piece : toy.pieces)
        studies.push_back(piece.study != nullptr ? *piece.study : PieceStudy());
    return studies;
}

Pose pose_on_table(const Toy& toy, const Rest& rest) {
    return toy.stance == Stance::standing ? Pose::Identity() : rest.pose;
}

class Assembler {
  public:
    Assembler(std::shared_ptr<const Toy> toy, const AssembledToy* before, const RevolveOptions& options)
        : before_(before), options_(options) {
        made_.toy = std::move(toy);
    }

    AssembledToy assemble(const std::vector<std::shared_ptr<const PieceStudy>>& studies) {
        for (std::size_t piece = 0; piece < made_.toy->pieces.size(); ++piece) add(piece, studies[piece]);
        made_.whole = std::make_shared<const roundwright::AssembledToy>(
            roundwright::assemble(*made_.toy, std::move(solved_), std::move(own_),
                                  before_ != nullptr ? before_->whole.get() : nullptr));
        std::vector<const StitchSurface*> surfaces;
        for (const auto& surface : made_.surfaces()) surfaces.push_back(surface.get());
        made_.hidden = hidden_features(made_.placed(), made_.solved(), surfaces);
        made_.on_table = first_pose();
        return std::move(made_);
    }

  private:
    /// While it is moved about, it holds still.
    [[nodiscard]] Pose first_pose() const {
        const Toy& toy = *made_.toy;
        if (toy.stance == Stance::standing) return Pose::Identity();
        if (before_ != nullptr && before_->toy->stance == toy.stance) return before_->on_table;
        return pose_on_table(toy, toy_rest(*made_.whole, studies_of(made_)));
    }

    void add(std::size_t index, const std::shared_ptr<const PieceStudy>& study) {
        const PieceId id = made_.toy->pieces.id(index);
        const auto said = made_.toy->pieces.shared(index);
        std::size_t at = 0;
        const AssembledPiece* known = find_piece(before_, id, at);
        const bool no_news = known != nullptr && known->said == said && known->study == study;
        const bool keeps_shape = known != nullptr && !has_shape(study.get()) && has_shape(known->study.get());
        const auto& shaped = keeps_shape ? known->study : study;
        made_.pieces.push_back({id, said, shaped, nullptr});
        own_.push_back(nullptr);
        if (shaped == nullptr) {
            solved_.push_back(without_shape(id, said));
            return;
        }
        const auto& drawn = made_.pieces.back().drawn =
            surface_stage(*made_.toy, index, *shaped, options_, known ? known->drawn : nullptr);
        if (drawn != nullptr && !drawn->surface.stitches.empty()) own_.back() = {drawn, &drawn->surface};
        solved_.push_back(no_news ? before_->solved()[at] : solved_piece(*made_.toy, index, *shaped));
    }

    const AssembledToy* before_;
    RevolveOptions options_;
    AssembledToy made_;
    std::vector<SolvedPiece> solved_;
    std::vector<std::shared_ptr<const StitchSurface>> own_;
};

}  // namespace

AssembledToy put_in_place(std::shared_ptr<const Toy> toy,
                          const std::vector<std::shared_ptr<const PieceStudy>>& studies,
                          const AssembledToy* before, const RevolveOptions& options) {
    return Assembler(std::move(toy), before, options).assemble(studies);
}

AssembledToy measured(AssembledToy toy) {
    toy.measures = std::make_shared<const ToyMeasures>(toy_measures(*toy.whole, studies_of(toy)));
    toy.on_table = pose_on_table(*toy.toy, toy.measures->rest);
    toy.overlaps.clear();
    for (const PieceOverlap& overlap : toy.measures->overlaps)
        toy.overlaps.push_back(overlap_region(*toy.whole, overlap));
    return toy;
}

}  // namespace roundwright::app
