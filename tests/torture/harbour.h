#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace roundwright::torture {

/// Whether this process may mount small disks of its own (root, or a user with namespaces of their own). Must
/// be asked before the first thread starts; mounts are then seen by this process and its children alone.
[[nodiscard]] bool may_mount();

/// A folder with everything that one maker has: toys, a home with settings and the state folder, and things
/// that are none of the program's business.
class Harbour {
  public:
    /// `small_disks`: toys and state lie on disks of 1 MiB of their own.
    Harbour(std::filesystem::path root, bool small_disks, std::uint32_t seed);
    ~Harbour();
    Harbour(const Harbour&) = delete;
    Harbour& operator=(const Harbour&) = delete;

    [[nodiscard]] const std::filesystem::path& root() const { return root_; }
    [[nodiscard]] std::filesystem::path toys() const { return root_ / "toys"; }
    [[nodiscard]] std::filesystem::path state() const { return root_ / "state"; }
    [[nodiscard]] std::filesystem::path strangers() const { return root_ / "strangers"; }
    [[nodiscard]] std::filesystem::path toy(const std::string& name = "pup") const {
        return toys() / (name + ".roundwright");
    }
    [[nodiscard]] bool has_small_disks() const { return small_disks_; }
    /// NAME=value for a window that lives here.
    [[nodiscard]] std::vector<std::string> environment() const;

    /// Fills a disk up to the last `left` bytes, and makes room again.
    void fill(const std::filesystem::path& folder, std::uint64_t left) const;
    void make_room(const std::filesystem::path& folder) const;

    /// Makes the folder where kept copies go a link to a stranger's.
    void plant_link_as_state_folder() const;
    void take_link_away() const;
    /// Takes the folder of toys away, as when its disk or the network goes, and brings it back.
    void take_toys_away() const;
    void bring_toys_back() const;
    [[nodiscard]] bool has_toys() const;

    /// What the program has touched since the last look of what is not its own, in words; empty: nothing.
    [[nodiscard]] std::vector<std::string> touched();
    /// What lies beside the toys that nobody put there, toys excepted.
    [[nodiscard]] std::vector<std::string> left_beside() const;
    /// What in the program's own state folder others than its owner may read or enter.
    [[nodiscard]] std::vector<std::string> readable_by_others() const;
    /// What lies in the state folder, a line a file, with the first of what is in it.
    [[nodiscard]] std::string state_folder_words() const;
    /// The file that a path leads to, whether it is there or not.
    [[nodiscard]] static std::filesystem::path target_of(const std::filesystem::path& path);
    /// Hash of the toy in a file, written anew; "missing", "folder", or "torn" if it cannot be read as one.
    [[nodiscard]] static std::string toy_in(const std::filesystem::path& file);
    /// Whether that is a hash.
    [[nodiscard]] static bool is_toy(const std::string& found) {
        return found != "missing" && found != "folder" && found != "torn";
    }

  private:
    void lay_out();
    [[nodiscard]] std::map<std::string, std::string> look_at_strangers() const;

    std::filesystem::path root_;
    bool small_disks_;
    std::uint32_t seed_;
    std::map<std::string, std::string> strangers_;
};

/// A whole toy as a file holds it, with the counts of its first rounds varied by `number`.
[[nodiscard]] std::string toy_text(int number);

}  // namespace roundwright::torture
