#pragma once

#include <QString>

#include "core/toy/feature.h"

namespace roundwright {

/// "Safety eyes", "Felt patch": `pair`: of two.
[[nodiscard]] QString feature_kind_name(FeatureKind kind, bool pair);

/// The same within a sentence: "safety eyes", "felt patch".
[[nodiscard]] QString feature_kind_within(FeatureKind kind, bool pair);

/// Within a sentence: the maker's own name for it, or else "safety eyes".
[[nodiscard]] QString feature_name(const Feature& feature);

}  // namespace roundwright
