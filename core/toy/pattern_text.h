#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/kept_keys.h"
#include "core/toy/join.h"
#include "core/toy/piece_id.h"

namespace roundwright {

/// How much a pattern asks of its reader: the Craft Yarn Council's project levels.
enum class Level { basic, easy, intermediate, complex };

/// How a piece stood when the maker last wrote words of the pattern: what numbers in them are meant for.
struct PieceThen {
    PieceId piece = PieceId::none;
    std::vector<int> stitches;  ///< after each round
    KeptKeys kept{};

    friend bool operator==(const PieceThen&, const PieceThen&) = default;
};

/// What the maker says in the printed pattern beside what is computed from the toy. Empty: left out. Blank
/// lines part paragraphs.
struct PatternText {
    std::optional<Level> level;
    std::string introduction;
    std::string notions;    ///< further materials, one a line
    std::string assembly;   ///< one step a paragraph
    std::string finishing;  ///< one step a paragraph
    std::string copyright;
    std::vector<PieceThen> written_for = {};  ///< one a piece; empty: not known
    std::vector<Join> assembly_then = {};     ///< the joins that `assembly` was written for; empty: not known

    friend bool operator==(const PatternText&, const PatternText&) = default;
};

}  // namespace roundwright
