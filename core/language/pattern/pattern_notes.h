#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/words/lexer.h"
#include "core/language/words/terms.h"
#include "core/toy/toy.h"

namespace roundwright {

/// What a note of a pattern tells about the piece it stands in, as far as it is understood.
struct NoteMeaning {
    std::optional<double> area_stretch;  ///< "stuff firmly"
    bool any_stuffing = false;           ///< "stuff as you go" says that it is stuffed, not how firmly
    std::optional<End> end;              ///< "draw the last round closed", "leave the end open",
                                         ///< "flatten and sew straight across"
    std::optional<Joining> joining;      ///< "worked in joined rounds"
    bool top_down = false;
    std::optional<RoundSpan> stuffed_rounds;  ///< "stuff rounds 1 to 20 only"
    std::optional<double> weight_grams;       ///< "sew 40 g of plastic pellets into a small bag"
    std::optional<Feature> eyes;              ///< "eyes between Rnds 12 and 13, with 8 sts between them"

    bool anything() const {
        return area_stretch || end || joining || top_down || stuffed_rounds || weight_grams || eyes;
    }
};
/// Of one sentence.
[[nodiscard]] NoteMeaning meaning_of_note(std::span<const Token> tokens);

/// Of each sentence that means something.
[[nodiscard]] std::vector<NoteMeaning> meanings_of_notes(std::span<const Token> tokens);

/// What pages say of a piece worked in a spiral; the plain form leaves it out, since most pieces are.
inline constexpr std::string_view spiral_words =
    "Work in a spiral without joining; mark the first stitch of each round.";

/// The same in words, as a pattern is written here.
/// `rounds`: only these are stuffed; none: the whole piece.
[[nodiscard]] std::string stuffing_words(double area_stretch,
                                         const std::optional<RoundSpan>& rounds = std::nullopt);
[[nodiscard]] std::string pellets_words(double grams);
[[nodiscard]] std::string end_words(End end);
[[nodiscard]] std::string joining_words(Joining joining, Terms terms);
[[nodiscard]] std::string top_down_words();
[[nodiscard]] std::string eyes_words(const Feature& eyes);
[[nodiscard]] std::string hook_words(double hook_mm);

/// Whether a line says that and nothing else, word for word, so that nothing is lost when it is not kept as a
/// note.
[[nodiscard]] bool says_only(const NoteMeaning& meaning, std::string_view line, Terms terms);

/// "Yarn A: grey", "MC = cream", "Color B - white": the yarn's index and name.
struct YarnLine {
    int yarn = 0;
    std::string name;
};
[[nodiscard]] std::optional<YarnLine> yarn_line(std::span<const Token> tokens);
/// The same in a list of materials: "A: grey, light (3), 40 m".
/// The hook of a line that says more: "cotton in red (A), hook 2.5 mm, safety eyes".
[[nodiscard]] std::optional<double> hook_within(std::span<const Token> tokens);
/// "white (A), grey (B)" in a list of materials.
[[nodiscard]] std::vector<YarnLine> lettered_yarns(std::span<const Token> tokens);
/// "Gauge: 22 sts and 24 rows = 10 cm": over as much in width as in height.
[[nodiscard]] std::optional<SwatchGauge> gauge_line(std::span<const Token> tokens);
[[nodiscard]] std::optional<YarnLine> listed_yarn(std::span<const Token> tokens);
/// "Change to yarn A, grey."; the name may be left out.
[[nodiscard]] std::optional<YarnLine> yarn_change(std::span<const Token> tokens);

/// "Hook: 3.5 mm" in millimetres.
[[nodiscard]] std::optional<double> hook_line(std::span<const Token> tokens);

}  // namespace roundwright
