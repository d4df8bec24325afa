#include "core/language/pattern/read_pattern.h"

#include <algorithm>

#include "core/base/limits.h"
#include "core/language/pattern/columns.h"
#include "core/language/pattern/find_language.h"
#include "core/language/pattern/legend.h"
#include "core/language/pattern/pattern_reader.h"
#include "core/language/pattern/read_counts.h"
#include "core/language/words/in_language.h"
#include "core/language/words/utf16.h"

namespace roundwright {
namespace {

// The language asked for, or the one that the text is in; none when that is English.
std::optional<FoundTerms> language_in(const LexedText& text, std::optional<Terms> wanted) {
    if (!wanted) return find_language(text.lines());
    if (is_english(*wanted)) return std::nullopt;
    FoundTerms found;
    found.terms = *wanted;
    found.sure = true;
    return found;
}

}  // namespace

ReadPattern read_pattern(std::string_view utf8, const ReadOptions& options) {
    if (utf8.size() > max_text_bytes) {
        ReadPattern read;
        read.diagnostics.push_back(
            {.code = ReadCode::text_too_long,
             .where = TextSpan{1, 1, 0},
             .expected = static_cast<int>(max_text_bytes),
             .found = static_cast<int>(std::min<std::size_t>(utf8.size(), largest_number))});
        return read;
    }
    if (const auto converted = utf8_of_utf16(utf8)) return read_pattern(*converted, options);
    LexedText text(utf8, 1, max_line_bytes);
    if (auto counts = read_counts(text, options)) return std::move(*counts);
    if (utf8.find("   ") != std::string_view::npos) part_columns(text.lines());
    std::optional<FoundTerms> language = language_in(text, options.terms);
    if (language) {
        read_as_english(text, language->terms);
        find_mixed(text.lines(), *language);
    }
    read_by_legend(text, language ? language->terms : options.terms);
    return PatternReader(text, options, language).run();
}

Toy toy_of(const ReadPattern& pattern, const Toy& base) {
    Toy toy = base;
    if (!pattern.title.empty()) toy.title = pattern.title;
    if (!pattern.designer.empty()) toy.designer = pattern.designer;
    if (pattern.hook_mm) toy.hook_mm = *pattern.hook_mm;
    if (pattern.gauge) toy.gauge = *pattern.gauge;
    if (!pattern.notes.empty()) toy.notes = pattern.notes;
    if (!pattern.assembly.empty()) toy.text.assembly = pattern.assembly;
    if (!pattern.finishing.empty()) toy.text.finishing = pattern.finishing;
    toy.pieces = pattern.pieces;
    std::size_t yarns = std::max<std::size_t>(pattern.yarn_names.size(), 1);
    for (const Piece& piece : toy.pieces)
        for (const Round& round : piece.rounds) yarns = std::max(yarns, round.yarn + 1);
    if (toy.yarns.size() < yarns) toy.yarns.resize(yarns);
    for (std::size_t i = 0; i < pattern.yarn_names.size(); ++i)
        if (!pattern.yarn_names[i].empty()) toy.yarns[i].name = pattern.yarn_names[i];
    return toy;
}

bool ReadPattern::proved() const {
    return std::none_of(diagnostics.begin(), diagnostics.end(),
                        [](const ReadDiagnostic& d) { return d.severity == Severity::error; });
}

bool ReadPattern::complete() const {
    return proved() && std::none_of(diagnostics.begin(), diagnostics.end(), [](const ReadDiagnostic& d) {
               return d.code == ReadCode::remark_not_read;
           });
}

}  // namespace roundwright
