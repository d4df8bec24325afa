#pragma once

#include <string>
#include <string_view>

namespace roundwright {

/// A word as words are compared across spellings: lower case, accents dropped, "ß" as "ss", and the letters
/// that stand for one with an accent where a keyboard has none ("ae" for "ä" and "æ", "oe", "ue", "aa" for
/// "å") as the plain letter. Accents may be letters of their own behind another (combining marks); bytes that
/// are no UTF-8 are taken for Windows-1252. `room` keeps what is no part of `word`.
[[nodiscard]] std::string_view plain_letters(std::string_view word, std::string& room);

/// The word with its first letter a capital.
[[nodiscard]] std::string capitalised(std::string word);

}  // namespace roundwright
