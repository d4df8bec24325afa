#include "core/document/asked_keys.h"

#include <algorithm>
#include <map>

#include "core/base/slips.h"
#include "core/document/json_place.h"

namespace roundwright {

namespace {

using nlohmann::json;
using Keys = std::vector<std::string_view>;

bool holds(const Keys& keys, std::string_view key) {
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

constexpr std::size_t letters_a_slip = 3;  // more slips than that make another word

/// The nearest key that was asked for and is not there.
std::string likely_meant(const json& object, const Keys& asked, std::string_view key) {
    int fewest = static_cast<int>(key.size() / letters_a_slip) + 1;
    std::string likely;
    for (const std::string_view candidate : asked) {
        const int slips = slips_between(key, candidate);
        if (slips >= fewest || object.contains(std::string(candidate))) continue;
        fewest = slips;
        likely = candidate;
    }
    return likely;
}

class UnreadWalk {
  public:
    explicit UnreadWalk(const std::unordered_map<const json*, Keys>& asked) : asked_(asked) {}

    void visit(const json& value, const std::string& place, const std::string& kind) {
        if (value.is_object()) visit_object(value, place, kind);
        if (!value.is_array()) return;
        for (std::size_t i = 0; i < value.size(); ++i)
            if (value[i].is_structured()) visit(value[i], place + "/" + std::to_string(i), kind + "/*");
    }

    std::vector<UnreadKey> found;

  private:
    void visit_object(const json& object, const std::string& place, const std::string& kind) {
        const auto asked = asked_.find(&object);
        if (asked == asked_.end()) return;
        for (const auto& [key, member] : object.items()) {
            const std::string token = pointer_token(key);
            if (!holds(asked->second, key))
                report(place + token, kind + token, likely_meant(object, asked->second, key));
            else if (member.is_structured())
                visit(member, place + token, kind + token);
        }
    }

    void report(const std::string& place, const std::string& kind, std::string likely) {
        if (const auto known = index_of_.find(kind); known != index_of_.end()) {
            ++found[known->second].more;
        } else if (found.size() < most_unread_keys) {
            index_of_.emplace(kind, found.size());
            found.push_back({place, std::move(likely), 0});
        }
    }

    const std::unordered_map<const json*, Keys>& asked_;
    std::map<std::string, std::size_t> index_of_;
};

}  // namespace

std::vector<UnreadKey> AskedKeys::unread_in(const json& document) const {
    UnreadWalk walk(asked_);
    walk.visit(document, {}, {});
    return std::move(walk.found);
}

}  // namespace roundwright
