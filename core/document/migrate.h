#pragma once

#include <span>

#include "core/document/json_tree.h"

namespace roundwright {

/// Brings a document from one version of the format to the next. It may trust nothing about what it is given,
/// and leaves alone what it does not understand: the reader that follows names what is wrong and where.
using Migration = void (*)(JsonTree& document);

/// The steps of this program: step i brings version i + 1 to version i + 2. A change of the format adds one
/// function here and one to `document_version`; what a released step does is never changed.
[[nodiscard]] std::span<const Migration> migrations();

/// Applies the steps from version `from` on.
void migrate(JsonTree& document, int from, std::span<const Migration> steps);

}  // namespace roundwright
