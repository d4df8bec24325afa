#include "core/document/migrate.h"

#include <array>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "core/base/limits.h"
#include "core/document/json_document.h"

namespace roundwright {

namespace {

using nlohmann::json;

/// The member of an object, where it is a list; else null.
json* list_in(json& object, const char* key) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(key);
    return found != object.end() && found->is_array() ? &*found : nullptr;
}

bool has_name(const json& piece, const json& name) {
    const auto found = piece.is_object() ? piece.find("name") : piece.end();
    return found != piece.end() && *found == name;
}

/// Version 1 named the pieces of `written_for`; of entries with the same name the last counted, for every
/// piece of that name.
void name_by_id(json& written_for, const json& pieces) {
    json by_id = json::array();
    for (const json& piece : pieces) {
        for (auto then = written_for.rbegin(); then != written_for.rend(); ++then) {
            if (!then->is_object() || !then->contains("piece") || !has_name(piece, (*then)["piece"]))
                continue;
            by_id.push_back(*then);
            by_id.back()["piece"] = piece["id"];
            break;
        }
    }
    for (const json& then : written_for)  // what the reader is to name as wrong
        if (!then.is_object() || !then.contains("piece") || !then["piece"].is_string()) by_id.push_back(then);
    written_for = std::move(by_id);
}

/// Version 2: pieces have ids, from 1 in their order, and words remember pieces by them.
void give_pieces_ids(json& document) {
    json* pieces = list_in(document, "pieces");
    if (pieces == nullptr) return;
    int id = 0;
    for (json& piece : *pieces) {
        ++id;
        if (piece.is_object()) piece["id"] = id;
    }
    const auto text = document.find("text");
    if (text == document.end()) return;
    json* written_for = list_in(*text, "written_for");
    const bool too_many = pieces->size() > max_pieces || (written_for && written_for->size() > max_pieces);
    if (written_for != nullptr && !too_many) name_by_id(*written_for, *pieces);
}

}  // namespace

std::span<const Migration> migrations() {
    static constexpr std::array<Migration, document_version - 1> steps{give_pieces_ids};
    return steps;
}

void migrate(json& document, int from, std::span<const Migration> steps) {
    for (std::size_t step = static_cast<std::size_t>(from - 1); step < steps.size(); ++step)
        steps[step](document);
}

}  // namespace roundwright
