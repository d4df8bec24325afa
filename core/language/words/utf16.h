#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace roundwright {

/// A text in UTF-16, told by its byte order mark (as some editors save it), as UTF-8; none: it has no such
/// mark. Half a pair of surrogates becomes U+FFFD. Source: RFC 2781.
[[nodiscard]] std::optional<std::string> utf8_of_utf16(std::string_view bytes);

}  // namespace roundwright
