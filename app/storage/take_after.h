#pragma once

#include "app/storage/disk.h"

namespace roundwright::app {

/// Gives the open file `file` what the file of before had: owner, group, rights, extended attributes (access
/// lists are among them). False if some of it was not to be had; rights of an owner or a group that could not
/// be kept are then not handed to another one.
[[nodiscard]] bool take_after(Disk& disk, int file, const QByteArray& before, const struct ::stat& found);

}  // namespace roundwright::app
