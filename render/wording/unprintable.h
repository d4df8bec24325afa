#pragma once

#include <QString>

namespace roundwright {

// What in a maker's text is no letter, for the window, terminals, machines and paper alike.

/// A control character (C0, C1, DEL), a line or paragraph separator, or a mark of direction or of no width.
[[nodiscard]] bool is_unprintable(char32_t letter);

/// A joiner (U+200C, U+200D) between two letters that it may join: part of words in Persian and Indic
/// scripts, and of pictures. It is unprintable and stays all the same.
[[nodiscard]] bool joins_letters(const QString& text, qsizetype at);

/// Every line end (also CR LF, and those of Unicode) as one line feed.
[[nodiscard]] QString with_line_feeds(QString text);

/// At most six accents over one letter.
[[nodiscard]] QString without_stacked_marks(const QString& text);

}  // namespace roundwright
