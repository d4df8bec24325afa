#pragma once

#include <cstddef>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// What somebody who has only the printed pattern would still have to ask.
enum class OpenQuestionKind {
    title,        ///< the toy has no name
    gauge,        ///< no gauge was given: every size is a guess
    yarn_length,  ///< of a yarn that is used nothing says how long so many grams are
    no_rounds,    ///< a piece is named, and not said how to work it
    rounds,       ///< rounds of a piece do not come out
    assembly,     ///< several parts, and not a word on how they go together
};

struct OpenQuestion {
    OpenQuestionKind kind = OpenQuestionKind::title;
    std::size_t index = 0;  ///< the yarn or the piece, where it is about one

    friend bool operator==(const OpenQuestion&, const OpenQuestion&) = default;
};

/// In the order in which a pattern answers them.
[[nodiscard]] std::vector<OpenQuestion> open_questions(const Toy& toy);

}  // namespace roundwright
