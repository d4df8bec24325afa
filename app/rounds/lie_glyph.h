#pragma once

#include <QString>

#include "core/shape/lie.h"

namespace roundwright::app {

/// The name of the glyph (app/kit/icons.h) that shows how the fabric lies.
[[nodiscard]] QString lie_glyph(Lie lie);

}  // namespace roundwright::app
