#include "core/language/pattern/joined_edges.h"

#include <algorithm>
#include <array>
#include <cstdint>

#include "core/language/round/token_cursor.h"

namespace roundwright {
namespace {

using Tokens = std::span<const Token>;

constexpr auto place_words = std::to_array<std::string_view>(
    {"around", "on", "along", "over", "across", "in", "into", "of", "to", "from", "round", "onto"});
constexpr auto edge_words = std::to_array<std::string_view>(
    {"the",   "a",        "each", "every",  "of",   "other",    "next",   "left",
     "right", "st",       "sts",  "stitch", "all",  "stitches", "around", "on",
     "along", "previous", "same", "your",   "both", "loops",    "edge",   "in"});
constexpr auto chain_place_words = std::to_array<std::string_view>(
    {"the", "each",  "of",   "next",  "same", "other", "opposite", "side", "st",  "sts", "stitches",
     "all", "along", "your", "these", "both", "in",    "on",       "back", "you", "made"});

bool is_chain_word(const Token& token) {
    return token.is("ch") || token.is("chs") || token.is("chain") || token.is("chains");
}

// "legs" is "leg" more than once.
bool is_called(std::string_view word, std::string_view name) {
    if (name.empty() || word.empty() || word[0] != name[0]) return false;
    if (word == name || (word == "feet" && name == "foot")) return true;
    return word.size() == name.size() + 1 && word.starts_with(name) && word.back() == 's';
}

// The word by which a text calls a piece: "leg" of "Leg 2" and of "Left leg".
std::string called(const NameWords& name) {
    for (auto word = name.rbegin(); word != name.rend(); ++word)
        if (!word->empty() && (*word)[0] >= 'a' && (*word)[0] <= 'z' && word->size() > 1)
            return is_plain_word(*word) || is_noun(*word) ? std::string() : *word;
    return {};
}

const NamedEdge* edge_called(Tokens tokens, std::size_t at, std::span<const NamedEdge> edges) {
    if (tokens[at].kind != TokenKind::word) return nullptr;
    const NamedEdge* found = nullptr;
    const auto number = [&](std::size_t i) {
        const bool there = i < tokens.size() &&
                           (tokens[i].kind == TokenKind::number || tokens[i].kind == TokenKind::ordinal);
        return there ? std::to_string(tokens[i].number) : std::string();
    };
    std::string wanted;  // "leg 1", "first leg"; found when it is needed
    for (const NamedEdge& edge : edges) {
        if (edge.loops == 0 || !is_called(tokens[at].text, edge.called)) continue;
        if (wanted.empty()) wanted = !number(at + 1).empty() ? number(at + 1) : at > 0 ? number(at - 1) : "";
        const bool numbered =
            std::find(edge.name.begin(), edge.name.end(), wanted) != edge.name.end() && !wanted.empty();
        if (found == nullptr || numbered) found = &edge;
        if (numbered) break;
    }
    return found;
}

class EdgeReader {
  public:
    EdgeReader(Tokens tokens, std::span<const NamedEdge> edges, int chains, std::deque<std::string>& texts)
        : tokens_(tokens), edges_(edges), texts_(texts) {
        out_.chains = chains;
    }

    std::optional<JoinedEdges> run() {
        const bool over_chains = works_over_chains();
        while (at_ < tokens_.size()) {
            if (over_chains && take_chains_made()) continue;
            if (take_joining() || take_edge() || take_chain_place()) continue;
            out_.words.push_back(tokens_[at_++]);
        }
        if (edges_worked_ < 2) return std::nullopt;
        if (!over_chains) out_.chains = 0;
        return std::move(out_);
    }

  private:
    bool is(std::string_view text, std::size_t at) const {
        return at < tokens_.size() && tokens_[at].is(text);
    }
    bool is_number(std::size_t at) const {
        return at < tokens_.size() && tokens_[at].kind == TokenKind::number;
    }

    struct ChainPlace {
        std::size_t end = 0;  ///< 0: there is none
        int number = 0;       ///< "in 3 ch"
        bool each = false;
    };

    // "in the chains", "over the ch-3", "along the other side of the chain"
    ChainPlace chain_place(std::size_t at) const {
        if (at >= tokens_.size() || !is_one_of(tokens_[at].text, place_words)) return {};
        ChainPlace place;
        constexpr std::size_t longest = 9;
        for (std::size_t i = at + 1; i < std::min(tokens_.size(), at + longest); ++i) {
            if (is_chain_word(tokens_[i])) {
                place.end = i + 1;
                if (is("-", place.end) && is_number(place.end + 1)) place.end += 2;
                if (is("space", place.end) || is("sp", place.end) || is("sts", place.end) ||
                    is("stitches", place.end))
                    ++place.end;
                return place;
            }
            place.each = place.each || tokens_[i].is("each");
            if (tokens_[i].kind == TokenKind::number)
                place.number = tokens_[i].number;
            else if (!is_one_of(tokens_[i].text, chain_place_words) && !tokens_[i].is("-"))
                return {};
        }
        return {};
    }

    bool works_over_chains() const {
        for (std::size_t at = 0; at < tokens_.size(); ++at)
            if (chain_place(at).end > 0) return true;
        return false;
    }

    // "Ch 3," between the edges: chains that are worked over later.
    bool take_chains_made() {
        const bool lead = is_number(at_) && at_ + 1 < tokens_.size() && is_chain_word(tokens_[at_ + 1]);
        const std::size_t name = lead ? at_ + 1 : at_;
        if (name >= tokens_.size() || !is_chain_word(tokens_[name])) return false;
        if (!lead && !is_number(name + 1)) return false;
        out_.chains = tokens_[lead ? at_ : name + 1].number;
        at_ = name + (lead ? 1 : 2);
        pass_joint();
        return true;
    }

    void pass_joint() {
        while (is(",", at_) || is(";", at_) || is("and", at_) || is("then", at_) || is(".", at_)) ++at_;
    }

    // "join to the first leg with a sc": one stitch, or none.
    bool take_joining() {
        if (!is("join", at_) && !is("joining", at_) && !is("attach", at_) && !is("connect", at_))
            return false;
        std::size_t end = at_;
        bool named = false;
        bool stitch = false;
        for (; end < tokens_.size() && !tokens_[end].is(",") && !tokens_[end].is(".") &&
               !tokens_[end].is(";") && !tokens_[end].is(":");
             ++end) {
            named = named || edge_called(tokens_, end, edges_) != nullptr;
            stitch = stitch || tokens_[end].is("sc") || tokens_[end].is("dc");
        }
        if (!named && !is(":", end)) return false;
        if (stitch) put_stitch(end);
        at_ = end;
        if (is(":", at_)) ++at_;
        pass_joint();
        return true;
    }

    void put_stitch(std::size_t end) {
        const auto sc = std::find_if(tokens_.begin() + static_cast<std::ptrdiff_t>(at_),
                                     tokens_.begin() + static_cast<std::ptrdiff_t>(end),
                                     [](const Token& t) { return t.is("sc") || t.is("dc"); });
        out_.words.push_back(*sc);
        put_number(1, *sc);
        Token comma = *sc;
        comma.kind = TokenKind::mark;
        comma.text = comma.raw = ",";
        comma.spaced = false;
        out_.words.push_back(comma);
    }

    void put_number(int number, const Token& where) {
        texts_.push_back(std::to_string(number));
        Token token = where;
        token.kind = TokenKind::number;
        token.number = number;
        token.text = token.raw = texts_.back();
        token.spaced = true;
        out_.words.push_back(token);
    }

    // "around the first leg", "in each st of leg 2"
    bool take_edge() {
        if (!is_one_of(tokens_[at_].text, place_words)) return false;
        constexpr std::size_t longest = 10;
        bool both = false;
        for (std::size_t i = at_ + 1; i < std::min(tokens_.size(), at_ + longest); ++i) {
            both = both || tokens_[i].is("both");
            if (const NamedEdge* edge = edge_called(tokens_, i, edges_)) {
                std::size_t end = i + 1;
                if (is_number(end) && tokens_[end].spaced && !is("x", end + 1)) ++end;
                const int edges = both ? 2 : 1;
                work_over(edges * edge->loops, tokens_[at_]);
                edges_worked_ += edges;
                out_.loops += edges * edge->loops;
                at_ = end;
                drop_count(edge->loops);
                return true;
            }
            const bool passes = tokens_[i].kind == TokenKind::ordinal ||
                                tokens_[i].kind == TokenKind::number ||
                                is_one_of(tokens_[i].text, edge_words);
            if (!passes) return false;
        }
        return false;
    }

    // "(8)" after an edge is how many it has.
    void drop_count(int loops) {
        const bool counts = at_ + 2 < tokens_.size() && is_opener(tokens_[at_]) && is_number(at_ + 1) &&
                            tokens_[at_ + 1].number == loops && at_ + 3 < tokens_.size();
        if (!counts) return;
        std::size_t end = at_ + 2;
        while (end < tokens_.size() && !is_closer(tokens_[end])) ++end;
        if (end + 1 < tokens_.size()) at_ = end + 1;
    }

    // Without a number before the place: so many as there are loops.
    void work_over(int loops, const Token& where) {
        for (std::size_t i = out_.words.size(); i > 0; --i) {
            const Token& before = out_.words[i - 1];
            if (before.is(",") || before.is(".") || before.is(";") || before.is("then")) break;
            if (before.kind == TokenKind::number) return;
        }
        put_number(loops, where);
    }

    bool take_chain_place() {
        const ChainPlace place = chain_place(at_);
        if (place.end == 0) return false;
        work_over(place.number > 0 ? place.number : out_.chains, tokens_[at_]);
        at_ = place.end;
        return true;
    }

    Tokens tokens_;
    std::span<const NamedEdge> edges_;
    std::deque<std::string>& texts_;
    JoinedEdges out_;
    std::size_t at_ = 0;
    int edges_worked_ = 0;
};

// Nearly every line names none: the first letters of the names decide that.
bool names_an_edge(Tokens tokens, std::span<const NamedEdge> edges) {
    const auto bit = [](char c) { return 1u << (static_cast<unsigned char>(c) & 31u); };
    std::uint32_t firsts = 0;
    for (const NamedEdge& edge : edges)
        if (!edge.called.empty()) firsts |= bit(edge.called[0]);
    if (firsts == 0) return false;
    return std::any_of(tokens.begin(), tokens.end(), [&](const Token& token) {
        if (token.kind != TokenKind::word || (firsts & bit(token.text[0])) == 0) return false;
        return std::any_of(edges.begin(), edges.end(),
                           [&](const NamedEdge& edge) { return is_called(token.text, edge.called); });
    });
}

}  // namespace

NamedEdge named_edge(std::string_view piece, int loops) {
    NamedEdge edge{name_words(piece), {}, loops};
    edge.called = called(edge.name);
    return edge;
}

std::optional<JoinedEdges> joined_edges(Tokens tokens, std::span<const NamedEdge> edges, int chains,
                                        std::deque<std::string>& texts) {
    constexpr std::size_t longest = 200;
    if (tokens.size() > longest || !names_an_edge(tokens, edges)) return std::nullopt;
    return EdgeReader(tokens, edges, chains, texts).run();
}

std::optional<SaidJoining> said_joining(Tokens tokens, std::span<const NamedEdge> edges) {
    constexpr std::size_t longest = 30;
    if (tokens.size() > longest || !has_any_word(tokens, {"join", "joining", "connect", "attach"}))
        return std::nullopt;
    SaidJoining said;
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const bool number = at + 1 < tokens.size() && tokens[at + 1].kind == TokenKind::number;
        if (is_chain_word(tokens[at]) && number) said.chains = tokens[at + 1].number;
        if (const NamedEdge* edge = edge_called(tokens, at, edges)) said.loops = 2 * edge->loops;
    }
    return said.chains > 0 && said.loops > 0 ? std::optional(said) : std::nullopt;
}

}  // namespace roundwright
