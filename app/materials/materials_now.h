#pragma once

#include <optional>

#include "app/session/document_session.h"
#include "core/materials/materials.h"

namespace roundwright::app {

/// What is counted: one of a piece, or one toy with every piece as often as it is made.
enum class TakenFor { piece, toy };

/// What it takes as things are now. Nothing while a shape that it needs is still being solved.
[[nodiscard]] std::optional<Materials> materials_now(const DocumentSession& session, TakenFor what);

}  // namespace roundwright::app
