#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/toy/toy.h"

namespace roundwright {

/// In what two states of a toy differ. `name` is a piece's or a yarn's, as it is now, or as it was where it
/// is gone; `old_name` where that is another.
enum class DifferenceCode {
    // The toy.
    pieces_in_other_order,
    yarn_new,
    yarn_gone,
    yarn_renamed,
    yarn_changed,  ///< its colour, weight or ball
    yarns_in_other_order,
    hook,  ///< `then_value`, `now_value`, in mm
    gauge,
    title,
    designer,
    notes,
    private_notes,
    pattern_words,  ///< introduction, notions, assembly, finishing, copyright, level
    making,         ///< pace, stuffing, prices
    other,          ///< nothing of all these, but something
    // A piece.
    piece_new,  ///< `now`: its rounds' counts
    piece_gone,
    piece_renamed,
    // Its rounds: `first` to `last`.
    rounds_new,       ///< `now`
    rounds_gone,      ///< `then`; numbered as they were
    rounds_counts,    ///< `then`, `now`
    rounds_stitches,  ///< worked otherwise, with the same counts
    rounds_yarn,
    rounds_note,
    rounds_flat_mark,
    // What else is said of it.
    start,
    end,
    joining,
    stuffing,        ///< `then_value`, `now_value`: area stretch
    stuffed_rounds,  ///< `then`, `now`: the first and the last of them; empty: all
    weight,          ///< of pellets in it: `then_value`, `now_value`, in grams
    way_up,
    make,    ///< how many: `then`, `now`
    worked,  ///< rounds done: `then`, `now`
    feature_new,
    feature_gone,
    feature_changed,
    features_in_other_order,
    face_direction,
};

struct Difference {
    DifferenceCode code = DifferenceCode::other;
    std::string name;
    std::string old_name;
    int place = 0;  ///< of the piece or yarn, from 0, in the list its name is from
    int first = 0;  ///< rounds from 0, as they are now
    int last = 0;
    std::vector<int> then;
    std::vector<int> now;
    double then_value = 0;  ///< as the code says
    double now_value = 0;
    std::optional<Feature> feature = std::nullopt;

    friend bool operator==(const Difference&, const Difference&) = default;
};

}  // namespace roundwright
