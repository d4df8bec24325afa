#pragma once

#include <vector>

#include <QMimeData>

#include "app/session/document_session.h"

namespace roundwright::app {

/// The rounds as they go to the clipboard: whole, for this program, and in words, for any other.
/// The caller owns the result.
[[nodiscard]] QMimeData* rounds_to_clipboard(const DocumentSession& session, const std::vector<int>& rounds);

/// Rounds that were copied by this program; empty if there are none, or they cannot be read.
[[nodiscard]] std::vector<Round> rounds_from_clipboard(const QMimeData& data, std::size_t yarns);

}  // namespace roundwright::app
