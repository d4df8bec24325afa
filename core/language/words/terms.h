#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/stitches/stitch.h"

namespace roundwright {

/// The ways the trade names its stitches: English as it is written in the US and in the UK, and the languages
/// of core/language/terms.
enum class Terms : std::uint8_t { us, uk, german, french, spanish, dutch, danish, portuguese, italian };

inline constexpr std::array all_terms{Terms::us,     Terms::uk,         Terms::german,
                                      Terms::french, Terms::spanish,    Terms::dutch,
                                      Terms::danish, Terms::portuguese, Terms::italian};

[[nodiscard]] constexpr bool is_english(Terms terms) { return terms == Terms::us || terms == Terms::uk; }

/// The English that stands behind terms: their own, and that of the US behind another language.
[[nodiscard]] constexpr Terms english_behind(Terms terms) {
    return terms == Terms::uk ? Terms::uk : Terms::us;
}

/// "us", "uk", and for a language its code of ISO 639-1: "de".
[[nodiscard]] std::string_view terms_code(Terms terms);
[[nodiscard]] std::optional<Terms> terms_of_code(std::string_view code);

/// Abbreviation of a stitch: "sc" in US terms is "dc" in UK terms, "fM" in German ones, and so on.
/// Source: Craft Yarn Council, Standards and Guidelines for Crochet and Knitting, table of US and UK terms.
[[nodiscard]] std::string_view abbreviation(StitchKind kind, Terms terms);

/// The stitch's name in full: "single crochet" in US terms is "double crochet" in UK terms.
[[nodiscard]] std::string_view full_name(StitchKind kind, Terms terms);

}  // namespace roundwright
