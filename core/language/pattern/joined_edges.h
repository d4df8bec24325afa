#pragma once

#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/language/pattern/likeness.h"
#include "core/language/words/lexer.h"

namespace roundwright {

/// The last edge of a piece that has ended, or that is on the hook.
struct NamedEdge {
    NameWords name;
    std::string
        called;  ///< the word by which a text calls the piece; empty: none that could be told from others
    int loops = 0;
};
[[nodiscard]] NamedEdge named_edge(std::string_view piece, int loops);

/// A round that goes on over the edges of pieces before it: "sc 12 around the second leg, sc 3 in the
/// chains, sc 12 around the first leg, sc 3 along the other side of the chain".
struct JoinedEdges {
    int loops = 0;             ///< of all those edges
    int chains = 0;            ///< made between them, and worked over on both sides
    std::vector<Token> words;  ///< what is worked, places named as so many stitches

    int stitches() const { return loops + 2 * chains; }
};

/// None where fewer than two edges are worked over. `chains`: made before, as a line of its own said. The
/// texts of new tokens are kept in `texts`.
[[nodiscard]] std::optional<JoinedEdges> joined_edges(std::span<const Token> tokens,
                                                      std::span<const NamedEdge> edges, int chains,
                                                      std::deque<std::string>& texts);

/// "Ch 3 and join to the first leg.": the chains, and the edge of the piece named, made twice; none where a
/// line says anything else.
struct SaidJoining {
    int chains = 0;
    int loops = 0;  ///< of both edges
};
[[nodiscard]] std::optional<SaidJoining> said_joining(std::span<const Token> tokens,
                                                      std::span<const NamedEdge> edges);

}  // namespace roundwright
