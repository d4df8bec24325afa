#pragma once

#include <QString>
#include <QStringList>

#include "core/face/place_feature.h"
#include "core/language/words/terms.h"
#include "core/toy/toy.h"
#include "render/wording/length_unit.h"

namespace roundwright::render {

/// The maker's own name for a feature; empty where it says no more than the kind does ("Eyes").
[[nodiscard]] QString own_feature_name(const Feature& feature);
/// "8 mm safety eyes", "12 × 10 mm felt discs".
[[nodiscard]] QString feature_kind_words(const Feature& feature);
/// "between rounds 9 and 10, with 7 stitches between them".
[[nodiscard]] QString feature_place_words(const Feature& feature, Terms terms);
/// "23 mm apart in a straight line, 26 mm over the fabric, 41 mm above the lowest point".
[[nodiscard]] QString feature_measure_words(const Feature& feature, const FeatureMeasures& measures,
                                            LengthUnit units);
/// "Insert the 8 mm safety eyes now, between rounds 9 and 10, with 7 stitches between them."
[[nodiscard]] QString fit_now_words(const Feature& feature, Terms terms);

/// What the things to buy are called together: "Eyes and nose".
[[nodiscard]] QString bought_heading_words(const Toy& toy);
/// What to buy: "4 safety eyes, 8 mm, with washers", one line for each kind and size, over all pieces.
[[nodiscard]] QStringList bought_feature_words(const Toy& toy);

}  // namespace roundwright::render
