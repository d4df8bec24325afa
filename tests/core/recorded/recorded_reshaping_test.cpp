#include <algorithm>
#include <gtest/gtest.h>

#include "core/reshape/compare.h"
#include "core/reshape/continue_from_here.h"
#include "core/reshape/forms.h"
#include "core/reshape/in_place_of.h"
#include "core/reshape/mirror_join.h"
#include "core/reshape/reshape_toy.h"
#include "core/reshape/sculpt.h"
#include "tests/core/recorded/made_up_pieces.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

void tell(RecordedText& text, const Piece& piece) {
    text.line("  rounds");
    for (const Round& round : piece.rounds) {
        if (const auto* even = std::get_if<WorkedEvenly>(&round.working)) {
            text << even->stitches;
            if (even->kind != StitchKind::single_crochet) text << "kind" << static_cast<int>(even->kind);
        } else {
            text << "[" << std::get<AsWritten>(round.working).words << "]";
        }
        if (round.yarn > 0) text << "yarn" << round.yarn;
        if (round.lies_flat) text << "flat";
        if (!round.note.empty()) text << "(" << round.note << ")";
    }
    text.line("  start") << static_cast<int>(piece.start.index()) << static_cast<int>(piece.end);
    for (const Feature& feature : piece.features)
        text.line("  feature") << static_cast<int>(feature.kind) << feature.round << feature.stitches_apart
                               << feature.stitches_right << feature.end_round << feature.end_stitches_right;
}

void tell(RecordedText& text, const Reshaped& made) {
    text << reshape_code_name(made.code) << made.wanted.width_mm << made.wanted.height_mm;
    if (!has_piece(made.code)) return;
    text << made.reached().width_mm << made.reached().height_mm << made.returns_within_a_round
         << made.scale.around << made.scale.along;
    for (const int round : made.rewritten) text << "rewritten" << round;
    tell(text, made.form.piece);
}

void tell(RecordedText& text, const FrogBack& back) {
    text.line("  frog") << back.keep_rounds << back.keep_stitches << back.undo_rounds << back.undo_stitches
                        << back.yarn_mm().likely << back.yarn_mm().low << back.yarn_mm().high;
}

std::vector<std::pair<const char*, Target>> wishes(const PieceForm& form) {
    const auto [w, h] = form.size();
    std::vector<std::pair<const char*, Target>> all(9);
    all[0] = {"smaller", {}};
    all[0].second.scale = 0.7;
    all[1] = {"larger", {}};
    all[1].second.width_mm = 1.35 * w;
    all[2] = {"taller", {}};
    all[2].second.width_mm = w;
    all[2].second.height_mm = 1.25 * h;
    all[3] = {"by_height", {}};
    all[3].second.height_mm = 0.85 * h;
    all[4] = {"by_tape", {}};
    all[4].second.circumference_mm = 4 * w;
    all[5] = {"other_yarn", {}};
    all[5].second.gauge =
        Gauge{form.gauge.stitch_width_mm * 1.2, form.gauge.round_height_mm * 1.1, 0.1, 0.1, 0};
    all[6] = {"tiny", {}};
    all[6].second.scale = 0.03;
    all[7] = {"both", {}};
    all[7].second.scale = 2;
    all[7].second.width_mm = 40;
    all[8] = {"huge", {}};
    all[8].second.scale = 90;
    return all;
}

constexpr const char* reshaped_pieces[] = {"smallest ball",
                                           "egg",
                                           "gourd with a neck",
                                           "cone, open",
                                           "cylinder on a flat base",
                                           "disc",
                                           "ear, limp",
                                           "tube sewn straight",
                                           "ring of chains",
                                           "leg from a chain",
                                           "oval sole with sides",
                                           "tall stitches",
                                           "joined rounds with stripes",
                                           "written rounds",
                                           "head with a face",
                                           "body with notes, made twice",
                                           "two discs",
                                           "words that do not fit"};

TEST(RecordedReshaping, ResizesAsBefore) {
    RecordedText text;
    for (const char* name : reshaped_pieces) {
        const PieceForm form = piece_form(varied_piece(name).toy.pieces[0], {5, 4.8, 0.2, 0.2, 0});
        text.heading(name);
        text.line("start_count") << start_count(form.piece, form.graph.graph);
        for (const auto& [wish, target] : wishes(form)) tell(text.line(wish), resize(form, target));
        Target wider;
        wider.width_mm = 1.15 * form.size().width_mm;
        for (const double tidiness : {0.0, 1.0}) {
            ReshapeOptions options;
            options.tidiness = tidiness;
            tell(text.line("wider"), resize(form, wider, options));
        }
    }
    testing::expect_as_recorded("resized.txt", text);
}

TEST(RecordedReshaping, FormsComeOutAsBefore) {
    RecordedText text;
    for (int kind = 0; kind < 8; ++kind)
        for (const double width : {40.0, 75.0}) {
            Form form = usual_form(static_cast<FormKind>(kind), width);
            text.heading("form " + std::to_string(kind));
            text.line("usual") << form.width_mm << form.height_mm << form.top_width_mm << form.waist_width_mm
                               << form.closed << starts_at_top(form.kind);
            const auto outline = silhouette_of(form).points;
            for (std::size_t i = 0; i < outline.size(); i += std::max<std::size_t>(1, outline.size() / 11))
                text.line("outline") << i << outline[i].x() << outline[i].y();
            for (const bool closed : {false, true}) {
                form.closed = closed;
                tell(text.line("size"), piece_from_form(form, {5, 5, 0, 0, 0}));
                tell(text.line("nearest"), piece_from_form(form, {4, 4.4, 0, 0, 0}, firm_stuffing_stretch,
                                                           FormCounts::nearest_stitch));
                tell(text.line("empty"), piece_from_form(form, {5, 4.6, 0, 0, 0}, unstuffed_stretch));
            }
        }
    testing::expect_as_recorded("forms.txt", text);
}

TEST(RecordedReshaping, SculptsAsBefore) {
    RecordedText text;
    for (const char* name :
         {"egg", "pear", "cone, open", "ear, limp", "head with a face", "leg from a chain"}) {
        const SculptStart start = sculpt_start(piece_form(varied_piece(name).toy.pieces[0], {5, 5, 0, 0, 0}));
        text.heading(name);
        text.line("course").each(start.fabric.course_stretch);
        text.line("round").each(start.fabric.round_mm);
        const std::size_t points = start.outline.points.size();
        for (const auto& [point, by] : std::vector<std::pair<std::size_t, Vec2>>{
                 {points / 3, {6, 0}}, {points / 2, {-5, 2}}, {points - 2, {3, 4}}, {1, {4, -3}}}) {
            const Sculpted made = sculpt(start, dragged(start.outline, point, by, 22), 0.5);
            text.line("pulled") << point << made.usable << made.apart_mm << made.shape.width_mm
                                << made.shape.height_mm;
            tell(text, made.piece);
        }
    }
    testing::expect_as_recorded("sculpted.txt", text);
}

TEST(RecordedReshaping, GoesOnFromTheHookAsBefore) {
    RecordedText text;
    for (const char* name :
         {"egg", "body with notes, made twice", "leg from a chain", "joined rounds with stripes"}) {
        Toy toy = varied_piece(name).toy;
        toy.pieces[0].worked = {6, 5, {40, 0, 70, 90, 60, 80}};
        const PieceForm form = piece_form(toy.pieces[0], {5, 5, 0, 0, 0});
        text.heading(name);
        for (const double scale : {0.8, 1.2}) {
            Target target;
            target.width_mm = scale * form.size().width_mm;
            target.height_mm = form.size().height_mm;
            for (const WayOn& way : ways_on_for(toy, form, target, 4)) {
                text.line("way") << way.shape_error_mm;
                tell(text, way.made);
                tell(text, way.back);
            }
        }
    }
    testing::expect_as_recorded("ways_on.txt", text);
}

TEST(RecordedReshaping, MirrorsJoinsAndReplacesAsBefore) {
    RecordedText text;
    const Gauge gauge{5, 5, 0, 0, 0};
    const PieceForm ball = piece_form(varied_piece("smallest ball").toy.pieces[0], gauge);
    for (const VariedPiece& varied : varied_pieces()) {
        const PieceForm form = piece_form(varied.toy.pieces[0], gauge);
        text.heading(varied.name);
        if (const auto turned = mirrored(form)) tell(text.line("mirrored"), *turned);
        text.line("neck") << usual_neck(form, ball);
        for (const int neck : {usual_neck(form, ball), 10}) {
            if (const auto made = joined(form, ball, neck)) tell(text.line("joined"), *made);
            if (const auto made = joined(ball, form, neck)) tell(text.line("joined"), *made);
        }
        if (!form.usable()) continue;
        const Comparison compared = compare(form, ball);
        text.line("compared") << compared.first_difference << compared.old_total << compared.new_total
                              << compared.outlines_apart_mm;
        tell(text.line("in_place"), in_place_of(form, ball, {}));
    }
    testing::expect_as_recorded("mirrored_joined.txt", text);
}

TEST(RecordedReshaping, ToysInAnotherYarnAsBefore) {
    RecordedText text;
    for (const char* name : {"egg", "cylinder on a flat base", "body with notes, made twice"}) {
        Toy toy = varied_piece(name).toy;
        toy.pieces[0].worked = {4, 3, {}};
        text.heading(name);
        for (const Toy& other : {with_hook(toy, 4.5), with_yarn_weight(toy, YarnWeight::bulky)}) {
            const Gauge gauge = gauge_of(other);
            text.line("gauge") << gauge.stitch_width_mm << gauge.round_height_mm
                               << gauge.stitch_width_error_mm;
            for (const ReshapedToy& made :
                 {reshape_toy(toy, other, all_pieces(toy), {}), same_rounds(toy, other, all_pieces(toy))})
                for (const ReshapedPiece& piece : made.pieces) {
                    tell(text.line("made"), piece.made);
                    tell(text, piece.back);
                    text << made.all_met() << made.toy.pieces[0].worked.rounds
                         << made.toy.pieces[0].worked.stitches;
                }
        }
    }
    testing::expect_as_recorded("other_yarn.txt", text);
}

Target made_up_wish(Numbers& numbers, const PieceForm& form) {
    const auto factor = [&] { return 0.05 * numbers.next(10, 36); };
    Target target;
    switch (numbers.next(0, 3)) {
        case 0:
            target.scale = factor();
            break;
        case 1:
            target.width_mm = factor() * form.size().width_mm;
            target.height_mm = factor() * form.size().height_mm;
            break;
        case 2:
            target.gauge = Gauge{3 + 0.5 * numbers.next(0, 9), 3 + 0.5 * numbers.next(0, 9), 0, 0, 0};
            break;
        default:
            target.height_mm = factor() * form.size().height_mm;
    }
    return target;
}

TEST(RecordedReshaping, MadeUpPiecesAreResizedAsBefore) {
    RecordedText text;
    Numbers numbers(7);
    for (int i = 0; i < 24; ++i) {
        const Piece piece = made_up_piece(numbers);
        const double round_height = 0.5 * numbers.next(8, 11);
        const PieceForm form = piece_form(piece, {5, round_height, 0, 0, 0});
        text.heading("piece " + std::to_string(i));
        tell(text.line("as_it_is"), form.piece);
        for (int wish = 0; wish < 2; ++wish)
            tell(text.line("resized"), resize(form, made_up_wish(numbers, form)));
    }
    testing::expect_as_recorded("resized_made_up.txt", text);
}

TEST(RecordedReshaping, MadeUpPiecesAreSculptedAndGoOnAsBefore) {
    RecordedText text;
    Numbers numbers(11);
    for (int i = 0; i < 24; ++i) {
        Toy toy;
        toy.pieces = {made_up_piece(numbers)};
        const int rounds = static_cast<int>(toy.pieces[0].rounds.size());
        toy.pieces[0].worked = {numbers.next(0, rounds), numbers.next(0, 5), {}};
        const PieceForm form = piece_form(toy.pieces[0], {5, 5, 0, 0, 0});
        text.heading("piece " + std::to_string(i));
        const SculptStart start = sculpt_start(form);
        const int points = static_cast<int>(start.outline.points.size());
        for (int drag = 0; drag < 2; ++drag) {
            const auto point = static_cast<std::size_t>(numbers.next(0, points - 1));
            const double out = numbers.next(-9, 9), up = numbers.next(-5, 5);
            const double reach = 10.0 * numbers.next(1, 4), tidiness = 0.25 * numbers.next(0, 3);
            const Sculpted made = sculpt(start, dragged(start.outline, point, {out, up}, reach), tidiness);
            text.line("pulled") << made.usable << made.apart_mm << made.shape.width_mm
                                << made.shape.height_mm;
            if (made.usable) tell(text, made.piece);
        }
        Target target;
        target.scale = 0.1 * numbers.next(7, 14);
        for (const WayOn& way : ways_on_for(toy, form, target, 2)) {
            text.line("way") << way.shape_error_mm;
            tell(text, way.made);
            tell(text, way.back);
        }
    }
    testing::expect_as_recorded("sculpted_made_up.txt", text);
}

}  // namespace
}  // namespace roundwright::test
