#pragma once

#include <QString>

#include "core/language/pattern/open_questions.h"

namespace roundwright {

/// "how the parts go together (assembly)": goes on from "A stranger would still ask".
[[nodiscard]] QString open_question_words(const OpenQuestion& question, const Toy& toy);

}  // namespace roundwright
