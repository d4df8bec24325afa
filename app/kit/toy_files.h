#pragma once

#include <QString>

namespace roundwright::app {

/// The ending of a toy's file, without its dot.
[[nodiscard]] QString toy_ending();

/// What a dialog that opens or saves toys offers.
[[nodiscard]] QString toy_file_filter();

}  // namespace roundwright::app
