#include "tests/torture/disk_probe.h"

#include <algorithm>
#include <chrono>
#include <fstream>
#include <system_error>

#include "tests/torture/journal.h"

namespace roundwright::torture {
namespace {

constexpr std::int64_t usual_ns = 50'000'000;  // an idle disk answers in a fraction of it
constexpr auto pause = std::chrono::milliseconds(50);

}  // namespace

DiskProbe::DiskProbe(const std::filesystem::path& folder) {
    std::filesystem::create_directories(folder);
    asker_ = std::jthread([this, folder](const std::stop_token& stop) {
        while (!stop.stop_requested()) {
            ask(folder);
            std::this_thread::sleep_for(pause);
        }
    });
}

void DiskProbe::ask(const std::filesystem::path& folder) {
    const std::int64_t waited_before = waited_ns_of_this_thread();
    begin();
    std::ofstream(folder / "probe.part") << "Does the disk answer?";
    std::error_code ignored;
    std::filesystem::rename(folder / "probe.part", folder / "probe", ignored);
    end(waited_ns_of_this_thread() - waited_before);
}

void DiskProbe::begin() {
    const std::scoped_lock guard(mutex_);
    asking_since_ = now_ns();
}

/// What it waited for a processor is not the disk's doing.
void DiskProbe::end(std::int64_t waited_ns) {
    const std::scoped_lock guard(mutex_);
    const std::int64_t now = now_ns();
    if (now - asking_since_ - waited_ns > usual_ns) stalls_.emplace_back(asking_since_, now - waited_ns);
    asking_since_ = 0;
}

std::vector<std::pair<std::int64_t, std::int64_t>> DiskProbe::stalls() const {
    const std::scoped_lock guard(mutex_);
    auto all = stalls_;
    const std::int64_t now = now_ns();
    if (asking_since_ != 0 && now - asking_since_ > usual_ns) all.emplace_back(asking_since_, now);
    return all;
}

double DiskProbe::longest_seconds() const {
    std::int64_t longest = 0;
    for (const auto& [from, to] : stalls()) longest = std::max(longest, to - from);
    return static_cast<double>(longest) * 1e-9;
}

}  // namespace roundwright::torture
