#pragma once

#include <cstdint>
#include <span>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"

namespace roundwright {

/// How much a line that was not read as working looks like it.
enum class WorkSign : std::uint8_t {
    none,
    mention,  ///< a number or a stitch stands in it
    work,     ///< a round's number, a count, stitches with their numbers: rounds may be missing
};

/// Of a line of text by itself. A remark that is plainly one ("Sew the ears on between rounds 6 and 9", a
/// size, a page's number) has none, unless rounds are worked in it.
[[nodiscard]] WorkSign work_sign(std::span<const Token> tokens, Terms terms);

/// Whether a stitch is named, by a word that means nothing else.
[[nodiscard]] bool names_a_stitch(std::span<const Token> tokens, Terms terms);

/// The same under a heading such as "Assembly", where numbers and stitches are at home: only what has both
/// stitches and their count is a sign.
[[nodiscard]] WorkSign work_sign_in_section(std::span<const Token> tokens, Terms terms);

}  // namespace roundwright
