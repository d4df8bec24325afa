#pragma once

#include <nlohmann/json_fwd.hpp>

#include <QString>

#include "core/language/pattern/read_pattern.h"

namespace roundwright::app {

/// A pattern that was read, for machines: `file`, `title`, `terms`, `proved`; `pieces` with `name`, `rounds`
/// and the `stitches` of each round; `findings` with `code`, `severity`, `line`, `column`, `piece` and
/// `round` (from 1, or null), `message`, and `mend` where there is one.
[[nodiscard]] nlohmann::ordered_json read_json(const QString& path, const ReadPattern& pattern);

}  // namespace roundwright::app
