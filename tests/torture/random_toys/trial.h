#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace roundwright::torture {

/// One toy in so many goes through an export; 0: none does.
struct Shares {
    int words = 5;      ///< its rounds and its whole pattern in words
    int meshes = 10;    ///< a file of each kind
    int drawings = 20;  ///< an SVG
    int pictures = 50;  ///< a PNG
    int pages = 500;    ///< a PDF
};

/// What came of the toys tried so far.
struct Tally {
    std::map<std::string, long> ends;  ///< how pieces and exports ended, and how often
    std::vector<std::string> faults;   ///< with the toy's number: what must never be
    std::uint64_t slowest = 0;         ///< toy
    double slowest_seconds = 0;

    void add(const Tally& other);
};

/// Sends a random toy through shape, checks and its share of the exports, as the command line does. Nothing
/// may be without a finite number, hold less than nothing, leave a mesh open, or end without words.
void try_toy(std::uint64_t number, const Shares& shares, Tally& tally);

}  // namespace roundwright::torture
