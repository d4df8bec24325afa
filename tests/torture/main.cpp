#include <atomic>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <iostream>
#include <thread>
#include <vector>

#include "app/window/run_window.h"
#include "tests/torture/chain.h"
#include "tests/torture/child_words.h"
#include "tests/torture/options.h"

namespace roundwright::torture {
namespace {

ChainWishes wishes_of(const Options& options, const DiskProbe& disk, std::uint32_t seed, bool small_disks) {
    std::mt19937 random(seed * 2'654'435'761U);
    const auto one_in = [&](unsigned many) { return random() % many == 0; };
    ChainWishes wishes;
    wishes.seed = seed;
    wishes.lives = options.lives;
    wishes.on_a_display = one_in(3);
    wishes.small_disks = one_in(2) && small_disks;
    if (one_in(2)) wishes.shortest_pause_ms = 5, wishes.longest_pause_ms = 30;
    if (options.on_a_display) wishes.on_a_display = *options.on_a_display;
    wishes.only = options.only;
    wishes.disk = &disk;
    wishes.folder = options.folder / ("torture-" + std::to_string(::getpid()) + "-" + std::to_string(seed));
    wishes.faults = options.folder / "torture-faults";
    return wishes;
}

int torture(const Options& options) {
    const bool small_disks = may_mount();
    if (!small_disks) std::cout << "No small disks can be mounted here: full disks are left out.\n";
    Figures figures;
    const DiskProbe disk(options.folder / "torture-probe");
    const auto end = std::chrono::steady_clock::now() + std::chrono::duration<double>(options.minutes * 60);
    const auto may_go_on = [&] {
        return std::chrono::steady_clock::now() < end &&
               (options.kills == 0 || figures.kills() < options.kills);
    };
    std::atomic<std::uint32_t> chains = 0;
    const auto work = [&] {
        while (may_go_on()) {
            const std::uint32_t number = chains++;
            if (options.chains > 0 && number >= static_cast<std::uint32_t>(options.chains)) return;
            Chain(wishes_of(options, disk, options.seed + number, small_disks), figures).run(may_go_on);
        }
    };
    std::vector<std::jthread> workers;
    for (int at = 0; at < options.at_once; ++at) workers.emplace_back(work);
    workers.clear();
    std::cout << '\n';
    figures.print(std::cout);
    std::cout << "\nwindows ended by force: " << figures.kills() << ", faults: " << figures.faults()
              << "\nthe disk kept a small file waiting for at most " << disk.longest_seconds() << " s\n";
    return figures.faults() == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

}  // namespace
}  // namespace roundwright::torture

int main(int argc, char** argv) {
    using namespace roundwright;
    if (std::getenv(torture::seed_variable) != nullptr) return app::run_window(argc, argv);
    const auto options = torture::read_options(argc, argv);
    if (!options) return 2;
    std::signal(SIGPIPE, SIG_IGN);
    return torture::torture(*options);
}
