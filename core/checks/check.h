#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/base/diagnostic.h"
#include "core/language/round/read_diagnostic.h"
#include "core/toy/toy.h"

namespace roundwright {

enum class CheckCode {
    too_many_increases,  ///< more than twice the stitches below. args: stitches, below, most that can be
                         ///< worked, fabric with no loop to stand on (mm)
    too_many_decreases,  ///< fewer than half the stitches below. args: stitches, below, least that can be
                         ///< worked, loops left over (mm)
    ruffles,  ///< args: stitches more, stitches more that lie flat, waves, wave height (mm), spare (mm)
    cups_though_flat,     ///< marked "lies flat" but rises. args: rise (mm), stitches more, that lie flat
    ruffles_though_flat,  ///< marked "lies flat" but ruffles. args as `ruffles`
    gathers,              ///< args: stitches fewer, spare (mm)
    words_do_not_fit,     ///< a written round cannot be worked: `Check::reading` says why. args: loops below,
                          ///< loops taken, between (mm); equal where it is not the loops
    gauge_missing,        ///< args: stitch width that stands in (mm), its error (mm)
    not_converged,        ///< args: rounds; then, where the gauge's stitch is far from square, its width and
                    ///< height (mm), or, with `Check::round`, where loops change past what can be worked,
                    ///< loops below, loops left
    too_many_stitches,  ///< over a limit of the program. args: stitches, limit
    gaps,           ///< stuffing shows between the stitches. args: stretch (per cent), rounds that have gaps
    ridge,          ///< a sharp edge outwards. args: turn (degrees)
    crease,         ///< a sharp edge inwards. args: turn (degrees)
    corners,        ///< increases stacked over each other. args: corners, how far they stand out (mm), first
                    ///< round (from 1), last
    widening_neck,  ///< args: width as stuffed (mm), width of its stitches by themselves (mm)
    feature_lost,   ///< the gap it sits in is gone. args: feature (from 0)
    washer_too_late,  ///< never passes the opening once its rounds are worked. args: feature, washer (mm),
                      ///< opening (mm)
    washer_rocks,     ///< the fabric curves away under it. args: feature, washer (mm), gap (mm)
    features_touch,   ///< args: feature, other (the same: the two of a pair), overlap (mm), washers only (0,
                      ///< 1)
    odd_seam,         ///< sewn straight over an odd number of stitches: one has no partner. args: stitches
    rows_not_flattened,  ///< sewn straight, though rows leave no round to flatten
    feature_too_large,   ///< for its place. args: feature, width (mm), width of the piece there (mm)
    said_round_moved,    ///< the maker's words name rounds of a piece that has had more or fewer since:
                         ///< `Check::said`. args: rounds then, rounds now
    said_round_missing,  ///< they name a round that no piece they can mean has. args: rounds there are
    said_count_missing,  ///< they name stitches that no round they can mean has. args: stitches, those of the
                         ///< open edge that may be meant (0: not known)
    joined_in_a_circle,  ///< following the joins leads back to the piece. args: what it is joined to
    joined_twice,        ///< one copy of it. args: what the later join joins it to, copy (from 1)
    join_without_piece,  ///< a join names a piece or copy that is not there. args: what this one is joined to
                         ///< (empty: the other way round), copy (from 1)
    join_without_round,  ///< it is joined where there is no round. args: to what, round (from 1), rounds there
    edge_not_sewn,       ///< stuffed, and open. args: stitches of the edge, end (0: the start, 1: the end)
    worked_on_other_count,  ///< its first round is worked over other stitches than the edges and chains it is
                            ///< worked on have. args: stitches, those of the edges, edges (0: none)
    seam_gathers,   ///< the edge is longer than the line it is sewn along. args: to what, stitches, line (mm),
                    ///< by how much (per cent)
    seam_stretches,  ///< the edge is shorter than the line. args as `seam_gathers`
    pieces_overlap,  ///< it runs into another that it is not sewn to. args: the other, volume of both (mm³)
    joins_changed,   ///< since the maker's words of assembly were written. args: to what, round then (from 1;
                     ///< 0: the start, -1: not joined), round now, to what then (empty: the same)
};

/// A name for machines: "too_many_increases", ...
[[nodiscard]] std::string_view check_code_name(CheckCode code);

/// A change that would mend a check, as an edit of the piece's rounds.
enum class CureKind {
    spread_increases,
    set_count,
    add_even_round,
    change_start_count,
    stagger_increases,
    remove_flat_mark,
    spread_decreases,
    mend_words,
    stuff_softer,
    move_feature,
    space_features,
    embroider,
    smaller_feature,
    remove_feature,
    renumber_words,
    move_join,
    remove_join,
    change_start,
    words_still_fit,  ///< words of assembly are for the joins as they are now
};

/// What a cure does to one feature of the piece; `becomes` empty: it goes.
struct FeatureCure {
    int feature = 0;
    std::optional<Feature> becomes;
};
/// What a cure does to one join of the toy; `becomes` empty: it goes.
struct JoinCure {
    std::size_t join = 0;
    std::optional<Join> becomes;
};
struct Cure {
    CureKind kind = CureKind::set_count;
    std::vector<Round> rounds;  ///< takes the place of rounds [first, first + replaced)
    int first = 0;
    int replaced = 0;
    std::optional<Mend> mend = std::nullopt;  ///< of `mend_words`: what it changes in them
    std::optional<FeatureCure> feature = std::nullopt;
    std::optional<double> area_stretch = std::nullopt;  ///< of `stuff_softer`
    std::optional<JoinCure> join = std::nullopt;        ///< of `move_join`, `remove_join`
    std::optional<Start> start = std::nullopt;          ///< of `change_start`
};

/// The piece with a cure applied. What changes the toy and not the piece is done elsewhere: `renumber_words`
/// (core/checks/check_said_numbers.h), joins and what was said of them (core/assembly/check_joins.h).
[[nodiscard]] Piece cured_piece(Piece piece, const Cure& cure);

/// Words of the pattern that are the maker's own.
enum class OwnWords { introduction, notions, assembly, finishing, notes, round_note };

/// Numbers in the maker's own words, and where they stand.
struct SaidPlace {
    OwnWords in = OwnWords::assembly;
    int line = 0;         ///< from 1, blank ones not counted: the step's number
    std::string words;    ///< "rounds 19 and 22"
    std::string becomes;  ///< the same with numbers that fit; empty: not known
};

struct Check {
    CheckCode code;
    Severity severity = Severity::warning;
    int piece = 0;   ///< from 0; -1: the toy
    int round = -1;  ///< from 0; -1: the piece
    std::vector<Argument> arguments;
    std::vector<Cure> cures;
    /// Of `words_do_not_fit`: what stands against the words, and where in them.
    std::optional<ReadDiagnostic> reading = std::nullopt;
    /// Of the checks of said numbers.
    std::optional<SaidPlace> said = std::nullopt;
    /// Of the checks of the face: the feature it is about, or the two that touch.
    std::vector<Feature> features = {};
};

}  // namespace roundwright
