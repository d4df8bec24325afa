#include "app/cli/output.h"

#include <cstdio>
#include <nlohmann/json.hpp>

namespace roundwright::app {
namespace {

void put(std::FILE* to, const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), to);
    std::fputc('\n', to);
}

}  // namespace

void print_line(const QString& line) { put(stdout, line.toStdString()); }

void print_text(const QString& text) {
    const std::string bytes = text.toStdString();
    std::fwrite(bytes.data(), 1, bytes.size(), stdout);
}

void print_json(const nlohmann::ordered_json& json) {
    put(stdout, json.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace));
}

void print_problem(const QString& problem) { put(stderr, "roundwright: " + problem.toStdString()); }

}  // namespace roundwright::app
