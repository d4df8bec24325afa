#pragma once

#include <QString>

#include "core/language/words/terms.h"

namespace roundwright {

/// What American and British crocheters spell or say otherwise: the terms of the pattern decide.
[[nodiscard]] inline QString by_terms(Terms terms, const QString& us, const QString& uk) {
    return terms == Terms::us ? us : uk;
}

}  // namespace roundwright
