#include "core/language/round/mend_trial.h"

#include <algorithm>
#include <cstdint>

#include "core/language/words/in_language.h"

namespace roundwright {
namespace {

constexpr std::size_t most_mends = 3;

}  // namespace

MendTrial::MendTrial(const ReadRound& read, const std::vector<Token>& tokens, const RoundSetting& setting,
                     const YarnTable& yarns, MendBudget& budget)
    : read_(read), tokens_(tokens), setting_(setting), budget_(budget), yarns_(yarns) {
    setting_.find_mends = false;
}

bool MendTrial::enough() const { return found_.size() >= most_mends || budget_.left <= 0; }

std::vector<Token> MendTrial::edited(std::vector<TokenEdit> edits) {
    std::vector<Token> tokens = tokens_;
    std::sort(edits.begin(), edits.end(),
              [](const TokenEdit& a, const TokenEdit& b) { return a.first > b.first; });
    for (const TokenEdit& edit : edits) {
        texts_.push_back(edit.text);
        lexed_.emplace_back(texts_.back());
        read_as_english(lexed_.back(), setting_.terms);
        const auto from = tokens.begin() + static_cast<std::ptrdiff_t>(edit.first);
        const auto to = from + static_cast<std::ptrdiff_t>(edit.length);
        std::vector<Token> fresh = lexed_.back().lines().front().tokens;
        for (Token& token : fresh) token.where = place(edit);
        const auto at = tokens.erase(from, to);
        tokens.insert(at, fresh.begin(), fresh.end());
    }
    return tokens;
}

ReadRound MendTrial::tried(std::vector<TokenEdit> edits) {
    const std::vector<Token> tokens = edited(std::move(edits));
    YarnTable yarns = yarns_;
    ReadRound read = read_round(tokens, setting_, yarns);
    budget_.left -= static_cast<std::int64_t>(tokens.size()) * 8 + read.effort + 50;
    texts_.clear();
    lexed_.clear();
    return read;
}

bool MendTrial::proves(const ReadRound& read) const {
    if (!read.proved() || has_code(read, ReadCode::unknown_words)) return false;
    return ignore_count_ || read.stated.has_value() || !read_.stated.has_value();
}

bool MendTrial::offer(MendCode code, std::vector<Argument> arguments, const std::vector<TokenEdit>& edits) {
    if (enough()) return false;
    std::vector<TokenEdit> all = edits;
    if (ignore_count_) all.push_back(no_count());
    ReadRound read = tried(all);
    if (!proves(read)) return false;
    for (Argument& argument : arguments)
        if (auto* words = std::get_if<std::string>(&argument)) *words = said_in(*words, setting_.terms);
    Mend mend{code, std::move(arguments), {}};
    mend.stitches = read.stitches;
    for (TokenEdit edit : edits) {
        edit.text = said_in(edit.text, setting_.terms);
        mend.edits.push_back({place(edit), spaced(edit)});
    }
    if (ignore_count_) mend.edits.push_back({read_.stated->where, std::to_string(read.stitches)});
    const bool known =
        std::any_of(found_.begin(), found_.end(), [&](const Mend& m) { return m.edits == mend.edits; });
    if (known) return false;
    found_.push_back(std::move(mend));
    comes_to_.push_back(std::move(read));
    return true;
}

TextSpan MendTrial::place(const TokenEdit& edit) const {
    if (edit.length == 0) return after(edit.first);
    TextSpan where = tokens_[edit.first].where;
    const std::size_t end = edit.first + edit.length;
    for (std::size_t i = edit.first; i < end && tokens_[i].where.line == where.line; ++i)
        where.length = tokens_[i].where.column + tokens_[i].where.length - where.column;
    // What goes from the front takes the space after it along.
    const bool from_front = edit.text.empty() && edit.first == 0 && end < tokens_.size();
    if (from_front && tokens_[end].where.line == where.line)
        where.length = tokens_[end].where.column - where.column;
    return where;
}

// An insertion before the first token stands at its place, any other right behind the token before it.
TextSpan MendTrial::after(std::size_t token) const {
    if (tokens_.empty()) return {};
    if (token == 0) return {tokens_[0].where.line, tokens_[0].where.column, 0};
    const TextSpan& before = tokens_[token - 1].where;
    return {before.line, before.column + before.length, 0};
}

bool MendTrial::opens(const std::string& text) { return text == "[" || text == "(" || text == "{"; }

std::string MendTrial::spaced(const TokenEdit& edit) const {
    if (edit.length > 0) return edit.text;
    if (opens(edit.text)) return edit.first == 0 || !tokens_[edit.first].spaced ? edit.text : " " + edit.text;
    const bool alone = edit.first == 0 && !tokens_.empty();
    if (alone) return edit.text + " ";
    const bool tight =
        edit.text[0] == ',' || edit.text[0] == ']' || edit.text[0] == ')' || edit.text[0] == '}';
    return tight ? edit.text : " " + edit.text;
}

TokenEdit MendTrial::no_count() const {
    const std::size_t end = body_end();
    return {end, tokens_.size() - end, ""};
}

std::size_t MendTrial::body_end() const { return std::min(read_.syntax.body_end, tokens_.size()); }

std::vector<TokenEdit> MendTrial::without_count(std::vector<TokenEdit> edits) const {
    if (ignore_count_) edits.push_back(no_count());
    return edits;
}

bool MendTrial::has(ReadCode code) const { return has_code(read_, code); }

}  // namespace roundwright
