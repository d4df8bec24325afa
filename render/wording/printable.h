#pragma once

#include <string>

#include <QString>

namespace roundwright {

/// The maker's own text made fit for paper and for files of other kinds: its lines stay, each ended by a line
/// feed, a tab is a blank, and whatever is unprintable (`render/wording/unprintable.h`) is left out. The
/// window shows pictures for control characters, which a printer's type may not have.
[[nodiscard]] QString printable(const QString& text);
/// The same on one line.
[[nodiscard]] QString printable_line(const QString& text);
[[nodiscard]] QString printable_line(const std::string& utf8);
/// The same, with every blank as it was typed: a name within a file of another kind.
[[nodiscard]] QString printable_name(const QString& name);

}  // namespace roundwright
