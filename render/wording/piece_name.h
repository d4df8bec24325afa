#pragma once

#include <QString>

#include "core/toy/toy.h"

namespace roundwright {

/// The piece's name, or "piece 3" where it has none.
[[nodiscard]] QString piece_name(const Toy& toy, std::size_t piece);

}  // namespace roundwright
