#include "app/session/assembly.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/session/document_session.h"
#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

struct AssemblyTest : ::testing::Test {
    AssemblyTest() {
        Toy toy = toy_of({6, 12, 18, 24, 24, 24, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 9, 9}, "Fin"));
        toy.pieces[1].make = 2;
        toy.pieces.push_back(piece_of({6, 12, 12, 6}, "Tail"));
        Join fins;
        fins.piece = {toy.pieces.id(1), 0};
        fins.onto = {toy.pieces.id(0), 0};
        fins.pair = true;
        fins.at = {3, 6, false};
        toy.joins = {fins};
        session.start(toy);
    }
    bool wait() {
        return wait_until([&] {
            return session.assembled_is_up_to_date() && session.assembled()->measures != nullptr &&
                   !session.solving();
        });
    }
    [[nodiscard]] Toy with(const std::function<void(Toy&)>& change) const {
        Toy toy = session.said_toy();
        change(toy);
        return toy;
    }

    DocumentSession session;
};

TEST_F(AssemblyTest, NothingIsPutTogetherBeforeItIsWanted) {
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(session.assembled(), nullptr);
    session.show_whole_toy(true);
    ASSERT_TRUE(wait());
    const auto toy = session.assembled();
    EXPECT_EQ(toy->placed().pieces.size(), 4u);
    EXPECT_TRUE(toy->placed().problems.empty());
    EXPECT_EQ(toy->whole->placed_again, 4u);
    for (const auto& surface : toy->surfaces()) EXPECT_NE(surface, nullptr);
}

TEST_F(AssemblyTest, OnlyWhatChangedIsSolvedAndPlacedAgain) {
    session.show_whole_toy(true);
    ASSERT_TRUE(wait());
    const auto before = session.assembled();
    const auto requests = session.requests_made();
    session.edit(QStringLiteral("Turn"), with([](Toy& toy) { toy.joins[0].turn_degrees = 20; }));
    ASSERT_TRUE(wait());
    EXPECT_EQ(session.requests_made(), requests);             // no shape was solved for it
    EXPECT_EQ(session.assembled()->whole->placed_again, 2u);  // the pair
    EXPECT_EQ(session.assembled()->pieces[1].drawn, before->pieces[1].drawn);
    session.edit(QStringLiteral("Rounds"),
                 with([](Toy& toy) { toy.pieces[2].rounds[2].working = WorkedEvenly{.stitches = 10}; }));
    ASSERT_TRUE(wait());
    EXPECT_EQ(session.requests_made(), requests + 1);
    EXPECT_EQ(session.assembled()->whole->placed_again, 1u);  // the tail
    session.edit(QStringLiteral("Title"), with([](Toy& toy) { toy.title = "Grey pup"; }));
    const QSignalSpy told(&session, &DocumentSession::assembled_changed);
    QTest::qWait(30);
    EXPECT_EQ(told.count(), 0);
}

TEST_F(AssemblyTest, FollowsAPreviewAndComesBackWhenItIsGivenUp) {
    session.show_whole_toy(true);
    ASSERT_TRUE(wait());
    const auto at = [&] { return session.assembled()->placed().pieces[2].pose.translation(); };
    const Vec3 before = at();
    {
        LivePreview preview(session, QStringLiteral("Move"));
        preview.show(with([](Toy& toy) { toy.joins[0].at.round = 5; }));
        ASSERT_TRUE(wait());
        EXPECT_GT((at() - before).norm(), 1);
    }
    ASSERT_TRUE(wait());
    EXPECT_EQ((at() - before).norm(), 0);
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(AssemblyTest, WhatIsOfAnotherToyIsDropped) {
    session.show_whole_toy(true);
    session.start(toy_of({6, 12, 6}));
    EXPECT_FALSE(session.shows_whole_toy());
    session.show_whole_toy(true);
    ASSERT_TRUE(wait());
    EXPECT_EQ(session.assembled()->placed().pieces.size(), 1u);
}

TEST_F(AssemblyTest, APieceThatLosesItsShapeKeepsTheLastOne) {
    session.show_whole_toy(true);
    ASSERT_TRUE(wait());
    session.edit(QStringLiteral("Rounds"), with([](Toy& toy) { toy.pieces[2].rounds.clear(); }));
    ASSERT_TRUE(wait());
    EXPECT_EQ(session.assembled()->placed().pieces.size(), 4u);
    EXPECT_TRUE(session.assembled()->placed().problems.empty());
}

TEST(Session, SaysWhenJoinsOrStanceChanged) {
    DocumentSession session;
    session.start(toy_of({6, 12, 6}));
    std::vector<bool> joins;
    QObject::connect(&session, &DocumentSession::toy_changed, &session,
                     [&](const ChangeSet& changes) { joins.push_back(changes.joins); });
    Toy toy = session.toy();
    toy.stance = Stance::sitting;
    session.edit(QStringLiteral("Sit"), toy);
    toy.title = "Another";
    session.edit(QStringLiteral("Title"), toy);
    EXPECT_EQ(joins, (std::vector{true, false}));
}

}  // namespace
}  // namespace roundwright::app
