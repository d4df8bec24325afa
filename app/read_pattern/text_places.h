#pragma once

#include <QTextCursor>

#include "core/language/round/read_diagnostic.h"

class QTextDocument;

namespace roundwright::app {

/// What a finding is about, chosen: at least one sign of it, where the line has one.
[[nodiscard]] QTextCursor cursor_at(QTextDocument& document, const TextSpan& span);

/// Makes a mend's edits, as one step of the document's own undo. The document is the one that was read; edits
/// beyond it are passed over. The cursor that it gives stands behind what was changed first.
QTextCursor make_mend(QTextDocument& document, const Mend& mend);

}  // namespace roundwright::app
