#pragma once

#include <QString>

#include "app/storage/whole_file.h"

namespace roundwright::app {

/// What happened and what can be done, in the maker's language ("The disk is full. Make room ...").
[[nodiscard]] QString disk_fault_words(const DiskFault& fault);

/// What is to be known of a file that was written: other names that lead to what was in it before, what could
/// not be kept. Empty: nothing.
[[nodiscard]] QString written_remarks(const WrittenFile& written);

}  // namespace roundwright::app
