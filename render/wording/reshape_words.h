#pragma once

#include <QString>

#include "core/reshape/continue_from_here.h"
#include "core/reshape/forms.h"
#include "core/reshape/frog_back.h"
#include "core/reshape/resize.h"
#include "render/wording/length_unit.h"

namespace roundwright {

/// "60 mm wide (57–64), 55 mm tall (51–59)": the size, and the range that gauge and stuffing leave it.
[[nodiscard]] QString size_words(const PieceForm& form, LengthUnit units);

/// What was reached less what was asked for, both as they are shown: a whole number of millimetres, or of
/// sixteenths of an inch.
[[nodiscard]] double shown_difference_mm(double reached_mm, double asked_mm, LengthUnit units);

/// "17 rounds, 432 stitches"
[[nodiscard]] QString count_words(const PieceForm& form);

/// "6, 12, 18, 24x4, 18", as the line for fast entry takes it.
[[nodiscard]] QString rounds_in_short(const PieceForm& form);

/// What came of a wish for another size, in a sentence or two: the size and the rounds, or what cannot be had
/// and what is nearest.
[[nodiscard]] QString outcome_words(const Reshaped& made, LengthUnit units);

/// What came of a form: with its own counts, the size they come out at, and what to do if that is another.
[[nodiscard]] QString form_outcome_words(const Reshaped& made, FormCounts counts, LengthUnit units);

/// "Keep rounds 1 to 4, undo 7 rounds (186 stitches)." Empty if nothing is worked yet.
[[nodiscard]] QString frog_back_words(const FrogBack& back);

/// "That frees about 6 m of yarn (5 m to 7 m)." Empty if none does.
[[nodiscard]] QString freed_yarn_words(const FrogBack& back, LengthUnit units);

/// Rounds in the maker's own words that had to be worked evenly. Empty if there are none.
[[nodiscard]] QString rewritten_words(const std::vector<int>& rounds);

/// One way on from what is on the hook: "Undo 2 rounds (72 stitches)", "Undo nothing".
[[nodiscard]] QString undo_words(const FrogBack& back);

/// How far a way's outline lies from the wanted one: "4 mm off the wanted outline".
[[nodiscard]] QString outline_words(double apart_mm, LengthUnit units);

/// How near a sculpted piece comes to the line drawn: "It lies 2 mm off the line on the whole."
[[nodiscard]] QString off_line_words(double apart_mm, LengthUnit units);

/// What a change of yarn or hook, or of all pieces alike, does to a toy of so many pieces.
[[nodiscard]] QString whole_toy_words(int pieces, bool keeps_rounds);

/// Other pieces whose size is not met, or that cannot be worked at it and stay. Empty if there are none.
[[nodiscard]] QString missed_words(const Toy& toy, const std::vector<std::size_t>& pieces);

[[nodiscard]] QString form_name(FormKind kind);
/// What is wrong with a form's sizes; empty if nothing is.
[[nodiscard]] QString form_problem_words(FormCode code);

}  // namespace roundwright
