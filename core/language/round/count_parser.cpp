#include "core/language/round/count_parser.h"

namespace roundwright {

bool CountParser::try_count() {
    if (done()) return false;
    const std::size_t start = at_;
    const std::vector<StatedCount> before = syntax_.stated;
    if (!(is_opener(*peek()) ? bracketed_count() : bare_count())) {
        at_ = start;
        syntax_.stated = before;
        return false;
    }
    count_at_ = start;
    after_count_ = true;
    syntax_.open = false;
    return true;
}

bool CountParser::bracketed_count() {
    const std::string_view closer = closer_of(peek()->text);
    ++at_;
    while (accept("=") || accept("-") || accept("total") || accept(":") || accept("sts") || accept("count")) {
    }
    std::vector<StatedCount> counts;
    while (is_number()) {
        counts.push_back({peek()->number, peek()->where});
        ++at_;
        if (accept_counted_name() && !worked_) return false;
        if (!(accept(",") || accept("-") || accept("&") || accept("and") || accept("/"))) break;
    }
    while (accept("in") || accept("total") || accept("around") || accept("now") || accept(".") ||
           accept("each")) {
    }
    if (counts.empty() || !accept(closer) || says_how_often() || says_where()) return false;
    syntax_.stated = std::move(counts);
    return true;
}

// In a bracket "18 sc" states a count; "2 inc" does not.
bool CountParser::accept_counted_name() {
    if (accept_noun()) return true;
    const auto name = name_ahead();
    if (!name || name->what != NameKind::stitch || name->stitch == StitchKind::chain) return false;
    return accept_loop_name();
}

bool CountParser::says_how_often() const {
    if (is("*")) return is_number(1);
    return is("x") || is("times") || is("twice") || is("thrice") || is("once") ||
           (is_number() && (is("times", 1) || is("x", 1)));
}

bool CountParser::says_where() const {
    return is("in") || is("into") || is("around") || is("across") || is("over") || is("each");
}

bool CountParser::bare_count() {
    const bool dashed = accept("-") || accept("=");
    const bool total = accept("total");
    if (total) accept(":") || accept("of") || accept("=");
    if (!is_number() || !worked_) return false;
    const StatedCount count{peek()->number, peek()->where};
    ++at_;
    const bool noun = accept_noun();
    const bool named = !noun && (dashed || total) && accept_counted_name();
    while (accept("in") || accept("total")) {
    }
    const bool ends = is_sentence_end() || (is(",") && noun);
    const bool led =
        dashed || total || last_separator_ == '.' || last_separator_ == ':' || last_separator_ == '|';
    if (!ends || !(noun || named || led)) return false;
    syntax_.stated = {count};
    return true;
}

bool CountParser::is_bracketed_count() {
    const std::vector<StatedCount> before = syntax_.stated;
    const bool counts = bracketed_count();
    syntax_.stated = before;
    return counts;
}

void CountParser::lone_number() {
    report(ReadCode::number_alone, peek()->where, {peek()->number});
    ++at_;
}

}  // namespace roundwright
