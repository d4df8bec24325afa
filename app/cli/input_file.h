#pragma once

#include <functional>

#include "app/cli/arguments.h"
#include "app/kit/preferences.h"
#include "core/study/piece_study.h"
#include "render/wording/piece_name.h"

namespace roundwright::app {

/// Reads each of the files named and hands it on; says on the standard error which cannot be read, and where
/// in it, and what the work complains of. Gives the worst exit code met.
[[nodiscard]] int for_each_toy(const Arguments& arguments,
                               const std::function<int(const QString& path, const Toy& toy)>& work);

/// Every piece worked out, in order.
[[nodiscard]] std::vector<PieceStudy> study_toy(const Toy& toy);

/// What "--units" says: mm where it says nothing.
[[nodiscard]] LengthUnit units_wanted(const Arguments& arguments);

inline constexpr auto terms_values = "us|uk|de|fr|es|nl|da|pt|it";

/// What "--terms" says: US terms where it says nothing.
[[nodiscard]] Terms terms_wanted(const Arguments& arguments);

/// The file and the toy's title, over what is said of it.
void print_heading(const QString& path, const Toy& toy);

}  // namespace roundwright::app
