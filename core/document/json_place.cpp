#include "core/document/json_place.h"

#include <algorithm>
#include <cmath>
#include <locale>
#include <nlohmann/json.hpp>
#include <sstream>

#include "core/document/json_parser.h"

namespace roundwright {

namespace {

using Id = JsonTree::Id;

constexpr std::size_t longest_quote = 40;
constexpr std::size_t longest_bytes_quoted = 400;  // no need to decode more for so short a quote

std::string plain(double value) {
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text << value;
    return text.str();
}

std::string as_json(std::string_view text) {
    return nlohmann::json(text).dump(-1, ' ', true, nlohmann::json::error_handler_t::replace);
}

std::string shortened(std::string text) {
    return text.size() > longest_quote ? text.substr(0, longest_quote) + "..." : text;
}

}  // namespace

std::string pointer_token(std::string_view key) {
    std::string token = "/";
    for (const char c : key) {
        if (c == '~')
            token += "~0";
        else if (c == '/')
            token += "~1";
        else
            token += c;
    }
    return token;
}

std::string JsonPlace::path(bool numbers) const {
    if (parent_ == nullptr) return {};
    std::string above = parent_->path(numbers);
    if (tree_->kind(parent_->id_) == JsonKind::object) return above + pointer_token(tree_->key(id_));
    return above + (numbers ? "/" + std::to_string(index_) : "/*");
}

LineAndColumn JsonPlace::line_and_column_of(std::optional<std::size_t> byte) const {
    return byte ? line_and_column(tree_->text(), *byte) : LineAndColumn{};
}

/// What a migration put in stands where the object around it does.
LineAndColumn JsonPlace::where() const {
    const JsonPlace* place = this;
    while (place->parent_ != nullptr && !tree_->byte(place->id_)) place = place->parent_;
    return line_and_column_of(tree_->byte(place->id_));
}

void JsonPlace::fail_as(DocumentFault fault, const std::string& what) const {
    throw DocumentError(fault, pointer(), what, where());
}

/// What stands in the file, short enough for a message.
std::string JsonPlace::quoted() const {
    const std::string_view raw = tree_->raw(id_);
    switch (tree_->kind(id_)) {
        case JsonKind::object:
            return "an object";
        case JsonKind::list:
            return "a list";
        case JsonKind::text:
            if (raw.size() > longest_bytes_quoted)
                return shortened(std::string(raw.substr(0, longest_quote + 1)));
            return shortened(as_json(tree_->text_of(id_)));
        default:
            return shortened(std::string(raw));
    }
}

void JsonPlace::fail(const std::string& expected) const {
    fail_as(DocumentFault::wrong_value, "expected " + expected + ", found " + quoted());
}

bool JsonPlace::has(std::string_view key) const {
    if (tree_->kind(id_) != JsonKind::object) fail("an object");
    if (tree_->size(id_) > most_keys)
        fail_as(DocumentFault::wrong_value, "expected at most " + std::to_string(most_keys) +
                                                " keys, found " + std::to_string(tree_->size(id_)));
    const Id member = tree_->find(id_, key);
    if (member == JsonTree::none) {
        absent_.push_back(key);
        return false;
    }
    tree_->set_asked(member);
    return tree_->kind(member) != JsonKind::null;
}

JsonPlace JsonPlace::at(std::string_view key) const {
    if (!has(key))
        throw DocumentError(DocumentFault::wrong_value, pointer() + pointer_token(key), "missing", where());
    return JsonPlace(*this, tree_->find(id_, key), 0);
}

std::vector<Id> JsonPlace::unasked(Id object) const {
    std::vector<Id> members;
    for (Id member = tree_->first(object); member != JsonTree::none; member = tree_->next(member))
        if (!tree_->asked(member)) members.push_back(member);
    return members;
}

/// Readers ask for the first of two, so one of any two equal keys is among those not asked for.
void JsonPlace::refuse_doubled() const {
    std::vector<std::pair<std::string, Id>> keys;
    keys.reserve(tree_->size(id_));
    for (Id member = tree_->first(id_); member != JsonTree::none; member = tree_->next(member))
        keys.emplace_back(tree_->key(member), member);
    std::stable_sort(keys.begin(), keys.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    const auto same = [](const auto& a, const auto& b) { return a.first == b.first; };
    const auto first = std::adjacent_find(keys.begin(), keys.end(), same);
    if (first == keys.end()) return;
    throw DocumentError(DocumentFault::doubled_key, pointer() + pointer_token(first->first),
                        as_json(first->first) + " stands twice",
                        line_and_column_of(tree_->key_byte(std::next(first)->second)),
                        line_and_column_of(tree_->key_byte(first->second)));
}

void JsonPlace::close() const {
    const std::vector<Id> others = unasked(id_);
    if (others.empty()) return;
    refuse_doubled();
    const std::string here = path(false);
    for (const Id member : others) {
        const std::string key = tree_->key(member);
        if (unread_->count() == most_kept_keys)
            fail_as(DocumentFault::too_many_values, "more unknown keys than are kept");
        if (unread_->is_told(here, key)) continue;
        unread_->tell(here, key, {pointer() + pointer_token(key), std::string(likely_meant(key, absent_)), 0},
                      tree_->key_byte(member).value_or(0));
    }
}

std::string JsonPlace::unasked_members(Id object) const {
    std::string json;
    for (const Id member : unasked(object)) {
        if (!json.empty()) json += ',';
        const std::string_view key = tree_->raw_key(member);
        json += key.find('\\') == std::string_view::npos ? key : nlohmann::json(tree_->key(member)).dump();
        json += ':' + without_spaces(tree_->raw(member));
    }
    return json;
}

KeptKeys JsonPlace::kept(std::initializer_list<std::string_view> inside) const {
    close();
    std::string json = unasked_members(id_);
    for (const std::string_view key : inside) {
        const Id object = tree_->find(id_, key);
        if (object == JsonTree::none || tree_->kind(object) != JsonKind::object) continue;
        const std::string members = unasked_members(object);
        if (members.empty()) continue;
        if (!json.empty()) json += ',';
        json += '"' + std::string(key) + "\":{" + members + '}';
    }
    return json.empty() ? KeptKeys() : KeptKeys('{' + json + '}');
}

std::size_t JsonPlace::size(std::size_t most) const {
    if (tree_->kind(id_) != JsonKind::list) fail("a list");
    if (tree_->size(id_) > most)
        fail_as(DocumentFault::wrong_value, "expected at most " + std::to_string(most) + " entries, found " +
                                                std::to_string(tree_->size(id_)));
    return tree_->size(id_);
}

std::string JsonPlace::text() const {
    if (tree_->kind(id_) != JsonKind::text) fail("a text");
    return tree_->text_of(id_);
}

bool JsonPlace::flag() const {
    if (tree_->kind(id_) != JsonKind::flag) fail("true or false");
    return tree_->flag_of(id_);
}

double JsonPlace::number(double least, double most) const {
    const std::optional<double> value =
        tree_->kind(id_) == JsonKind::number ? tree_->number_of(id_) : std::nullopt;
    if (!value || !(*value >= least && *value <= most))
        fail("a number from " + plain(least) + " to " + plain(most));
    return *value;
}

std::optional<int> JsonPlace::maybe_whole(int least, int most) const {
    if (tree_->kind(id_) != JsonKind::number) return std::nullopt;
    const std::optional<double> value = tree_->number_of(id_);
    if (!value || !(*value >= least && *value <= most) || *value != std::floor(*value)) return std::nullopt;
    return static_cast<int>(*value);
}

int JsonPlace::whole(int least, int most) const {
    const std::optional<int> value = maybe_whole(least, most);
    if (!value) fail("a whole number from " + std::to_string(least) + " to " + std::to_string(most));
    return *value;
}

}  // namespace roundwright
