#include "core/differences/piece_differences.h"

#include <array>

#include "core/differences/match.h"

namespace roundwright {
namespace {

Difference of(DifferenceCode code) {
    Difference difference;
    difference.code = code;
    return difference;
}

Difference counted(DifferenceCode code, int then, int now) {
    Difference difference = of(code);
    difference.then = {then};
    difference.now = {now};
    return difference;
}

/// Of a piece that is stuffed throughout, none.
std::vector<int> stuffed_part(const Piece& piece) {
    if (!piece.stuffed_rounds) return {};
    return {piece.stuffed_rounds->first, piece.stuffed_rounds->last};
}

Difference of_feature(DifferenceCode code, const Feature& feature) {
    Difference difference = of(code);
    difference.feature = feature;
    return difference;
}

void add_features(std::vector<Difference>& all, const Piece& before, const Piece& after) {
    const auto& then = before.features;
    const auto& now = after.features;
    const std::array<IsSame, 3> ways{
        [&](std::size_t i, std::size_t k) { return then[i] == now[k]; },
        [&](std::size_t i, std::size_t k) {
            return then[i].kind == now[k].kind && then[i].name == now[k].name;
        },
        [&](std::size_t i, std::size_t k) { return then[i].kind == now[k].kind; }};
    const Match features = match(then.size(), now.size(), ways);
    for (std::size_t k = 0; k < now.size(); ++k) {
        const auto i = features.before_of[k];
        if (!i) all.push_back(of_feature(DifferenceCode::feature_new, now[k]));
        if (i && !(then[*i] == now[k])) all.push_back(of_feature(DifferenceCode::feature_changed, now[k]));
    }
    for (std::size_t i = 0; i < then.size(); ++i) {
        if (!features.after_of[i]) all.push_back(of_feature(DifferenceCode::feature_gone, then[i]));
    }
    if (!features.in_order()) all.push_back(of(DifferenceCode::features_in_other_order));
}

}  // namespace

std::vector<Difference> piece_differences(const Piece& before, const Piece& after, const YarnsBecome& yarns) {
    std::vector<Difference> all = round_differences(before, after, yarns);
    const auto add_if = [&](bool differs, const Difference& difference) {
        if (differs) all.push_back(difference);
    };
    add_if(!(before.start == after.start), of(DifferenceCode::start));
    add_if(before.end != after.end, of(DifferenceCode::end));
    add_if(before.joining != after.joining, of(DifferenceCode::joining));
    Difference stuffing = of(DifferenceCode::stuffing);
    stuffing.then_value = before.area_stretch;
    stuffing.now_value = after.area_stretch;
    add_if(before.area_stretch != after.area_stretch, stuffing);
    Difference part = of(DifferenceCode::stuffed_rounds);
    part.then = stuffed_part(before);
    part.now = stuffed_part(after);
    add_if(part.then != part.now, part);
    Difference weight = of(DifferenceCode::weight);
    weight.then_value = before.weight_grams;
    weight.now_value = after.weight_grams;
    add_if(before.weight_grams != after.weight_grams, weight);
    add_if(before.starts_at_top != after.starts_at_top, of(DifferenceCode::way_up));
    add_if(before.make != after.make, counted(DifferenceCode::make, before.make, after.make));
    add_features(all, before, after);
    add_if(before.face_degrees != after.face_degrees, of(DifferenceCode::face_direction));
    add_if(!(before.worked == after.worked),
           counted(DifferenceCode::worked, before.worked.rounds, after.worked.rounds));
    return all;
}

}  // namespace roundwright
