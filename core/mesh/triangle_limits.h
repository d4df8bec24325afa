#pragma once

#include <cstddef>

namespace roundwright {

/// Triangles that a piece may have: in a picture on a screen; on a printed page, where more relief would only
/// cost time; in a mesh file unless another number is asked for. All pieces of a file together have no more
/// than `most_triangles_at_all`.
inline constexpr std::size_t most_picture_triangles = 200'000;
inline constexpr std::size_t most_page_triangles = 60'000;
inline constexpr std::size_t most_file_triangles = 400'000;
inline constexpr std::size_t most_triangles_at_all = 5'000'000;

}  // namespace roundwright
