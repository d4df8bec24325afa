#include <algorithm>
#include <array>
#include <sys/stat.h>

#include "tests/torture/chain.h"

// Several troubles in one life: no room, no right, others at the file, two windows, each when it likes.
namespace roundwright::torture {
namespace fs = std::filesystem;

Chain::Trouble Chain::any_trouble_of_keeping() {
    const auto rights = [this](mode_t mode) {
        for (const char* name : {"roundwright", "roundwright/kept"})
            ::chmod((harbour_.state() / name).c_str(), mode);
    };
    Trouble possible[] = {
        {[rights] { rights(0500); }, [rights] { rights(0700); }, true},
        {[this] { harbour_.plant_link_as_state_folder(); }, [this] { harbour_.take_link_away(); }, true},
        {[this] { harbour_.fill(harbour_.state(), static_cast<std::uint64_t>(pick(0, 9000))); },
         [this] { harbour_.make_room(harbour_.state()); }, true}};
    return possible[pick(0, harbour_.has_small_disks() ? 2 : 1)];
}

Chain::Trouble Chain::any_trouble_of_saving() {
    const std::string path = window_->found.path.empty() ? harbour_.toy().string() : window_->found.path;
    const auto rights = [](std::string file, mode_t mode) {
        return [file = std::move(file), mode] { ::chmod(file.c_str(), mode); };
    };
    Trouble possible[] = {
        {rights(harbour_.toys().string(), 0555), rights(harbour_.toys().string(), 0755)},
        {rights(path, 0444), rights(path, 0644)},
        {[this] { harbour_.take_toys_away(); }, [this] { harbour_.bring_toys_back(); }},
        {[this] { harbour_.fill(harbour_.toys(), static_cast<std::uint64_t>(pick(0, 9000))); },
         [this] { harbour_.make_room(harbour_.toys()); }}};
    return possible[pick(0, harbour_.has_small_disks() ? 3 : 2)];
}

/// It begins somewhere, and ends before the window does in half of the cases.
void Chain::plan_trouble(Steps& steps, Trouble& trouble) {
    const double from = seconds(0, 0.8);
    steps.emplace_back(from, [this, &trouble] {
        if (trouble.of_keeping) hindered_ = {now_ns(), 0};
        trouble.is_there = true;
        trouble.begin();
    });
    if (one_in(2)) return;
    steps.emplace_back(seconds(from, 1), [this, &trouble] {
        trouble.is_there = false;
        trouble.end();
        if (!trouble.of_keeping) return;
        hindrance_said_ = window_->has_said(hindered_->first, words_of_trouble());
        hindered_->second = now_ns() + 3'500'000'000;  // until it is tried again
    });
}

/// What a maker does with files meanwhile.
void Chain::plan_files(Steps& steps) {
    const std::array<std::function<void()>, 4> acts{
        [this] { save_and_look("among several troubles"); },
        [this] {
            const auto name = "pup-" + std::to_string(pick(1, 3));
            window_->life.command("save as " + harbour_.toy(name).string());
        },
        [this] { window_->life.command("open " + harbour_.toy(one_in(2) ? "pup" : "fin").string()); },
        [this] { window_->life.command("undo"); }};
    for (int more = pick(1, 4); more > 0; --more)
        steps.emplace_back(seconds(0, 1), acts[static_cast<std::size_t>(pick(0, 3))]);
}

/// As far as another program can, where the disk is full.
void Chain::change_somehow() {
    if (window_->memory.last().path.empty() || !harbour_.has_toys()) return;
    const fs::path file = Harbour::target_of(window_->memory.last().path);
    try {
        change(file, static_cast<Change>(pick(0, 5)), toy_text(pick(20, 390)));
    } catch (const fs::filesystem_error&) {
        theirs_.push_back({{now_ns(), file.string(), Harbour::toy_in(file)}, false});
        std::error_code ignored;
        fs::remove(file.string() + ".theirs", ignored);
    }
}

void Chain::several() {
    Steps steps;
    Trouble of_saving = any_trouble_of_saving();
    Trouble of_keeping = any_trouble_of_keeping();
    plan_trouble(steps, of_saving);
    if (one_in(2)) plan_trouble(steps, of_keeping);
    for (int more = pick(0, 2); more > 0; --more)
        steps.emplace_back(seconds(0, 1), [this] { change_somehow(); });
    if (one_in(3) && !window_->found.path.empty())
        steps.emplace_back(seconds(0, 0.7), [this] {
            if (harbour_.has_toys()) open_second();
        });
    plan_files(steps);
    std::ranges::sort(steps, {}, &Steps::value_type::first);
    for (const auto& [time, step] : steps) {
        if (window_->life.is_over()) break;
        step();
        const double length = seconds(0, 1.0);
        second_ ? type_both_for(length) : type_for(length);
    }
    const auto clear_the_way = [&] {
        for (Trouble* trouble : {&of_saving, &of_keeping})
            if (trouble->is_there) trouble->end();
        if (!hindered_ || hindered_->second != 0) return;
        hindered_->second = end_ns_;
        hindrance_said_ = window_->has_said(hindered_->first, words_of_trouble());
    };
    if (second_) return end_both(clear_the_way);
    die();
    clear_the_way();
    look_for_overwritten_theirs(*window_);
}

}  // namespace roundwright::torture
