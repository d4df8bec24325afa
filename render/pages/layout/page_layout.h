#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace roundwright::render {

/// What the layout needs to know of one block of a page: a paragraph, a heading, a row of a table, a drawing.
/// A block is never split. Lengths in any one unit.
struct BlockShape {
    double height = 0;
    double space_before = 0;      ///< left out at the top of a page
    bool keep_with_next = false;  ///< stays on the page of the block after it
    bool starts_page = false;
    int header = -1;  ///< index of the block (a table's head) to repeat above this one if it starts a page
};

/// Where a block comes to stand. A repeated header has an entry of its own.
struct PlacedBlock {
    std::size_t block = 0;
    int page = 0;  ///< from 0
    double top = 0;
    bool repeated = false;  ///< a header put above a row again
};

/// Places blocks one below the other on pages of one height. Blocks kept together go to the next page
/// together; where they are taller than a page they part where the page ends. A block taller than a page gets
/// a page to itself.
[[nodiscard]] std::vector<PlacedBlock> lay_out(std::span<const BlockShape> blocks, double page_height);

/// Pages that a layout takes.
[[nodiscard]] int page_count(const std::vector<PlacedBlock>& placed);

}  // namespace roundwright::render
