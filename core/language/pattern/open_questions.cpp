#include "core/language/pattern/open_questions.h"

#include <algorithm>
#include <string>

#include "core/gauge/gauge_source.h"
#include "core/rounds/piece_graph.h"

namespace roundwright {
namespace {

bool is_blank(const std::string& text) { return text.find_first_not_of(" \t\r\n") == std::string::npos; }

bool uses(const Toy& toy, std::size_t yarn) {
    return std::any_of(toy.pieces.begin(), toy.pieces.end(), [yarn](const Piece& piece) {
        return std::any_of(piece.rounds.begin(), piece.rounds.end(),
                           [yarn](const Round& round) { return round.yarn == yarn; });
    });
}

int parts(const Toy& toy) {
    int sum = 0;
    for (const Piece& piece : toy.pieces) sum += piece.make;
    return sum;
}

}  // namespace

std::vector<OpenQuestion> open_questions(const Toy& toy) {
    using Kind = OpenQuestionKind;
    std::vector<OpenQuestion> open;
    if (is_blank(toy.title)) open.push_back({Kind::title, 0});
    for (std::size_t yarn = 0; yarn < toy.yarns.size(); ++yarn)
        if (!toy.yarns[yarn].metres_per_100_g && uses(toy, yarn)) open.push_back({Kind::yarn_length, yarn});
    if (!gauge_from(toy.gauge, toy.hook_mm)) open.push_back({Kind::gauge, 0});
    for (std::size_t i = 0; i < toy.pieces.size(); ++i) {
        if (toy.pieces[i].rounds.empty())
            open.push_back({Kind::no_rounds, i});
        else if (!piece_graph(toy.pieces[i]).problems.empty())
            open.push_back({Kind::rounds, i});
    }
    if (parts(toy) > 1 && is_blank(toy.text.assembly) && toy.joins.empty()) open.push_back({Kind::assembly, 0});
    return open;
}

}  // namespace roundwright
