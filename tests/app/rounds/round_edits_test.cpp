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

}  // namespace
}  // namespace roundwright::app
