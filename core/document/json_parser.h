#pragma once

#include <cstddef>
#include <string_view>

#include "core/document/json_document.h"
#include "core/document/json_tree.h"

namespace roundwright {

/// Deeper than any document needs, since every level costs memory and stack.
inline constexpr int deepest_nesting = 64;

/// Reads JSON (RFC 8259), with or without a byte order mark. Throws DocumentError with line and column where
/// it is none, or is nested too deeply, or has too many values.
[[nodiscard]] JsonTree parse_json(std::string_view text);

/// The line and column of a byte.
[[nodiscard]] LineAndColumn line_and_column(std::string_view text, std::size_t byte);

}  // namespace roundwright
