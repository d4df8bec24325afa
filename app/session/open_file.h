#pragma once

#include <vector>

#include <QString>

#include "core/document/json_document.h"

namespace roundwright::app {

/// Where the open toy belongs on disk, and what was found there.
struct OpenFile {
    QString path;                       ///< empty: not saved yet
    bool read_only = false;             ///< written by a newer program
    bool unsaved = false;               ///< counts as modified, though no step was made
    std::vector<UnreadKey> left_out{};  ///< what was kept, but not understood
    std::vector<MendedId> mended{};     ///< pieces whose ids were put right
};

}  // namespace roundwright::app
