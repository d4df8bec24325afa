#include "app/cli/write_json.h"

#include <nlohmann/json.hpp>

#include "core/language/pattern/written_rounds.h"
#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

ordered_json rounds_json(const WrittenRounds& rounds) {
    return {{"first", rounds.first + 1},   {"last", rounds.last + 1}, {"words", rounds.words},
            {"stitches", rounds.stitches}, {"yarn", rounds.yarn + 1}, {"note", rounds.note},
            {"fits", !rounds.does_not_fit}};
}

ordered_json piece_json(const Piece& piece, Terms terms) {
    ordered_json json{{"name", piece.name},
                      {"make", piece.make},
                      {"start", start_words(piece, terms)},
                      {"rounds", ordered_json::array()}};
    for (const WrittenRounds& rounds : written_rounds(piece, piece_graph(piece), terms))
        json["rounds"].push_back(rounds_json(rounds));
    return json;
}

}  // namespace

ordered_json write_json(const QString& path, const Toy& toy, Terms terms, const QString& text) {
    ordered_json json{{"file", path.toStdString()},
                      {"title", toy.title},
                      {"terms", terms_code(terms)},
                      {"text", text.toStdString()},
                      {"pieces", ordered_json::array()}};
    for (const Piece& piece : toy.pieces) json["pieces"].push_back(piece_json(piece, terms));
    return json;
}

}  // namespace roundwright::app
