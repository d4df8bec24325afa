#pragma once

#include <vector>

#include <QStringList>

#include "core/assembly/sewing_steps.h"
#include "core/language/words/terms.h"

namespace roundwright::render {

/// "Ear (2)": what of a piece a step is about, as it heads the step.
[[nodiscard]] QString joined_name_words(const Toy& toy, const SewingStep& step);
/// "between rounds 5 and 6, 12 stitches apart": where on the other piece, within a sentence.
[[nodiscard]] QString sewn_place_words(const SewingStep& step);

/// One join as a step of the pattern: "Ear (2): Pin the open edges to Head between rounds 5 and 6, 12 stitches
/// apart, and sew them on all round with the yarn tails. ..."
[[nodiscard]] QString sewing_step_words(const Toy& toy, const SewingStep& step, Terms terms);

/// How a toy is put together, one step a line, worked out from its joins. None where nothing is joined.
[[nodiscard]] QStringList worked_out_assembly(const Toy& toy, const std::vector<SewingStep>& steps,
                                              Terms terms);
/// The maker's own words, or else what is worked out.
[[nodiscard]] QStringList assembly_words(const Toy& toy, const std::vector<SewingStep>& steps, Terms terms);

/// "Work the pieces in this order: ...", where one is worked on the edges of others; empty otherwise.
[[nodiscard]] QString working_order_words(const Toy& toy);

}  // namespace roundwright::render
