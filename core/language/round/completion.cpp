#include "core/language/round/completion.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/language/round/token_cursor.h"
#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

// Letters with an accent are several bytes.
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

bool begins_with(std::string_view words, std::string_view begun) {
    return begun.size() <= words.size() &&
           std::equal(begun.begin(), begun.end(), words.begin(), [](char a, char b) {
               return (a >= 'A' && a <= 'Z' ? a - 'A' + 'a' : a) ==
                      (b >= 'A' && b <= 'Z' ? b - 'A' + 'a' : b);
           });
}

class CompletionFinder {
  public:
    CompletionFinder(std::string_view before, const RoundSetting& setting, const YarnTable& yarns,
                     std::size_t most)
        : before_(before), text_(before), setting_(setting), yarns_(yarns), most_(most) {
        setting_.find_mends = false;
        tokens_ = all_tokens(text_);
        if (!before.empty() && is_letter(before.back())) begun_ = tokens_.empty() ? "" : tokens_.back().raw;
        read_as_english(text_, setting_.terms);
        tokens_ = all_tokens(text_);
    }

    std::vector<Completion> find() {
        if (counted()) return {};
        go_on_from_whole();
        complete_begun();
        return std::move(found_);
    }

  private:
    // --- going on from words that are whole

    void go_on_from_whole() {
        const std::string head(before_);
        if (!begun_.empty() && !ends_in_name() && !whole(tried(head))) return;
        if (tokens_.empty() || at_item_start(tokens_.size())) {
            if (begun_.empty()) begin_items(head, "");
            return;
        }
        end_with_times(head);
        end_with_bracket(head);
        end_with_star(head);
        end_with_place(head);
        say_count(head);
    }

    // "[sc, inc]" -> "x 6"; "inc" -> "x 6"; "sc" -> "12".
    void end_with_times(const std::string& head) {
        const bool closed = is_closer(tokens_.back());
        if (!closed && !ends_in_name()) return;
        const bool counts = !closed && last_name() && last_name()->what == NameKind::stitch;
        if (counts) end_with_number(head, head, "");
        end_with_number(head, head, "x ");
        offer_if_whole(head, "around");
    }

    // "[sc, inc" -> "] x 6"
    void end_with_bracket(const std::string& head) {
        const std::optional<std::string_view> open = open_bracket();
        if (!open || at_item_start(tokens_.size())) return;
        const std::string closed(closer_of(*open));
        end_with_number(head, head + closed, closed + " x ");
        offer_if_whole(head, closed + " around");
        if (found_.empty()) add(closed, 0, false);
    }

    // "*sc, inc" -> "; rep from * around"
    void end_with_star(const std::string& head) {
        const auto stars =
            std::count_if(tokens_.begin(), tokens_.end(), [](const Token& token) { return token.is("*"); });
        if (stars == 1 && !open_bracket()) offer_if_whole(head, "; rep from * around");
    }

    void end_with_place(const std::string& head) {
        if (!ends_in_name()) return;
        if (setting_.work.into_ring) return offer_if_whole(head, "in magic ring");
        offer_if_whole(head, "in each st around");
    }

    // "..." -> "(18)" when all is worked
    void say_count(const std::string& head) {
        const ReadRound read = tried(head);
        if (whole(read)) offer_if_whole(head, "(" + std::to_string(read.stitches) + ")");
    }

    // The number with which the round comes out: the loops taken grow by a fixed number with every one.
    void end_with_number(const std::string& head, const std::string& once, const std::string& before) {
        const int below = setting_.work.loops_below;
        const std::string spaced = glued(head, before);
        const int taken = tried(once).taken;
        const int grows = tried(spaced + "3").taken - tried(spaced + "2").taken;
        if (grows < 1 || below <= taken || (below - taken) % grows != 0) return;
        offer_if_whole(head, before + std::to_string(1 + (below - taken) / grows));
    }

    // --- words that begin something

    void complete_begun() {
        if (begun_.empty() || !at_item_start(tokens_.size() - 1)) {
            if (!begun_.empty()) complete_places();
            return;
        }
        begin_items(std::string(before_.substr(0, before_.size() - begun_.size())), begun_);
    }

    void begin_items(const std::string& head, std::string_view begun) {
        const std::size_t before = tokens_before(begun);
        const bool after_number = before > 0 && tokens_[before - 1].kind == TokenKind::number;
        if (!after_number && found_.empty()) begin_rounds(head, begun);
        for (const std::string& name : names())
            if (begins_with(name, begun) && name.size() > begun.size()) add(name, begun.size(), false);
    }

    // A whole round, or the rest of one, in a phrase.
    void begin_rounds(const std::string& head, std::string_view begun) {
        const std::string sc(abbreviation(StitchKind::single_crochet, english_behind(setting_.terms)));
        if (setting_.work.into_ring) return offer_begun(head, begun, "6 " + sc + " in magic ring");
        const bool first = tokens_before(begun) == 0;
        if (first)
            for (const std::string& phrase :
                 {sc + " in each st around", std::string("inc around"), std::string("dec around")})
                offer_begun(head, begun, phrase);
        const int left = setting_.work.loops_below - tried(head).taken;
        if (left > 1 && !first && !open_bracket()) offer_begun(head, begun, sc + " " + std::to_string(left));
    }

    void offer_begun(const std::string& head, std::string_view begun, const std::string& english) {
        const std::string words = said_in(english, setting_.terms);
        if (begins_with(words, begun) && words.size() > begun.size() && whole(tried(glued(head, words))))
            add(words, begun.size(), true);
    }

    // "sc in each st ar" -> "around"
    void complete_places() {
        const std::string head(before_.substr(0, before_.size() - begun_.size()));
        for (const char* english : {"around", "in each st around", "in next st", "times", "magic ring"}) {
            const std::string words = said_in(english, setting_.terms);
            if (begins_with(words, begun_) && words.size() > begun_.size())
                add(words, begun_.size(), whole(tried(head + words)));
        }
    }

    std::vector<std::string> names() const {
        const auto short_name = [&](StitchKind kind) {
            return std::string(abbreviation(kind, english_behind(setting_.terms)));
        };
        const std::string sc = short_name(StitchKind::single_crochet);
        std::vector<std::string> all{sc, "inc"};
        if (!setting_.work.into_ring) all.insert(all.end(), {"dec", "inv dec", sc + "2tog"});
        for (const StitchKind kind :
             {StitchKind::half_double_crochet, StitchKind::double_crochet, StitchKind::treble_crochet,
              StitchKind::slip_stitch, StitchKind::chain, StitchKind::bobble, StitchKind::skip})
            all.push_back(short_name(kind));
        all.insert(all.end(), {"BLO", "FLO", "magic ring"});
        for (std::string& name : all) name = said_in(name, setting_.terms);
        return all;
    }

    // --- where the cursor stands

    // A stitch may begin after the first `count` tokens, or a number that stands before it has.
    bool at_item_start(std::size_t count) const {
        if (count == 0) return true;
        const Token& last = tokens_[count - 1];
        if (is_opener(last) || last.is(",") || last.is(";") || last.is(":") || last.is("&") || last.is("and"))
            return true;
        if (last.is("*")) return count == 1 || at_item_start(count - 1);
        return last.kind == TokenKind::number && at_item_start(count - 1);
    }

    std::optional<Name> last_name() const {
        for (std::size_t length = std::min<std::size_t>(3, tokens_.size()); length > 0; --length) {
            const auto name = match_name(std::span(tokens_).subspan(tokens_.size() - length), setting_.terms);
            if (name && name->length == static_cast<int>(length)) return name;
        }
        return std::nullopt;
    }
    bool ends_in_name() const { return last_name().has_value(); }

    std::optional<std::string_view> open_bracket() const {
        std::vector<std::string_view> open;
        for (const Token& token : tokens_) {
            if (is_opener(token)) open.push_back(token.text);
            if (is_closer(token) && !open.empty()) open.pop_back();
        }
        return open.empty() ? std::nullopt : std::optional(open.back());
    }

    bool counted() const { return tried(std::string(before_)).stated.has_value(); }

    // Tokens before the word that is begun.
    std::size_t tokens_before(std::string_view begun) const {
        return tokens_.size() - (begun.empty() ? 0 : 1);
    }

    // --- trying

    ReadRound tried(const std::string& words) const {
        YarnTable yarns = yarns_;
        return read_round(words, setting_, yarns);
    }

    static bool whole(const ReadRound& read) {
        return read.proved() && !read.syntax.open && !read.made.stitches.empty() &&
               !has_code(read, ReadCode::unknown_words);
    }

    static std::string glued(const std::string& head, const std::string& words) {
        constexpr std::string_view tight = "])}>;,";
        const bool space = !head.empty() && head.back() != ' ' && head.back() != '\n' &&
                           std::string_view("[({<*").find(head.back()) == std::string_view::npos &&
                           (words.empty() || tight.find(words[0]) == std::string_view::npos);
        return head + (space ? " " : "") + words;
    }

    void offer_if_whole(const std::string& head, const std::string& english) {
        const std::string words = said_in(english, setting_.terms);
        if (whole(tried(glued(head, words)))) add(words, 0, true);
    }

    void add(const std::string& words, std::size_t replaced, bool ends) {
        if (found_.size() >= most_) return;
        const std::string put =
            replaced > 0 ? words : glued(std::string(before_), words).substr(before_.size());
        const bool known =
            std::any_of(found_.begin(), found_.end(), [&](const Completion& c) { return c.words == put; });
        if (!known) found_.push_back({put, replaced, ends});
    }

    std::string_view before_;
    LexedText text_;
    RoundSetting setting_;
    const YarnTable& yarns_;
    std::size_t most_;
    std::vector<Token> tokens_;
    std::string_view begun_;  // letters of the word at the cursor
    std::vector<Completion> found_;
};

}  // namespace

std::vector<Completion> completions(std::string_view before, const RoundSetting& setting,
                                    const YarnTable& yarns, std::size_t most) {
    constexpr std::size_t longest = 2'000;
    if (before.size() > longest) return {};
    return CompletionFinder(before, setting, yarns, most).find();
}

}  // namespace roundwright
