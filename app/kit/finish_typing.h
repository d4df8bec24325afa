#pragma once

class QLineEdit;
class QWidget;

namespace roundwright::app {

/// Says what is being typed, as if the keyboard had gone elsewhere, and leaves the keyboard where it is: a
/// field tells its value; the editor of a cell gives it to the model and closes, and its view has the
/// keyboard. Nothing where nothing is being typed.
void finish_typing();

/// The line that a field is typed into: itself, or the one inside a spin box or combo box; may be null.
[[nodiscard]] QLineEdit* typed_line(QWidget* field);

}  // namespace roundwright::app
