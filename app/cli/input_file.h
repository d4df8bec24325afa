#pragma once

#include <functional>

#include "app/cli/arguments.h"
#include "app/session/preferences.h"
#include "core/checks/piece_study.h"

namespace roundwright::app {

/// Reads each of the files named and hands it on; says on the standard error which cannot be read, and where
/// in it. Gives the worst exit code met.
[[nodiscard]] int for_each_toy(const Arguments& arguments,
                               const std::function<int(const QString& path, const Toy& toy)>& work);

/// Every piece worked out, in order.
[[nodiscard]] std::vector<PieceStudy> study_toy(const Toy& toy);

/// What "--units" says: mm where it says nothing.
[[nodiscard]] LengthUnit units_wanted(const Arguments& arguments);

/// The file and the toy's title, over what is said of it.
void print_heading(const QString& path, const Toy& toy);

/// The piece's name, or "piece 3" where it has none.
[[nodiscard]] QString piece_name(const Toy& toy, std::size_t piece);

}  // namespace roundwright::app
