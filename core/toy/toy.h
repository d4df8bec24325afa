#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/colour.h"
#include "core/base/kept_keys.h"
#include "core/gauge/gauge_source.h"
#include "core/stitches/stitch.h"
#include "core/toy/feature.h"
#include "core/toy/join.h"
#include "core/toy/making.h"
#include "core/toy/pattern_text.h"
#include "core/toy/piece_list.h"

namespace roundwright {

/// How increases and decreases of an evenly worked round are spread: over those of the round below (which
/// makes corners), or between them.
enum class Spacing { stacked, staggered };

/// A round of which only the count is stored; its stitches are derived by even spacing over the round below.
struct WorkedEvenly {
    int stitches = 6;
    StitchKind kind = StitchKind::single_crochet;
    LoopPart part = LoopPart::both;
    Spacing spacing = Spacing::stacked;

    friend bool operator==(const WorkedEvenly&, const WorkedEvenly&) = default;
};

/// A round stored in the maker's own words, in US terms (core/language reads them).
struct AsWritten {
    std::string words;

    friend bool operator==(const AsWritten&, const AsWritten&) = default;
};

struct Round {
    std::variant<WorkedEvenly, AsWritten> working;
    std::size_t yarn = 0;    ///< index into the toy's yarns
    bool lies_flat = false;  ///< the maker means this round to lie flat; checked against the solved shape
    std::string note;        ///< printed under the round
    KeptKeys kept{};

    friend bool operator==(const Round&, const Round&) = default;
};

/// Starts. A magic ring draws closed to a point; a chain ring leaves a hole `chains` stitches round; an open
/// tube is worked into a joined chain of `chains`; an oval is worked around both sides of a chain of
/// `chains`; what is worked on goes on over the last edges of other pieces, which the toy's joins name.
struct MagicRing {
    friend bool operator==(const MagicRing&, const MagicRing&) = default;
};
struct ChainRing {
    int chains = 4;
    friend bool operator==(const ChainRing&, const ChainRing&) = default;
};
struct OpenTube {
    int chains = 12;
    friend bool operator==(const OpenTube&, const OpenTube&) = default;
};
struct OvalChain {
    int chains = 6;
    friend bool operator==(const OvalChain&, const OvalChain&) = default;
};
struct WorkedOn {
    int stitches = 12;       ///< loops that round 1 is worked over, those of the chains among them
    int chains_between = 0;  ///< chains from one edge to the next, worked over on both sides
    friend bool operator==(const WorkedOn&, const WorkedOn&) = default;
};
using Start = std::variant<MagicRing, ChainRing, OpenTube, OvalChain, WorkedOn>;

/// Drawn closed to a point, left open, or flattened and sewn straight across through both layers.
enum class End { drawn_closed, left_open, sewn_straight };

/// Spiral, rounds joined with a slip stitch, or rows turned at each end.
enum class Joining { spiral, joined, rows };

/// Area stretch the stuffing gives the fabric. Starting values of our own; calibration from a finished piece
/// replaces them.
inline constexpr double unstuffed_stretch = 0;
inline constexpr double light_stuffing_stretch = 0.01;
inline constexpr double medium_stuffing_stretch = 0.04;
inline constexpr double firm_stuffing_stretch = 0.08;

/// How far the maker has come with hook and yarn.
struct WorkedSoFar {
    int rounds = 0;                        ///< whole rounds done
    int stitches = 0;                      ///< stitches done of the round after them
    std::vector<double> seconds_of_round;  ///< time each round took; 0, or no entry: not measured

    friend bool operator==(const WorkedSoFar&, const WorkedSoFar&) = default;
};

/// Rounds of a piece, counted from 0, both of them among these.
struct RoundSpan {
    int first = 0;
    int last = 0;

    friend bool operator==(const RoundSpan&, const RoundSpan&) = default;
};

struct Piece {
    std::string name;
    Start start = MagicRing{};
    std::vector<Round> rounds;
    End end = End::left_open;
    Joining joining = Joining::spiral;
    double area_stretch = medium_stuffing_stretch;
    std::optional<RoundSpan> stuffed_rounds;  ///< only these are stuffed; none: the whole piece
    double weight_grams = 0;     ///< pellets or the like, in a bag of their own, at its lowest point
    bool starts_at_top = false;  ///< the first round is the top of the finished piece
    int make = 1;                ///< how many of this piece the toy needs
    WorkedSoFar worked;          ///< of the one on the hook
    std::vector<Feature> features;
    double face_degrees = 0;  ///< direction of the face, anticlockwise seen from above, from the front
    KeptKeys kept{};          ///< with those of `start` and `worked`

    friend bool operator==(const Piece&, const Piece&) = default;
};

struct Yarn {
    std::string name;
    Colour colour;
    YarnWeight weight = YarnWeight::light;
    std::optional<double> metres_per_100_g;
    bool brushed = false;
    std::optional<double> ball_grams;
    std::optional<double> ball_price;
    KeptKeys kept{};

    friend bool operator==(const Yarn&, const Yarn&) = default;
};

/// The document: everything the maker has said, and nothing that can be computed from it. Cheap to copy:
/// copies share their pieces.
struct Toy {
    std::string title;
    std::string designer;
    std::string notes;          ///< printed at the end of the pattern
    std::string private_notes;  ///< the maker's own: saved with the toy, in no paper and no text made of it
    double hook_mm = 3.5;
    GaugeSource gauge;
    std::vector<Yarn> yarns;
    PieceList pieces;
    std::vector<Join> joins;
    Stance stance = Stance::standing;
    PatternText text;
    Making making;
    KeptKeys kept{};  ///< with those of `gauge`, `text` and `making`

    friend bool operator==(const Toy&, const Toy&) = default;
};

}  // namespace roundwright
