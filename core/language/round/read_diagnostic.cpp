#include "core/language/round/read_diagnostic.h"

#include <algorithm>
#include <array>

namespace roundwright {
namespace {

constexpr std::array<std::string_view, 45> read_names{"loops_do_not_fit",
                                                      "count_differs",
                                                      "repeat_does_not_fit",
                                                      "not_enough_left",
                                                      "nothing_to_fill",
                                                      "no_stitch_before",
                                                      "no_stitches",
                                                      "unknown_words",
                                                      "other_terms",
                                                      "number_alone",
                                                      "number_is_zero",
                                                      "number_too_large",
                                                      "bracket_not_closed",
                                                      "bracket_not_opened",
                                                      "bracket_mismatched",
                                                      "star_missing",
                                                      "nested_too_deep",
                                                      "not_one_stitch",
                                                      "unnamed_stitch",
                                                      "round_out_of_order",
                                                      "rounds_missing",
                                                      "range_reversed",
                                                      "unknown_round",
                                                      "rounds_differ",
                                                      "range_open",
                                                      "rounds_filled",
                                                      "round_not_taken",
                                                      "evenly_placed",
                                                      "closed_flat",
                                                      "loops_left_over",
                                                      "line_not_understood",
                                                      "remark_not_read",
                                                      "unknown_piece",
                                                      "piece_without_rounds",
                                                      "terms_guessed",
                                                      "terms_mixed",
                                                      "no_rounds",
                                                      "too_many_stitches",
                                                      "too_many_rounds",
                                                      "too_many_pieces",
                                                      "rounds_of_text",
                                                      "stitches_of_text",
                                                      "text_too_long",
                                                      "line_too_long",
                                                      "not_utf8"};

constexpr std::array<std::string_view, 15> mend_names{
    "change_stated_count", "change_number", "change_times",  "add_times",     "times_sign",
    "add_stitches",        "remove_words",  "change_stitch", "close_bracket", "open_bracket",
    "add_brackets",        "spell",         "space_evenly",  "renumber",      "bracket_count"};

// Byte at which a line and column of a text begin; npos when they do not exist.
std::size_t byte_at(std::string_view text, int line, int column) {
    std::size_t at = 0;
    for (int l = 1; l < line; ++l) {
        at = text.find('\n', at);
        if (at == std::string_view::npos) return at;
        ++at;
    }
    for (int c = 1; c < column; ++c) {
        if (at >= text.size() || text[at] == '\n') return std::string_view::npos;
        do ++at;
        while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0u) == 0x80u);
    }
    return at;
}

}  // namespace

std::string_view read_code_name(ReadCode code) { return read_names.at(static_cast<std::size_t>(code)); }

std::string_view mend_code_name(MendCode code) { return mend_names.at(static_cast<std::size_t>(code)); }

std::string mended(std::string_view text, const Mend& mend) {
    std::vector<TextEdit> edits = mend.edits;
    std::stable_sort(edits.begin(), edits.end(), [](const TextEdit& a, const TextEdit& b) {
        return std::pair(a.where.line, a.where.column) > std::pair(b.where.line, b.where.column);
    });
    std::string changed(text);
    for (const TextEdit& edit : edits) {
        const std::size_t from = byte_at(changed, edit.where.line, edit.where.column);
        const std::size_t to = byte_at(changed, edit.where.line, edit.where.column + edit.where.length);
        if (from == std::string::npos || to == std::string::npos) continue;
        changed.replace(from, to - from, edit.replacement);
    }
    return changed;
}

}  // namespace roundwright
