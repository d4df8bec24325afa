#include "core/document/unread_keys.h"

#include <algorithm>

#include "core/base/slips.h"

namespace roundwright {

namespace {

constexpr int letters_a_slip = 3;  // more slips than that make another word
constexpr int too_many_slips = 3;

}  // namespace

std::string_view likely_meant(std::string_view key, const std::vector<std::string_view>& absent) {
    int fewest = std::min(static_cast<int>(key.size()) / letters_a_slip + 1, too_many_slips);
    std::string_view likely;
    for (const std::string_view candidate : absent) {
        const int slips = slips_between(key, candidate);
        if (slips >= fewest) continue;
        fewest = slips;
        likely = candidate;
    }
    return likely;
}

bool UnreadKeys::is_told(const std::string& object, const std::string& key) {
    ++count_;
    const auto& known = index_of_[object];
    const auto index = known.find(key);
    if (index != known.end()) ++found_[index->second].key.more;
    return index != known.end() || found_.size() == most_unread_keys;
}

void UnreadKeys::tell(const std::string& object, const std::string& key, UnreadKey what, std::size_t byte) {
    index_of_[object].emplace(key, found_.size());
    found_.push_back({std::move(what), byte});
}

std::vector<UnreadKey> UnreadKeys::take() {
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Found& a, const Found& b) { return a.byte < b.byte; });
    std::vector<UnreadKey> keys;
    for (Found& found : found_) keys.push_back(std::move(found.key));
    return keys;
}

}  // namespace roundwright
