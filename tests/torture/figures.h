#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <ostream>
#include <string>
#include <vector>

namespace roundwright::torture {

/// What was found wrong, by kinds that the table counts.
enum class Fault {
    torn,                 ///< a toy's file is neither the old toy nor the new one
    never_there,          ///< what came back was never in the window
    lost,                 ///< older than a second
    foreign,              ///< a stranger's file was touched
    left_beside,          ///< something of the program's own lies beside the toys
    readable,             ///< others may read what is kept
    offered_for_nothing,  ///< a copy was offered though nothing was newer
    overwritten,          ///< another program's toy was replaced without a word
    silent,               ///< it failed, and the window said nothing
    hung,                 ///< did not end, or did not open
    crashed
};
inline constexpr int fault_kinds = 11;
[[nodiscard]] const char* words(Fault fault);

/// What happened in all lives, counted by how they ended. May be used from any thread.
class Figures {
  public:
    void end(const std::string& blow);
    /// `by_the_clock`: with the time in which nothing could be kept.
    void came_back(const std::string& blow, double seconds, double by_the_clock, int keys, bool was_offered);
    /// Prints it at once, with what replays it.
    void fault(const std::string& blow, Fault fault, const std::string& what, const std::string& replay);

    [[nodiscard]] int ends() const;
    [[nodiscard]] int kills() const;
    [[nodiscard]] int faults() const;
    void print(std::ostream& out) const;

  private:
    struct Row {
        int ends = 0;
        int offered = 0;
        int most_keys = 0;
        double worst_by_the_clock = 0;
        std::vector<double> seconds;
        int faults[fault_kinds] = {};
    };
    static void print(std::ostream& out, const std::string& name, Row row);

    mutable std::mutex mutex_;
    std::map<std::string, Row> rows_;
};

}  // namespace roundwright::torture
