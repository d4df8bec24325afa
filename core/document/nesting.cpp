#include "core/document/nesting.h"

namespace roundwright {

std::optional<std::size_t> too_deep_at(std::string_view json) {
    int depth = 0;
    bool in_text = false;
    for (std::size_t i = 0; i < json.size(); ++i) {
        const char c = json[i];
        if (in_text && c == '\\')
            ++i;
        else if (c == '"')
            in_text = !in_text;
        else if (in_text)
            continue;
        else if (c == '{' || c == '[')
            ++depth;
        else if (c == '}' || c == ']')
            --depth;
        if (depth > deepest_nesting) return i;
    }
    return std::nullopt;
}

}  // namespace roundwright
