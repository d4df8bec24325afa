#pragma once

#include "app/kept/kept_copy.h"

namespace roundwright::app {

/// Whether a kept copy is of the file that `path` leads to: by the same path once links are followed, by a
/// hard link, or because the file was renamed since and holds what it held when the changes began.
[[nodiscard]] bool is_of_file(const KeptHead& head, const QString& path);

/// Whether the file holds something else now than when the changes began. Times alone are no change.
[[nodiscard]] bool was_changed_since(const KeptHead& head, const QString& path);

}  // namespace roundwright::app
