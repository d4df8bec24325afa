#include "tests/torture/harbour.h"

#include <algorithm>
#include <cerrno>
#include <fcntl.h>
#include <fstream>
#include <sched.h>
#include <sstream>
#include <sys/mount.h>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

#include "core/document/json_document.h"
#include "tests/torture/journal.h"

namespace roundwright::torture {
namespace fs = std::filesystem;
namespace {

constexpr auto ballast_name = "ballast";

std::string content_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

void put(const fs::path& file, const std::string& text, mode_t mode = 0644) {
    std::ofstream(file, std::ios::binary) << text;
    ::chmod(file.c_str(), mode);
}

void write_line(const char* path, const std::string& line) { std::ofstream(path) << line; }

Piece piece_of(const char* name, std::initializer_list<int> counts) {
    Piece piece;
    piece.name = name;
    for (const int stitches : counts) {
        Round round;
        round.working = WorkedEvenly{stitches};
        piece.rounds.push_back(round);
    }
    return piece;
}

/// Everything that a stranger's file has: rights, times, place on the disk, content.
std::string portrait(const fs::path& path) {
    struct ::stat found {};
    if (::lstat(path.c_str(), &found) != 0) return "gone";
    std::ostringstream words;
    words << std::oct << found.st_mode << std::dec << ' ' << found.st_uid << ' ' << found.st_ino << ' '
          << found.st_mtim.tv_sec << '.' << found.st_mtim.tv_nsec << ' ';
    if (S_ISLNK(found.st_mode)) words << "-> " << fs::read_symlink(path).string();
    if (S_ISREG(found.st_mode)) words << found.st_size << ' ' << hash_of(content_of(path));
    return words.str();
}

bool mount_small_disk(const fs::path& folder) {
    return ::mount("tmpfs", folder.c_str(), "tmpfs", MS_NODEV | MS_NOSUID, "size=1m,mode=0755") == 0;
}

}  // namespace

bool may_mount() {
    const uid_t user = ::getuid();
    const gid_t group = ::getgid();
    if (user != 0) {
        if (::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return false;
        write_line("/proc/self/setgroups", "deny");
        write_line("/proc/self/uid_map", std::to_string(user) + " " + std::to_string(user) + " 1");
        write_line("/proc/self/gid_map", std::to_string(group) + " " + std::to_string(group) + " 1");
    } else if (::unshare(CLONE_NEWNS) != 0) {
        return false;
    }
    return ::mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
}

std::string toy_text(int number) {
    Toy toy;
    toy.title = "Seal pup";
    toy.gauge = GivenGauge{{5, 5, 0.25, 0.25}};
    toy.yarns.push_back({});
    toy.yarns.back().name = "Fog grey";
    toy.pieces.push_back(piece_of("Head", {6, 12, 18, 24, 24 + number % 20, 24, 18, 12}));
    toy.pieces.push_back(piece_of("Fin", {6, 9, 9 + number / 20, 12}));
    return write_document(toy);
}

Harbour::Harbour(fs::path root, bool small_disks, std::uint32_t seed)
    : root_(std::move(root)), small_disks_(small_disks), seed_(seed) {
    fs::create_directories(toys());
    fs::create_directories(state());
    if (small_disks_) small_disks_ = mount_small_disk(toys()) && mount_small_disk(state());
    lay_out();
    strangers_ = look_at_strangers();
}

Harbour::~Harbour() {
    for (const auto& folder : {toys(), state()}) {
        ::chmod(folder.c_str(), 0755);
        if (small_disks_) ::umount2(folder.c_str(), MNT_DETACH);
    }
    std::error_code ignored;
    fs::remove_all(root_, ignored);
}

/// Toys, and what a program that trusts names would fall for.
void Harbour::lay_out() {
    for (const char* name : {"home", "config/roundwright", "run", "strangers/folder"})
        fs::create_directories(root_ / name);
    ::chmod((root_ / "run").c_str(), 0700);
    put(toy("pup"), toy_text(0));
    put(toy("fin"), toy_text(1));
    put(toy("broken"), toy_text(2).substr(0, 200));
    fs::create_symlink("pup.roundwright", toys() / "by-a-link.roundwright");
    put(toys() / "notes.txt", "for the harbour\n", 0640);
    put(strangers() / "letter.txt", "not yours\n", 0644);
    put(strangers() / "toy.roundwright", toy_text(399), 0644);
    // One shipped with the toy, one planted: names that an older program gave its kept copies.
    if (seed_ % 2 == 0) fs::create_symlink("../strangers/letter.txt", toys() / ".pup.roundwright.kept");
    if (seed_ % 2 == 1) put(toys() / ".pup.roundwright.kept", toy_text(398));
    fs::create_symlink("../strangers/toy.roundwright", toys() / ".fin.roundwright.kept");
    put(root_ / "config/roundwright/roundwright.conf", "[General]\nstarted-before=true\n");
}

std::vector<std::string> Harbour::environment() const {
    const auto at = [this](const char* name) { return (root_ / name).string(); };
    return {"HOME=" + at("home"),
            "XDG_CONFIG_HOME=" + at("config"),
            "XDG_STATE_HOME=" + at("state"),
            "XDG_RUNTIME_DIR=" + at("run"),
            "XDG_DATA_HOME=" + at("home/data"),
            "XDG_CACHE_HOME=" + at("home/cache"),
            "LANG=C.UTF-8",
            "PATH=/usr/bin:/bin",
            "ROUNDWRIGHT_VIEW=painter",
            "QT_LOGGING_RULES=qt.qpa.*=false",
            "DBUS_SESSION_BUS_ADDRESS=disabled:"};
}

void Harbour::fill(const fs::path& folder, std::uint64_t left) const {
    const int file = ::open((folder / ballast_name).c_str(), O_WRONLY | O_CREAT, 0600);
    const std::string block(4096, 'x');
    off_t size = 0;
    ssize_t count = 0;
    while ((count = ::write(file, block.data(), block.size())) > 0) size += count;
    while ((count = ::write(file, block.data(), 1)) > 0) size += count;
    if (left > 0 && ::ftruncate(file, std::max<off_t>(0, size - static_cast<off_t>(left))) != 0)
        ::perror("ftruncate");
    ::close(file);
}

void Harbour::make_room(const fs::path& folder) const { fs::remove(folder / ballast_name); }

void Harbour::plant_link_as_state_folder() const {
    const fs::path ours = state() / "roundwright";
    std::error_code ignored;
    fs::create_directories(ours);
    fs::rename(ours / "kept", ours / "kept-aside", ignored);
    fs::create_symlink(strangers() / "folder", ours / "kept");
}

void Harbour::take_link_away() const {
    const fs::path ours = state() / "roundwright";
    std::error_code ignored;
    if (fs::is_symlink(ours / "kept")) fs::remove(ours / "kept");
    fs::rename(ours / "kept-aside", ours / "kept", ignored);
}

void Harbour::take_toys_away() const {
    const fs::path elsewhere = root_ / "elsewhere";
    if (!small_disks_) return fs::rename(toys(), elsewhere);
    fs::create_directories(elsewhere);
    if (::mount(toys().c_str(), elsewhere.c_str(), nullptr, MS_MOVE, nullptr) != 0) ::perror("mount");
    ::chmod(toys().c_str(), 0);  // the place where it was
}

void Harbour::bring_toys_back() const {
    const fs::path elsewhere = root_ / "elsewhere";
    if (!small_disks_) return fs::rename(elsewhere, toys());
    if (::mount(elsewhere.c_str(), toys().c_str(), nullptr, MS_MOVE, nullptr) != 0) ::perror("mount");
}

bool Harbour::has_toys() const { return fs::exists(toys() / "notes.txt"); }

std::map<std::string, std::string> Harbour::look_at_strangers() const {
    std::map<std::string, std::string> portraits;
    for (const auto& entry : fs::recursive_directory_iterator(strangers()))
        portraits[entry.path().string()] = portrait(entry.path());
    for (const char* name : {"notes.txt", ".pup.roundwright.kept", ".fin.roundwright.kept",
                             "by-a-link.roundwright", "broken.roundwright"})
        portraits[(toys() / name).string()] = portrait(toys() / name);
    return portraits;
}

std::vector<std::string> Harbour::touched() {
    std::vector<std::string> words;
    auto now = look_at_strangers();
    for (const auto& [path, before] : strangers_) {
        const auto found = now.find(path);
        const std::string after = found == now.end() ? "gone" : found->second;
        if (after != before) words.push_back(path + ": " + before + " became " + after);
    }
    for (const auto& [path, after] : now)
        if (!strangers_.contains(path)) words.push_back(path + ": new, " + after);
    strangers_ = std::move(now);
    return words;
}

std::vector<std::string> Harbour::left_beside() const {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(toys())) {
        const std::string name = entry.path().filename().string();
        const bool toy = name.ends_with(".roundwright") && !name.starts_with('.');
        if (!toy && name != ballast_name && !strangers_.contains(entry.path().string()))
            names.push_back(name);
    }
    return names;
}

std::vector<std::string> Harbour::readable_by_others() const {
    std::vector<std::string> names;
    const fs::path ours = state() / "roundwright";
    if (!fs::exists(ours)) return names;
    const auto look = [&](const fs::path& path) {
        struct ::stat found {};
        if (::lstat(path.c_str(), &found) != 0 || S_ISLNK(found.st_mode)) return;
        if ((found.st_mode & 077) != 0) names.push_back(path.string());
    };
    look(ours);
    for (const auto& entry : fs::recursive_directory_iterator(ours)) look(entry.path());
    return names;
}

std::string Harbour::state_folder_words() const {
    std::ostringstream words;
    for (const auto& entry : fs::recursive_directory_iterator(state())) {
        if (!entry.is_regular_file()) continue;
        std::string start = content_of(entry.path()).substr(0, 400);
        std::ranges::replace(start, '\n', ' ');
        words << fs::relative(entry.path(), state()).string() << "  " << portrait(entry.path()) << "  "
              << start << '\n';
    }
    return words.str();
}

fs::path Harbour::target_of(const fs::path& path) {
    // Of a link to a file that is gone, weakly_canonical makes nothing else.
    return fs::weakly_canonical(fs::is_symlink(path) ? path.parent_path() / fs::read_symlink(path) : path);
}

std::string Harbour::toy_in(const fs::path& file) {
    std::error_code error;
    const auto kind = fs::status(file, error).type();
    if (kind == fs::file_type::not_found) return "missing";
    if (kind == fs::file_type::directory) return "folder";
    try {
        return hash_of(write_document(read_document(content_of(file)).toy));
    } catch (const DocumentError&) {
        return "torn";
    }
}

}  // namespace roundwright::torture
