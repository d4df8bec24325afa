#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>

#include "core/language/words/lexer.h"

namespace roundwright {

/// What a heading stands over that is no piece.
enum class Section : std::uint8_t {
    none,
    materials,
    gauge,
    abbreviations,
    rounds,  ///< "Rounds", "Instructions": the pieces themselves
    assembly,
    finishing,
    remarks,  ///< "Notes", "Safety", "About this toy"
};

/// A heading: a few words, no sentence. `make`: "Ears (make 2)", "Make 2 legs".
struct Heading {
    std::string name;
    int make = 1;
    bool says_make = false;
    Section section = Section::none;
};
[[nodiscard]] std::optional<Heading> heading_of(std::span<const Token> tokens);

/// A heading that is marked as one and stands where only a name can: whatever it says is the name.
[[nodiscard]] Heading heading_as_it_stands(std::span<const Token> tokens);

/// "Piece: Wing": a piece is named so, whatever its name looks like.
[[nodiscard]] bool names_a_piece(std::span<const Token> tokens);

/// "Make 2." at the front of a paragraph: how many; 0: it does not say.
[[nodiscard]] int made_by_sentence(std::span<const Token> tokens);

}  // namespace roundwright
