#pragma once

#include <optional>
#include <string>

namespace roundwright {

/// How much a pattern asks of its reader: the Craft Yarn Council's project levels.
enum class Level { basic, easy, intermediate, complex };

/// What the maker says in the printed pattern beside what is computed from the toy. Empty: left out. Blank
/// lines part paragraphs.
struct PatternText {
    std::optional<Level> level;
    std::string introduction;
    std::string notions;    ///< further materials, one a line
    std::string assembly;   ///< one step a paragraph
    std::string finishing;  ///< one step a paragraph
    std::string copyright;

    friend bool operator==(const PatternText&, const PatternText&) = default;
};

}  // namespace roundwright
