#pragma once

#include <cstddef>

namespace roundwright {

/// What one toy may hold. Each limit is met with a message, never with silence or a crash.
inline constexpr std::size_t max_pieces = 200;
inline constexpr std::size_t max_joins = 1'000;
inline constexpr std::size_t max_rounds_per_piece = 2'000;
inline constexpr std::size_t max_stitches_per_piece = 200'000;
/// What all the pieces of a text that is read may hold together.
inline constexpr std::size_t max_rounds_per_text = 50'000;
inline constexpr std::size_t max_stitches_per_text = 1'000'000;
/// The text of a pattern is some pages; a line of it, some sentences.
inline constexpr std::size_t max_text_bytes = 4u * 1024u * 1024u;
inline constexpr std::size_t max_line_bytes = 100'000;
inline constexpr std::size_t max_file_bytes = 64u * 1024u * 1024u;

}  // namespace roundwright
