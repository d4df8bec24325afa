#include "app/rounds/rounds_clipboard.h"

#include <gtest/gtest.h>
#include <memory>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(RoundsClipboard, GivesRoundsBackWhole) {
    DocumentSession session;
    Toy toy = toy_of({6, 12, 18});
    toy.pieces.front().rounds[1].note = "mark this round";
    toy.pieces.front().rounds[1].yarn = 1;
    session.start(toy);
    const std::unique_ptr<QMimeData> data(rounds_to_clipboard(session, {1, 2}));
    const auto rounds = rounds_from_clipboard(*data, 2);
    ASSERT_EQ(rounds.size(), 2u);
    EXPECT_EQ(rounds[0], toy.pieces.front().rounds[1]);
    EXPECT_EQ(rounds[1], toy.pieces.front().rounds[2]);
    EXPECT_EQ(rounds_from_clipboard(*data, 1)[0].yarn, 0u) << "a yarn the toy does not have";
}

TEST(RoundsClipboard, GivesOtherProgramsTheWords) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18}));
    const std::unique_ptr<QMimeData> data(rounds_to_clipboard(session, {1}));
    EXPECT_EQ(data->text(), QStringLiteral("2: inc around (12)"));
}

TEST(RoundsClipboard, MakesNothingOfOtherData) {
    QMimeData text;
    text.setText(QStringLiteral("6, 12"));
    EXPECT_TRUE(rounds_from_clipboard(text, 1).empty());
    QMimeData damaged;
    damaged.setData(QStringLiteral("application/x-roundwright-rounds+json"), "{ \"pieces\": 7");
    EXPECT_TRUE(rounds_from_clipboard(damaged, 1).empty());
}

}  // namespace
}  // namespace roundwright::app
