#pragma once

#include <QString>

namespace roundwright::app {

/// Where the program keeps what is its own and the maker's: kept copies, earlier versions
/// (`$XDG_STATE_HOME/roundwright`; XDG Base Directory Specification 0.8).
[[nodiscard]] QString usual_state_folder();

}  // namespace roundwright::app
