#include "core/language/pattern/columns.h"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <map>
#include <utility>

#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

constexpr int least_gap = 3;

int gap_before(const std::vector<Token>& tokens, std::size_t at) {
    return tokens[at].where.column - tokens[at - 1].where.column - tokens[at - 1].where.length;
}

bool begins_a_round(const std::vector<Token>& tokens, std::size_t at) {
    return at + 2 < tokens.size() && is_round_word(tokens[at].text) &&
           tokens[at + 1].kind == TokenKind::number;
}

// Where the second round of a line stands, far behind the first; 0: nowhere.
int column_of(const SourceLine& line) {
    if (!begins_a_round(line.tokens, 0)) return 0;
    for (std::size_t at = 3; at < line.tokens.size(); ++at)
        if (gap_before(line.tokens, at) >= least_gap && begins_a_round(line.tokens, at))
            return line.tokens[at].where.column;
    return 0;
}

// The column in which at least two lines of a paragraph have their second round.
int common_column(const std::vector<SourceLine>& lines, std::size_t first, std::size_t end) {
    std::map<int, int> lines_of;
    for (std::size_t at = first; at < end; ++at)
        if (const int column = column_of(lines[at]); column > 0 && ++lines_of[column] > 1) return column;
    return 0;
}

SourceLine right_part(SourceLine& line, int column) {
    const auto cut = std::find_if(line.tokens.begin(), line.tokens.end(),
                                  [&](const Token& token) { return token.where.column >= column; });
    SourceLine right;
    right.number = line.number;
    const auto at = static_cast<std::size_t>(cut - line.tokens.begin());
    const bool apart = cut != line.tokens.end() && (at == 0 || gap_before(line.tokens, at) >= 2);
    if (!apart) return right;
    const auto byte = static_cast<std::size_t>(cut->raw.data() - line.raw.data());
    right.raw = line.raw.substr(byte);
    line.raw = line.raw.substr(0, byte);
    right.tokens.assign(cut, line.tokens.end());
    line.tokens.erase(cut, line.tokens.end());
    return right;
}

}  // namespace

void part_columns(std::vector<SourceLine>& lines) {
    std::vector<SourceLine> parted;  // empty as long as there is no column
    std::size_t taken = 0;
    const auto take_to = [&](std::size_t end) {
        parted.insert(parted.end(),
                      std::make_move_iterator(lines.begin() + static_cast<std::ptrdiff_t>(taken)),
                      std::make_move_iterator(lines.begin() + static_cast<std::ptrdiff_t>(end)));
        taken = end;
    };
    for (std::size_t first = 0; first < lines.size();) {
        std::size_t end = first;
        while (end < lines.size() && !lines[end].tokens.empty()) ++end;
        if (const int column = end > first + 1 ? common_column(lines, first, end) : 0; column > 0) {
            std::vector<SourceLine> right(1);
            right.front().number = lines[end - 1].number;
            for (std::size_t at = first; at < end; ++at)
                if (SourceLine part = right_part(lines[at], column); !part.tokens.empty())
                    right.push_back(std::move(part));
            take_to(end);
            parted.insert(parted.end(), std::make_move_iterator(right.begin()),
                          std::make_move_iterator(right.end()));
        }
        first = end + 1;
    }
    if (parted.empty()) return;
    take_to(lines.size());
    lines = std::move(parted);
}

}  // namespace roundwright
