#include "core/document/json_tree.h"

#include <algorithm>
#include <charconv>

namespace roundwright {

namespace {

unsigned hex_value(std::string_view digits) {
    unsigned value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value, 16);
    return value;
}

void append_utf8(std::string& text, unsigned code) {
    const auto byte = [&text](unsigned value) { text += static_cast<char>(value); };
    const auto follow = [&](unsigned shift) { byte(0x80u | (code >> shift & 0x3Fu)); };
    if (code < 0x80) {
        byte(code);
    } else if (code < 0x800) {
        byte(0xC0u | code >> 6);
        follow(0);
    } else if (code < 0x10000) {
        byte(0xE0u | code >> 12);
        follow(6);
        follow(0);
    } else {
        byte(0xF0u | code >> 18);
        follow(12);
        follow(6);
        follow(0);
    }
}

/// Decodes the escape whose backslash stands at `at` of a text that was proved; returns the byte after it.
std::size_t append_escape(std::string& text, std::string_view quoted, std::size_t at) {
    constexpr std::string_view letters = "bfnrt";
    constexpr std::string_view meant = "\b\f\n\r\t";
    const char letter = quoted[at + 1];
    if (letter != 'u') {
        const std::size_t known = letters.find(letter);
        text += known == std::string_view::npos ? letter : meant[known];
        return at + 2;
    }
    const unsigned code = hex_value(quoted.substr(at + 2, 4));
    if (code < 0xD800 || code > 0xDBFF) {
        append_utf8(text, code);
        return at + 6;
    }
    const unsigned low = hex_value(quoted.substr(at + 8, 4));  // RFC 8259, section 7: surrogate pairs
    append_utf8(text, 0x10000u + ((code & 0x3FFu) << 10) + (low & 0x3FFu));
    return at + 12;
}

/// Whether a number that no double holds is too large, and not too small. It is if its first digit that is
/// not 0 stands before the point once the exponent has moved it.
bool too_large(std::string_view number) {
    const std::size_t exponent_at = std::min(number.find_first_of("eE"), number.size());
    const std::string_view digits = number.substr(0, exponent_at);
    const std::size_t first = digits.find_first_of("123456789");
    if (first == std::string_view::npos) return false;
    const auto point = static_cast<double>(std::min(digits.find('.'), digits.size()));
    double exponent = 0;
    if (exponent_at < number.size()) {
        const bool negative = number[exponent_at + 1] == '-';
        for (const char c : number.substr(exponent_at + 1))
            if (c >= '0' && c <= '9') exponent = exponent * 10 + (c - '0');
        if (negative) exponent = -exponent;
    }
    return point - static_cast<double>(first) + exponent > 0;
}

}  // namespace

std::size_t quoted_size(std::string_view quoted) {
    std::size_t at = quoted.find_first_of("\"\\", 1);
    while (quoted[at] == '\\') at = quoted.find_first_of("\"\\", at + 2);
    return at + 1;
}

std::string decoded_text(std::string_view quoted) {
    std::string text;
    std::size_t at = 1;
    while (quoted[at] != '"') {
        const std::size_t plain = quoted.find_first_of("\"\\", at);
        text.append(quoted, at, plain - at);
        at = quoted[plain] == '\\' ? append_escape(text, quoted, plain) : plain;
    }
    return text;
}

std::string without_spaces(std::string_view json) {
    std::string text;
    text.reserve(json.size());
    std::size_t at = 0;
    while (at < json.size()) {
        const std::size_t stop = std::min(json.find_first_of(" \t\n\r\"", at), json.size());
        text.append(json, at, stop - at);
        at = stop;
        if (at == json.size()) break;
        const std::size_t size = json[at] == '"' ? quoted_size(json.substr(at)) : 1;
        if (json[at] == '"') text.append(json, at, size);
        at += size;
    }
    return text;
}

std::string_view JsonTree::from(std::size_t place) const {
    return place < text_.size() ? text_.substr(place)
                                : std::string_view(put_in_).substr(place - text_.size());
}

std::string_view JsonTree::raw(Id value) const {
    const Node& node = nodes_[value];
    return from(node.begin).substr(0, node.end - node.begin);
}

std::optional<std::size_t> JsonTree::byte(Id value) const {
    const std::size_t begin = nodes_[value].begin;
    return begin < text_.size() ? std::optional(begin) : std::nullopt;
}

std::optional<std::size_t> JsonTree::key_byte(Id member) const {
    const std::size_t begin = nodes_[member].key;
    return begin < text_.size() ? std::optional(begin) : std::nullopt;
}

std::string JsonTree::key(Id member) const {
    return nodes_[member].key == none ? std::string() : decoded_text(from(nodes_[member].key));
}

std::string_view JsonTree::raw_key(Id member) const {
    const std::string_view quoted = from(nodes_[member].key);
    return quoted.substr(0, quoted_size(quoted));
}

bool JsonTree::has_key(Id member, std::string_view key) const {
    const Node& node = nodes_[member];
    if (node.key_escaped) return this->key(member) == key;
    const std::string_view quoted = from(node.key);
    return quoted.size() > key.size() + 1 && quoted[key.size() + 1] == '"' &&
           quoted.substr(1, key.size()) == key;
}

JsonTree::Id JsonTree::find(Id object, std::string_view key) const {
    Id member = nodes_[object].first;
    while (member != none && !has_key(member, key)) member = nodes_[member].next;
    return member;
}

std::string JsonTree::text_of(Id value) const { return decoded_text(raw(value)); }

std::optional<double> JsonTree::number_of(Id value) const {
    const std::string_view number = raw(value);
    double result = 0;
    const auto [end, error] = std::from_chars(number.data(), number.data() + number.size(), result);
    if (error == std::errc::result_out_of_range) return too_large(number) ? std::nullopt : std::optional(0.0);
    return result;
}

/// Doubles up to the most values that a file may have; what migrations add to those is little.
void JsonTree::make_room() {
    constexpr std::size_t a_few = 1'000;
    const std::size_t count = nodes_.size();
    if (count < nodes_.capacity()) return;
    nodes_.reserve(count < most_values ? std::min(2 * count + 1, most_values) : count + a_few);
}

JsonTree::Id JsonTree::add(JsonKind kind, std::size_t begin, Id key, bool key_escaped) {
    make_room();
    Node& node = nodes_.emplace_back();
    node.kind = kind;
    node.begin = static_cast<std::uint32_t>(begin);
    node.key = key;
    node.key_escaped = key_escaped;
    return static_cast<Id>(nodes_.size() - 1);
}

void JsonTree::append(Id parent, Id last, Id child) {
    ++nodes_[parent].size;
    (last == none ? nodes_[parent].first : nodes_[last].next) = child;
}

std::size_t JsonTree::put_in(std::string_view json) {
    const std::size_t begin = text_.size() + put_in_.size();
    put_in_ += json;
    return begin;
}

void JsonTree::put(Id object, std::string_view key, JsonKind kind, std::string_view json) {
    const Id old = find(object, key);
    const std::size_t quotes = put_in('"' + std::string(key) + '"');
    const std::size_t begin = put_in(json);
    if (old != none) {
        Node& node = nodes_[old];
        node.kind = kind;
        node.first = none;
        node.size = 0;
        node.begin = static_cast<std::uint32_t>(begin);
        end_at(old, begin + json.size());
        return;
    }
    const Id added = add(kind, begin, static_cast<Id>(quotes), false);
    end_at(added, begin + json.size());
    nodes_[added].next = nodes_[object].first;
    nodes_[object].first = added;
    ++nodes_[object].size;
}

JsonTree::Id JsonTree::copy(Id object) {
    const auto again = [this](Id value) {
        make_room();
        nodes_.push_back(nodes_[value]);
        return static_cast<Id>(nodes_.size() - 1);
    };
    const Id made = again(object);
    Id last = none;
    for (Id member = nodes_[object].first; member != none; member = nodes_[member].next) {
        const Id copied = again(member);
        (last == none ? nodes_[made].first : nodes_[last].next) = copied;
        last = copied;
    }
    return made;
}

void JsonTree::set_elements(Id list, const std::vector<Id>& elements) {
    nodes_[list].size = 0;
    nodes_[list].first = none;
    Id last = none;
    for (const Id element : elements) {
        nodes_[element].next = none;
        append(list, last, element);
        last = element;
    }
}

}  // namespace roundwright
