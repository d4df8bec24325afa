#include "tests/torture/journal.h"

#include <charconv>
#include <ctime>
#include <fstream>

namespace roundwright::torture {
namespace {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char letter : text) {
        if (letter == '\t') {
            out += "\\t";
        } else if (letter == '\n') {
            out += "\\n";
        } else if (letter == '\\') {
            out += "\\\\";
        } else {
            out += letter;
        }
    }
    return out;
}

std::string plain(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] != '\\' || at + 1 == text.size()) {
            out += text[at];
            continue;
        }
        const char letter = text[++at];
        out += letter == 't' ? '\t' : letter == 'n' ? '\n' : letter;
    }
    return out;
}

std::vector<std::string_view> divided(std::string_view line) {
    std::vector<std::string_view> parts;
    for (std::size_t tab = line.find('\t'); tab != std::string_view::npos; tab = line.find('\t')) {
        parts.push_back(line.substr(0, tab));
        line.remove_prefix(tab + 1);
    }
    parts.push_back(line);
    return parts;
}

std::int64_t waited_by(const std::string& statistics) {
    std::ifstream in(statistics);
    std::int64_t ran = 0;
    std::int64_t waited = 0;
    in >> ran >> waited;
    return waited;
}

}  // namespace

std::int64_t now_ns() {
    std::timespec now{};
    ::clock_gettime(CLOCK_MONOTONIC, &now);
    return std::int64_t{now.tv_sec} * 1'000'000'000 + now.tv_nsec;
}

std::int64_t waited_ns(int process) {
    return waited_by("/proc/" + (process == 0 ? "self" : std::to_string(process)) + "/schedstat");
}

std::int64_t waited_ns_of_this_thread() { return waited_by("/proc/thread-self/schedstat"); }

std::string written(const Entry& entry) {
    std::string line = std::to_string(entry.ns) + '\t' + escaped(entry.kind);
    for (const auto& field : entry.fields) line += '\t' + escaped(field);
    return line + '\n';
}

std::optional<Entry> read_entry(std::string_view line) {
    const auto parts = divided(line);
    Entry entry;
    const auto& time = parts.front();
    const auto read = std::from_chars(time.data(), time.data() + time.size(), entry.ns);
    if (read.ec != std::errc{} || parts.size() < 2) return std::nullopt;
    entry.kind = plain(parts[1]);
    for (std::size_t at = 2; at < parts.size(); ++at) entry.fields.push_back(plain(parts[at]));
    return entry;
}

std::string hash_of(std::string_view bytes) {
    std::uint64_t hash = 0xcbf29ce484222325;
    for (const char byte : bytes) hash = (hash ^ static_cast<unsigned char>(byte)) * 0x100000001b3;
    std::string digits(16, '0');
    for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit, hash >>= 4)
        *digit = "0123456789abcdef"[hash & 15];
    return digits;
}

}  // namespace roundwright::torture
