#pragma once

#include <QString>

namespace roundwright::app {

/// "1 stitch", "12 stitches", in the language of the program.
[[nodiscard]] QString stitches_words(int count);
/// "1 round", "5 rounds".
[[nodiscard]] QString rounds_words(int count);

/// A number of stitches that is not whole, to the nearest whole where that is near enough: "6", "6½".
[[nodiscard]] QString about_stitches(double count);

}  // namespace roundwright::app
