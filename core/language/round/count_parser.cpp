#include "core/language/round/count_parser.h"

#include <algorithm>
#include <array>

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

// "(18)", "[18 sts made.]", "(total stitches: 18)", "(3 rnds of 30)", "(12 each round)", "(18?)"
bool CountParser::bracketed_count() {
    constexpr std::size_t longest = 40;
    const std::string_view closer = closer_of(peek()->text);
    const std::size_t start = at_++;
    std::vector<StatedCount> counts;
    while (!done() && !is(closer) && at_ < start + longest)
        if (!count_or_word(counts)) return false;
    if (counts.empty() || !accept(closer) || says_how_often() || says_where()) return false;
    syntax_.stated = std::move(counts);
    return true;
}

bool CountParser::count_or_word(std::vector<StatedCount>& counts) {
    if (is_number() && is_round_word_at(1)) return at_ += 2, true;
    if (is_round_word_at(0) && is_number(1)) return at_ += 2, true;
    if (is_number()) {
        counts.push_back({peek()->number, peek()->where});
        ++at_;
        return take_chains(counts) || !accept_counted_name() || worked_;
    }
    static constexpr auto marks =
        std::to_array<std::string_view>({"=", "-", ":", ",", "&", "/", ".", "?", "!", "~", "+"});
    static constexpr auto words = std::to_array<std::string_view>(
        {"total", "in",  "of",    "each",   "every",  "now",   "and",    "you",        "should", "will",
         "have",  "has", "made",  "all",    "per",    "then",  "around", "left",       "here",   "there",
         "are",   "is",  "count", "think",  "i",      "about", "approx", "altogether", "remain", "remaining",
         "or",    "so",  "be",    "the",    "round",  "rnd",   "row",    "rounds",     "rnds",   "rows",
         "maybe", "it",  "makes", "stitch", "st",     "sts",   "equals", "equal",      "gives",  "get",
         "end",   "up",  "with",  "at",     "should", "only"});
    return accept_one_of(marks) || accept_one_of(words) || accept_noun();
}

// "(6 sc, 6 ch)": chains count beside the stitches, and the round has both.
bool CountParser::take_chains(std::vector<StatedCount>& counts) {
    if (counts.size() < 2 || !worked_ || !(is("ch") || is("chs") || is("chain") || is("chains")))
        return false;
    ++at_;
    const int chains = counts.back().count;
    counts.pop_back();
    counts.back().count = std::min(counts.back().count, largest_number - chains) + chains;
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
    const std::size_t start = at_;
    const bool column = peek()->tabbed;
    const bool slash = is("/") && is("/", 2);
    const bool dashed = accept("-") || accept("=") || accept("~") || (slash && accept("/"));
    if (dashed) accept("=");
    if (after_count_ && dashed && is_number() && !peek()->spaced && tokens_[start].is("-")) {
        ++at_;  // "(12) -6": six fewer than before
        return true;
    }
    const bool total = accept("total");
    if (total) accept("stitches") || accept("sts");
    if (total) accept(":") || accept("of") || accept("=");
    if (!is_number() || !worked_ || is_round_word_at(1)) return false;
    const StatedCount count{peek()->number, peek()->where};
    ++at_;
    const bool noun = accept_noun();
    const bool apart = at_ > 1 && tokens_[at_ - 2].is(":") && tokens_[at_ - 2].spaced;
    const bool named = !noun && (dashed || total || apart) && accept_counted_name();
    while (accept("in") || accept("total") || accept("all")) {
    }
    if (dashed) accept("=") || accept("~") || (slash && accept("/"));
    const bool note_follows = dashed && !done() && is_kind(TokenKind::word) && !starts_item() && !is("x") &&
                              !is("times") && !is("more") && !says_where() && tokens_[start].is("=");
    const bool ends =
        note_follows || is_sentence_end() || (is(",") && noun) || is("|") || (is("/") && is("/", 1));
    const bool led = dashed || total || column || last_separator_ == '.' || last_separator_ == ':' ||
                     last_separator_ == '|' || last_separator_ == '/';
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
    const bool last = at_ + 1 == tokens_.size() && worked_ && at_ > 0 && tokens_[at_ - 1].is(",");
    if (last) syntax_.last_number = StatedCount{peek()->number, peek()->where};
    syntax_.may_be_bare_numbers = true;
    report(ReadCode::number_alone, peek()->where, {peek()->number});
    ++at_;
}

}  // namespace roundwright
