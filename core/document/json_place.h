#pragma once

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/kept_keys.h"
#include "core/document/json_document.h"
#include "core/document/json_tree.h"
#include "core/document/unread_keys.h"

namespace roundwright {

/// A key as a token of a JSON pointer (RFC 6901, section 3).
[[nodiscard]] std::string pointer_token(std::string_view key);

/// An object that is read has no more keys than this, so that looking one up stays quick.
inline constexpr std::size_t most_keys = 1'000;
/// What a newer program may have put into every round of the largest toy, twice.
inline constexpr std::size_t most_kept_keys = 800'000;

/// A value in a document and where it stands. Every reader below either returns a value of the wanted kind or
/// throws DocumentError with the place and what was expected there. A place must outlive the places that were
/// reached from it.
class JsonPlace {
  public:
    /// The whole document. `unread` is told of every key that nobody asks for.
    JsonPlace(JsonTree& tree, UnreadKeys& unread) : tree_(&tree), unread_(&unread) {}

    [[nodiscard]] std::string pointer() const { return path(true); }
    [[noreturn]] void fail(const std::string& expected) const;

    /// Members of an object: one that must be there, and whether an optional one is (null counts as absent).
    [[nodiscard]] JsonPlace at(std::string_view key) const;
    [[nodiscard]] bool has(std::string_view key) const;

    /// To be called when all of an object's keys were asked for: tells the others, and refuses doubled ones.
    void close() const;
    /// Closes the object and returns what it keeps: the keys that nobody asked for, also those of the objects
    /// `inside` that it holds under these keys.
    [[nodiscard]] KeptKeys kept(std::initializer_list<std::string_view> inside = {}) const;

    /// Elements of a list of at most `most`.
    [[nodiscard]] std::size_t size(std::size_t most) const;
    template <class Visit>
    void each(Visit visit) const {
        std::size_t index = 0;
        for (JsonTree::Id element = tree_->first(id_); element != JsonTree::none;
             element = tree_->next(element), ++index)
            visit(JsonPlace(*this, element, index));
    }

    [[nodiscard]] std::string text() const;
    [[nodiscard]] bool flag() const;
    [[nodiscard]] double number(double least, double most) const;
    [[nodiscard]] int whole(int least, int most) const;
    /// The same, and nothing where it is none.
    [[nodiscard]] std::optional<int> maybe_whole(int least, int most) const;

  private:
    JsonPlace(const JsonPlace& parent, JsonTree::Id id, std::size_t index)
        : tree_(parent.tree_), unread_(parent.unread_), parent_(&parent), id_(id), index_(index) {}

    /// The JSON pointer, with the numbers of elements or with * in their place.
    [[nodiscard]] std::string path(bool numbers) const;
    [[nodiscard]] LineAndColumn line_and_column_of(std::optional<std::size_t> byte) const;
    [[nodiscard]] LineAndColumn where() const;
    [[noreturn]] void fail_as(DocumentFault fault, const std::string& what) const;
    [[nodiscard]] std::string quoted() const;
    void refuse_doubled() const;
    [[nodiscard]] std::vector<JsonTree::Id> unasked(JsonTree::Id object) const;
    [[nodiscard]] std::string unasked_members(JsonTree::Id object) const;

    JsonTree* tree_;
    UnreadKeys* unread_;
    const JsonPlace* parent_ = nullptr;
    JsonTree::Id id_ = JsonTree::root;
    std::size_t index_ = 0;                         ///< in a list
    mutable std::vector<std::string_view> absent_;  ///< keys that were asked for and are not there
};

}  // namespace roundwright
