#pragma once

#include <optional>

#include <QMimeData>

#include "core/toy/toy.h"

namespace roundwright::app {

/// A toy of one piece as it goes to the clipboard: whole, for this program, and its name, for any other. The
/// caller owns the result.
[[nodiscard]] QMimeData* piece_to_clipboard(const Toy& piece);

/// Pieces that were copied by this program, in a toy of their own; nothing if there are none, or they cannot
/// be read.
[[nodiscard]] std::optional<Toy> pieces_from_clipboard(const QMimeData& data);

}  // namespace roundwright::app
