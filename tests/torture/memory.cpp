#include "tests/torture/memory.h"

#include <algorithm>
#include <iterator>
#include <ranges>

namespace roundwright::torture {

void Memory::add(Moment moment) { moments_.push_back(std::move(moment)); }

bool Memory::owed_within(double seconds, std::int64_t end_ns) const {
    for (const Moment& moment : std::views::reverse(moments_)) {
        if (moment.owes()) return true;
        if (seconds_between(moment.ns, end_ns) > seconds) return false;
    }
    return false;
}

bool Memory::is_given_up() const { return !moments_.empty() && given_up_ns_ >= moments_.back().ns; }

double Memory::seconds_between(std::int64_t from_ns, std::int64_t to_ns) const {
    auto excused = excused_;
    std::ranges::sort(excused);
    std::int64_t counted = 0;
    for (const auto& [from, to] : excused) {
        if (to <= from_ns) continue;
        counted += std::max<std::int64_t>(0, std::min(from, to_ns) - from_ns);
        from_ns = std::min(std::max(from_ns, to), to_ns);
    }
    return static_cast<double>(counted + std::max<std::int64_t>(0, to_ns - from_ns)) * 1e-9;
}

Loss Memory::since(std::vector<Moment>::const_iterator missing, std::int64_t end_ns) const {
    if (missing == moments_.end()) return {};
    const auto pressed =
        std::ranges::count_if(keys_, [&](std::int64_t ns) { return ns >= missing->ns && ns <= end_ns; });
    return {true, seconds_between(missing->ns, end_ns), static_cast<int>(pressed)};
}

bool Memory::is_bringing_back(const Work& found) const {
    if (bringing_ns_ == 0 || moments_.empty() || moments_.back().ns < bringing_ns_) return false;
    const bool typed_on = std::ranges::any_of(keys_, [&](std::int64_t ns) { return ns > bringing_ns_; });
    return !typed_on && moments_.back().work.toy == found.toy;
}

Loss Memory::loss(const Work& found, std::int64_t end_ns) const {
    const auto holds = [&](const Moment& moment) { return moment.work == found; };
    const auto last = std::find_if(moments_.crbegin(), moments_.crend(), holds);
    if (last != moments_.crend()) return since(last.base(), end_ns);
    return is_bringing_back(found) ? Loss{} : Loss{false, 0, 0};
}

Loss Memory::loss_by_the_clock(const Work& found, std::int64_t end_ns) const {
    Memory strict = *this;
    strict.excused_.clear();
    return strict.loss(found, end_ns);
}

Loss Memory::whole_loss(std::int64_t end_ns) const {
    const auto safe = [](const Moment& moment) { return !moment.owes(); };
    return since(std::find_if(moments_.crbegin(), moments_.crend(), safe).base(), end_ns);
}

}  // namespace roundwright::torture
