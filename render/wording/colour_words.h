#pragma once

#include <QString>

#include "core/base/colour.h"

namespace roundwright {

/// A plain name for a colour: "grey blue".
[[nodiscard]] QString colour_name(const Colour& colour);
/// The same with the exact value: "grey blue, #6F8F9E".
[[nodiscard]] QString colour_words(const Colour& colour);

}  // namespace roundwright
