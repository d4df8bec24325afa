#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/instructions/lexer.h"

namespace roundwright {

/// A heading: a few words, no sentence. `make`: "Ears (make 2)", "Make 2 legs"; `section`: it heads something
/// other than a piece ("Materials", "Assembly").
struct Heading {
    std::string name;
    int make = 1;
    bool says_make = false;
    bool section = false;
};
[[nodiscard]] std::optional<Heading> heading_of(std::span<const Token> tokens);

}  // namespace roundwright
