#pragma once

#include <exception>

#include <QString>

namespace roundwright::app {

/// Whether an exception says that memory is not enough: an allocation failed, a size is beyond what memory
/// may hold at all, or the system has no thread left.
[[nodiscard]] bool is_out_of_memory(const std::exception& problem);

[[nodiscard]] QString not_enough_memory_words();

/// Where memory runs out in code that lets no exception through (a destructor, `noexcept`), from now on the
/// program ends with words on the standard error and this exit code, not with an abort.
void end_in_words_without_memory(int exit_code);

}  // namespace roundwright::app
