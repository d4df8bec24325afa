#include "tests/core/document/mutated_file.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "core/document/json_document.h"
#include "core/document/json_parser.h"

namespace roundwright::test {

namespace {

/// Where a value stands, and where its key does.
struct Stretch {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t key = 0;  ///< of a member; else where the value begins
};

std::vector<Stretch> values_of(const std::string& text) {
    std::vector<Stretch> values;
    try {
        const JsonTree tree = parse_json(text);
        for (JsonTree::Id id = 0; id < tree.count(); ++id) {
            const std::size_t begin = *tree.byte(id);
            values.push_back({begin, begin + tree.raw(id).size(), tree.key_byte(id).value_or(begin)});
        }
    } catch (const DocumentError&) {  // no values any more: its bytes can still be changed
    }
    return values;
}

std::string repeated(std::string_view text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i) all += text;
    return all;
}

}  // namespace

std::string FileMutator::odd_value() {
    static const std::array<std::string, 32> odd{"null",
                                                 "true",
                                                 "false",
                                                 "0",
                                                 "-0",
                                                 "-1",
                                                 "1",
                                                 "7",
                                                 "2",
                                                 "1e999",
                                                 "-1e999",
                                                 "1e-999",
                                                 "1.5",
                                                 "2147483648",
                                                 "18446744073709551616",
                                                 "1000000",
                                                 "200001",
                                                 "NaN",
                                                 "Infinity",
                                                 "nan",
                                                 "",
                                                 "[]",
                                                 "{}",
                                                 "\"\"",
                                                 R"("\u0000")",
                                                 R"("\ud800")",
                                                 R"("#ffffff")",
                                                 R"("magic_ring")",
                                                 "\"\xFF\"",
                                                 R"("6, 12, 18x4")",
                                                 "{\"a\":1,\"a\":2}",
                                                 "[null]"};
    switch (below(40)) {
        case 0:
            return repeated("[", below(200)) + repeated("]", below(200));
        case 1:
            return repeated("{\"a\":", 70) + "1" + repeated("}", 70);
        case 2:
            return "\"" + repeated("sc ", below(5'000)) + "\"";
        case 3:
            return repeated("9", below(8'000) + 1);
        case 4:
            return "[" + repeated("{},", below(5'000)) + "{}]";
        case 5:
            return "{" + repeated("\"k\":{},", below(2'000)) + "\"k\":1}";
        default:
            return odd[below(odd.size())];
    }
}

void FileMutator::change_bytes(std::string& text) {
    if (text.empty()) return;
    const std::size_t at = below(text.size());
    const std::size_t length = std::min(below(60) + 1, text.size() - at);
    const std::string& other = any_file();
    switch (below(8)) {
        case 0:
            text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
            break;
        case 1:
            text.erase(at, length);
            break;
        case 2:
            text.insert(below(text.size()), text.substr(at, length));
            break;
        case 3:
            text.resize(at);
            break;
        case 4:
            text = text.substr(0, at) + other.substr(below(other.size()));
            break;
        case 5:
            std::fill_n(text.begin() + static_cast<std::ptrdiff_t>(at), length, '\0');
            break;
        case 6:
            text[at] = "{}[]\",:\\"[below(8)];
            break;
        default:
            text.insert(at, odd_value());
            break;
    }
}

void FileMutator::change_values(std::string& text) {
    const std::vector<Stretch> values = values_of(text);
    if (values.empty()) return change_bytes(text);
    Stretch a = values[below(values.size())];
    Stretch b = values[below(values.size())];
    if (b.key < a.key) std::swap(a, b);
    const std::string first = text.substr(a.begin, a.end - a.begin);
    const std::string second = text.substr(b.begin, b.end - b.begin);
    switch (below(8)) {
        case 0:  // swap
            if (a.end > b.begin) return;
            text.replace(b.begin, second.size(), first);
            text.replace(a.begin, first.size(), second);
            break;
        case 1:  // leave out, with the comma that follows
            text.erase(a.key, a.end - a.key + (a.end < text.size() && text[a.end] == ',' ? 1 : 0));
            break;
        case 2:  // double
            text.insert(a.key, text.substr(a.key, a.end - a.key) + ",");
            break;
        case 3:  // rename
            if (a.key == a.begin) return;
            text.insert(a.key + 1 + below(3), std::string(1, "abz~/\\\""[below(7)]));
            break;
        case 4: {  // take another file's
            const std::string& other = any_file();
            const std::vector<Stretch> others = values_of(other);
            const Stretch taken = others[below(others.size())];
            text.replace(a.begin, first.size(), other, taken.begin, taken.end - taken.begin);
            break;
        }
        case 5:  // many of it
            if (first.size() > 2'000) return;
            text.insert(a.key, repeated(text.substr(a.key, a.end - a.key) + ",", below(1'000)));
            break;
        default:
            text.replace(a.begin, first.size(), odd_value());
            break;
    }
}

std::string FileMutator::mutated(std::string text) {
    for (std::size_t changes = below(4) + 1; changes > 0; --changes) {
        if (below(3) == 0)
            change_bytes(text);
        else
            change_values(text);
    }
    return text;
}

}  // namespace roundwright::test
