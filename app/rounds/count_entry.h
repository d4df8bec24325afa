#pragma once

#include <optional>
#include <vector>

#include <QStringView>

#include "core/language/round/round_entry.h"

namespace roundwright::app {

using roundwright::CountEntry;

/// What a maker types for the count of a round, as it is read everywhere: `30`, `24x4`, or from the round
/// below `+6`, `-6`, `=`. Nothing if the text is anything else.
[[nodiscard]] std::optional<CountEntry> parse_count_entry(QStringView text);

/// The counts the entry makes over `below` stitches, one a round; each at least 1.
[[nodiscard]] std::vector<int> entered_counts(const CountEntry& entry, int below);

/// Where rounds (from 0, ascending) are once each has become `times` rounds.
[[nodiscard]] std::vector<int> each_times(const std::vector<int>& rounds, int times);

}  // namespace roundwright::app
