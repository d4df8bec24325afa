#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/torture/disk_probe.h"
#include "tests/torture/life.h"
#include "tests/torture/memory.h"

namespace roundwright::torture {

/// A toy that a window said it had written.
struct Saved {
    std::int64_t ns = 0;
    std::string path;
    std::string toy;
};

/// Something the window said to the maker: a dialog, a notice, the status line.
struct Said {
    std::int64_t ns = 0;
    std::string words;
};

/// A life and what the driver has heard from it.
class Window {
  public:
    /// `disk` may be none; while it stood still, nothing could be kept.
    Window(const Start& start, const DiskProbe* disk);

    Life life;
    Memory memory;  ///< since it settled
    Moment found;   ///< what was in it when it settled
    bool settled = false;
    int offered = 0;  ///< copies that were offered before it settled
    std::vector<Saved> saved;
    std::vector<Saved> stands;  ///< toys that it read, or found there again
    std::vector<Said> said;
    std::string journal;         ///< all of it, as it came
    std::int64_t saving_ns = 0;  ///< when it last began to save; 0: not since the last `saved`
    std::int64_t longest_late_ns = 0;

    /// Kills it, and gives the time.
    std::int64_t kill();

    /// Whether it said anything since then that is about files; `about` empty: anything at all.
    [[nodiscard]] bool has_said(std::int64_t since_ns, const std::vector<std::string>& about = {}) const;
    /// Since when it knew what stood in the file, when it saved this.
    [[nodiscard]] std::int64_t knows_since(const Saved& save) const;
    /// Toys that the file being written at the end may hold.
    [[nodiscard]] std::vector<std::string> toys_in_flight() const;

  private:
    void hear(const Entry& entry);
    void hear_state(const Entry& entry);
    void hear_waiting(std::int64_t waited_ns, std::int64_t ns);

    const DiskProbe* disk_;
    Moment now_;
    std::int64_t waited_ns_ = 0;
};

}  // namespace roundwright::torture
