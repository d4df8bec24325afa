#pragma once

#include <memory>

#include "app/kept/kept_copy.h"
#include "app/storage/lock_file.h"

class QLockFile;

namespace roundwright::app {

/// Unsaved work of a program that is gone. As long as this is held, no other window is offered it.
struct LeftBehind {
    QString file;      ///< its kept file, or the note of an older program
    QString window{};  ///< its name in the folder; empty: an older program's
    QString toy_file;  ///< an older program's: where the toy itself is; empty: in `file`
    KeptHead head;
    std::shared_ptr<LockFile> hold{};
    std::shared_ptr<QLockFile> old_hold{};  ///< as older programs locked
};

}  // namespace roundwright::app
