#pragma once

#include <string_view>

#include <QString>

namespace roundwright {

// The maker's own words within the program's. They may come from anybody's file, so they must neither turn
// the sentence around them, nor end its line, nor reach a terminal as commands. Directions: Unicode Standard
// Annex 9 (bidirectional algorithm), sections 2.4 and 2.7, and Technical Report 36, 2.5.

/// A name (of a toy, piece, yarn, file ...) to stand within a sentence, a title or a cell: one line; a
/// control character as its picture (U+2400 ...); no direction marks but a pair of isolates around a name
/// that has letters of a right-to-left script; the middle left out beyond 48 letters. An ordinary name is
/// itself.
[[nodiscard]] QString name_in_words(const QString& name);
[[nodiscard]] QString name_in_words(std::string_view utf8);

/// A line of the maker's of any length, to stand by itself, by the same rules but for the isolates.
[[nodiscard]] QString line_in_words(const QString& line);

/// A text of the maker's of any length, to stand by itself: its lines stay, and within them what
/// `name_in_words` says.
[[nodiscard]] QString text_in_words(const QString& text);

/// A whole sentence, message or tool tip, whatever is quoted in it: its lines stay, isolates that are in
/// pairs too, and words longer than 80 letters lose their middle.
[[nodiscard]] QString plain_message(const QString& text);

/// For a terminal: every control character and direction mark as \uXXXX, except the isolates that
/// `name_in_words` sets, which a terminal has no use for. `lines_stay`: line feeds and tabs are the text's
/// own.
[[nodiscard]] QString for_terminal(const QString& text, bool lines_stay);

/// One value of JSON on a line: what is unprintable, which can only stand within its texts, as \uXXXX, so
/// that it means the same.
[[nodiscard]] QString for_json(const QString& json);

}  // namespace roundwright
