#pragma once

#include <cstdint>
#include <filesystem>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace roundwright::torture {

/// Asks the disk, beside the windows, for what keeping a copy asks of it: a small file made, written and
/// renamed, some twenty times a second. While that takes long, because others have given the disk much to
/// write, no window can keep anything either. May be asked from any thread.
class DiskProbe {
  public:
    explicit DiskProbe(const std::filesystem::path& folder);

    /// From when to when, by now_ns, it waited for the disk; the last one may still go on.
    [[nodiscard]] std::vector<std::pair<std::int64_t, std::int64_t>> stalls() const;
    [[nodiscard]] double longest_seconds() const;

  private:
    void ask(const std::filesystem::path& folder);
    void begin();
    void end(std::int64_t waited_ns);

    mutable std::mutex mutex_;
    std::vector<std::pair<std::int64_t, std::int64_t>> stalls_;
    std::int64_t asking_since_ = 0;  ///< 0: it is not waiting
    std::jthread asker_;             ///< the last member: it begins when all else is there
};

}  // namespace roundwright::torture
