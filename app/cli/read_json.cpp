#include "app/cli/read_json.h"

#include <nlohmann/json.hpp>

#include "app/cli/severity_name.h"
#include "core/rounds/piece_graph.h"
#include "render/wording/diagnostic_sentence.h"

namespace roundwright::app {
namespace {

using nlohmann::ordered_json;

ordered_json from_one(int index) { return index < 0 ? ordered_json(nullptr) : ordered_json(index + 1); }

ordered_json piece_json(const Piece& piece, const RoundTally& tally) {
    return {{"name", piece.name},       {"rounds", piece.rounds.size()},
            {"sure", tally.sure},       {"mended", tally.mended},
            {"refused", tally.refused}, {"stitches", stitch_counts(piece_graph(piece).graph)}};
}

ordered_json finding_json(const ReadDiagnostic& diagnostic) {
    ordered_json json{{"code", read_code_name(diagnostic.code)},
                      {"severity", severity_name(diagnostic.severity)},
                      {"line", diagnostic.where.line},
                      {"column", diagnostic.where.column},
                      {"piece", from_one(diagnostic.piece)},
                      {"round", from_one(diagnostic.round)},
                      {"message", diagnostic_sentence(diagnostic).toStdString()}};
    if (diagnostic.goes_on.from != GoingOn::From::not_said)
        json["goes_on_from"] = diagnostic.goes_on.stitches;
    if (!diagnostic.mends.empty()) json["mend"] = mend_question(diagnostic.mends.front()).toStdString();
    return json;
}

}  // namespace

ordered_json read_json(const QString& path, const ReadPattern& pattern) {
    ordered_json json{{"file", path.toStdString()},         {"title", pattern.title},
                      {"terms", terms_code(pattern.terms)}, {"proved", pattern.proved()},
                      {"complete", pattern.complete()},     {"pieces", ordered_json::array()},
                      {"findings", ordered_json::array()}};
    for (std::size_t i = 0; i < pattern.pieces.size(); ++i)
        json["pieces"].push_back(piece_json(pattern.pieces[i], pattern.tallies[i]));
    for (const ReadDiagnostic& diagnostic : pattern.diagnostics)
        json["findings"].push_back(finding_json(diagnostic));
    return json;
}

}  // namespace roundwright::app
