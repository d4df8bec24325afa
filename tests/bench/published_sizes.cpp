#include <cstdio>

#include "tests/core/published/predicted_sizes.h"

/// Prints the published pieces, what the program predicts of them, and how well: published_sizes
namespace roundwright::testing {
namespace {

const char* verdict(const PredictedSize& size) {
    if (size.in_range()) return "in";
    return size.agrees() ? "agrees" : "OUT";
}

void print(const PredictedSize& size) {
    std::printf("%-58.58s %-18.18s %6.0f %6.0f to %-6.0f %6.1f %+5.0f %%  %s\n", size.name().c_str(),
                std::string(words_of(size.known)).c_str(), size.mm, size.range_mm.low, size.range_mm.high,
                size.stated.mm, 100 * size.error(), verdict(size));
}

void print_agreement(const char* name, const std::vector<PredictedSize>& sizes) {
    if (sizes.empty()) return;
    const Agreement found = agreement(sizes);
    std::printf("%-24s %5d %+9.1f %% %8.1f %% %8.0f %% %8d %10d\n", name, found.sizes,
                100 * found.median_error, 100 * found.mean_absolute_error, 100 * found.mean_half_range,
                found.in_range, found.agree);
}

template <class Wanted>
std::vector<PredictedSize> only(const std::vector<PredictedSize>& sizes, const Wanted& wanted) {
    std::vector<PredictedSize> found;
    for (const PredictedSize& size : sizes)
        if (wanted(size)) found.push_back(size);
    return found;
}

void print_groups(const std::vector<PredictedSize>& sizes) {
    std::printf("\n%-24s %5s %11s %10s %10s %8s %10s\n", "", "sizes", "median", "mean |e|", "range +-", "in",
                "in or near");
    for (const KnownBy known : {KnownBy::weight_and_hook, KnownBy::stated_gauge, KnownBy::own_circle,
                                KnownBy::own_piece, KnownBy::rigid_core})
        print_agreement(std::string(words_of(known)).c_str(),
                        only(sizes, [known](const auto& size) { return size.known == known; }));
    print_agreement("stuffed",
                    only(sizes, [](const auto& size) { return size.piece->piece.area_stretch > 0; }));
    print_agreement("not stuffed",
                    only(sizes, [](const auto& size) { return size.piece->piece.area_stretch == 0; }));
    print_agreement("all", sizes);
    print_agreement("all, measured outside", measured_outside(sizes));
}

int print_table() {
    const std::vector<PublishedPiece> pieces = published_pieces();
    const std::vector<PredictedSize> sizes = predicted_sizes(pieces);
    std::printf("%-58s %-18s %6s %-16s %6s %7s\n", "mm", "known by", "made", "   range", "stated", "error");
    for (const PredictedSize& size : sizes) print(size);
    print_groups(sizes);
    return 0;
}

}  // namespace
}  // namespace roundwright::testing

int main() { return roundwright::testing::print_table(); }
