#pragma once

#include <QString>
#include <QStringList>

#include "core/face/place_feature.h"
#include "core/pattern/toy.h"
#include "render/pages/paper.h"

namespace roundwright::render {

/// "Eyes", or the maker's own name for them.
[[nodiscard]] QString feature_name_words(const Feature& feature);
/// "safety eyes, 8 mm", "felt discs, 12 × 10 mm".
[[nodiscard]] QString feature_kind_words(const Feature& feature);
/// "between rounds 9 and 10, 7 stitches apart".
[[nodiscard]] QString feature_place_words(const Feature& feature);
/// "23 mm apart, 26 mm over the fabric, 41 mm above the base".
[[nodiscard]] QString feature_measure_words(const Feature& feature, const FeatureMeasures& measures,
                                            Units units);
/// "Fit the eyes now, between rounds 9 and 10, 7 stitches apart."
[[nodiscard]] QString fit_now_words(const Feature& feature);

/// What to buy: "4 safety eyes, 8 mm, with washers", one line for each kind and size, over all pieces.
[[nodiscard]] QStringList bought_feature_words(const Toy& toy);

}  // namespace roundwright::render
