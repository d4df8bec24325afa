#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <utility>

namespace roundwright {

/// What a file says of an object under keys that this program does not know: a newer program's, or misspelt.
/// It goes where the object goes, is copied with it, and is written back with it. Objects share it; most have
/// none, which costs two pointers.
class KeptKeys {
  public:
    KeptKeys() = default;
    /// The keys as one JSON object, without spaces between its tokens; empty: none. Those of an object inside
    /// that has no keeper of its own ("start" in a piece) stand under its key.
    explicit KeptKeys(std::string json)
        : json_(json.empty() ? nullptr : std::make_shared<const std::string>(std::move(json))) {}

    [[nodiscard]] bool empty() const { return json_ == nullptr; }
    [[nodiscard]] std::string_view json() const { return json_ ? *json_ : std::string_view(); }

    friend bool operator==(const KeptKeys& a, const KeptKeys& b) {
        return a.json_ == b.json_ || a.json() == b.json();
    }

  private:
    std::shared_ptr<const std::string> json_;
};

}  // namespace roundwright
