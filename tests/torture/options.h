#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <set>
#include <string>

namespace roundwright::torture {

struct Options {
    double minutes = 1;
    int kills = 0;   ///< to stop after; 0: the minutes alone say
    int chains = 0;  ///< the same
    int at_once = 4;
    int lives = 10;          ///< of each chain
    std::uint32_t seed = 1;  ///< of the first chain; each further one has the next
    std::set<std::string> only{};
    std::optional<bool> on_a_display{};  ///< nothing: a third of the chains
    std::filesystem::path folder = std::filesystem::temp_directory_path();
};

/// Reads the command line; says what is wrong with it, or how it is used, and gives nothing.
[[nodiscard]] std::optional<Options> read_options(int argc, char** argv);

}  // namespace roundwright::torture
