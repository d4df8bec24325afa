#pragma once

#include <optional>

#include "core/toy/toy.h"
#include "render/pages/pattern_options.h"
#include "render/wording/pattern/pattern_facts.h"

namespace roundwright::render {

/// Studies every piece. Nothing if stopped.
[[nodiscard]] std::optional<PatternStudy> study_pattern(const Toy& toy, const PatternOptions& options,
                                                        const Progress& progress = {});

}  // namespace roundwright::render
