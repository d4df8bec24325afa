#include "render/pages/layout/page_layout.h"

namespace roundwright::render {
namespace {

class Layout {
  public:
    Layout(std::span<const BlockShape> blocks, double page_height)
        : blocks_(blocks), page_height_(page_height) {}

    std::vector<PlacedBlock> run() {
        for (std::size_t i = 0; i < blocks_.size();) {
            const std::size_t end = end_of_kept(i);
            if (blocks_[i].starts_page || !fits(i, end)) turn_page();
            for (; i < end; ++i) place(i);
        }
        return std::move(placed_);
    }

  private:
    /// One past the last block that has to stay with block `first`.
    [[nodiscard]] std::size_t end_of_kept(std::size_t first) const {
        std::size_t end = first + 1;
        while (end < blocks_.size() && blocks_[end - 1].keep_with_next && !blocks_[end].starts_page) ++end;
        return end;
    }

    [[nodiscard]] bool page_is_empty() const { return y_ == 0; }
    [[nodiscard]] double space_above(std::size_t i) const {
        return page_is_empty() ? 0 : blocks_[i].space_before;
    }

    [[nodiscard]] bool fits(std::size_t first, std::size_t end) const {
        double y = y_ + space_above(first);
        for (std::size_t i = first; i < end; ++i) {
            y += blocks_[i].height + (i > first ? blocks_[i].space_before : 0);
        }
        return y <= page_height_;
    }

    void turn_page() {
        if (page_is_empty()) return;
        ++page_;
        y_ = 0;
    }

    void place(std::size_t i) {
        if (!fits(i, i + 1)) turn_page();
        const int header = blocks_[i].header;
        if (page_is_empty() && header >= 0 && static_cast<std::size_t>(header) < i) put(header, true);
        put(i, false);
    }

    void put(std::size_t i, bool repeated) {
        y_ += space_above(i);
        placed_.push_back({i, page_, y_, repeated});
        y_ += blocks_[i].height;
    }

    std::span<const BlockShape> blocks_;
    double page_height_;
    std::vector<PlacedBlock> placed_;
    int page_ = 0;
    double y_ = 0;
};

}  // namespace

std::vector<PlacedBlock> lay_out(std::span<const BlockShape> blocks, double page_height) {
    return Layout(blocks, page_height).run();
}

int page_count(const std::vector<PlacedBlock>& placed) { return placed.empty() ? 0 : placed.back().page + 1; }

}  // namespace roundwright::render
