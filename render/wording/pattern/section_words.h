#pragma once

#include <QString>
#include <QStringList>

#include "core/language/pattern/written_rounds.h"
#include "core/language/words/terms.h"
#include "render/wording/length_unit.h"
#include "render/wording/pattern/pattern_facts.h"

namespace roundwright::render {

/// The sentences of the pattern's sections, the same in every form it is written in. An empty one is left
/// out.

/// Paragraphs of the maker's own text, on one line each, without empty ones.
[[nodiscard]] QStringList paragraphs_of(const std::string& utf8);

// Materials.
[[nodiscard]] QString yarn_name_words(const Yarn& yarn);
[[nodiscard]] QString yarn_length_range_words(const YarnUse& use, LengthUnit units);
/// Grams, and balls on a line below. They agree with the printed length, itself rounded upwards.
[[nodiscard]] QString yarn_amount_words(const Yarn& yarn, const YarnUse& use, LengthUnit units);
[[nodiscard]] QString yarn_estimate_words(const Toy& toy);
[[nodiscard]] QString stuffing_words(const PatternStudy& study, Terms terms, LengthUnit units);
/// Of weights that the toy is given; empty where there are none.
[[nodiscard]] QString pellets_words(const PatternStudy& study, LengthUnit units);
[[nodiscard]] QStringList notions_words(const Toy& toy);

// Gauge.
[[nodiscard]] QString gauge_heading_words(Terms terms);
[[nodiscard]] QString gauge_words(const PatternStudy& study, Terms terms, LengthUnit units);
[[nodiscard]] QString gauge_source_words(const PatternStudy& study, Terms terms);
/// What the ranges of sizes hold (core/shape/size_range.h); empty where there are none.
[[nodiscard]] QString size_range_words(const PatternStudy& study, Terms terms);
[[nodiscard]] QString gauge_circle_words(const PatternStudy& study, Terms terms, LengthUnit units);
[[nodiscard]] QString other_gauges_heading_words(Terms terms);
[[nodiscard]] QString other_gauges_words(Terms terms);

// Rounds.
[[nodiscard]] QString piece_name_words(const Toy& toy, std::size_t piece);
[[nodiscard]] QStringList piece_fact_words(const PatternStudy& study, std::size_t piece, Terms terms,
                                           LengthUnit units);
/// Whether a piece is no higher than its fabric, or hardly rises for its width.
[[nodiscard]] bool lies_flat(const FinishedSize& size);
/// "62 × 95 mm", or of a flat piece "66 mm across".
[[nodiscard]] QString piece_size_words(const FinishedSize& size, LengthUnit units);
/// "96 mm (90 to 103) wide, 150 mm (140 to 161) tall, 84 mm (79 to 90) deep": of a toy that is joined
/// together; empty otherwise.
[[nodiscard]] QString whole_size_words(const PatternStudy& study, LengthUnit units);
[[nodiscard]] QString end_words(const Toy& toy, std::size_t piece);
/// "Leg (2), Body": the pieces that one is worked on, each once.
[[nodiscard]] QString worked_on_names(const Toy& toy, std::size_t piece);
/// How the piece is begun, where its first round does not say it; the edges that it is worked on by name.
[[nodiscard]] QString start_line_words(const Toy& toy, std::size_t piece, Terms terms);
/// Which yarn a piece is worked in, or begun with; empty where the rounds say it themselves.
[[nodiscard]] QString piece_yarn_words(const Toy& toy, const std::vector<WrittenRounds>& rounds);
[[nodiscard]] QString change_words(const Toy& toy, const WrittenRounds& rounds);
[[nodiscard]] QString does_not_fit_words();

// Terms and making up.
[[nodiscard]] QString terms_words(Terms terms);
[[nodiscard]] QString reading_words(Terms terms);
[[nodiscard]] QStringList finishing_words(const Toy& toy, Terms terms);
[[nodiscard]] QStringList safety_words(const Toy& toy);

}  // namespace roundwright::render
