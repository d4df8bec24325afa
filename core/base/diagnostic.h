#pragma once

#include <string>
#include <variant>

namespace roundwright {

enum class Severity { note, warning, error };

/// What a coded message is filled in with: a count, a measure, or a word of the maker's.
/// The app decides on wording and on mm or inches; core only ever hands out these.
struct Millimetres {
    double value = 0;
    friend bool operator==(const Millimetres&, const Millimetres&) = default;
};
using Argument = std::variant<int, double, Millimetres, std::string>;

}  // namespace roundwright
