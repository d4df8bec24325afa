#pragma once

#include <QString>

namespace roundwright {

/// Words that begin a sentence or stand alone: "The safety eyes", from "the safety eyes".
[[nodiscard]] inline QString as_sentence(const QString& words) {
    return words.left(1).toUpper() + words.mid(1);
}

}  // namespace roundwright
