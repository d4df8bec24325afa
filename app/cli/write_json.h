#pragma once

#include <nlohmann/json_fwd.hpp>

#include <QString>

#include "core/language/words/terms.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// A toy in words, for machines: `file`, `title`, `terms`, `text` as it is written without "--json"; `pieces`
/// with `name`, `make`, `start` (empty for a magic ring, which round 1 names) and `rounds`, as they stand in
/// the text: `first` and `last` (numbers from 1), `words`, `stitches` when each is done, `yarn` (from 1),
/// `note`, `fits`.
[[nodiscard]] nlohmann::ordered_json write_json(const QString& path, const Toy& toy, Terms terms,
                                                const QString& text);

}  // namespace roundwright::app
