#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>

#include "app/cli/arguments.h"
#include "core/pattern/toy.h"

namespace roundwright::app {

/// Where a command's result goes: what "-o" says; nothing, with a complaint, where it says nothing, names
/// several inputs' result, or ends in none of these.
[[nodiscard]] bool output_is_named(const Arguments& arguments, const QStringList& endings);

/// Writes a file, whole or not at all, and prints its name. Gives the exit code.
[[nodiscard]] int write_output(const QString& path, const QByteArray& bytes);

/// Saves a toy where "-o" says, and says so unless machines are to read the answer; saves nothing where it
/// says nothing. Gives the exit code.
[[nodiscard]] int save_new_toy(const Arguments& arguments, const Toy& toy);

/// "obj" of "pup.OBJ".
[[nodiscard]] QString ending_of(const QString& path);

}  // namespace roundwright::app
