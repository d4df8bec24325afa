#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>

#include "app/cli/arguments.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// Of every command that writes a file: without it no file that is there already is written over.
inline constexpr Option force_option{
    "force", 0, nullptr, nullptr,
    QT_TRANSLATE_NOOP("CommandLine", "write over a file that is there already")};

/// Whether a result may go over the file that it was made from.
enum class WriteBack { no, yes };

/// Whether a result may go to `path`; false, with a complaint, where the path is a folder, ends in none of
/// these, is one of the files that the command reads (by whatever spelling or link), or is there already and
/// "--force" was not said. A device or a pipe takes anything.
[[nodiscard]] bool may_write(const Arguments& arguments, const QString& path, const QStringList& endings,
                             WriteBack write_back = WriteBack::no);

/// The same of what "-o" says, if it is said; it may be said for one file at a time only.
[[nodiscard]] bool output_is_free(const Arguments& arguments, const QStringList& endings,
                                  WriteBack write_back = WriteBack::no);

/// The same, for commands that need to be told where their result goes.
[[nodiscard]] bool output_is_named(const Arguments& arguments, const QStringList& endings);

/// Writes the result made from `input`, whole or not at all, and prints its name, or both names with
/// "--json". Gives the exit code.
[[nodiscard]] int write_output(const Arguments& arguments, const QString& input, const QString& path,
                               const QByteArray& bytes);

/// Whether "-o" names a toy that a changed toy may go to: a new one, or the one it was read from.
[[nodiscard]] bool toy_output_is_free(const Arguments& arguments);

/// Saves a toy where "-o" says, and says so unless machines are to read the answer; saves nothing where it
/// says nothing. Gives the exit code.
[[nodiscard]] int save_new_toy(const Arguments& arguments, const Toy& toy);

/// "obj" of "pup.OBJ".
[[nodiscard]] QString ending_of(const QString& path);

/// What a toy's file ends in.
[[nodiscard]] QStringList toy_endings();

}  // namespace roundwright::app
