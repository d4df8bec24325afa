#pragma once

#include <nlohmann/json.hpp>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "core/document/json_document.h"

namespace roundwright {

/// The keys that a reader asked for, object by object: what stands beside them means nothing.
class AskedKeys {
  public:
    /// `key` must live on (the reader's keys are literals).
    void add(const nlohmann::json& object, std::string_view key) { asked_[&object].push_back(key); }

    /// The keys of objects that were read which nobody asked for, like ones together.
    [[nodiscard]] std::vector<UnreadKey> unread_in(const nlohmann::json& document) const;

  private:
    std::unordered_map<const nlohmann::json*, std::vector<std::string_view>> asked_;
};

}  // namespace roundwright
