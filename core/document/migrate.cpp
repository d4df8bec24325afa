#include "core/document/migrate.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/limits.h"
#include "core/document/json_document.h"

namespace roundwright {

namespace {

using Id = JsonTree::Id;

/// The member of an object, where it is of this kind; else none.
Id member_in(const JsonTree& tree, Id object, std::string_view key, JsonKind kind) {
    if (tree.kind(object) != JsonKind::object) return JsonTree::none;
    const Id found = tree.find(object, key);
    return found != JsonTree::none && tree.kind(found) == kind ? found : JsonTree::none;
}

std::vector<Id> elements_of(const JsonTree& tree, Id list) {
    std::vector<Id> elements;
    for (Id element = tree.first(list); element != JsonTree::none; element = tree.next(element))
        elements.push_back(element);
    return elements;
}

std::optional<std::string> text_in(const JsonTree& tree, Id object, std::string_view key) {
    const Id text = member_in(tree, object, key, JsonKind::text);
    return text == JsonTree::none ? std::nullopt : std::optional(tree.text_of(text));
}

/// Version 1 named the pieces of `written_for`; of entries with the same name the last counted, for every
/// piece of that name. What names no piece stays, for the reader to name as wrong.
void name_by_id(JsonTree& tree, Id written_for, const std::vector<Id>& pieces) {
    std::map<std::string, Id> last_of;
    std::vector<Id> wrong;
    for (const Id then : elements_of(tree, written_for)) {
        if (const auto name = text_in(tree, then, "piece"))
            last_of[*name] = then;
        else
            wrong.push_back(then);
    }
    std::vector<Id> by_id;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const auto name = text_in(tree, pieces[i], "name");
        const auto then = name ? last_of.find(*name) : last_of.end();
        if (then == last_of.end()) continue;
        by_id.push_back(tree.copy(then->second));
        tree.put(by_id.back(), "piece", JsonKind::number, std::to_string(i + 1));
    }
    by_id.insert(by_id.end(), wrong.begin(), wrong.end());
    tree.set_elements(written_for, by_id);
}

/// Version 2: pieces have ids, from 1 in their order, and words remember pieces by them.
void give_pieces_ids(JsonTree& tree) {
    const Id list = member_in(tree, JsonTree::root, "pieces", JsonKind::list);
    if (list == JsonTree::none || tree.size(list) > max_pieces) return;
    const std::vector<Id> pieces = elements_of(tree, list);
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (tree.kind(pieces[i]) == JsonKind::object)
            tree.put(pieces[i], "id", JsonKind::number, std::to_string(i + 1));
    const Id text = member_in(tree, JsonTree::root, "text", JsonKind::object);
    if (text == JsonTree::none) return;
    const Id written_for = member_in(tree, text, "written_for", JsonKind::list);
    if (written_for != JsonTree::none && tree.size(written_for) <= max_pieces)
        name_by_id(tree, written_for, pieces);
}

}  // namespace

std::span<const Migration> migrations() {
    static constexpr std::array<Migration, document_version - 1> steps{give_pieces_ids};
    return steps;
}

void migrate(JsonTree& document, int from, std::span<const Migration> steps) {
    for (std::size_t step = static_cast<std::size_t>(from - 1); step < steps.size(); ++step)
        steps[step](document);
}

}  // namespace roundwright
