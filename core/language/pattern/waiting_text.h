#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/language/pattern/headings.h"
#include "core/language/pattern/pattern_lines.h"

namespace roundwright {

/// How surely a line is a heading.
enum HeadingWeight : int {
    few_words = 1,       ///< and no more than that
    set_off = 2,         ///< by a blank line before it
    marked_heading = 3,  ///< by a sign or a line under it
    piece_heading = 4,   ///< names a piece and nothing else: "Legs (make 2)", "Piece: Wing"
};

/// A line of text that waits to be taken for something.
struct WaitingLine {
    const PatternLine* line = nullptr;
    std::optional<Heading> heading;
    int weight = 0;  ///< how surely it is a heading, `HeadingWeight`
    Section section = Section::none;
    bool after_blank = false;
    bool told = false;  ///< a diagnostic has named it already
};

/// Lines of text since the last round. What they are is known when the next round comes: the title, the name
/// of the piece to come, or notes of the one before.
class WaitingText {
  public:
    /// `first`: nothing but text stands before it in the pattern. `told`: a diagnostic has named the line.
    void add(const PatternLine& line, bool after_blank, bool first, bool told = false);

    bool empty() const { return lines_.empty(); }
    std::size_t size() const { return lines_.size(); }
    /// Under a heading such as "Materials": what looks like stitches is none there.
    bool in_section() const { return section_ != Section::none; }
    Section section() const { return section_; }
    /// Under "## Rounds" the heading of a lower level is a piece's name, whatever it looks like; so is the
    /// title at the very top.
    bool only_a_name(const PatternLine& line, bool first) const {
        return (rounds_level_ > 0 && line.heading_level > rounds_level_) ||
               (line.heading_level == 1 && first && lines_.empty());
    }
    void end_section() { section_ = Section::none; }

    /// The line that names the piece to come: the surest heading, the last of equals. `size()` when there is
    /// none.
    [[nodiscard]] std::size_t heading_at() const { return std::min(heading_at_, lines_.size()); }
    /// How surely that one names a piece; 0: there is none.
    [[nodiscard]] int heading_weight() const;

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
    [[nodiscard]] std::vector<WaitingLine> take(std::size_t count);

  private:
    static constexpr auto none = static_cast<std::size_t>(-1);

    static bool could_name(const WaitingLine& line);
    void weigh(WaitingLine& line, bool set_off_by_blank);
    void weigh_heading(std::size_t at);
    void find_heading();

    std::vector<WaitingLine> lines_;
    std::size_t heading_at_ = none;
    Section section_ = Section::none;
    bool section_is_marked_ = false;  // then only a marked heading, or a round, ends it
    int rounds_level_ = 0;            // of the marked heading over all the pieces; 0: there is none
};

/// Of a heading that says how many to make.
[[nodiscard]] int made(const Heading& heading);

}  // namespace roundwright
