#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/document/json_document.h"

namespace roundwright {

/// Of the keys that may stand in an object and do not, the one that was most likely meant by `key`; empty
/// where none is near.
[[nodiscard]] std::string_view likely_meant(std::string_view key,
                                            const std::vector<std::string_view>& absent);

/// Collects the keys that nobody asked for, like ones together: the same key in the same kind of object,
/// which is its place without the numbers.
class UnreadKeys {
  public:
    /// Counts one more, and says whether one like it was told, or so many that no more are.
    [[nodiscard]] bool is_told(const std::string& object, const std::string& key);
    void tell(const std::string& object, const std::string& key, UnreadKey what, std::size_t byte);
    [[nodiscard]] std::size_t count() const { return count_; }
    /// In the order of the file.
    [[nodiscard]] std::vector<UnreadKey> take();

  private:
    struct Found {
        UnreadKey key;
        std::size_t byte = 0;
    };
    std::map<std::string, std::unordered_map<std::string, std::size_t>> index_of_;  ///< by object and key
    std::vector<Found> found_;
    std::size_t count_ = 0;
};

}  // namespace roundwright
