#pragma once

#include <QString>

#include "app/session/document_session.h"
#include "app/session/typed.h"

namespace roundwright::app {

/// What was open when the program ended, so that it begins there the next time.
struct LastToy {
    QString path;  ///< of the toy's file; empty: there was none
    int piece = 0;
    PendingEntry pending;
};

[[nodiscard]] LastToy last_toy();
/// What was typed is in the window again, and kept with it.
void forget_last_typing();
/// True if it is on disk.
[[nodiscard]] bool keep_last_toy(const DocumentSession& session, const PendingEntry& pending);

}  // namespace roundwright::app
