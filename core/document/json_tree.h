#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace roundwright {

enum class JsonKind : std::uint8_t { null, flag, number, text, list, object };

/// A JSON text as values that know where they stand in it. Texts and numbers are decoded when they are asked
/// for; until then a value is 28 bytes, whatever it is, so that memory is bounded by the number of values.
/// The text must outlive the tree.
class JsonTree {
  public:
    using Id = std::uint32_t;
    static constexpr Id none = ~Id{0};
    static constexpr Id root = 0;

    explicit JsonTree(std::string_view text) : text_(text) {}

    [[nodiscard]] std::string_view text() const { return text_; }
    [[nodiscard]] JsonKind kind(Id value) const { return nodes_[value].kind; }
    /// Members of an object, elements of a list.
    [[nodiscard]] std::size_t size(Id value) const { return nodes_[value].size; }
    [[nodiscard]] Id first(Id value) const { return nodes_[value].first; }
    [[nodiscard]] Id next(Id value) const { return nodes_[value].next; }
    /// As it stands in the text.
    [[nodiscard]] std::string_view raw(Id value) const;
    /// Where it begins in the text; nothing for what a migration put in.
    [[nodiscard]] std::optional<std::size_t> byte(Id value) const;
    /// The same of a member's key.
    [[nodiscard]] std::optional<std::size_t> key_byte(Id member) const;

    [[nodiscard]] std::string key(Id member) const;
    /// In its quotes, as it stands in the text.
    [[nodiscard]] std::string_view raw_key(Id member) const;
    [[nodiscard]] bool has_key(Id member, std::string_view key) const;
    /// The first member with this key, or `none`.
    [[nodiscard]] Id find(Id object, std::string_view key) const;

    [[nodiscard]] std::string text_of(Id value) const;
    [[nodiscard]] bool flag_of(Id value) const { return raw(value) == "true"; }
    /// Nothing where the number is too large for a double.
    [[nodiscard]] std::optional<double> number_of(Id value) const;

    /// Whether a reader has asked for this member.
    [[nodiscard]] bool asked(Id member) const { return nodes_[member].asked; }
    void set_asked(Id member) { nodes_[member].asked = true; }

    // For the parser.
    Id add(JsonKind kind, std::size_t begin, Id key, bool key_escaped);
    void end_at(Id value, std::size_t end) { nodes_[value].end = static_cast<std::uint32_t>(end); }
    void append(Id parent, Id last, Id child);
    [[nodiscard]] std::size_t count() const { return nodes_.size(); }
    void reserve(std::size_t values) { nodes_.reserve(values); }

    // For migrations: the text stays, what is put in stands beside it.
    /// Gives an object a member, in place of the one that has the key. `json`: a number, a text or a word.
    void put(Id object, std::string_view key, JsonKind kind, std::string_view json);
    /// An object with the same members, in no list yet.
    [[nodiscard]] Id copy(Id object);
    void set_elements(Id list, const std::vector<Id>& elements);

  private:
    struct Node {
        std::uint32_t begin = 0;
        std::uint32_t end = 0;
        std::uint32_t key = none;  ///< where the key's quotes begin
        Id first = none;
        Id next = none;
        std::uint32_t size = 0;
        JsonKind kind = JsonKind::null;
        bool key_escaped = false;
        bool asked = false;
    };

    void make_room();
    /// From a place in the text, or in what was put in, to its end.
    [[nodiscard]] std::string_view from(std::size_t place) const;
    std::size_t put_in(std::string_view json);

    std::string_view text_;
    std::string put_in_;  ///< its places are counted on from the end of the text
    std::vector<Node> nodes_;
};

/// More values than a toy that is within all its limits has (200 pieces of 2,000 rounds and 1,000 features
/// with every key: 6 million). They take 224 MB at most.
inline constexpr std::size_t most_values = 8'000'000;

/// The bytes from the quotes that a text begins with to those that end it.
[[nodiscard]] std::size_t quoted_size(std::string_view quoted);

/// A text between quotes, decoded. `quoted` begins with the quotes and may go on after them.
[[nodiscard]] std::string decoded_text(std::string_view quoted);

/// JSON without the spaces between its tokens.
[[nodiscard]] std::string without_spaces(std::string_view json);

}  // namespace roundwright
