#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "tests/torture/disk_probe.h"
#include "tests/torture/display.h"
#include "tests/torture/figures.h"
#include "tests/torture/harbour.h"
#include "tests/torture/window.h"

namespace roundwright::torture {

struct ChainWishes {
    std::uint32_t seed = 1;
    int lives = 10;
    bool on_a_display = false;  ///< else the windows are in memory
    bool small_disks = false;
    int shortest_pause_ms = 60;  ///< between two keys
    int longest_pause_ms = 200;
    std::filesystem::path folder;
    std::filesystem::path faults;  ///< folder for the journals of lives with faults
    std::set<std::string> only;    ///< ways to end; empty: all
    const DiskProbe* disk = nullptr;
};

/// A maker's week: one window after another in the same harbour, each ended by a blow, and each looked at for
/// what it brings back of the one before.
class Chain {
  public:
    Chain(ChainWishes wishes, Figures& figures);
    void run(const std::function<bool()>& may_go_on);
    [[nodiscard]] static bool has_way(const std::string& name);

  private:
    using Blow = void (Chain::*)();
    struct Way {
        const char* name;
        int weight;
        Blow blow;
        bool needs_small_disks = false;
        bool needs_display = false;
        bool opens_itself = false;  ///< else a window is open and judged when the blow comes
    };
    static const std::vector<Way>& ways();

    // One life.
    [[nodiscard]] bool live();
    [[nodiscard]] const Way* any_way();
    [[nodiscard]] std::unique_ptr<Window> open(const std::vector<std::string>& arguments,
                                               const std::string& answers = {}, bool rests = false);
    [[nodiscard]] std::vector<std::string> any_arguments();
    [[nodiscard]] std::string any_name_of(const std::string& path);
    void type_for(double seconds);
    void die();
    void end_by(int signal_number);

    // Ways to end.
    void kill();
    void kill_at_start();
    void kill_while_saving();
    void kill_while_opening();
    void kill_while_stopped();
    void terminate();
    void hang_up();
    void quit();
    void fill_state();
    void fill_toys();
    void fill_both();
    void make_read_only();
    void change_on_disk();
    void second_window();
    void put_off();
    void plant_links();
    void take_display_away();
    void lose_display();
    void several();
    enum class Change { renamed_over, written_into, deleted, folder, touched, half_written };
    void change(const std::filesystem::path& file, Change how, const std::string& theirs);
    void hinder(const std::function<void()>& begin, const std::function<void()>& end);

    // Several at once.
    /// Something that is in the way from some moment on until another.
    struct Trouble {
        std::function<void()> begin;
        std::function<void()> end;
        bool of_keeping = false;  ///< nothing can be kept; else nothing can be saved
        bool is_there = false;
    };
    /// What happens in a life, by the time at which it does, from 0 to 1.
    using Steps = std::vector<std::pair<double, std::function<void()>>>;
    [[nodiscard]] Trouble any_trouble_of_keeping();
    [[nodiscard]] Trouble any_trouble_of_saving();
    void plan_trouble(Steps& steps, Trouble& trouble);
    void plan_files(Steps& steps);
    void change_somehow();
    void open_second();
    void type_both_for(double seconds);
    void end_both(const std::function<void()>& clear_the_way);

    // What is looked at.
    void judge();
    void judge_all(const std::vector<std::pair<const Memory*, std::int64_t>>& owed);
    [[nodiscard]] Loss loss_of_the_last();
    void inspect();
    void inspect_toys();
    void save_and_look(const std::string& why);
    void look_for_overwriting(const Window& one, const Window& other);
    void look_for_overwritten_theirs(const Window& window);
    [[nodiscard]] std::vector<Work> bring_everything_back();
    void take_note_of_saves(const std::vector<const Window*>& windows);
    void remember_toys();
    void look_for_crash(const Window& window, const std::string& which = {});
    void fault(Fault kind, const std::string& what) { fault(blow_, kind, what); }
    void fault(const std::string& blow, Fault kind, const std::string& what);
    void keep_journal(const std::string& what) const;
    [[nodiscard]] static const std::vector<std::string>& words_of_change();
    [[nodiscard]] static const std::vector<std::string>& words_of_trouble();
    void let_clocks_jump();

    [[nodiscard]] int pick(int from, int to) { return std::uniform_int_distribution<int>(from, to)(random_); }
    [[nodiscard]] bool one_in(int many) { return pick(1, many) == 1; }
    [[nodiscard]] double seconds(double from, double to) {
        return std::uniform_real_distribution<double>(from, to)(random_);
    }

    ChainWishes wishes_;
    Figures& figures_;
    std::mt19937 random_;
    Harbour harbour_;
    Display display_;
    std::unique_ptr<Window> window_;
    std::unique_ptr<Window> second_;  ///< on the same file, in some lives
    std::string blow_ = "none";
    int life_ = 0;

    std::string journal_before_;  ///< of the life before this one
    std::string journals_;        ///< of this life, once its windows are gone
    std::string state_folder_;    ///< what lay in it after that life

    // What the last life owes to the next.
    Memory owed_;
    std::int64_t end_ns_ = 0;
    std::string owed_blow_;
    /// When nothing could be kept, for no room or no right, and whether the window said so.
    std::optional<std::pair<std::int64_t, std::int64_t>> hindered_;
    bool hindrance_said_ = false;
    std::map<std::string, std::set<std::string>> on_disk_;  ///< toys that each file may hold
    /// What another program has put into files in this life.
    struct Theirs {
        Saved saved;
        bool is_toy = false;  ///< of theirs, whole: to be lost by nobody
    };
    std::vector<Theirs> theirs_;
    std::set<std::string> known_toys_;
    std::map<std::string, int> beside_;  ///< what lies beside the toys, and after how many lives it still did
    std::set<std::string> reported_;
};

}  // namespace roundwright::torture
