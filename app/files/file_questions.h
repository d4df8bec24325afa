#pragma once

#include <QString>

class QWidget;

namespace roundwright::app {

/// Whose toy is kept where the one in the window and the one in the file have gone different ways.
enum class Keep {
    mine,    ///< saved over theirs, which stays as an earlier version
    theirs,  ///< taken into the window; mine is one step back
    both,    ///< mine is saved beside it
    undecided
};

/// Asks before saving. `is_toy`: theirs can be read; else `why` it cannot, as a sentence.
[[nodiscard]] Keep ask_which_to_keep(QWidget* window, const QString& toy, bool is_toy, const QString& why);

/// Asks what a maker means who opens the file that is open already. `unsaved`: there are changes here.
[[nodiscard]] bool wants_file_instead(QWidget* window, const QString& toy, bool unsaved);

/// Asks whether a toy may take the place of a file that is none.
[[nodiscard]] bool wants_to_replace(QWidget* window, const QString& file);

/// Nothing but a toy's file, one that could be, or none at all is there.
[[nodiscard]] bool is_toy_or_nothing(const QString& path);

}  // namespace roundwright::app
