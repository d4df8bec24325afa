#pragma once

#include <QString>

#include "app/storage/disk.h"

namespace roundwright::app {

/// Why unsaved changes cannot be kept, and what can be done about it, as a sentence or two.
[[nodiscard]] QString keeping_fault_words(const DiskFault& fault);

}  // namespace roundwright::app
