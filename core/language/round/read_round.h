#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/round/read_diagnostic.h"
#include "core/language/round/round_syntax.h"
#include "core/language/round/work_round.h"
#include "core/language/words/terms.h"
#include "core/toy/toy.h"

namespace roundwright {

/// What may still be spent on trying mends, in tokens read and stitches worked.
struct MendBudget {
    std::int64_t left = 400'000;
};

/// Where a round stands.
struct RoundSetting {
    WorkSetting work;
    Terms terms = Terms::us;
    StitchKind even = StitchKind::single_crochet;  ///< what "work even" works: the stitch of the round below
    bool find_mends = true;
    MendBudget* budget = nullptr;  ///< shared by the rounds of a pattern; null: one for this round
};

/// One round as it was understood.
struct ReadRound {
    GraphRound made;
    int taken = 0;     ///< loops the words take
    int stitches = 0;  ///< stitches the words make; `made` may hold fewer when they do not come out
    std::optional<StatedCount> stated;  ///< the count that the words state
    std::string words;                  ///< what is worked, in US terms, without count and notes
    std::string note;                   ///< what is said besides
    RoundSyntax syntax;
    std::vector<bool> choices;  ///< the readings taken where the words allow two
    int effort = 0;             ///< stitches worked to find this reading, those of other readings too
    int last_yarn = 0;
    std::vector<ReadDiagnostic> diagnostics;
    std::vector<ReadRound> mended;  ///< the round with each mend of its first error, in their order

    bool proved() const;  ///< nothing stands against it but notes and warnings
};

[[nodiscard]] bool has_code(const ReadRound& read, ReadCode code);

/// Reads and proves the words of one round (one cell of the table; line breaks are allowed). Spans count
/// lines and columns within `words`. `yarns` names the toy's yarns; names that are new in the words are
/// added.
[[nodiscard]] ReadRound read_round(std::string_view words, const RoundSetting& setting, YarnTable& yarns);

/// The same for tokens that were cut before, and read as English (`read_as_english`) where they are not.
[[nodiscard]] ReadRound read_round(const std::vector<Token>& tokens, const RoundSetting& setting,
                                   YarnTable& yarns);

/// The words of a round in other terms. Between US and UK stitches change their names, and everything else
/// stays as it is written; in another language all words change that it has words for.
[[nodiscard]] std::string words_in_terms(std::string_view words, Terms from, Terms to);

}  // namespace roundwright
