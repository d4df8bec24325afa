#include <algorithm>
#include <fcntl.h>
#include <fstream>
#include <sys/stat.h>
#include <utility>

#include "app/files/display_gone.h"
#include "tests/torture/chain.h"

// The ways in which a window ends.
namespace roundwright::torture {
namespace fs = std::filesystem;
namespace {

void put(const fs::path& file, const std::string& text) { std::ofstream(file, std::ios::binary) << text; }

}  // namespace

const std::vector<Chain::Way>& Chain::ways() {
    static const std::vector<Way> all{
        {.name = "kill", .weight = 30, .blow = &Chain::kill},
        {.name = "kill-at-start", .weight = 8, .blow = &Chain::kill_at_start, .opens_itself = true},
        {.name = "kill-in-save", .weight = 10, .blow = &Chain::kill_while_saving},
        {.name = "kill-in-open", .weight = 6, .blow = &Chain::kill_while_opening},
        {.name = "kill-stopped", .weight = 5, .blow = &Chain::kill_while_stopped},
        {.name = "term", .weight = 4, .blow = &Chain::terminate},
        {.name = "hang-up", .weight = 2, .blow = &Chain::hang_up},
        {.name = "quit", .weight = 5, .blow = &Chain::quit},
        {.name = "full-state", .weight = 6, .blow = &Chain::fill_state, .needs_small_disks = true},
        {.name = "full-toys", .weight = 5, .blow = &Chain::fill_toys, .needs_small_disks = true},
        {.name = "full-both", .weight = 4, .blow = &Chain::fill_both, .needs_small_disks = true},
        {.name = "read-only", .weight = 7, .blow = &Chain::make_read_only},
        {.name = "changed", .weight = 9, .blow = &Chain::change_on_disk},
        {.name = "two-windows", .weight = 7, .blow = &Chain::second_window},
        {.name = "later", .weight = 5, .blow = &Chain::put_off, .opens_itself = true},
        {.name = "planted-link", .weight = 3, .blow = &Chain::plant_links},
        {.name = "display-gone", .weight = 6, .blow = &Chain::take_display_away, .needs_display = true},
        {.name = "several", .weight = 12, .blow = &Chain::several}};
    return all;
}

/// The maker types; now and then the whole process stands still, as on a machine that is out of memory.
void Chain::type_for(double length) {
    while (!window_->life.is_over() && length > 0) {
        const double part = std::min(seconds(0.1, 1.2), length);
        window_->life.listen(part);
        length -= part;
        if (length <= 0 || !one_in(5)) continue;
        const std::int64_t stopped = now_ns();
        window_->life.signal(SIGSTOP);
        window_->life.listen(seconds(0.05, 0.8));
        window_->life.signal(SIGCONT);
        window_->memory.excuse(stopped, now_ns());
    }
}

void Chain::die() { end_ns_ = window_->kill(); }

void Chain::kill() {
    type_for(one_in(8) ? seconds(3.0, 8.0) : seconds(0.1, 3.0));
    die();
}

/// Before or just after the window is there, while a copy may be on its way from one window to the next.
void Chain::kill_at_start() {
    window_ = open(any_arguments());
    window_->life.listen(seconds(0.1, 1.5), "settled");
    const std::int64_t before = end_ns_;
    if (window_->settled) {
        judge();
        window_->life.listen(seconds(0, 0.1));
    }
    display_.is_there() && one_in(4) ? lose_display() : die();
    if (!window_->settled) end_ns_ = before;
}

void Chain::kill_while_saving() {
    type_for(seconds(0.1, 1.5));
    window_->life.command(one_in(3) ? "save as " + harbour_.toy("pup-" + std::to_string(pick(1, 3))).string()
                                    : "save");
    window_->life.listen(3, "saving");
    window_->life.listen(seconds(0, 0.03));
    die();
}

/// From one toy to another, with whatever is asked on the way.
void Chain::kill_while_opening() {
    type_for(seconds(0.1, 1.5));
    const char* names[] = {"pup", "fin", "broken"};
    window_->life.command("open " + harbour_.toy(names[pick(0, 2)]).string());
    window_->life.listen(3, "asked");
    window_->life.listen(seconds(0, 0.6));
    die();
}

void Chain::kill_while_stopped() {
    type_for(seconds(0.1, 2.0));
    const std::int64_t stopped = now_ns();
    window_->life.signal(SIGSTOP);
    window_->life.listen(seconds(0.5, 2.0));
    die();
    window_->memory.excuse(stopped, end_ns_);
}

void Chain::end_by(int signal_number) {
    type_for(seconds(0.1, 2.0));
    end_ns_ = now_ns();
    window_->life.signal(signal_number);
    if (window_->life.wait_for_end(15)) return;
    fault(Fault::hung, "still there fifteen seconds after signal " + std::to_string(signal_number));
    window_->kill();
}

void Chain::terminate() { end_by(SIGTERM); }
void Chain::hang_up() { end_by(SIGHUP); }

void Chain::quit() {
    type_for(seconds(0.1, 2.0));
    const std::int64_t from = now_ns();
    window_->life.command(one_in(2) ? "answer don't save" : "answer don't don't");
    window_->life.command("rest");
    window_->life.command("close");
    const bool ended = window_->life.wait_for_end(15);
    end_ns_ = now_ns();
    if (!ended && !window_->has_said(from)) fault(Fault::hung, "neither closed nor said why not");
}

// --- no room, no right

/// Types on while nothing can be kept; in half of the cases that ends before the window does.
void Chain::hinder(const std::function<void()>& begin, const std::function<void()>& end) {
    const std::int64_t from = now_ns();
    begin();
    type_for(seconds(2.0, 3.5));
    hindrance_said_ = window_->has_said(from, words_of_trouble());
    std::int64_t to = 0;
    if (one_in(2)) {
        end();
        to = now_ns() + 3'500'000'000;  // until it is tried again
        type_for(seconds(1.0, 6.0));
    }
    die();
    hindered_ = {from, to == 0 ? end_ns_ : to};
    end();
}

void Chain::fill_state() {
    hinder([this] { harbour_.fill(harbour_.state(), static_cast<std::uint64_t>(pick(0, 9000))); },
           [this] { harbour_.make_room(harbour_.state()); });
}

void Chain::fill_toys() {
    type_for(seconds(0.1, 1.0));
    harbour_.fill(harbour_.toys(), static_cast<std::uint64_t>(pick(0, 9000)));
    save_and_look("with no room");
    harbour_.make_room(harbour_.toys());
    if (one_in(2)) save_and_look("with room again");
    type_for(seconds(0, 1.0));
    die();
}

void Chain::fill_both() {
    hinder(
        [this] {
            harbour_.fill(harbour_.state(), static_cast<std::uint64_t>(pick(0, 9000)));
            harbour_.fill(harbour_.toys(), static_cast<std::uint64_t>(pick(0, 9000)));
            save_and_look("with no room");
        },
        [this] {
            harbour_.make_room(harbour_.state());
            harbour_.make_room(harbour_.toys());
        });
}

void Chain::make_read_only() {
    const std::string path = window_->found.path.empty() ? harbour_.toy().string() : window_->found.path;
    const int which = pick(1, 4);
    const auto rights = [&](bool may_write) {
        const mode_t more = may_write ? 0200 : 0;
        if (which == 1 || which == 3) ::chmod(harbour_.toys().c_str(), 0555 | more);
        if (which == 2 || which == 3) ::chmod(path.c_str(), 0444 | more);
        if (which == 4) ::chmod((harbour_.state() / "roundwright").c_str(), 0500 | more);
        if (which == 4) ::chmod((harbour_.state() / "roundwright/kept").c_str(), 0500 | more);
    };
    if (which == 4) return hinder([&] { rights(false); }, [&] { rights(true); });
    type_for(seconds(0.1, 1.0));
    rights(false);
    save_and_look("without the right to");
    type_for(seconds(0, 1.0));
    die();
    rights(true);
}

/// Saving works, or the window says why it does not.
void Chain::save_and_look(const std::string& why) {
    const std::int64_t from = now_ns();
    const std::size_t saved = window_->saved.size();
    window_->life.command("save");
    window_->life.listen(4, "done");
    window_->life.listen(0.3);
    if (window_->life.is_over() || window_->saved.size() > saved) return;
    if (!window_->has_said(from))
        fault(Fault::silent, "saving " + why + " neither worked nor failed in words");
}

// --- others

/// Types on while another program does something to the open file, then saves.
void Chain::change_on_disk() {
    type_for(seconds(0.1, 1.5));
    if (window_->memory.last().path.empty()) return die();
    const fs::path file = Harbour::target_of(window_->memory.last().path);
    const auto how = static_cast<Change>(pick(0, 5));
    change(file, how, toy_text(pick(20, 390)));
    window_->life.listen(seconds(0, 1.0));
    window_->life.command("save");
    window_->life.listen(seconds(0.5, 2.5), "done");
    window_->life.listen(seconds(0, 1.0));
    die();
    look_for_overwritten_theirs(*window_);
    if (how == Change::folder && one_in(2)) change(file, Change::renamed_over, toy_text(pick(20, 390)));
}

/// What another program may do.
void Chain::change(const fs::path& file, Change how, const std::string& theirs) {
    const fs::path beside = file.string() + ".theirs";
    switch (how) {
        case Change::renamed_over:
            put(beside, theirs);
            if (fs::is_directory(file)) fs::remove(file);
            fs::rename(beside, file);
            break;
        case Change::written_into:
            put(file, theirs);
            break;
        case Change::deleted:
            fs::remove(file);
            break;
        case Change::folder:
            fs::remove(file);
            fs::create_directory(file);
            break;
        case Change::touched:
            ::utimensat(AT_FDCWD, file.c_str(), nullptr, 0);
            break;
        case Change::half_written:
            put(file, theirs.substr(0, theirs.size() / 2));
            break;
    }
    const std::string there = Harbour::toy_in(file);
    const bool is_toy = how == Change::renamed_over || how == Change::written_into;
    theirs_.push_back({{now_ns(), file.string(), there}, is_toy && Harbour::is_toy(there)});
}

void Chain::second_window() {
    if (window_->found.path.empty()) return kill();
    type_for(seconds(0.1, 1.0));
    open_second();
    if (!second_) return;
    type_both_for(seconds(1.0, 4.0));
    end_both([] {});
}

void Chain::open_second() {
    second_ = open({any_name_of(window_->found.path)});
    if (!second_->life.listen(30, "settled")) {
        fault(Fault::hung, "the second window did not open: " + second_->life.end_words());
        return second_.reset();
    }
    if (second_->offered > 0) fault(Fault::offered_for_nothing, "the copy of a window that is open");
}

void Chain::type_both_for(double length) {
    const std::int64_t end = now_ns() + static_cast<std::int64_t>(length * 1e9);
    while (now_ns() < end) {
        window_->life.listen(0.02);
        second_->life.listen(0.02);
    }
}

/// Both are killed, and what was in the way is taken out of it before their copies are asked for.
void Chain::end_both(const std::function<void()>& clear_the_way) {
    const std::int64_t second_end = second_->kill();
    die();
    clear_the_way();
    if (const auto hindered = std::exchange(hindered_, std::nullopt)) {
        window_->memory.excuse(hindered->first, hindered->second);
        second_->memory.excuse(hindered->first, hindered->second);
    }
    look_for_overwriting(*window_, *second_);
    look_for_overwriting(*second_, *window_);
    for (const Window* window : {window_.get(), second_.get()}) look_for_overwritten_theirs(*window);
    look_for_crash(*window_);
    look_for_crash(*second_, "the second window: ");
    take_note_of_saves({window_.get(), second_.get()});
    theirs_.clear();
    judge_all({{&window_->memory, end_ns_}, {&second_->memory, second_end}});
    journals_ = window_->journal + "--- second\n" + second_->journal;
    remember_toys();
    window_.reset();
    second_.reset();
    owed_ = {};
}

/// The offer is put off, the maker goes on, and the window ends too: both copies are owed.
void Chain::put_off() {
    if (owed_.empty() || !owed_.last().owes() || owed_.is_given_up()) return kill_at_start();
    const std::int64_t owed_end_ns = end_ns_;
    if (const auto hindered = std::exchange(hindered_, std::nullopt))
        owed_.excuse(hindered->first, hindered->second);
    window_ = open(any_arguments(), "bring>later");
    if (!window_->life.listen(30, "settled")) return fault(Fault::hung, "the window did not open");
    type_for(seconds(0.5, 2.5));
    die();
    judge_all({{&owed_, owed_end_ns}, {&window_->memory, end_ns_}});
    owed_ = {};
    take_note_of_saves({window_.get()});
    window_->settled = false;
}

void Chain::plant_links() {
    hinder([this] { harbour_.plant_link_as_state_folder(); }, [this] { harbour_.take_link_away(); });
}

void Chain::take_display_away() {
    type_for(seconds(0.1, 2.5));
    lose_display();
}

void Chain::lose_display() {
    end_ns_ = now_ns();
    display_.stop();
    if (!window_->life.wait_for_end(15)) {
        fault(Fault::hung, "still there fifteen seconds after its display went");
        window_->kill();
    } else if (!window_->life.crashed() && !window_->life.has_left_with(app::DisplayGone::exit_code)) {
        fault(Fault::crashed, "its display went, and it ended with " + window_->life.end_words());
    }
    display_.start();
}

}  // namespace roundwright::torture
