#pragma once

#include <QString>

#include "app/kit/preferences.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// Names on the standard error what the checks find wrong with a toy whose pattern is handed out: rounds that
/// cannot be worked, eyes that cannot be fitted. Gives the exit code, as `check` does.
[[nodiscard]] int name_errors(const QString& path, const Toy& toy, LengthUnit units);

}  // namespace roundwright::app
