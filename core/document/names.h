#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "core/gauge/gauge_source.h"
#include "core/toy/toy.h"

namespace roundwright::document_names {

/// The words that stand for choices in a document. One table serves reading and writing.
template <class Choice, std::size_t count>
using Names = std::array<std::pair<Choice, std::string_view>, count>;

inline constexpr Names<YarnWeight, 8> weights{{{YarnWeight::lace, "lace"},
                                               {YarnWeight::super_fine, "super_fine"},
                                               {YarnWeight::fine, "fine"},
                                               {YarnWeight::light, "light"},
                                               {YarnWeight::medium, "medium"},
                                               {YarnWeight::bulky, "bulky"},
                                               {YarnWeight::super_bulky, "super_bulky"},
                                               {YarnWeight::jumbo, "jumbo"}}};
inline constexpr Names<CircleLie, 3> circle_lies{
    {{CircleLie::flat, "flat"}, {CircleLie::cups, "cups"}, {CircleLie::ruffles, "ruffles"}}};
inline constexpr Names<MeasuredOf, 4> measures{
    {{MeasuredOf::width, "width"},
     {MeasuredOf::height, "height"},
     {MeasuredOf::circumference, "circumference"},
     {MeasuredOf::circumference_of_round, "circumference_of_round"}}};
inline constexpr Names<StitchKind, 8> stitches{{{StitchKind::chain, "chain"},
                                                {StitchKind::slip_stitch, "slip_stitch"},
                                                {StitchKind::single_crochet, "single_crochet"},
                                                {StitchKind::half_double_crochet, "half_double_crochet"},
                                                {StitchKind::double_crochet, "double_crochet"},
                                                {StitchKind::treble_crochet, "treble_crochet"},
                                                {StitchKind::bobble, "bobble"},
                                                {StitchKind::skip, "skip"}}};
inline constexpr Names<LoopPart, 3> loops{
    {{LoopPart::both, "both"}, {LoopPart::front, "front"}, {LoopPart::back, "back"}}};
inline constexpr Names<Spacing, 2> spacings{
    {{Spacing::stacked, "stacked"}, {Spacing::staggered, "staggered"}}};
inline constexpr Names<End, 3> ends{{{End::drawn_closed, "drawn_closed"},
                                     {End::left_open, "left_open"},
                                     {End::sewn_straight, "sewn_straight"}}};
inline constexpr Names<Joining, 3> joinings{
    {{Joining::spiral, "spiral"}, {Joining::joined, "joined"}, {Joining::rows, "rows"}}};
inline constexpr Names<JoinedEnd, 2> joined_ends{{{JoinedEnd::start, "start"}, {JoinedEnd::end, "end"}}};
inline constexpr Names<Seam, 6> seams{{{Seam::edge, "edge"},
                                       {Seam::closed, "closed"},
                                       {Seam::straight, "straight"},
                                       {Seam::hung, "hung"},
                                       {Seam::layers, "layers"},
                                       {Seam::worked_on, "worked_on"}}};
inline constexpr Names<Stance, 3> stances{
    {{Stance::standing, "standing"}, {Stance::sitting, "sitting"}, {Stance::lying, "lying"}}};
inline constexpr Names<FeatureKind, 5> features{{{FeatureKind::safety_eye, "safety_eye"},
                                                 {FeatureKind::safety_nose, "safety_nose"},
                                                 {FeatureKind::embroidered_eye, "embroidered_eye"},
                                                 {FeatureKind::felt_disc, "felt_disc"},
                                                 {FeatureKind::stitched_line, "stitched_line"}}};
inline constexpr Names<Level, 4> levels{{{Level::basic, "basic"},
                                         {Level::easy, "easy"},
                                         {Level::intermediate, "intermediate"},
                                         {Level::complex, "complex"}}};

template <class Choice, std::size_t count>
constexpr std::string_view name_of(const Names<Choice, count>& names, Choice choice) {
    for (const auto& [value, name] : names) {
        if (value == choice) return name;
    }
    return names.front().second;
}

}  // namespace roundwright::document_names
