#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/gauge/gauge_source.h"
#include "core/toy/toy.h"

namespace roundwright::testing {

/// What was measured on a published piece.
enum class SizeOf {
    width,        ///< width: across the widest place, a round piece standing open
    height,       ///< height: of the whole piece
    around,       ///< around: the tape round the widest place
    even_height,  ///< even height: of the even rounds that end the piece
};

struct StatedSize {
    SizeOf of = SizeOf::width;
    double mm = 0;
    bool measured = false;  ///< false: the page says "about", or gives a round number

    /// How far a piece may be from what its page says. Sizes are stated in half or quarter inches, or in
    /// round numbers of cm, and pages that say "about" mean it; a measured one is as good as a tape on
    /// fabric. Values of our own.
    [[nodiscard]] double tolerance_mm() const;
};

/// A piece that somebody made and whose size is known. The keys of published_pieces.txt in brackets.
struct PublishedPiece {
    std::string title;  ///< of the page
    std::string what;   ///< ball, cover, circle, cup
    Piece piece;        ///< [rounds] as counts are typed, [chains] of the ring, [end], [stuffed]
    std::optional<double> hook_mm;
    std::optional<YarnWeight> weight;
    std::optional<double> core_mm;        ///< [core] the rigid ball inside
    std::optional<SwatchGauge> swatch;    ///< [swatch] the gauge its page states, which is in rows
    std::optional<CircleGauge> circle;    ///< [circle] of the same hands, yarn and hook
    std::optional<std::string> finished;  ///< [finished] the title of another piece of the same hands
    std::vector<StatedSize> sizes;
};

/// Those of published_pieces.txt, in its order. Throws std::runtime_error with the line that it cannot read.
[[nodiscard]] std::vector<PublishedPiece> published_pieces();

}  // namespace roundwright::testing
