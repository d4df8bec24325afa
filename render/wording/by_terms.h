#pragma once

#include <QString>

#include "core/language/words/terms.h"

namespace roundwright {

/// What American and British crocheters spell or say otherwise: the terms of the pattern decide. Around terms
/// of another language stands the English of the US.
[[nodiscard]] inline QString by_terms(Terms terms, const QString& us, const QString& uk) {
    return english_behind(terms) == Terms::us ? us : uk;
}

}  // namespace roundwright
