#pragma once

#include <optional>

#include <QString>

#include "app/kit/preferences.h"

namespace roundwright::app {

/// "60mm", "6 cm", "2.5in" or a bare number in the units that the command speaks, as mm; nothing where it is
/// no length above 0.
[[nodiscard]] std::optional<double> length_mm(const QString& text, LengthUnit units);

/// A length and how far it may be out, either way: "82mm+-2mm"; nothing where it is none.
struct LengthWithError {
    double mm = 0;
    std::optional<double> error_mm;
};
[[nodiscard]] std::optional<LengthWithError> length_with_error(const QString& text, LengthUnit units);

}  // namespace roundwright::app
