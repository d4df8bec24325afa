#include <gtest/gtest.h>

#include "core/face/work_steps.h"
#include "tests/core/recorded/made_up_pieces.h"
#include "tests/core/recorded/varied_pieces.h"
#include "tests/support/recorded_text.h"

namespace roundwright::test {
namespace {

using testing::RecordedText;

const char* word(Severity severity) {
    constexpr const char* words[] = {"note", "warning", "error"};
    return words[static_cast<std::size_t>(severity)];
}

void tell(RecordedText& text, const Argument& argument) {
    if (const auto* count = std::get_if<int>(&argument)) text << *count;
    if (const auto* number = std::get_if<double>(&argument)) text << *number;
    if (const auto* length = std::get_if<Millimetres>(&argument)) text << length->value << "mm";
    if (const auto* words = std::get_if<std::string>(&argument)) text << *words;
}

void tell(RecordedText& text, const Round& round) {
    if (const auto* even = std::get_if<WorkedEvenly>(&round.working)) {
        text << even->stitches;
        if (even->spacing == Spacing::staggered) text << "staggered";
    } else {
        text << "[" << std::get<AsWritten>(round.working).words << "]";
    }
    if (round.lies_flat) text << "flat";
}

void tell(RecordedText& text, const Feature& feature) {
    text << static_cast<int>(feature.kind) << feature.round << feature.stitches_apart
         << feature.stitches_right << feature.width_mm << feature.height_mm << feature.washer_mm
         << feature.lids;
}

void tell(RecordedText& text, const Cure& cure) {
    text.line("  cure") << static_cast<int>(cure.kind) << cure.first << cure.replaced;
    for (const Round& round : cure.rounds) tell(text, round);
    if (cure.mend) text << mend_code_name(cure.mend->code);
    if (cure.area_stretch) text << "stretch" << *cure.area_stretch;
    if (cure.feature) text << "feature" << cure.feature->feature;
    if (cure.feature && cure.feature->becomes) tell(text, *cure.feature->becomes);
}

void tell(RecordedText& text, const Check& check) {
    text.line(check_code_name(check.code)) << word(check.severity) << check.piece << check.round;
    for (const Argument& argument : check.arguments) tell(text, argument);
    if (check.reading) {
        text << read_code_name(check.reading->code) << check.reading->where.column
             << check.reading->where.length << check.reading->expected << check.reading->found;
        for (const Argument& argument : check.reading->arguments) tell(text, argument);
    }
    for (const Feature& feature : check.features) tell(text, feature);
    for (const Cure& cure : check.cures) tell(text, cure);
}

void tell_checks(RecordedText& text, const std::string& name, const std::vector<Check>& checks) {
    text.heading(name);
    for (const Check& check : checks) tell(text, check);
}

TEST(RecordedChecks, FindAndMendAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i)
        tell_checks(text, varied_pieces()[i].name, varied_studies()[i].checks);
    testing::expect_as_recorded("checks.txt", text);
}

/// What was found before the cures are tried out.
TEST(RecordedChecks, OfferCuresToTryAsBefore) {
    RecordedText text;
    for (std::size_t i = 0; i < varied_pieces().size(); ++i)
        tell_checks(text, varied_pieces()[i].name,
                    checks_with_all_cures(varied_pieces()[i].toy, varied_studies()[i]));
    testing::expect_as_recorded("offered_cures.txt", text);
}

/// Five rounds of so many increases each, marked "lies flat", and closed again where `closes`.
std::string growing_by(const std::string& kind, int step, bool closes) {
    std::string rounds;
    for (int i = 1; i <= 5; ++i) rounds += kind + std::to_string(step * i) + "_ ";
    for (int i = 4; closes && i >= 1; --i) rounds += kind + std::to_string(step * i) + " ";
    return rounds;
}

/// A growing family of discs, cones and closings in every stitch: where each verdict begins.
TEST(RecordedChecks, FollowTheGrowth) {
    RecordedText text;
    for (const char* kind : {"", "h", "d", "t"})
        for (const bool stuffed : {false, true})
            for (int step = 2; step <= (*kind == '\0' ? 12 : 26); ++step) {
                Toy toy = varied_piece("disc").toy;
                const std::string rounds = growing_by(kind, step, stuffed);
                toy.pieces[0].rounds = rounds_of(rounds);
                toy.pieces[0].area_stretch = stuffed ? firm_stuffing_stretch : unstuffed_stretch;
                if (step % 3 == 0) std::get<GivenGauge>(toy.gauge).gauge.round_height_mm = 4.2;
                tell_checks(text, rounds, studied(toy).checks);
            }
    testing::expect_as_recorded("checks_by_growth.txt", text);
}

/// Pieces and faces that nobody has looked at: what is found on them, and how it may be mended.
TEST(RecordedChecks, OfMadeUpPiecesAsBefore) {
    RecordedText text;
    Numbers numbers(23);
    for (int i = 0; i < 60; ++i) {
        Toy toy;
        toy.gauge = GivenGauge{{5, 0.5 * numbers.next(8, 11), 0, 0, 0}};
        toy.pieces.push_back(made_up_piece(numbers));
        Piece& piece = toy.pieces[0];
        piece.features.clear();
        for (int features = numbers.next(0, 4); features > 0; --features)
            piece.features.push_back(made_up_feature(numbers, static_cast<int>(piece.rounds.size())));
        if (numbers.next(0, 2) == 0) {
            const auto round =
                static_cast<std::size_t>(numbers.next(0, static_cast<int>(piece.rounds.size()) - 1));
            std::get<WorkedEvenly>(piece.rounds[round].working).stitches = numbers.next(3, 70);
        }
        tell_checks(text, "piece " + std::to_string(i), studied(toy).checks);
        for (const WorkStep& step : work_steps(piece, studied(toy).problem.rest_loop_mm, 0))
            text.line("step") << step.after_round << static_cast<int>(step.kind) << step.feature;
    }
    testing::expect_as_recorded("checks_made_up.txt", text);
}

/// Counts that the cure of an odd seam would set; before it is tried out, so that only its own limits hold
/// it.
std::vector<int> seam_cures(const char* rounds) {
    Toy toy = varied_piece("seam after growing to an odd number").toy;
    toy.pieces[0].rounds = rounds_of(rounds);
    std::vector<int> counts;
    for (const Check& check : checks_with_all_cures(toy, studied(toy)))
        for (const Cure& cure : check.cures)
            if (check.code == CheckCode::odd_seam)
                counts.push_back(std::get<WorkedEvenly>(cure.rounds[0].working).stitches);
    return counts;
}

TEST(OfferedCures, OfAnOddSeamCanBeWorked) {
    EXPECT_EQ(seam_cures("6 12 18 21"), (std::vector<int>{22}));
    EXPECT_EQ(seam_cures("6 12 18 18 11"), (std::vector<int>{10}));
    EXPECT_EQ(seam_cures("6 12 18 9"), (std::vector<int>{}));  // 8 are fewer than half
    EXPECT_EQ(seam_cures("7 12 15 15"), (std::vector<int>{16}));
    EXPECT_EQ(seam_cures("3 6 2 1"), (std::vector<int>{}));     // nothing is left of 1 stitch
    EXPECT_EQ(seam_cures("6 12 18 20"), (std::vector<int>{}));  // even as it is
}

}  // namespace
}  // namespace roundwright::test
