#pragma once

#include <optional>
#include <vector>

#include "app/cli/arguments.h"
#include "core/toy/toy.h"

namespace roundwright::app {

/// The piece of that name, or number from 1. Throws a `Complaint` that lists the pieces where there is none.
[[nodiscard]] std::size_t piece_named(const Toy& toy, const QString& wanted);

/// The pieces that "--piece" names, by name or by number from 1; all where it is not given. Throws a
/// `Complaint` where there is no such piece.
[[nodiscard]] std::vector<std::size_t> pieces_wanted(const Arguments& arguments, const Toy& toy);

/// For whole toys: "--apart".
inline constexpr Option apart_option{
    "apart", 0, nullptr, nullptr,
    QT_TRANSLATE_NOOP("CommandLine", "the pieces one by one, not the whole toy sewn together")};
/// Whether all of the toy is wanted as it is sewn together: where pieces of it are joined, unless "--piece"
/// or
/// "--apart" says otherwise.
[[nodiscard]] bool shows_whole_toy(const Arguments& arguments, const Toy& toy);

/// The piece that "--piece" names, or the only one; a complaint where there are several.
[[nodiscard]] std::size_t one_piece_wanted(const Arguments& arguments, const Toy& toy);

/// A whole number given to an option; nothing, with a complaint, where it is none from `least` to `most`.
[[nodiscard]] std::optional<int> whole_option(const Arguments& arguments, const char* option, int usual,
                                              int least, int most);

}  // namespace roundwright::app
