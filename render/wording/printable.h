#pragma once

#include <string>

#include <QString>

namespace roundwright {

/// The maker's own text made fit for a line of type: control characters out, line ends as they are.
[[nodiscard]] QString printable(const QString& text);
/// The same on one line.
[[nodiscard]] QString printable_line(const QString& text);
[[nodiscard]] QString printable_line(const std::string& utf8);

}  // namespace roundwright
