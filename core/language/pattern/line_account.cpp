#include "core/language/pattern/line_account.h"

#include <algorithm>

#include "core/language/pattern/note_keeper.h"
#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

std::size_t place_of(int line) { return static_cast<std::size_t>(line) - 1; }

bool has_words(const PatternLine& line) {
    return line.kind != LineKind::blank && !(line.tokens.empty() && line.header.length == 0);
}

}  // namespace

void tell_lines_without_entry(ReadingState& state, const std::vector<PatternLine>& lines, int last_line) {
    std::vector<bool> shown(static_cast<std::size_t>(last_line), false);
    for (const ReadLine& entry : state.out.lines)
        for (int line = entry.first_line; line <= entry.last_line; ++line) shown[place_of(line)] = true;
    for (const PatternLine& line : lines) {
        if (!has_words(line)) continue;
        for (int number = line.first_line; number <= line.last_line; ++number) {
            if (shown[place_of(number)]) continue;
            shown[place_of(number)] = true;
            PatternLine alone;
            alone.first_line = alone.last_line = number;
            const std::string text = shortened(said(line.tokens));
            state.show(ReadLineKind::not_read, alone, -1, text).left_out();
            state.report({.code = ReadCode::line_not_understood,
                          .where = TextSpan{number, 1, 0},
                          .arguments = {text}});
        }
    }
}

void tell_rounds_not_taken(ReadingState& state, const std::vector<PatternLine>& lines) {
    std::vector<const ReadLine*> entries;
    for (const ReadLine& entry : state.out.lines) entries.push_back(&entry);
    std::sort(entries.begin(), entries.end(),
              [](const ReadLine* a, const ReadLine* b) { return a->first_line < b->first_line; });
    for (const PatternLine& line : lines) {
        if (line.numbers.empty() || line.bare || line.header.length == 0) continue;
        const auto taken = [&](const ReadLine* entry) {
            return entry->kind == ReadLineKind::round || entry->kind == ReadLineKind::start ||
                   entry->kind == ReadLineKind::like_piece || entry->kind == ReadLineKind::not_read;
        };
        auto at =
            std::lower_bound(entries.begin(), entries.end(), line.first_line,
                             [](const ReadLine* entry, int number) { return entry->first_line < number; });
        bool known = false;
        for (; at != entries.end() && (*at)->first_line == line.first_line; ++at) known = known || taken(*at);
        known = known ||
                std::any_of(state.out.diagnostics.begin(), state.out.diagnostics.end(),
                            [&](const ReadDiagnostic& d) {
                                return d.code == ReadCode::closed_flat && d.where.line == line.header.line;
                            });
        if (!known)
            state.report({.code = ReadCode::round_not_taken,
                          .where = line.header,
                          .found = line.numbers.front().first});
    }
}

std::vector<LineAccount> account_of(const std::vector<ReadLine>& entries, int last_line) {
    std::vector<LineAccount> account(static_cast<std::size_t>(last_line),
                                     LineAccount{ReadLineKind::note, -1});
    const auto length = [&](int entry) {
        const ReadLine& of = entries[static_cast<std::size_t>(entry)];
        return of.last_line - of.first_line;
    };
    for (int entry = 0; entry < static_cast<int>(entries.size()); ++entry) {
        const ReadLine& of = entries[static_cast<std::size_t>(entry)];
        for (int line = of.first_line; line <= of.last_line; ++line) {
            LineAccount& own = account[place_of(line)];
            const bool round = of.kind == ReadLineKind::round && own.kind == ReadLineKind::note;
            if (own.entry < 0 || length(entry) < length(own.entry) ||
                (round && length(entry) == length(own.entry)))
                own = {of.kind, entry};
        }
    }
    return account;
}

}  // namespace roundwright
