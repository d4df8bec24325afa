#include "core/language/words/letters.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace roundwright {
namespace {

// U+00C0 to U+00FF, the letters of ISO 8859-1, without their accents.
constexpr std::array<std::string_view, 64> latin_1{
    "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i",  "i",
    "d", "n", "o", "o", "o", "o", "o",  "x", "o", "u", "u", "u", "u", "y", "th", "ss",
    "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i",  "i",
    "d", "n", "o", "o", "o", "o", "o",  "/", "o", "u", "u", "u", "u", "y", "th", "y"};

unsigned at(std::string_view word, std::size_t i) { return static_cast<unsigned char>(word[i]); }

bool is_plain(std::string_view word) {
    for (std::size_t i = 0; i < word.size(); ++i) {
        if (at(word, i) >= 0x80 || (word[i] >= 'A' && word[i] <= 'Z')) return false;
        const bool vowel = i > 0 && (word[i] == 'e' || word[i] == 'a');
        const char before = vowel ? word[i - 1] : ' ';
        if (vowel && (before == 'a' || (word[i] == 'e' && (before == 'o' || before == 'u')))) return false;
    }
    return true;
}

// Puts the letter that begins at `i` behind `plain`; how many bytes it has.
std::size_t take(std::string_view word, std::size_t i, std::string& plain) {
    const unsigned byte = at(word, i);
    if (byte < 0x80) {
        plain += word[i] >= 'A' && word[i] <= 'Z' ? static_cast<char>(word[i] - 'A' + 'a') : word[i];
        return 1;
    }
    const bool two =
        byte >= 0xC2 && byte <= 0xDF && i + 1 < word.size() && (at(word, i + 1) & 0xC0u) == 0x80u;
    const unsigned letter = two ? (byte & 0x1Fu) << 6u | (at(word, i + 1) & 0x3Fu) : byte;
    if (letter == 0xAA)
        plain += 'a';  // feminine ordinal
    else if (letter == 0xBA || letter == 0xB0)
        plain += 'o';  // masculine ordinal, and the degree sign used for it
    else if (letter >= 0xC0 && letter <= 0xFF)
        plain += latin_1.at(letter - 0xC0);
    else if (letter == 0x152 || letter == 0x153)
        plain += "oe";
    else if (!(letter >= 0x300 && letter <= 0x36F))
        plain.append(word.substr(i, two ? 2 : 1));
    return two ? 2 : 1;
}

void join_double_vowels(std::string& plain) {
    std::size_t kept = 0;
    for (const char letter : plain) {
        const char before = kept > 0 ? plain[kept - 1] : ' ';
        const bool accent = (letter == 'e' && (before == 'a' || before == 'o' || before == 'u')) ||
                            (letter == 'a' && before == 'a');
        if (!accent) plain[kept++] = letter;
    }
    plain.resize(kept);
}

}  // namespace

std::string_view plain_letters(std::string_view word, std::string& room) {
    if (is_plain(word)) return word;
    room.clear();
    for (std::size_t i = 0; i < word.size();) i += take(word, i, room);
    join_double_vowels(room);
    return room;
}

std::string capitalised(std::string word) {
    if (word.empty()) return word;
    if (word[0] >= 'a' && word[0] <= 'z') word[0] = static_cast<char>(word[0] - 'a' + 'A');
    const bool accented = at(word, 0) == 0xC3 && word.size() > 1 && at(word, 1) >= 0xA0;
    if (accented) word[1] = static_cast<char>(at(word, 1) - 0x20);  // U+00E0 to U+00FE
    return word;
}

}  // namespace roundwright
