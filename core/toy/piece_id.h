#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace roundwright {

/// Names a piece within its toy, for as long as the piece lives: it stays when pieces are moved, when the toy
/// is copied or saved, and when an edit is undone. `none` names no piece.
enum class PieceId : std::uint32_t { none = 0 };

/// The largest that a toy gives or a file may hold; far more than anyone makes pieces.
inline constexpr PieceId largest_piece_id{1'000'000'000};

/// An id that no piece has: the one after `last`, the largest that was given so far, or the first free one
/// where there is none after it.
[[nodiscard]] PieceId new_piece_id(PieceId last, std::span<const PieceId> taken);

/// Ids for a list of pieces that ask for these: the first piece to ask for one keeps it; one that asks for
/// `none`, for one that is taken or for one out of range gets a new one.
[[nodiscard]] std::vector<PieceId> unique_piece_ids(std::span<const PieceId> wanted);

}  // namespace roundwright
