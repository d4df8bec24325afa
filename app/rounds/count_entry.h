#pragma once

#include <optional>

#include <QStringView>

namespace roundwright::app {

/// What a maker types for the count of a round: `30`, or from the round below `+6`, `-6`, `=`.
struct CountEntry {
    enum class Kind { count, change };
    Kind kind = Kind::count;
    int value = 0;

    friend bool operator==(const CountEntry&, const CountEntry&) = default;
};

/// Nothing if the text is not a count entry, or its number is beyond a piece's limit.
[[nodiscard]] std::optional<CountEntry> parse_count_entry(QStringView text);

/// The count the entry makes over `below` stitches; at least 1.
[[nodiscard]] int entered_count(const CountEntry& entry, int below);

}  // namespace roundwright::app
