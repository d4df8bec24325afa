#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace roundwright::torture {

/// What a window under torture says, and when: one line down a pipe, so that nothing of it is on the disk
/// under test and all that was said before a kill -9 is known.
struct Entry {
    std::int64_t ns = 0;  ///< CLOCK_MONOTONIC, which all processes share
    std::string kind;
    std::vector<std::string> fields;

    [[nodiscard]] std::string field(std::size_t at) const { return at < fields.size() ? fields[at] : ""; }
    friend bool operator==(const Entry&, const Entry&) = default;
};

[[nodiscard]] std::int64_t now_ns();
/// How long the first thread of a process (0: this one) was ready to run since it began, and others had the
/// processor: the second number of /proc/PID/schedstat, see Documentation/scheduler/sched-stats.rst in Linux.
[[nodiscard]] std::int64_t waited_ns(int process);
[[nodiscard]] std::int64_t waited_ns_of_this_thread();

/// One line, its end included: time, kind and fields, divided by tabs; tabs, line ends and backslashes in
/// fields are escaped.
[[nodiscard]] std::string written(const Entry& entry);
/// Nothing if the line is none, as when the pipe broke off in the middle of it.
[[nodiscard]] std::optional<Entry> read_entry(std::string_view line);

/// FNV-1a of 64 bits (RFC draft-eastlake-fnv), as 16 hex digits: tells states apart, guards against nobody.
[[nodiscard]] std::string hash_of(std::string_view bytes);

}  // namespace roundwright::torture
