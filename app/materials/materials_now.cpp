#include "app/materials/materials_now.h"

#include <vector>

namespace roundwright::app {
namespace {

std::optional<Materials> of_one_piece(const DocumentSession& session) {
    const auto study = session.study(session.current_piece());
    if (session.piece() == nullptr || study == nullptr) return std::nullopt;
    Piece one = *session.piece();
    one.make = 1;
    const double volume = study->measures().usable() ? study->measures().volume_mm3 : 0;
    return materials(session.toy(), {{&one, &study->graph().graph, study->gauge, volume}});
}

}  // namespace

std::optional<Materials> materials_now(const DocumentSession& session, TakenFor what) {
    if (what == TakenFor::piece) return of_one_piece(session);
    const Toy& toy = session.toy();
    std::vector<std::shared_ptr<const PieceStudy>> studies;  // held until all is added up
    std::vector<WorkedPiece> worked;
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        studies.push_back(session.study(static_cast<int>(i)));
        const auto& study = studies.back();
        if (study == nullptr) return std::nullopt;
        const double volume = study->measures().usable() ? study->measures().volume_mm3 : 0;
        worked.push_back({&toy.pieces[i], &study->graph().graph, study->gauge, volume});
    }
    return materials(toy, worked);
}

}  // namespace roundwright::app
