#include "tests/torture/window.h"

#include <algorithm>
#include <cctype>

namespace roundwright::torture {
namespace {

std::string in_small_letters(std::string text) {
    std::ranges::transform(text, text.begin(), [](unsigned char letter) { return std::tolower(letter); });
    return text;
}

}  // namespace

Window::Window(const Start& start, const DiskProbe* disk) : life(start), disk_(disk) {
    life.heard = [this](const Entry& entry) { hear(entry); };
}

void Window::hear_state(const Entry& entry) {
    now_ = {entry.ns, {entry.field(0), entry.field(1)}, entry.field(2), !entry.field(3).empty()};
    if (settled) memory.add(now_);
}

/// While others had the processor, nothing could be kept.
void Window::hear_waiting(std::int64_t waited_ns, std::int64_t ns) {
    if (waited_ns > waited_ns_) memory.excuse(ns - (waited_ns - waited_ns_), ns);
    waited_ns_ = std::max(waited_ns_, waited_ns);
}

std::int64_t Window::kill() {
    const std::int64_t ns = life.kill();
    hear_waiting(life.waited(), ns);
    if (disk_ == nullptr) return ns;
    for (const auto& [from, to] : disk_->stalls()) memory.excuse(from, to);
    return ns;
}

void Window::hear(const Entry& entry) {
    journal += written(entry);
    if (entry.kind == "state") hear_state(entry);
    if (entry.kind == "key") memory.key(entry.ns);
    if (entry.kind == "given_up") memory.give_up(entry.ns);
    if (entry.kind == "saving") saving_ns = entry.ns;
    if (entry.kind == "told") said.push_back({entry.ns, in_small_letters(entry.field(0))});
    if (entry.kind == "waited") hear_waiting(std::stoll(entry.field(0)), entry.ns);
    if (entry.kind == "late")
        longest_late_ns = std::max<std::int64_t>(longest_late_ns, 1'000'000 * std::stoll(entry.field(0)));
    if (entry.kind == "asked") {
        // A dialog that asks for a name has no words but its own.
        said.push_back({entry.ns, in_small_letters(entry.field(entry.field(1).empty() ? 0 : 1))});
        const bool brings = entry.field(0).find("RecoveryDialog") != std::string::npos &&
                            entry.field(3).find("bring") != std::string::npos;
        if (settled && brings) memory.bring_back(entry.ns);
        if (!settled && in_small_letters(entry.field(2)).find("bring") != std::string::npos) ++offered;
    }
    if (entry.kind == "saved") {
        saved.push_back({entry.ns, entry.field(0), entry.field(1)});
        saving_ns = 0;
    }
    if (entry.kind == "stands") stands.push_back({entry.ns, entry.field(0), entry.field(1)});
    if (entry.kind == "settled") {
        settled = true;
        found = now_;
        memory.add(now_);
    }
}

bool Window::has_said(std::int64_t since_ns, const std::vector<std::string>& about) const {
    return std::ranges::any_of(said, [&](const Said& one) {
        if (one.ns < since_ns || one.words.empty()) return false;
        return about.empty() || std::ranges::any_of(about, [&](const std::string& word) {
                   return one.words.find(word) != std::string::npos;
               });
    });
}

std::int64_t Window::knows_since(const Saved& save) const {
    std::int64_t since = 0;
    for (const auto* list : {&saved, &stands}) {
        for (const Saved& one : *list)
            if (one.path == save.path && one.ns < save.ns) since = std::max(since, one.ns);
    }
    return since;
}

std::vector<std::string> Window::toys_in_flight() const {
    std::vector<std::string> toys;
    if (saving_ns == 0) return toys;
    for (const Moment& moment : memory.moments()) {
        if (moment.ns < saving_ns) toys.clear();
        toys.push_back(moment.work.toy);
    }
    return toys;
}

}  // namespace roundwright::torture
