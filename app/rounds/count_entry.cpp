#include "app/rounds/count_entry.h"

#include <algorithm>

#include <QString>

#include "core/base/limits.h"

namespace roundwright::app {

std::optional<CountEntry> parse_count_entry(QStringView text) {
    return roundwright::parse_count_entry(text.trimmed().toUtf8().toStdString());
}

std::vector<int> entered_counts(const CountEntry& entry, int below) {
    constexpr int most_stitches = static_cast<int>(max_stitches_per_piece);
    std::vector<int> counts;
    for (int i = 0; i < entry.times; ++i) {
        const int count = entry.kind == CountEntry::Kind::count ? entry.value : below + entry.value;
        counts.push_back(below = std::clamp(count, 1, most_stitches));
    }
    return counts;
}

std::vector<int> each_times(const std::vector<int>& rounds, int times) {
    std::vector<int> all;
    int put_in = 0;
    for (const int round : rounds) {
        for (int i = 0; i < times; ++i) all.push_back(round + put_in + i);
        put_in += times - 1;
    }
    return all;
}

}  // namespace roundwright::app
