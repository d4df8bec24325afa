#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "tests/core/published/published_pieces.h"

namespace roundwright::testing {

/// What is known of the hands that made a piece.
enum class KnownBy {
    weight_and_hook,  ///< estimated
    stated_gauge,     ///< a swatch, in rows
    own_circle,       ///< a gauge circle of the same hands
    own_piece,        ///< another finished piece of the same hands, measured
    rigid_core,       ///< of a cover: what is inside it
};
[[nodiscard]] std::string_view words_of(KnownBy known);

/// A size as the program predicts it, and as it is published.
struct PredictedSize {
    const PublishedPiece* piece = nullptr;
    StatedSize stated;
    KnownBy known = KnownBy::weight_and_hook;
    double mm = 0;
    Range range_mm;
    double thickness_mm = 0;  ///< of the fabric; lengths above lie in the middle of it

    [[nodiscard]] double error() const { return mm / stated.mm - 1; }
    [[nodiscard]] bool in_range() const { return range_mm.low <= stated.mm && stated.mm <= range_mm.high; }
    /// The range, and what the page's figure may be out by, have a size in common.
    [[nodiscard]] bool agrees() const {
        return range_mm.low <= stated.mm + stated.tolerance_mm() &&
               stated.mm - stated.tolerance_mm() <= range_mm.high;
    }
    [[nodiscard]] std::string name() const;
};

/// Every size of every piece by every kind of gauge that its page gives. A piece over a rigid core is as wide
/// as the core and the fabric around it, whatever its gauge.
[[nodiscard]] std::vector<PredictedSize> predicted_sizes(const std::vector<PublishedPiece>& pieces);

/// The same as a tape or callipers would have them that touch the outside of the fabric, half a thickness
/// from its middle on either side.
[[nodiscard]] std::vector<PredictedSize> measured_outside(std::vector<PredictedSize> sizes);

/// How well a number of sizes were predicted; errors as shares of the published sizes.
struct Agreement {
    int sizes = 0;
    double median_error = 0;  ///< signed
    double mean_absolute_error = 0;
    int in_range = 0;
    int agree = 0;
    double mean_half_range = 0;  ///< half of the range over the size
};
[[nodiscard]] Agreement agreement(std::span<const PredictedSize> sizes);

}  // namespace roundwright::testing
