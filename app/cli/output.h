#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>

#include <QString>

namespace roundwright::app {

/// A line of UTF-8 on the standard output. What is not for a terminal is escaped here (`for_terminal`,
/// `for_json`), wherever the output goes.
void print_line(const QString& line);
/// A text of whole lines.
void print_text(const QString& text);
/// One JSON value on a line of its own.
void print_json(const nlohmann::ordered_json& json);
/// A complaint on the standard error, with the program's name before it.
void print_problem(const QString& problem);

/// Sends what was printed on its way. Why not all of it reached the standard output (a full disk, a closed
/// one), in words; nothing if it did.
[[nodiscard]] std::optional<QString> finish_output();

}  // namespace roundwright::app
