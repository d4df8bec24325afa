#pragma once

#include <exception>

#include <QString>

namespace roundwright::app {

/// Whether an exception says that memory is not enough: an allocation failed, a size is beyond what memory
/// may hold at all, or the system has no thread left.
[[nodiscard]] bool is_out_of_memory(const std::exception& problem);

[[nodiscard]] QString not_enough_memory_words();

/// Where memory runs out in code that lets no exception through (a destructor, `noexcept`), or that does not
/// ask whether it was given any, from now on the program ends with words on the standard error and this exit
/// code, not with a signal. Other faults end it as they always do.
void end_in_words_without_memory(int exit_code);

}  // namespace roundwright::app
