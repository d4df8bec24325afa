#pragma once

#include <string>
#include <string_view>

namespace roundwright {

/// Text of the maker's on one line: control characters that part lines or columns as spaces, none at the
/// ends.
[[nodiscard]] inline std::string on_one_line(std::string_view text) {
    std::string line;
    for (char c : text) line += c == '\n' || c == '\r' || c == '\t' || c == '\v' || c == '\f' ? ' ' : c;
    const std::size_t first = line.find_first_not_of(' ');
    const std::size_t last = line.find_last_not_of(' ');
    return first == std::string::npos ? "" : line.substr(first, last - first + 1);
}

}  // namespace roundwright
