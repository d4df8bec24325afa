#pragma once

#include <string>

#include <QString>

namespace roundwright {

/// At most six accents over one letter.
[[nodiscard]] QString without_stacked_marks(const QString& text);
/// The maker's own text made fit for a line of type: control characters and what turns the direction of text
/// out, line ends as they are.
[[nodiscard]] QString printable(const QString& text);
/// The same on one line.
[[nodiscard]] QString printable_line(const QString& text);
[[nodiscard]] QString printable_line(const std::string& utf8);
/// The same, with every blank as it was typed: a name within a file of another kind.
[[nodiscard]] QString printable_name(const QString& name);

}  // namespace roundwright
