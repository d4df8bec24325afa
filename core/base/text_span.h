#pragma once

namespace roundwright {

/// A stretch of a text on one line. Lines and columns count from 1; columns and length count Unicode
/// code points, so that a caret drawn under the text stands in the right place.
struct TextSpan {
    int line = 1;
    int column = 1;
    int length = 0;

    friend bool operator==(const TextSpan&, const TextSpan&) = default;
};

}  // namespace roundwright
