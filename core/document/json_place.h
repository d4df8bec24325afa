#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "core/document/asked_keys.h"
#include "core/document/json_document.h"

namespace roundwright {

/// A key as a token of a JSON pointer (RFC 6901, section 3).
[[nodiscard]] std::string pointer_token(std::string_view key);

/// A value in a document and where it stands. Every reader below either returns a value of the wanted kind or
/// throws DocumentError with the place's JSON pointer and what was expected there.
class JsonPlace {
  public:
    /// `asked` (may be null) is told of every key that is asked for, here and in what is found from here.
    explicit JsonPlace(const nlohmann::json& value, AskedKeys* asked = nullptr, std::string pointer = {})
        : value_(&value), asked_(asked), pointer_(std::move(pointer)) {}

    [[nodiscard]] const std::string& pointer() const { return pointer_; }
    [[noreturn]] void fail(const std::string& expected) const;

    /// Members of an object: one that must be there, and whether an optional one is (null counts as absent).
    [[nodiscard]] JsonPlace at(std::string_view key) const;
    [[nodiscard]] bool has(std::string_view key) const;

    /// Elements of an array of at most `most`.
    [[nodiscard]] std::size_t size(std::size_t most) const;
    [[nodiscard]] JsonPlace element(std::size_t index) const;

    [[nodiscard]] std::string text() const;
    [[nodiscard]] bool flag() const;
    [[nodiscard]] double number(double least, double most) const;
    [[nodiscard]] int whole(int least, int most) const;
    /// The same, and nothing where it is none.
    [[nodiscard]] std::optional<int> maybe_whole(int least, int most) const;

  private:
    const nlohmann::json* value_;
    AskedKeys* asked_;
    std::string pointer_;
};

}  // namespace roundwright
