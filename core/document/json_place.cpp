#include "core/document/json_place.h"

#include <cmath>
#include <sstream>

namespace roundwright {

namespace {

using nlohmann::json;

constexpr std::size_t longest_quote = 40;

/// What stands in the file, short enough for a message.
std::string quoted(const json& value) {
    if (value.is_object()) return "an object";
    if (value.is_array()) return "a list";
    std::string text = value.dump(-1, ' ', true, json::error_handler_t::replace);
    if (text.size() > longest_quote) text = text.substr(0, longest_quote) + "...";
    return text;
}

std::string plain(double value) {
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text << value;
    return text.str();
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

void JsonPlace::fail(const std::string& expected) const {
    throw DocumentError(DocumentFault::wrong_value, pointer_,
                        "expected " + expected + ", found " + quoted(*value_));
}

bool JsonPlace::has(std::string_view key) const {
    if (!value_->is_object()) fail("an object");
    if (asked_ != nullptr) asked_->add(*value_, key);
    const auto found = value_->find(std::string(key));
    return found != value_->end() && !found->is_null();
}

JsonPlace JsonPlace::at(std::string_view key) const {
    if (!has(key)) throw DocumentError(DocumentFault::wrong_value, pointer_ + pointer_token(key), "missing");
    return JsonPlace(*value_->find(std::string(key)), asked_, pointer_ + pointer_token(key));
}

std::size_t JsonPlace::size(std::size_t most) const {
    if (!value_->is_array()) fail("a list");
    if (value_->size() > most) {
        throw DocumentError(
            DocumentFault::wrong_value, pointer_,
            "expected at most " + std::to_string(most) + " entries, found " + std::to_string(value_->size()));
    }
    return value_->size();
}

JsonPlace JsonPlace::element(std::size_t index) const {
    return JsonPlace((*value_)[index], asked_, pointer_ + "/" + std::to_string(index));
}

std::string JsonPlace::text() const {
    if (!value_->is_string()) fail("a text");
    return value_->get<std::string>();
}

bool JsonPlace::flag() const {
    if (!value_->is_boolean()) fail("true or false");
    return value_->get<bool>();
}

double JsonPlace::number(double least, double most) const {
    const std::string expected = "a number from " + plain(least) + " to " + plain(most);
    if (!value_->is_number()) fail(expected);
    const double value = value_->get<double>();
    if (!(value >= least && value <= most)) fail(expected);
    return value;
}

std::optional<int> JsonPlace::maybe_whole(int least, int most) const {
    if (!value_->is_number()) return std::nullopt;
    const double value = value_->get<double>();
    if (!(value >= least && value <= most) || value != std::floor(value)) return std::nullopt;
    return static_cast<int>(value);
}

int JsonPlace::whole(int least, int most) const {
    const std::optional<int> value = maybe_whole(least, most);
    if (!value) fail("a whole number from " + std::to_string(least) + " to " + std::to_string(most));
    return *value;
}

}  // namespace roundwright
