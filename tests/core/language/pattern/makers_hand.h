#pragma once

#include <array>
#include <random>
#include <string>
#include <vector>

#include "core/language/pattern/written_rounds.h"
#include "core/language/round/write.h"
#include "core/rounds/piece_graph.h"

namespace roundwright::testing {

/// Writes a piece as one of many makers does: labels, ranges, repeats and counts in her own way. The ways are
/// common practice of the trade.
class MakersHand {
  public:
    static constexpr int labels = 24;

    MakersHand(int label, unsigned seed) : label_(label % labels), engine_(seed) {
        repeat_ = between(0, 5);
        count_ = between(0, 9);
        joins_ranges_ = between(0, 3) > 0;
    }

    /// One line for each entry; `rounds`: how many rounds it stands for.
    struct Line {
        int first = 0;  ///< from 0
        int rounds = 1;
        std::string words;
        int stitches = 0;
    };

    std::vector<Line> lines_of(const Piece& piece, Terms terms) const {
        std::vector<int> breaks;
        const PieceGraph graph = piece_graph(piece);
        for (int round = 0; !joins_ranges_ && round < static_cast<int>(piece.rounds.size()); ++round)
            breaks.push_back(round);
        std::vector<Line> lines;
        for (const WrittenRounds& one : written_rounds(piece, graph, terms, breaks))
            lines.push_back({one.first, one.rounds(), in_this_hand(one.words), one.stitches});
        return lines;
    }

    std::string written(const Line& line) const {
        return label(line.first + 1, line.first + line.rounds) + line.words + count(line.stitches) + "\n";
    }

    int between(int least, int most) { return std::uniform_int_distribution<int>(least, most)(engine_); }

  private:
    std::string label(int first, int last) const {
        const std::string a = std::to_string(first), b = std::to_string(last);
        const bool range = last > first;
        const auto with = [&](const std::string& before, const std::string& joint, const std::string& after) {
            return before + a + (range ? joint + b : "") + after;
        };
        switch (label_) {
            case 0:
                return with(range ? "Rnds " : "Rnd ", "-", ": ");
            case 1:
                return with("R", "-", ": ");
            case 2:
                return with("R", "-R", ": ");
            case 3:
                return with("Rd ", " - ", "; ");
            case 4:
                return with("Round ", " to ", ": ");
            case 5:
                return with("Row ", "-", ": ");
            case 6:
                return with("", "-", ". ");
            case 7:
                return with("", "-", ") ");
            case 8:
                return with("", "-", " | ");
            case 9:
                return range ? with("Rnds ", " through ", ": ") : ordinal(first) + " rnd: ";
            case 10:
                return with("R ", "- R ", "- ");
            case 11:
                return with("**Rnd ", "-", ":** ");
            case 12:
                return with("Rnd ", " to Rnd ",
                            range ? " (" + std::to_string(last - first + 1) + " rounds): " : ": ");
            case 13:
                return with("", "-", range ? " rows: " : " row: ");
            case 14:
                return with("ROUND ", "-", " - ");
            case 15:
                return with("Rnd", "-", ". ");
            case 16:
                return with("\xE2\x80\xA2 R", "-", ": ");
            case 17:
                return with("[", "-", "] ");
            case 18:
                return with("Round #", " - #", ": ");
            case 19:
                return with("(Rnd ", "-", ") ");
            case 20:
                return with("R", "~", "= ");
            case 21:
                return with("| ", "-", " | ");
            case 22:
                return with("", "-", "\t");
            default:
                return with("R", "..", " \xE2\x86\x92 ");
        }
    }

    static std::string ordinal(int number) {
        const int ones = number % 100 / 10 == 1 ? 0 : number % 10;
        return std::to_string(number) + (ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th");
    }

    std::string count(int stitches) const {
        const std::string n = std::to_string(stitches);
        static constexpr std::array<std::array<const char*, 2>, 10> ways{{{" (", ")"},
                                                                          {" [", "]"},
                                                                          {" (", " sts)"},
                                                                          {" - ", " sts"},
                                                                          {" = ", ""},
                                                                          {". (", " sts made.)"},
                                                                          {" (total: ", ")"},
                                                                          {" | ", ""},
                                                                          {" <", ">"},
                                                                          {" \xE2\x86\x92 ", " sts"}}};
        const auto& way = ways.at(static_cast<std::size_t>(count_));
        return way[0] + n + way[1];
    }

    // "[A] x n" as this maker repeats.
    std::string in_this_hand(const std::string& words) const {
        static constexpr std::array<std::array<const char*, 3>, 6> ways{{{"[", "] x ", ""},
                                                                         {"(", ") x ", ""},
                                                                         {"(", ")*", ""},
                                                                         {"(", ") ", " times"},
                                                                         {"{", "} x", ""},
                                                                         {"[", "] ", "x"}}};
        const auto& way = ways.at(static_cast<std::size_t>(repeat_));
        std::string said;
        for (std::size_t at = 0; at < words.size(); ++at) {
            if (words[at] == '[') {
                said += way[0];
            } else if (words.compare(at, 4, "] x ") == 0) {
                std::size_t end = at + 4;
                while (end < words.size() && words[end] >= '0' && words[end] <= '9') ++end;
                said += way[1] + words.substr(at + 4, end - at - 4) + way[2];
                at = end - 1;
            } else {
                said += words[at];
            }
        }
        return said;
    }

    int label_;
    int repeat_ = 0;
    int count_ = 0;
    bool joins_ranges_ = true;
    std::mt19937 engine_;
};

}  // namespace roundwright::testing
