#include "tests/torture/chain.h"

#include <algorithm>
#include <fcntl.h>
#include <fstream>
#include <sys/stat.h>
#include <utility>

#include "tests/torture/child_words.h"

namespace roundwright::torture {
namespace fs = std::filesystem;
namespace {

constexpr double most_seconds_lost = 1.0;
constexpr double seconds_to_open = 30;
constexpr std::int64_t at_once_ns = 500'000'000;

std::string canonical(const std::string& path) { return Harbour::target_of(path).string(); }

bool is_toy_name(const fs::path& path) {
    const std::string name = path.filename().string();
    return name.ends_with(".roundwright") && !name.starts_with('.') && name != "broken.roundwright" &&
           !fs::is_symlink(path);
}

}  // namespace

Chain::Chain(ChainWishes wishes, Figures& figures)
    : wishes_(std::move(wishes)),
      figures_(figures),
      random_(wishes_.seed),
      harbour_(wishes_.folder, wishes_.small_disks, wishes_.seed) {
    for (const char* name : {"pup", "fin"})
        on_disk_[canonical(harbour_.toy(name).string())] = {Harbour::toy_in(harbour_.toy(name))};
    if (wishes_.on_a_display) display_.start();
}

void Chain::run(const std::function<bool()>& may_go_on) {
    for (life_ = 1; life_ <= wishes_.lives && may_go_on(); ++life_) {
        if (!live()) return;
    }
}

bool Chain::has_way(const std::string& name) {
    return std::ranges::any_of(ways(), [&](const Way& way) { return way.name == name; });
}

// --- one life

const Chain::Way* Chain::any_way() {
    std::vector<const Way*> possible;
    for (const Way& way : ways()) {
        if (!wishes_.only.empty() && !wishes_.only.contains(way.name)) continue;
        if (way.needs_small_disks && !harbour_.has_small_disks()) continue;
        if (way.needs_display && !display_.is_there()) continue;
        possible.insert(possible.end(), static_cast<std::size_t>(way.weight), &way);
    }
    return possible.empty()
               ? nullptr
               : possible[static_cast<std::size_t>(pick(0, static_cast<int>(possible.size()) - 1))];
}

bool Chain::live() {
    const Way* way = any_way();
    if (way == nullptr) return false;
    blow_ = way->name;
    journals_.clear();
    if (one_in(4)) let_clocks_jump();
    if (!way->opens_itself) {
        window_ = open(any_arguments());
        if (!window_->life.listen(seconds_to_open, "settled")) {
            fault(Fault::hung, "the window did not open: " + window_->life.end_words());
            return false;
        }
        judge();
    }
    (this->*way->blow)();
    if (window_ && !window_->life.is_over()) die();
    if (window_ && window_->settled) {
        owed_ = window_->memory;
        owed_blow_ = blow_;
    }
    inspect();
    remember_toys();
    if (window_) journal_before_ = window_->journal;
    state_folder_ = harbour_.state_folder_words();
    window_.reset();
    second_.reset();
    figures_.end(blow_);
    return true;
}

std::unique_ptr<Window> Chain::open(const std::vector<std::string>& arguments, const std::string& answers,
                                    bool rests) {
    Start start;
    start.arguments = arguments;
    start.environment = harbour_.environment();
    const auto set = [&](const char* name, const std::string& value) {
        start.environment.push_back(std::string(name) + '=' + value);
    };
    set(seed_variable, std::to_string(random_()));
    set(pauses_variable,
        std::to_string(wishes_.shortest_pause_ms) + '-' + std::to_string(wishes_.longest_pause_ms));
    set(toys_variable, harbour_.toys().string());
    if (!answers.empty()) set(answers_variable, answers);
    if (rests) set(rests_variable, "1");
    if (display_.is_there()) set("DISPLAY", display_.name());
    set("QT_QPA_PLATFORM", display_.is_there() ? "xcb" : "offscreen");
    start.folder = harbour_.toys().string();
    start.said = (harbour_.root() / "said").string();
    return std::make_unique<Window>(start, wishes_.disk);
}

/// A toy that was left with changes is opened by its name or found by the program itself, any other by name.
std::vector<std::string> Chain::any_arguments() {
    if (owed_.empty()) return {any_name_of(harbour_.toy().string())};
    const Moment& last = owed_.last();
    if (last.path.empty() || !fs::exists(last.path)) return {};
    // What stood in the line when the window was closed comes back where the program begins by itself.
    if (owed_blow_ == "quit" && !last.work.typed.empty()) return {};
    if (last.owes() && one_in(2)) return {};
    return {any_name_of(last.path)};
}

std::string Chain::any_name_of(const std::string& path) {
    const std::string name = fs::path(path).filename().string();
    const std::string whole = canonical(path);
    if (whole == canonical(harbour_.toy().string()) && one_in(3))
        return (harbour_.toys() / "by-a-link.roundwright").string();
    return one_in(2) ? name : path;
}

void Chain::let_clocks_jump() {
    const std::time_t day = one_in(2) ? 86'400 : -86'400;
    std::vector<fs::path> files{owed_.empty() || owed_.last().path.empty() ? harbour_.toy().string()
                                                                           : owed_.last().path};
    if (one_in(2)) files.clear();
    std::error_code ignored;
    for (const auto& entry : fs::recursive_directory_iterator(harbour_.state(), ignored))
        if (files.empty() || one_in(2)) files.push_back(entry.path());
    for (const auto& name : files) {
        const fs::path file = canonical(name.string());
        struct ::stat found {};
        if (::stat(file.c_str(), &found) != 0) continue;
        const std::timespec times[2] = {{found.st_atim.tv_sec, 0}, {found.st_mtim.tv_sec + day, 0}};
        ::utimensat(AT_FDCWD, file.c_str(), times, AT_SYMLINK_NOFOLLOW);
    }
}

// --- what is looked at

void Chain::fault(const std::string& blow, Fault kind, const std::string& what) {
    const std::string replay =
        "--chains 1 --seed " + std::to_string(wishes_.seed) + ", life " + std::to_string(life_);
    figures_.fault(blow, kind, what, replay);
    keep_journal(std::string(words(kind)) + ", " + blow + ": " + what);
}

void Chain::keep_journal(const std::string& what) const {
    fs::create_directories(wishes_.faults);
    const auto name = std::to_string(wishes_.seed) + "-" + std::to_string(life_) + ".txt";
    std::ofstream out(wishes_.faults / name, std::ios::app);
    out << what << "\n--- the life before, ended by " << owed_blow_ << " at " << end_ns_ << "\n"
        << journal_before_ << "--- then in the state folder\n"
        << state_folder_ << "--- this life\n"
        << (window_ ? window_->journal : journals_) << (second_ ? "--- second\n" + second_->journal : "")
        << "--- on the terminal\n"
        << std::ifstream(harbour_.root() / "said").rdbuf() << '\n';
}

/// What the new window holds, against what the one before it held.
void Chain::judge() {
    const auto hindered = std::exchange(hindered_, std::nullopt);
    if (owed_.empty() || owed_.is_given_up()) return;
    const Moment& last = owed_.last();
    if (!last.owes() && last.path.empty()) return;
    if (window_->offered > 0 && !owed_.owed_within(1.5, end_ns_))
        fault(owed_blow_, Fault::offered_for_nothing, "nothing was newer than the file");
    // What is lost where nothing could be kept is nobody's fault, but is to be said.
    const double with_hindrance = loss_of_the_last().seconds;
    if (hindered && with_hindrance > 2.2 && !hindrance_said_)
        fault(owed_blow_, Fault::silent,
              "nothing could be kept for " + std::to_string(with_hindrance) + " s");
    if (hindered) owed_.excuse(hindered->first, hindered->second);
    const Loss loss = loss_of_the_last();
    const double by_the_clock = owed_.loss_by_the_clock(window_->found.work, end_ns_).seconds;
    figures_.came_back(owed_blow_, loss.seconds, by_the_clock, loss.keys, window_->offered > 0);
    if (loss.seconds <= most_seconds_lost) return;
    fault(owed_blow_, Fault::lost,
          std::to_string(loss.seconds) + " s, " + std::to_string(loss.keys) + " keys" +
              (window_->offered > 0 ? "" : ", nothing offered"));
}

Loss Chain::loss_of_the_last() {
    const Work& found = window_->found.work;
    Moment shown = window_->found;
    Moment owed = owed_.last();
    for (Moment* moment : {&shown, &owed})
        if (!moment->path.empty()) moment->path = canonical(moment->path);
    if (stands_for(shown, owed, window_->offered > 0)) {
        const Loss loss = owed_.loss(found, end_ns_);
        if (loss.known) return loss;
    }
    // Where nothing came back another toy is open, or a new one.
    if (window_->offered > 0 && !known_toys_.contains(found.toy))
        fault(owed_blow_, Fault::never_there, found.toy + " “" + found.typed + "”");
    // What was saved at the last moment is not offered, and the program did not know to open it.
    const Loss in_the_file = owed_.loss({Harbour::toy_in(owed_.last().path), {}}, end_ns_);
    return in_the_file.known ? in_the_file : owed_.whole_loss(end_ns_);
}

/// In the order of time. What came at nearly the same time, from two sides, may have come in either order.
void Chain::take_note_of_saves(const std::vector<const Window*>& windows) {
    std::vector<Saved> all;
    for (const Theirs& theirs : theirs_) all.push_back(theirs.saved);
    const bool from_two_sides = windows.size() > 1 || !all.empty();
    for (const Window* window : windows) all.insert(all.end(), window->saved.begin(), window->saved.end());
    std::ranges::sort(all, {}, &Saved::ns);
    std::map<std::string, std::int64_t> last;
    for (const Saved& saved : all) {
        const std::string path = canonical(saved.path);
        const auto before = last.find(path);
        const bool at_once = from_two_sides && before != last.end() && saved.ns - before->second < at_once_ns;
        if (!at_once) on_disk_[path].clear();
        on_disk_[path].insert(saved.toy);
        last[path] = saved.ns;
    }
    if (windows.size() < 2) return;
    for (const Window* window : windows) {
        for (const auto& toy : window->toys_in_flight())
            for (auto& [path, expected] : on_disk_) expected.insert(toy);
    }
}

/// A copy that nobody asked for stays, and may come back in any life after this one.
void Chain::remember_toys() {
    for (const Window* window : {window_.get(), second_.get()}) {
        if (window == nullptr) continue;
        for (const Moment& moment : window->memory.moments()) known_toys_.insert(moment.work.toy);
    }
}

void Chain::look_for_crash(const Window& window, const std::string& which) {
    if (window.life.crashed()) fault(Fault::crashed, which + window.life.end_words());
}

void Chain::inspect() {
    if (window_) {
        look_for_crash(*window_);
        take_note_of_saves({window_.get()});
    }
    theirs_.clear();
    inspect_toys();
    for (const auto& words : harbour_.touched()) fault(Fault::foreign, words);
    for (const auto& name : harbour_.left_beside()) {
        if (name.find("kept") == std::string::npos && ++beside_[name] < 3)
            continue;  // half written at a kill
        if (reported_.insert(name).second) fault(Fault::left_beside, name);
    }
    for (const auto& name : harbour_.readable_by_others()) {
        if (reported_.insert("readable").second) fault(Fault::readable, name);
    }
}

/// Each file holds the toy that was saved last or, where a save was cut off, the one that was being saved.
void Chain::inspect_toys() {
    const auto in_flight = window_ ? window_->toys_in_flight() : std::vector<std::string>();
    for (const auto& entry : fs::directory_iterator(harbour_.toys())) {
        if (!is_toy_name(entry.path())) continue;
        const std::string path = canonical(entry.path().string());
        const std::string toy = Harbour::toy_in(entry.path());
        auto& expected = on_disk_[path];
        const bool fine = expected.contains(toy) || std::ranges::find(in_flight, toy) != in_flight.end();
        if (!fine) fault(Fault::torn, entry.path().filename().string() + " holds " + toy);
        expected = {toy};
        known_toys_.insert(toy);
    }
    for (auto& [path, expected] : on_disk_) {
        if (fs::exists(path) || expected.contains("missing")) continue;
        fault(Fault::torn, path + " is gone");
        expected = {"missing"};
    }
}

/// Starts the program until it offers nothing any more, and gives what came back.
std::vector<Work> Chain::bring_everything_back() {
    std::vector<Work> found;
    for (int more = 0; more < 6; ++more) {
        const auto window = open({}, "bring>bring;don't>don't", true);
        if (!window->life.listen(seconds_to_open, "settled")) {
            fault(Fault::hung, "the window did not open: " + window->life.end_words());
            break;
        }
        if (window->offered == 0) break;
        found.push_back(window->found.work);
        window->life.command("close");
        if (!window->life.wait_for_end(8))
            fault(Fault::hung, "did not close after the copy was brought back");
    }
    return found;
}

/// What several windows left, whose copies come back one after the other.
void Chain::judge_all(const std::vector<std::pair<const Memory*, std::int64_t>>& owed) {
    const auto found = bring_everything_back();
    for (const auto& [memory, end_ns] : owed) {
        if (memory->empty() || memory->is_given_up() || !memory->last().owes()) continue;
        Loss least = memory->whole_loss(end_ns);
        for (const Work& work : found) {
            const Loss loss = memory->loss(work, end_ns);
            if (loss.known && loss.seconds < least.seconds) least = loss;
        }
        figures_.came_back(blow_, least.seconds, least.seconds, least.keys, !found.empty());
        if (least.seconds > most_seconds_lost) {
            fault(Fault::lost, std::to_string(least.seconds) + " s, " + std::to_string(least.keys) +
                                   " keys, of " + std::to_string(owed.size()) + " copies " +
                                   std::to_string(found.size()) + " came back");
        }
    }
}

void Chain::look_for_overwriting(const Window& one, const Window& other) {
    for (const Saved& saved : one.saved) {
        for (const Saved& theirs : other.saved) {
            if (canonical(theirs.path) != canonical(saved.path) || theirs.toy == saved.toy) continue;
            if (theirs.ns > saved.ns || theirs.ns < one.knows_since(saved)) continue;
            if (!one.has_said(theirs.ns, words_of_change()))
                fault(Fault::overwritten, "the toy that another window had saved");
        }
    }
}

/// What another program had put there, and the window has not read since, was replaced.
void Chain::look_for_overwritten_theirs(const Window& window) {
    for (const Theirs& theirs : theirs_) {
        const bool is_replaced = std::ranges::any_of(window.saved, [&](const Saved& saved) {
            return saved.ns > theirs.saved.ns && canonical(saved.path) == theirs.saved.path &&
                   saved.toy != theirs.saved.toy && window.knows_since(saved) < theirs.saved.ns;
        });
        if (theirs.is_toy && is_replaced && Harbour::toy_in(theirs.saved.path) != theirs.saved.toy &&
            !window.has_said(theirs.saved.ns, words_of_change()))
            fault(Fault::overwritten, "the toy that another program had put there");
    }
}

const std::vector<std::string>& Chain::words_of_change() {
    static const std::vector<std::string> words{"chang",  "another", "other", "gone",  "no longer",
                                                "replac", "remov",   "mine",  "theirs"};
    return words;
}

const std::vector<std::string>& Chain::words_of_trouble() {
    static const std::vector<std::string> words{"disk", "room",  "full",  "keep",  "kept",       "could not",
                                                "read", "right", "space", "write", "permission", "folder"};
    return words;
}

}  // namespace roundwright::torture
