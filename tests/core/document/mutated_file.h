#pragma once

#include <random>
#include <string>
#include <vector>

namespace roundwright::test {

/// Damages files as disks, networks, merges and careless programs do: in their bytes (flipped, cut, repeated,
/// taken from elsewhere) and in their values (swapped, left out, doubled, renamed, of another kind, huge).
class FileMutator {
  public:
    /// `files`: what values are taken from.
    FileMutator(unsigned seed, std::vector<std::string> files) : random_(seed), files_(std::move(files)) {}

    [[nodiscard]] std::string mutated(std::string text);
    [[nodiscard]] const std::string& any_file() { return files_[below(files_.size())]; }
    [[nodiscard]] std::size_t below(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_);
    }
    [[nodiscard]] std::mt19937& random() { return random_; }

  private:
    void change_bytes(std::string& text);
    void change_values(std::string& text);
    [[nodiscard]] std::string odd_value();

    std::mt19937 random_;
    std::vector<std::string> files_;
};

}  // namespace roundwright::test
