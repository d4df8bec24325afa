#include "tests/core/published/published_pieces.h"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <fstream>
#include <functional>
#include <map>
#include <stdexcept>

#include "core/language/round/round_entry.h"

namespace roundwright::testing {
namespace {

[[noreturn]] void cannot_read(const std::string& line) {
    throw std::runtime_error("published_pieces.txt: cannot read \"" + line + "\"");
}

double number(const std::string& text) {
    std::size_t end = 0;
    const double value = std::stod(text, &end);
    if (end != text.size()) cannot_read(text);
    return value;
}

YarnWeight weight_called(const std::string& name) {
    const auto same = [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
    };
    for (const YarnStandard& standard : yarn_standards())
        if (std::ranges::equal(standard.name, name, same)) return standard.weight;
    cannot_read(name);
}

SwatchGauge swatch_of(const std::string& text) {
    SwatchGauge swatch;
    if (std::sscanf(text.c_str(), "%lf in %lf, %lf in %lf", &swatch.stitches, &swatch.width_mm,
                    &swatch.rounds, &swatch.height_mm) != 4)
        cannot_read(text);
    swatch.worked_in_rows = true;
    return swatch;
}

CircleGauge circle_of(const std::string& text) {
    CircleGauge circle;
    if (std::sscanf(text.c_str(), "%d rounds of %d, %lf", &circle.rounds, &circle.increases,
                    &circle.across_mm) != 3)
        cannot_read(text);
    return circle;
}

StatedSize size_of(SizeOf of, const std::string& text) {
    const std::size_t space = text.find(' ');
    if (space == std::string::npos) cannot_read(text);
    const std::string exactness = text.substr(space + 1);
    if (exactness != "about" && exactness != "measured") cannot_read(text);
    return {of, number(text.substr(0, space)), exactness == "measured"};
}

std::vector<Round> rounds_of(const std::string& text) {
    RoundEntry entry = parse_round_entry(text, {});
    if (!entry.problems.empty() || entry.rounds.empty()) cannot_read(text);
    return std::move(entry.rounds);
}

using Reader = std::function<void(PublishedPiece&, const std::string&)>;

Reader size_reader(SizeOf of) {
    return [of](PublishedPiece& read, const std::string& value) { read.sizes.push_back(size_of(of, value)); };
}

const std::map<std::string, Reader>& readers() {
    static const std::map<std::string, Reader> by_key{
        {"what", [](auto& read, auto& value) { read.what = value; }},
        {"rounds", [](auto& read, auto& value) { read.piece.rounds = rounds_of(value); }},
        {"chains",
         [](auto& read, auto& value) { read.piece.start = ChainRing{static_cast<int>(number(value))}; }},
        {"end", [](auto& read, auto&) { read.piece.end = End::drawn_closed; }},
        {"stuffed",
         [](auto& read, auto& value) {
             read.piece.area_stretch = value == "yes" ? medium_stuffing_stretch : unstuffed_stretch;
         }},
        {"hook", [](auto& read, auto& value) { read.hook_mm = number(value); }},
        {"weight", [](auto& read, auto& value) { read.weight = weight_called(value); }},
        {"core", [](auto& read, auto& value) { read.core_mm = number(value); }},
        {"swatch", [](auto& read, auto& value) { read.swatch = swatch_of(value); }},
        {"circle", [](auto& read, auto& value) { read.circle = circle_of(value); }},
        {"finished", [](auto& read, auto& value) { read.finished = value; }},
        {"width", size_reader(SizeOf::width)},
        {"height", size_reader(SizeOf::height)},
        {"around", size_reader(SizeOf::around)},
        {"even height", size_reader(SizeOf::even_height)},
    };
    return by_key;
}

void read_key(PublishedPiece& read, const std::string& line) {
    const std::size_t colon = line.find(": ");
    const auto reader = readers().find(line.substr(0, colon));
    if (colon == std::string::npos || reader == readers().end()) cannot_read(line);
    reader->second(read, line.substr(colon + 2));
}

}  // namespace

double StatedSize::tolerance_mm() const {
    constexpr double half_a_quarter_inch_mm = 3.175, tape_mm = 2;
    return measured ? std::max(tape_mm, 0.02 * mm) : std::max(half_a_quarter_inch_mm, 0.05 * mm);
}

std::vector<PublishedPiece> published_pieces() {
    std::ifstream in(PUBLISHED_PIECES);
    std::vector<PublishedPiece> pieces;
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with("## ")) {
            PublishedPiece& next = pieces.emplace_back();
            next.title = next.piece.name = line.substr(3);
        } else if (!pieces.empty() && !line.empty()) {
            read_key(pieces.back(), line);
        }
    }
    if (pieces.empty()) cannot_read(PUBLISHED_PIECES);
    return pieces;
}

}  // namespace roundwright::testing
