#include <gtest/gtest.h>
#include <random>
#include <sstream>

#include "core/reshape/continue_from_here.h"
#include "core/reshape/forms.h"
#include "core/reshape/mirror_join.h"
#include "core/reshape/sculpt.h"
#include "core/study/piece_study.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

// Whatever rounds the program finds pass its own checks: from a piece without errors and warnings comes none
// with them. Gaps are looked at apart, since stuffing, and not the rounds, pulls the stitches apart.
namespace roundwright {
namespace {

using testing::one_of;

Toy toy_of(const Piece& piece, const Gauge& gauge) {
    Toy toy;
    toy.gauge = GivenGauge{gauge, ""};
    toy.hook_mm = 3.5;
    toy.yarns.resize(3);
    toy.pieces = {piece};
    return toy;
}

// What the checks say of a piece, notes left out: "ruffles in round 7; ".
std::string faults(const Piece& piece, const Gauge& gauge, bool gaps_too = false) {
    std::ostringstream words;
    for (const Check& check : study_piece(toy_of(piece, gauge), 0).checks()) {
        if (check.severity == Severity::note || (check.code == CheckCode::gaps && !gaps_too)) continue;
        words << check_code_name(check.code) << " in round " << check.round + 1 << "; ";
    }
    return words.str();
}
std::string faults(const PieceForm& form) { return faults(form.piece, form.gauge); }

std::string counts(const PieceForm& form) {
    return ::testing::PrintToString(stitch_counts(form.graph.graph));
}

double between(std::mt19937& random, double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
}

// Without marks: a round that is to lie flat may do so in one size and not in another.
PieceForm faultless_piece(std::mt19937& random) {
    for (;;) {
        Piece piece = testing::random_piece(random);
        for (Round& round : piece.rounds) round.lies_flat = false;
        const Gauge gauge = testing::random_gauge(random);
        if (faults(piece, gauge, true).empty()) return piece_form(piece, gauge);
    }
}

Target random_wish(std::mt19937& random, const Size& size) {
    const double s = between(random, 0.4, 2.5);
    const double other = between(random, 0.8, 1.25);
    const Gauge gauge = testing::random_gauge(random);
    Target wish;
    switch (one_of(random, 4)) {
        case 0:
            wish.width_mm = s * size.width_mm;
            break;
        case 1:
            wish.scale = s;
            break;
        case 2:
            wish.gauge = gauge;
            break;
        default:
            wish.width_mm = s * size.width_mm;
            wish.height_mm = s * other * size.height_mm;
    }
    return wish;
}

TEST(OwnRounds, AnotherSizeOrYarnBringsNoFault) {
    std::mt19937 random(71);
    const double tidiness[] = {0, 0.5, 1};
    int with_gaps = 0;
    const int cases = testing::random_cases(1'500);
    for (int i = 0; i < cases; ++i) {
        const PieceForm form = faultless_piece(random);
        const Reshaped made =
            resize(form, random_wish(random, form.size()), {tidiness[one_of(random, 3)], {}});
        if (!has_piece(made.code)) continue;
        EXPECT_EQ(faults(made.form), "") << "case " << i << ": " << counts(form) << " " << counts(made.form);
        const bool firm = form.piece.area_stretch > medium_stuffing_stretch;
        with_gaps += !firm && !faults(made.form.piece, made.form.gauge, true).empty();
    }
    // A larger piece is pulled further apart at its poles, firm ones most.
    EXPECT_LE(with_gaps, std::max(1, cases / 50));
}

TEST(OwnRounds, GoingOnFromWhatIsWorkedBringsNoFault) {
    std::mt19937 random(72);
    int ways = 0, bad = 0;
    for (int i = 0; i < testing::random_cases(150); ++i) {
        PieceForm form = faultless_piece(random);
        WorkedSoFar worked;
        worked.rounds = 1 + one_of(random, static_cast<int>(form.piece.rounds.size()));
        form.piece.worked = worked;
        for (const WayOn& way : continue_from_here(form, random_wish(random, form.size()), worked, 4)) {
            ++ways;
            bad += !faults(way.made.form).empty();
        }
    }
    // Worked rounds that do not fit the wish may leave no other way.
    EXPECT_LE(bad, ways / 20);
}

Form random_form(std::mt19937& random, const Gauge& gauge) {
    Form form =
        usual_form(static_cast<FormKind>(one_of(random, 8)), between(random, 6, 40) * gauge.stitch_width_mm);
    form.height_mm *= between(random, 0.75, 1.4);
    form.top_width_mm *= between(random, 0.75, 1.3);
    form.closed = one_of(random, 2) == 0;
    return form;
}

TEST(OwnRounds, NoFormHasAFault) {
    std::mt19937 random(73);
    const double stretches[] = {unstuffed_stretch, light_stuffing_stretch, medium_stuffing_stretch,
                                firm_stuffing_stretch};
    for (int i = 0; i < testing::random_cases(800); ++i) {
        const Gauge gauge = testing::random_gauge(random);
        const Form form = random_form(random, gauge);
        const double stretch = stretches[one_of(random, 4)];
        const auto from = one_of(random, 2) == 0 ? FormCounts::size : FormCounts::nearest_stitch;
        if (form_code(form) != FormCode::good) continue;
        const Reshaped made = piece_from_form(form, gauge, stretch, from);
        if (!has_piece(made.code)) continue;
        EXPECT_EQ(faults(made.form), "")
            << "case " << i << ": form " << int(form.kind) << ", " << counts(made.form);
    }
}

TEST(OwnRounds, APulledOutlineBringsNoFault) {
    std::mt19937 random(74);
    const double tidiness[] = {0, 0.5, 1};
    for (int i = 0; i < testing::random_cases(800); ++i) {
        const SculptStart start = sculpt_start(faultless_piece(random));
        const double round = start.form.gauge.round_height_mm;
        const auto at =
            static_cast<std::size_t>(one_of(random, static_cast<int>(start.outline.points.size())));
        const Vec2 by(between(random, -3, 3) * round, between(random, -3, 3) * round);
        const Silhouette line = dragged(start.outline, at, by, between(random, 2, 8) * round);
        const Sculpted made = sculpt(start, line, tidiness[one_of(random, 3)]);
        if (!made.usable) continue;
        EXPECT_EQ(faults(made.piece, start.form.gauge), "")
            << "case " << i << ", point " << at << ": " << counts(start.form) << " "
            << counts(piece_form(made.piece, start.form.gauge));
    }
}

TEST(OwnRounds, JoiningTwoPiecesBringsNoFault) {
    std::mt19937 random(75);
    int joins = 0, bad = 0;
    for (int i = 0; i < testing::random_cases(800); ++i) {
        const PieceForm first = faultless_piece(random);
        PieceForm second = faultless_piece(random);
        second = piece_form(second.piece, first.gauge);
        if (!faults(second).empty()) continue;
        const int neck = std::max(3, usual_neck(first, second) + one_of(random, 9) - 4);
        const auto made = joined(first, second, neck);
        if (!made) continue;
        ++joins;
        bad += !faults(*made, first.gauge).empty();
    }
    // Both pieces keep their rounds: those that grow as fast as just lies flat by themselves may ruffle where
    // they go on from a neck.
    EXPECT_LE(bad, joins / 50);
}

}  // namespace
}  // namespace roundwright
