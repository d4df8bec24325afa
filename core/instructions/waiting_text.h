#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/instructions/headings.h"
#include "core/instructions/pattern_lines.h"

namespace roundwright {

/// Lines of text since the last round. What they are is known when the next round comes: the title, the name
/// of the piece to come, or notes of the one before.
class WaitingText {
  public:
    /// `first`: nothing but text stands before it in the pattern.
    void add(const PatternLine& line, bool after_blank, bool first);

    bool empty() const { return lines_.empty(); }
    std::size_t size() const { return lines_.size(); }
    /// Under a heading such as "Materials": what looks like stitches is none there.
    bool in_section() const { return in_section_; }
    void end_section() { in_section_ = false; }

    /// The line that names the piece to come: the surest heading, the last of equals. `size()` when there is
    /// none.
    [[nodiscard]] std::size_t heading_at() const;

    /// A title of the whole pattern: its first heading, when another one names the piece.
    struct Title {
        const PatternLine* line = nullptr;
        std::string name;
    };
    [[nodiscard]] std::optional<Title> take_title();

    /// Takes the heading lines off the front of what is left: the piece's name and how many to make.
    struct Name {
        std::string name;
        std::optional<int> make;
        struct Heading {
            const PatternLine* line = nullptr;
            std::string name;
        };
        std::vector<Heading> headings;
    };
    [[nodiscard]] Name take_name();

    /// Takes the first `count` lines.
    [[nodiscard]] std::vector<const PatternLine*> take(std::size_t count);

  private:
    struct Line {
        const PatternLine* line = nullptr;
        std::optional<Heading> heading;
        int weight = 0;  // how surely it is a heading
    };

    static bool could_name(const Line& line);
    void weigh(Line& line, bool set_off);

    std::vector<Line> lines_;
    bool in_section_ = false;
};

}  // namespace roundwright
