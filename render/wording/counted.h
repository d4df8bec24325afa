#pragma once

#include <QString>

namespace roundwright {

/// "1 stitch", "12 stitches", in the language of the program.
[[nodiscard]] QString stitches_words(int count);
/// "1 round", "5 rounds".
[[nodiscard]] QString rounds_words(int count);
/// "1 line", "3 lines".
[[nodiscard]] QString lines_words(int count);
/// "1 page", "8 pages".
[[nodiscard]] QString pages_words(int count);

/// A number of stitches that is not whole, beside a whole one: "6", or "5.7" where the whole would read the
/// same.
[[nodiscard]] QString about_stitches(double count, int beside);

}  // namespace roundwright
