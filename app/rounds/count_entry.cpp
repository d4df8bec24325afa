#include "app/rounds/count_entry.h"

#include <algorithm>

#include <QString>

#include "core/base/limits.h"

namespace roundwright::app {
namespace {

constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);

/// A minus sign as a keyboard, a typesetter or a pattern writes it.
bool is_minus(QChar sign) { return sign == u'-' || sign == u'\u2212' || sign == u'\u2013'; }

}  // namespace

std::optional<CountEntry> parse_count_entry(QStringView text) {
    text = text.trimmed();
    if (text == u"=") return CountEntry{CountEntry::Kind::change, 0};
    if (text.isEmpty()) return std::nullopt;
    const bool minus = is_minus(text.front());
    const bool is_change = minus || text.front() == u'+';
    if (is_change) text = text.mid(1).trimmed();
    if (text.isEmpty() || !text.front().isDigit()) return std::nullopt;
    bool fine = false;
    const int number = text.toInt(&fine);
    if (!fine || number > most_stitches || (!is_change && number < 1)) return std::nullopt;
    if (!is_change) return CountEntry{CountEntry::Kind::count, number};
    return CountEntry{CountEntry::Kind::change, minus ? -number : number};
}

int entered_count(const CountEntry& entry, int below) {
    const int count = entry.kind == CountEntry::Kind::count ? entry.value : below + entry.value;
    return std::clamp(count, 1, most_stitches);
}

}  // namespace roundwright::app
