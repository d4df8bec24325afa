#pragma once

#include <QString>

#include "core/toy/toy.h"
#include "render/pages/pattern_options.h"
#include "render/pages/pattern_study.h"

namespace roundwright::render {

enum class TextForm { plain, markdown };

/// The pattern in words: the same sections and sentences as on the printed pages, but for what is drawn. In
/// plain text no line is longer than 78 characters unless a word is. In Markdown (CommonMark) the maker's own
/// words are escaped, so that they read as they were typed.
[[nodiscard]] QString pattern_text(const PatternStudy& study, const PatternOptions& options, TextForm form);
[[nodiscard]] QString pattern_text(const Toy& toy, const PatternOptions& options, TextForm form);

/// All rounds as comma-separated values (RFC 4180, UTF-8), one line a round, with a header: piece, round,
/// instruction, stitches, change, yarn, yarn name, note. A field that a spreadsheet would take for a formula
/// begins with an apostrophe.
[[nodiscard]] QString rounds_csv(const Toy& toy, const PatternOptions& options);

}  // namespace roundwright::render
