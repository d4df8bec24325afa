#pragma once

#include <QString>

#include "app/kept/left_behind.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// "“pup.roundwright”", or what a toy without a file is called.
[[nodiscard]] QString left_name(const KeptHead& head, const Toy* toy);
/// When it was kept, and what is in it: the pieces that differ from those of the file, or all of them if
/// `saved` is null, and what was being typed.
[[nodiscard]] QString left_words(const KeptHead& head, const Toy& toy, const Toy* saved);

}  // namespace roundwright::app
