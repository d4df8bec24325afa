#include "core/language/round/worked_on_words.h"

#include <algorithm>
#include <charconv>

#include "core/base/limits.h"

namespace roundwright {
namespace {

constexpr std::string_view goes_on = "Go on around the edge";
constexpr std::string_view joins = "Join the edges";

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool begins_with(std::string_view line, std::string_view words) {
    return line.size() >= words.size() && std::equal(words.begin(), words.end(), line.begin(),
                                                     [](char a, char b) { return lower(a) == lower(b); });
}

/// A number at `at`, and what stands behind it; none beyond what a round may hold.
std::optional<int> number_before(std::string_view line, std::size_t at, std::string_view behind) {
    int number = 0;
    const char* end = line.data() + line.size();
    const auto [rest, error] = std::from_chars(line.data() + at, end, number);
    if (error != std::errc() || number < 0 || number > static_cast<int>(max_stitches_per_piece))
        return std::nullopt;
    return begins_with({rest, static_cast<std::size_t>(end - rest)}, behind) ? std::optional(number)
                                                                             : std::nullopt;
}

}  // namespace

std::string worked_on_words(const WorkedOn& start, const std::string& edges, bool one_edge) {
    const std::string of = edges.empty() ? "the pieces before" : edges;
    const std::string loops =
        ": " + std::to_string(start.stitches) + (start.stitches == 1 ? " loop." : " loops.");
    if (one_edge) return "Go on around the edge of " + of + loops;
    if (start.chains_between == 0) return "Join the edges of " + of + " and go on around them" + loops;
    return "Join the edges of " + of + " with ch " + std::to_string(start.chains_between) +
           " between them, and go on around them and both sides of the ch" + loops;
}

bool begins_worked_on(std::string_view line) {
    line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
    return begins_with(line, goes_on) || begins_with(line, joins);
}

std::optional<WorkedOn> worked_on_said(std::string_view line) {
    if (!begins_worked_on(line)) return std::nullopt;
    const std::size_t colon = line.rfind(": ");
    if (colon == std::string_view::npos) return std::nullopt;
    const auto loops = number_before(line, colon + 2, " loop");
    if (!loops || *loops < 1) return std::nullopt;
    WorkedOn start{.stitches = *loops};
    constexpr std::string_view with = " with ch ";
    for (std::size_t at = line.find(with); at != std::string_view::npos; at = line.find(with, at + 1))
        if (const auto chains = number_before(line, at + with.size(), " between"))
            start.chains_between = *chains;
    return start;
}

}  // namespace roundwright
