#pragma once

#include <QString>

#include "app/storage/disk.h"

namespace roundwright::app {

/// What happened and what can be done, in the maker's language ("The disk is full. Make room ...").
[[nodiscard]] QString disk_fault_words(const DiskFault& fault);

}  // namespace roundwright::app
