#include "app/cli/output.h"

#include <cerrno>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "app/storage/disk_words.h"

namespace roundwright::app {
namespace {

/// Of the first write to the standard output that failed; 0: none.
int output_error = 0;

void put(std::FILE* to, const std::string& text) {
    const bool whole = std::fwrite(text.data(), 1, text.size(), to) == text.size();
    if (!whole && to == stdout && output_error == 0) output_error = errno;
}

}  // namespace

void print_line(const QString& line) { put(stdout, line.toStdString() + '\n'); }

void print_text(const QString& text) { put(stdout, text.toStdString()); }

void print_json(const nlohmann::ordered_json& json) {
    put(stdout, json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + '\n');
}

void print_problem(const QString& problem) { put(stderr, "roundwright: " + problem.toStdString() + '\n'); }

std::optional<QString> finish_output() {
    if (std::fflush(stdout) != 0 && output_error == 0) output_error = errno;
    return output_error == 0 ? std::nullopt : std::optional(disk_fault_words({DiskStep::write, output_error, {}}));
}

}  // namespace roundwright::app
