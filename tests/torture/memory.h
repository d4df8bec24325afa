#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace roundwright::torture {

/// What a maker would miss: the toy as it was said, and what is typed.
struct Work {
    std::string toy;    ///< hash of the document
    std::string typed;  ///< not entered yet

    friend bool operator==(const Work&, const Work&) = default;
};

/// What was in the window, from some moment on.
struct Moment {
    std::int64_t ns = 0;
    Work work;
    std::string path;       ///< of the toy's file; empty: never saved
    bool modified = false;  ///< as the window says

    /// Whether a crash now would cost something that is nowhere but in the window and its kept copy.
    [[nodiscard]] bool owes() const { return modified || !work.typed.empty(); }
};

/// Whether what a new window shows stands for what was owed: a copy that came back, or the same file (paths
/// without links). Another toy does not, though the window before may have held just such an empty one.
[[nodiscard]] inline bool stands_for(const Moment& found, const Moment& owed, bool came_back) {
    return came_back || found.path == owed.path;
}

/// What came back, held against what had been there.
struct Loss {
    bool known = true;   ///< false: what came back was never there
    double seconds = 0;  ///< from the first change that is missing to the end
    int keys = 0;        ///< pressed in these seconds
};

/// The model: everything that one window has held, and when, as it said itself.
class Memory {
  public:
    void add(Moment moment);
    void key(std::int64_t ns) { keys_.push_back(ns); }
    /// Between these times the window could keep nothing (stopped, no room left): they do not count as lost.
    void excuse(std::int64_t from_ns, std::int64_t to_ns) { excused_.emplace_back(from_ns, to_ns); }
    /// The maker asked for a copy. Until the next key the copy may hold more than the window has told.
    void bring_back(std::int64_t ns) { bringing_ns_ = ns; }
    /// The maker said that what is in the window may go.
    void give_up(std::int64_t ns) { given_up_ns_ = ns; }

    [[nodiscard]] bool empty() const { return moments_.empty(); }
    [[nodiscard]] const std::vector<Moment>& moments() const { return moments_; }
    [[nodiscard]] const Moment& last() const { return moments_.back(); }
    /// Whether the window owed anything at any time in the last `seconds` before the end, what is excused
    /// aside.
    [[nodiscard]] bool owed_within(double seconds, std::int64_t end_ns) const;
    /// Given up, and nothing was in the window since.
    [[nodiscard]] bool is_given_up() const;

    /// How much is missing in `found` of what was there at the end. The latest time at which the window held
    /// it counts.
    [[nodiscard]] Loss loss(const Work& found, std::int64_t end_ns) const;
    /// The same by the clock alone, with nothing excused.
    [[nodiscard]] Loss loss_by_the_clock(const Work& found, std::int64_t end_ns) const;
    /// As if nothing had come back but what is in files: from the last time when nothing was owed.
    [[nodiscard]] Loss whole_loss(std::int64_t end_ns) const;

  private:
    [[nodiscard]] bool is_bringing_back(const Work& found) const;
    [[nodiscard]] double seconds_between(std::int64_t from_ns, std::int64_t to_ns) const;
    [[nodiscard]] Loss since(std::vector<Moment>::const_iterator missing, std::int64_t end_ns) const;

    std::vector<Moment> moments_;
    std::vector<std::int64_t> keys_;
    std::vector<std::pair<std::int64_t, std::int64_t>> excused_;
    std::int64_t given_up_ns_ = 0;
    std::int64_t bringing_ns_ = 0;
};

}  // namespace roundwright::torture
