#include "app/rounds/round_edits.h"

#include <gtest/gtest.h>

#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

// The row below the last one is typed into: what is shown has a round more than what is edited.
TEST(RoundEditsTest, ARoundThatIsOnlyShownIsNoneToBeginFrom) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18}));
    const RoundEdits edits(session);
    const Round next = edits.like_round_before(3);
    const auto shown = edits.with_appended({CountEntry::Kind::count, 24});
    ASSERT_TRUE(shown);
    LivePreview preview(session, QStringLiteral("Round 4"));
    preview.show(*shown);
    ASSERT_EQ(session.piece()->rounds.size(), 4U);
    EXPECT_EQ(edits.like_round_before(4), next);
    const auto grown = edits.with_inserted(4, {next});
    ASSERT_TRUE(grown);
    EXPECT_EQ(counts_of(grown->pieces[0]), (std::vector{6, 12, 18, 18}));
}

/// Something sewn on after round 3, and something at the last edge.
Toy toy_with_joins() {
    Toy toy = toy_of({6, 12, 18, 24, 24, 24});
    toy.pieces.push_back(Piece{});
    for (const int round : {2, 5})
        toy.joins.push_back(
            {.piece = {toy.pieces.id(1), 0}, .onto = {toy.pieces.id(0), 0}, .at = {.round = round}});
    return toy;
}

TEST(RoundEditsTest, JoinsStayInTheirGapsWhateverIsDoneToTheRounds) {
    DocumentSession session;
    session.start(toy_with_joins());
    session.set_current_piece(0);
    RoundEdits edits(session);
    const auto rounds = [&] {
        return std::vector{session.toy().joins[0].at.round, session.toy().joins[1].at.round};
    };
    edits.insert_even(1);
    EXPECT_EQ(rounds(), (std::vector{3, 6}));
    edits.remove({0, 1});
    EXPECT_EQ(rounds(), (std::vector{1, 4}));
    edits.repeat({0});
    EXPECT_EQ(rounds(), (std::vector{2, 5}));
    edits.append_count({CountEntry::Kind::count, 18});
    EXPECT_EQ(rounds(), (std::vector{2, 6}));
    edits.append_words(QStringLiteral("dec around"));
    EXPECT_EQ(rounds(), (std::vector{2, 7}));
    CountEntry three_times{CountEntry::Kind::count, 12};
    three_times.times = 3;
    edits.set_count({0}, three_times);
    EXPECT_EQ(rounds(), (std::vector{4, 9}));
    while (session.undo_stack().canUndo()) session.undo_stack().undo();
    EXPECT_EQ(session.toy(), toy_with_joins());
}

}  // namespace
}  // namespace roundwright::app
