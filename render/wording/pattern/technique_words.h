#pragma once

#include <vector>

#include <QString>

#include "core/language/words/terms.h"
#include "render/wording/pattern/technique.h"

namespace roundwright::render {

/// How a technique is called and worked. In terms of another language the name is followed by what it means
/// in US terms; how it is worked stays in the program's language.
struct TechniqueWords {
    QString short_name;  ///< as the rounds write it; empty: they do not name it
    QString name;
    QString working;  ///< empty for what every crocheter's first lesson covers
};
/// What the rounds say besides stitches, and what it means: "st, sts"; in another language also its words for
/// a round and for working all around.
[[nodiscard]] std::vector<TechniqueWords> place_words(Terms terms);

[[nodiscard]] TechniqueWords technique_words(Technique technique, Terms terms);

}  // namespace roundwright::render
