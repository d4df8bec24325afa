#include "core/checks/sound_cures.h"

#include <gtest/gtest.h>
#include <random>

#include "core/study/piece_study.h"
#include "tests/core/reshape/random_piece.h"
#include "tests/support/random_cases.h"

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

// Counts that are mistyped here and there.
Piece spoilt_piece(std::mt19937& random) {
    Piece piece = testing::random_piece(random);
    for (Round& round : piece.rounds) {
        auto& even = std::get<WorkedEvenly>(round.working);
        if (one_of(random, 7) == 0) even.stitches = std::max(3, even.stitches + one_of(random, 35) - 14);
    }
    return piece;
}

int number_of(const std::vector<Check>& checks, Severity severity) {
    return static_cast<int>(std::ranges::count(checks, severity, &Check::severity));
}

TEST(SoundCures, NoCureThatIsOfferedBringsAnErrorOrAnotherWarning) {
    std::mt19937 random(81);
    int offered = 0;
    for (int i = 0; i < testing::random_cases(400); ++i) {
        const Piece piece = spoilt_piece(random);
        const Gauge gauge = testing::random_gauge(random);
        const auto before = study_piece(toy_of(piece, gauge), 0).checks();
        for (const Check& check : before)
            for (const Cure& cure : check.cures) {
                ++offered;
                const auto after = study_piece(toy_of(cured_piece(piece, cure), gauge), 0).checks();
                EXPECT_TRUE(is_sound_cure(check, cure, before, after))
                    << "case " << i << ": " << check_code_name(check.code) << " in round " << check.round + 1;
                EXPECT_LE(number_of(after, Severity::error) - number_of(before, Severity::error),
                          check.severity == Severity::error ? -1 : 0);
            }
    }
    EXPECT_GT(offered, testing::random_cases(400));
}

TEST(SoundCures, AnErrorMayBecomeAWarningOfItsOwnRound) {
    Check error{CheckCode::too_many_decreases, Severity::error, 0, 4, {}, {}};
    const Cure cure{CureKind::set_count, {Round{}}, 4, 1};
    const Check gathers{CheckCode::gathers, Severity::warning, 0, 4, {}, {}};
    Check far_off = gathers;
    far_off.round = 12;
    EXPECT_TRUE(is_sound_cure(error, cure, {error}, {gathers}));
    EXPECT_FALSE(is_sound_cure(error, cure, {error}, {far_off}));
    EXPECT_FALSE(is_sound_cure(error, cure, {error}, {error}));
}

TEST(SoundCures, AWarningMayNotBecomeAnother) {
    const Check ruffles{CheckCode::ruffles, Severity::warning, 0, 4, {}, {}};
    const Check gathers{CheckCode::gathers, Severity::warning, 0, 4, {}, {}};
    const Cure cure{CureKind::spread_increases, {Round{}}, 4, 1};
    EXPECT_TRUE(is_sound_cure(ruffles, cure, {ruffles}, {}));
    EXPECT_FALSE(is_sound_cure(ruffles, cure, {ruffles}, {gathers}));
}

}  // namespace
}  // namespace roundwright
