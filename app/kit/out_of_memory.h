#pragma once

namespace roundwright::app {

/// Where memory runs out in code that lets no exception through (a destructor, `noexcept`), from now on the
/// program ends with words on the standard error and this exit code, not with an abort.
void end_in_words_without_memory(int exit_code);

}  // namespace roundwright::app
