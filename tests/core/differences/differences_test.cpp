#include "core/differences/differences.h"

#include <algorithm>
#include <functional>
#include <gtest/gtest.h>
#include <random>

#include "core/differences/round_differences.h"
#include "core/differences/toy_totals.h"
#include "tests/core/document/random_toy.h"
#include "tests/support/random_cases.h"

namespace roundwright {
namespace {

using Code = DifferenceCode;
using Counts = std::vector<int>;

Round even(int stitches) { return {WorkedEvenly{stitches}, 0, false, ""}; }

Piece piece(const std::string& name, const Counts& counts) {
    Piece made;
    made.name = name;
    for (const int count : counts) made.rounds.push_back(even(count));
    return made;
}

Toy seal() {
    Toy toy;
    toy.title = "Seal pup";
    toy.yarns.push_back({});
    toy.yarns.back().name = "Fog grey";
    toy.yarns.push_back({});
    toy.yarns.back().name = "Tide blue";
    toy.pieces.push_back(piece("Head", {6, 12, 18, 24, 30, 36, 36, 36, 36, 30, 24, 18, 12, 6}));
    toy.pieces.push_back(piece("Body", {6, 12, 18, 24, 24, 24, 18}));
    return toy;
}

std::vector<Difference> after(const std::function<void(Toy&)>& change) {
    Toy changed = seal();
    change(changed);
    return differences(seal(), changed);
}

Difference only(const std::function<void(Toy&)>& change) {
    const auto all = after(change);
    EXPECT_EQ(all.size(), 1u);
    return all.empty() ? Difference{} : all.front();
}

struct RoundRun {
    Code code;
    int first;
    int last;
    Counts then;
    Counts now;
    friend bool operator==(const RoundRun&, const RoundRun&) = default;
};

std::vector<RoundRun> rounds(const Counts& before, const Counts& now) {
    std::vector<RoundRun> runs;
    for (const Difference& d : round_differences(piece("", before), piece("", now), {std::size_t{0}}))
        runs.push_back({d.code, d.first + 1, d.last + 1, d.then, d.now});
    return runs;
}

TEST(Differences, EqualToysHaveNone) { EXPECT_TRUE(differences(seal(), seal()).empty()); }

TEST(Differences, RoundsSideBySide) {
    using Runs = std::vector<RoundRun>;
    EXPECT_EQ(rounds({6, 12, 18}, {6, 12, 18}), Runs{});
    EXPECT_EQ(rounds({6, 12, 36, 36, 12}, {6, 12, 30, 30, 12}),
              (Runs{{Code::rounds_counts, 3, 4, {36, 36}, {30, 30}}}));
    EXPECT_EQ(rounds({6, 12, 18, 24, 18, 12}, {6, 12, 18, 21, 24, 18, 12}),
              (Runs{{Code::rounds_new, 4, 4, {}, {21}}}))
        << "a round put in leaves the later ones as they are";
    EXPECT_EQ(rounds({6, 12, 18, 24, 24, 24, 18}, {6, 12, 18, 24, 24, 18}),
              (Runs{{Code::rounds_gone, 6, 6, {24}, {}}}));
    EXPECT_EQ(rounds({6, 12, 18}, {6, 12, 18, 24, 30}), (Runs{{Code::rounds_new, 4, 5, {}, {24, 30}}}));
    EXPECT_EQ(rounds({6, 12, 18, 24, 30, 36}, {7, 12, 18, 24, 30, 35}),
              (Runs{{Code::rounds_counts, 1, 1, {6}, {7}}, {Code::rounds_counts, 6, 6, {36}, {35}}}));
    EXPECT_EQ(rounds({}, {6}), (Runs{{Code::rounds_new, 1, 1, {}, {6}}}));
    EXPECT_EQ(rounds({6, 12, 18, 24, 30}, {5, 10, 15, 20, 25}),
              (Runs{{Code::rounds_counts, 1, 5, {6, 12, 18, 24, 30}, {5, 10, 15, 20, 25}}}));
}

TEST(Differences, OfRoundsMarksYarnsAndWords) {
    const auto note = only([](Toy& toy) { toy.pieces[0].rounds[11].note = "stuff it now"; });
    EXPECT_EQ(note.code, Code::rounds_note);
    EXPECT_EQ(note.name, "Head");
    EXPECT_EQ(note.first, 11);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].rounds[2].lies_flat = true; }).code, Code::rounds_flat_mark);
    const auto yarn = only([](Toy& toy) {
        for (const std::size_t round : {4, 5, 6}) toy.pieces[0].rounds[round].yarn = 1;
    });
    EXPECT_EQ(yarn.code, Code::rounds_yarn);
    EXPECT_EQ(yarn.first, 4);
    EXPECT_EQ(yarn.last, 6);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].rounds[1].working = AsWritten{"[inc] x 6"}; }).code,
              Code::rounds_stitches);
    const auto written = only([](Toy& toy) { toy.pieces[0].rounds[13].working = AsWritten{"12 sc"}; });
    EXPECT_EQ(written.code, Code::rounds_counts);
    EXPECT_EQ(written.now, Counts{12});
}

TEST(Differences, OfPieces) {
    const auto fresh = only([](Toy& toy) { toy.pieces.push_back(piece("Left ear", {6, 9})); });
    EXPECT_EQ(fresh.code, Code::piece_new);
    EXPECT_EQ(fresh.name, "Left ear");
    EXPECT_EQ(fresh.now, (Counts{6, 9}));
    const auto gone = only([](Toy& toy) { toy.pieces.pop_back(); });
    EXPECT_EQ(gone.code, Code::piece_gone);
    EXPECT_EQ(gone.name, "Body");
    const auto renamed = only([](Toy& toy) { toy.pieces[1].name = "Tummy"; });
    EXPECT_EQ(renamed.code, Code::piece_renamed);
    EXPECT_EQ(renamed.old_name, "Body");
    EXPECT_EQ(only([](Toy& toy) { toy.pieces.move(0, 1); }).code, Code::pieces_in_other_order);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].start = ChainRing{4}; }).code, Code::start);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].end = End::drawn_closed; }).code, Code::end);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].joining = Joining::joined; }).code, Code::joining);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].area_stretch = 0.08; }).code, Code::stuffing);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].stuffed_rounds = RoundSpan{1, 2}; }).now, (Counts{1, 2}));
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].weight_grams = 30; }).now_value, 30);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].make = 2; }).now, Counts{2});
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].worked.rounds = 3; }).code, Code::worked);
    EXPECT_EQ(only([](Toy& toy) { toy.pieces[0].features.push_back({}); }).code, Code::feature_new);
}

TEST(Differences, APieceWithAnotherIdIsKnownByItsName) {
    Toy read = seal();
    read.pieces.erase(read.pieces.begin());
    read.pieces.insert(read.pieces.begin(), seal().pieces[0]);
    ASSERT_NE(read.pieces.id(0), seal().pieces.id(0));
    read.pieces[0].rounds.pop_back();
    const auto all = differences(seal(), read);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(all.front().code, Code::rounds_gone);
}

TEST(Differences, OfTheToy) {
    EXPECT_EQ(only([](Toy& toy) { toy.title = "Harbour seal"; }).code, Code::title);
    EXPECT_EQ(only([](Toy& toy) { toy.hook_mm = 4; }).now_value, 4);
    EXPECT_EQ(only([](Toy& toy) { toy.gauge = EstimatedGauge{}; }).code, Code::gauge);
    EXPECT_EQ(only([](Toy& toy) { toy.notes = "x"; }).code, Code::notes);
    EXPECT_EQ(only([](Toy& toy) { toy.private_notes = "x"; }).code, Code::private_notes);
    EXPECT_EQ(only([](Toy& toy) { toy.text.assembly = "Sew on the ears."; }).code, Code::pattern_words);
    EXPECT_EQ(only([](Toy& toy) { toy.making.hourly_rate = 12; }).code, Code::making);
    EXPECT_EQ(only([](Toy& toy) { toy.text.written_for = {{PieceId{1}, {6}}}; }).code, Code::other);
}

TEST(Differences, AYarnPutInBeforeOthersMakesNoRoundDiffer) {
    Toy changed = seal();
    changed.yarns.insert(changed.yarns.begin(), Yarn{});
    changed.yarns.front().name = "Sand";
    for (Piece& one : changed.pieces) {
        for (Round& round : one.rounds) ++round.yarn;
    }
    const auto all = differences(seal(), changed);
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(all.front().code, Code::yarn_new);
    EXPECT_EQ(all.front().name, "Sand");
}

TEST(Differences, OfYarns) {
    EXPECT_EQ(only([](Toy& toy) { toy.yarns[1].name = "Deep blue"; }).code, Code::yarn_renamed);
    EXPECT_EQ(only([](Toy& toy) { toy.yarns[1].colour = {1, 2, 3}; }).code, Code::yarn_changed);
    EXPECT_EQ(only([](Toy& toy) { toy.yarns.pop_back(); }).code, Code::yarn_gone);
}

TEST(Differences, OfRandomToysThereAreNoneForEqualAndSomeForOthers) {
    std::mt19937 random(20260304);
    for (int i = 0; i < testing::random_cases(400); ++i) {
        const Toy before = test::random_toy(random);
        const Toy now = test::random_toy(random);
        EXPECT_TRUE(differences(before, before).empty());
        EXPECT_EQ(differences(before, now).empty(), before == now);
    }
}

/// Every round that a difference names as new, gone or changed, and no other.
TEST(Differences, OfRandomEditsNameWhatWasEdited) {
    std::mt19937 random(99);
    for (int i = 0; i < testing::random_cases(1000); ++i) {
        Toy changed = seal();
        auto& list = changed.pieces[0].rounds;
        const std::size_t at = random() % list.size();
        const int marker = 1000 + static_cast<int>(random() % 100);
        const auto how = random() % 3;
        if (how == 0) list[at].working = WorkedEvenly{marker};
        if (how == 1) list.insert(list.begin() + static_cast<std::ptrdiff_t>(at), even(marker));
        if (how == 2) list.erase(list.begin() + static_cast<std::ptrdiff_t>(at));
        const auto all = differences(seal(), changed);
        ASSERT_EQ(all.size(), 1u);
        const Difference& d = all.front();
        EXPECT_EQ(d.first, d.last);
        if (how == 2) {
            EXPECT_EQ(d.code, Code::rounds_gone);
            EXPECT_EQ(d.then,
                      round_counts(
                          piece("", {std::get<WorkedEvenly>(seal().pieces[0].rounds[at].working).stitches})));
            continue;
        }
        EXPECT_EQ(d.code, how == 0 ? Code::rounds_counts : Code::rounds_new);
        EXPECT_EQ(d.first, static_cast<int>(at));
        EXPECT_EQ(d.now, Counts{marker});
    }
}

TEST(ToyTotals, CountWhatIsDrafted) {
    EXPECT_EQ(toy_totals({}), ToyTotals{});
    EXPECT_EQ(toy_totals(seal()), (ToyTotals{2, 21, 324 + 126}));
}

}  // namespace
}  // namespace roundwright
