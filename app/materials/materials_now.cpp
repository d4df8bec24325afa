#include "app/materials/materials_now.h"

#include <utility>
#include <vector>

#include "core/assembly/worked_pieces.h"

namespace roundwright::app {
namespace {

Materials of_one(const Toy& toy, WorkedPiece worked) {
    Piece one = *worked.piece;
    worked.seams_mm /= one.make;
    one.make = 1;
    worked.piece = &one;
    return materials(toy, {worked});
}

}  // namespace

std::optional<Materials> materials_now(const DocumentSession& session, TakenFor what) {
    const Toy& toy = session.toy();
    std::vector<PieceStudy> studies;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        const auto study = session.study(static_cast<int>(i));
        if (study == nullptr) return std::nullopt;
        studies.push_back(*study);
    }
    std::vector<WorkedPiece> worked = worked_pieces(toy, studies);
    if (what == TakenFor::toy) return materials(toy, worked);
    if (session.piece() == nullptr) return std::nullopt;
    return of_one(toy, worked[static_cast<std::size_t>(session.current_piece())]);
}

}  // namespace roundwright::app
