#pragma once

namespace roundwright::app {

/// Where memory runs out in code that lets no exception through (a destructor, `noexcept`), or that does not
/// ask whether it was given any, from now on the program ends with words on the standard error and this exit
/// code, not with a signal. Other faults end it as they always do.
void end_in_words_without_memory(int exit_code);

}  // namespace roundwright::app
