#include "core/checks/check.h"

#include "core/toy/edits.h"

namespace roundwright {

std::string_view check_code_name(CheckCode code) {
    switch (code) {
        case CheckCode::too_many_increases:
            return "too_many_increases";
        case CheckCode::too_many_decreases:
            return "too_many_decreases";
        case CheckCode::ruffles:
            return "ruffles";
        case CheckCode::cups_though_flat:
            return "cups_though_flat";
        case CheckCode::ruffles_though_flat:
            return "ruffles_though_flat";
        case CheckCode::gathers:
            return "gathers";
        case CheckCode::words_do_not_fit:
            return "words_do_not_fit";
        case CheckCode::gauge_missing:
            return "gauge_missing";
        case CheckCode::not_converged:
            return "not_converged";
        case CheckCode::too_many_stitches:
            return "too_many_stitches";
        case CheckCode::gaps:
            return "gaps";
        case CheckCode::ridge:
            return "ridge";
        case CheckCode::crease:
            return "crease";
        case CheckCode::corners:
            return "corners";
        case CheckCode::widening_neck:
            return "widening_neck";
        case CheckCode::feature_lost:
            return "feature_lost";
        case CheckCode::washer_too_late:
            return "washer_too_late";
        case CheckCode::washer_rocks:
            return "washer_rocks";
        case CheckCode::features_touch:
            return "features_touch";
        case CheckCode::odd_seam:
            return "odd_seam";
        case CheckCode::rows_not_flattened:
            return "rows_not_flattened";
        case CheckCode::feature_too_large:
            return "feature_too_large";
        case CheckCode::said_round_moved:
            return "said_round_moved";
        case CheckCode::said_round_missing:
            return "said_round_missing";
        case CheckCode::said_count_missing:
            return "said_count_missing";
        case CheckCode::joined_in_a_circle:
            return "joined_in_a_circle";
        case CheckCode::joined_twice:
            return "joined_twice";
        case CheckCode::join_without_piece:
            return "join_without_piece";
        case CheckCode::join_without_round:
            return "join_without_round";
        case CheckCode::edge_not_sewn:
            return "edge_not_sewn";
        case CheckCode::worked_on_other_count:
            return "worked_on_other_count";
        case CheckCode::seam_gathers:
            return "seam_gathers";
        case CheckCode::seam_stretches:
            return "seam_stretches";
        case CheckCode::pieces_overlap:
            return "pieces_overlap";
        case CheckCode::joins_changed:
            return "joins_changed";
    }
    return "";
}

Piece cured_piece(Piece piece, const Cure& cure) {
    if (cure.replaced > 0 || !cure.rounds.empty()) {
        piece = replace_rounds(piece, static_cast<std::size_t>(cure.first),
                               static_cast<std::size_t>(cure.replaced), cure.rounds)
                    .value;
    }
    if (cure.area_stretch) piece.area_stretch = *cure.area_stretch;
    if (cure.start) piece.start = *cure.start;
    if (cure.feature) {
        const auto feature = piece.features.begin() + cure.feature->feature;
        if (cure.feature->becomes)
            *feature = *cure.feature->becomes;
        else
            piece.features.erase(feature);
    }
    return piece;
}

}  // namespace roundwright
