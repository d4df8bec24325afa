#pragma once

#include <cstddef>
#include <string_view>

#include "core/document/json_document.h"
#include "core/document/json_tree.h"

namespace roundwright {

/// Deeper than any document needs, since every level costs memory and stack.
inline constexpr int deepest_nesting = 64;
/// More values than a toy that is within all its limits has (200 pieces of 2,000 rounds and 1,000 features
/// with every key: 6 million). They take 224 MB at most.
inline constexpr std::size_t most_values = 8'000'000;

/// Reads JSON (RFC 8259), with or without a byte order mark. Throws DocumentError with line and column where
/// it is none, or is nested too deeply, or has too many values.
[[nodiscard]] JsonTree parse_json(std::string_view text);

/// The line and column of a byte.
[[nodiscard]] LineAndColumn line_and_column(std::string_view text, std::size_t byte);

}  // namespace roundwright
