#pragma once

namespace roundwright {

/// What lengths are told in, by the maker's choice: on screen, in print and on the command line.
enum class LengthUnit { millimetres, inches };

}  // namespace roundwright
