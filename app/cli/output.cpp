#include "app/cli/output.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "app/storage/disk_words.h"
#include "render/wording/plain_text.h"

namespace roundwright::app {
namespace {

/// Of the first write to the standard output that failed; 0: none.
int output_error = 0;

void put(std::FILE* to, const std::string& text) {
    const bool whole = std::fwrite(text.data(), 1, text.size(), to) == text.size();
    if (!whole && to == stdout && output_error == 0) output_error = errno;
}

bool is_ascii(const std::string& text) {
    return std::ranges::all_of(text, [](char c) { return c >= ' ' && c < '\x7F'; });
}

}  // namespace

void print_line(const QString& line) { put(stdout, for_terminal(line, false).toStdString() + '\n'); }

void print_text(const QString& text) { put(stdout, for_terminal(text, true).toStdString()); }

void print_json(const nlohmann::ordered_json& json) {
    const auto whole = json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
    put(stdout, (is_ascii(whole) ? whole : for_json(QString::fromStdString(whole)).toStdString()) + '\n');
}

void print_problem(const QString& problem) {
    put(stderr, "roundwright: " + for_terminal(problem, false).toStdString() + '\n');
}

std::optional<QString> finish_output() {
    if (std::fflush(stdout) != 0 && output_error == 0) output_error = errno;
    return output_error == 0 ? std::nullopt
                             : std::optional(disk_fault_words({DiskStep::write, output_error, {}}));
}

}  // namespace roundwright::app
