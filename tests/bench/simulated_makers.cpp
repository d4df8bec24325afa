// How often pieces come out within the range shown, and how wide that is, by what the gauge is known from.
//
//     simulated_makers [MAKERS]     of each kind; 10,000 where no number is given

#include "tests/support/simulated_makers.h"

#include <cstdio>
#include <cstdlib>

int main(int count, char** arguments) {
    using namespace roundwright::testing;
    const int makers = count > 1 ? std::atoi(arguments[1]) : 10'000;
    std::printf("%-34s %8s %8s %8s %8s\n", "what is known of the gauge", "width", "within", "height",
                "within");
    for (const KindOfKnowledge& kind : kinds_of_knowledge()) {
        const RangesHeld held = ranges_held(kind.kind, makers, 1);
        std::printf("%-34.*s  +-%4.1f%% %7.1f%%  +-%4.1f%% %7.1f%%\n", static_cast<int>(kind.name.size()),
                    kind.name.data(), 100 * held.mean_half_width, 100 * held.share_of_widths(),
                    100 * held.mean_half_height, 100 * held.share_of_heights());
    }
}
