#pragma once

#include <QString>

namespace roundwright {

/// Where the program ends: "A piece has at most 2,000 rounds."
[[nodiscard]] QString most_rounds_words(int most);
[[nodiscard]] QString most_stitches_words(int most);
[[nodiscard]] QString most_pieces_words(int most);
[[nodiscard]] QString most_joins_words(int most);

}  // namespace roundwright
