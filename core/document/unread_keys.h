#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/document/json_document.h"

namespace roundwright {

/// Of the keys that may stand in an object and do not, the one that was most likely meant by `key`; empty
/// where none is near.
[[nodiscard]] std::string_view likely_meant(std::string_view key, const std::vector<std::string_view>& absent);

/// Collects the keys that nobody asked for, like ones together: `kind` is the place without the numbers.
class UnreadKeys {
  public:
    /// Counts one more where one like it was told, and says whether nothing needs to be told.
    [[nodiscard]] bool is_told(const std::string& kind);
    void tell(const std::string& kind, std::string place, std::string_view likely, std::size_t byte);
    /// In the order of the file.
    [[nodiscard]] std::vector<UnreadKey> take();

  private:
    struct Found {
        UnreadKey key;
        std::size_t byte = 0;
    };
    std::map<std::string, std::size_t> index_of_;
    std::vector<Found> found_;
};

}  // namespace roundwright
