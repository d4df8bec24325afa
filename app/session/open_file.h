#pragma once

#include <vector>

#include <QString>

#include "app/session/file_standing.h"
#include "app/storage/whole_file.h"
#include "core/document/json_document.h"

namespace roundwright::app {

/// Where the open toy belongs on disk, and what was found there.
struct OpenFile {
    QString path;  ///< empty: not saved yet
    FileStanding standing{};
    bool not_yet_safe = false;                ///< saved, but the disk could not confirm it
    FileStamp stamp{};                        ///< of the content that the toy came from, or was last saved as
    std::vector<UnreadKey> not_understood{};  ///< what was kept, but not understood
    std::vector<MendedId> mended{};           ///< pieces whose ids were put right
};

}  // namespace roundwright::app
