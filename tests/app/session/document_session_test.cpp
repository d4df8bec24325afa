#include "app/session/document_session.h"

#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

class SessionTest : public ::testing::Test {
  protected:
    void SetUp() override { session.start(toy_of({6, 12, 18, 24})); }

    bool set_count(std::size_t round, int stitches, const QString& key = {}) {
        return session.edit_piece(
            QStringLiteral("Set"),
            [=](Piece& piece) { std::get<WorkedEvenly>(piece.rounds[round].working).stitches = stitches; },
            key);
    }

    DocumentSession session;
};

TEST_F(SessionTest, AnEditIsOneStepThatUndoesToTheSameToy) {
    const std::string before = write_document(session.toy());
    EXPECT_TRUE(set_count(1, 10));
    const std::string after = write_document(session.toy());
    EXPECT_NE(before, after);
    EXPECT_TRUE(session.modified());
    session.undo_stack().undo();
    EXPECT_EQ(write_document(session.toy()), before);
    EXPECT_FALSE(session.modified());
    session.undo_stack().redo();
    EXPECT_EQ(write_document(session.toy()), after);
}

TEST_F(SessionTest, AnEditThatChangesNothingLeavesNoStep) {
    EXPECT_FALSE(set_count(1, 12));
    EXPECT_EQ(session.undo_stack().count(), 0);
    EXPECT_FALSE(session.modified());
}

TEST_F(SessionTest, TypingMergesIntoOneStep) {
    set_count(1, 1, QStringLiteral("typing"));
    set_count(1, 10, QStringLiteral("typing"));
    EXPECT_EQ(session.undo_stack().count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 24}));
}

TEST_F(SessionTest, TypingThatComesBackLeavesNoStep) {
    set_count(1, 10, QStringLiteral("typing"));
    set_count(1, 12, QStringLiteral("typing"));
    EXPECT_EQ(session.undo_stack().count(), 0);
    EXPECT_FALSE(session.modified());
}

TEST_F(SessionTest, AnotherSelectionEndsMerging) {
    set_count(1, 10, QStringLiteral("typing"));
    session.select_rounds({2});
    set_count(1, 11, QStringLiteral("typing"));
    EXPECT_EQ(session.undo_stack().count(), 2);
}

TEST_F(SessionTest, APreviewCommitsAsOneStep) {
    {
        LivePreview preview(session, QStringLiteral("Drag"));
        preview.show(toy_of({6, 12, 18, 25}));
        preview.show(toy_of({6, 12, 18, 30}));
        EXPECT_EQ(session.undo_stack().count(), 0);
        EXPECT_EQ(counts_of(*session.piece()).back(), 30);
        preview.commit();
    }
    EXPECT_EQ(session.undo_stack().count(), 1);
    EXPECT_EQ(session.undo_stack().undoText(), QStringLiteral("Drag"));
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), toy_of({6, 12, 18, 24}));
}

TEST_F(SessionTest, APreviewGivenUpLeavesNoTrace) {
    {
        LivePreview preview(session, QStringLiteral("Drag"));
        preview.show(toy_of({6, 12, 18, 30}));
    }
    EXPECT_EQ(session.toy(), toy_of({6, 12, 18, 24}));
    EXPECT_EQ(session.undo_stack().count(), 0);
    EXPECT_FALSE(session.modified());
}

TEST_F(SessionTest, AnEditDuringAPreviewClosesThePreview) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(toy_of({6, 12, 18, 30}));
    EXPECT_TRUE(set_count(0, 7));
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{7, 12, 18, 24}));
    preview.show(toy_of({6, 12, 18, 36}));
    preview.commit();
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{7, 12, 18, 24}));
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(SessionTest, UndoBringsWhatItChangedIntoSight) {
    session.edit(QStringLiteral("Add"), [](Toy toy) {
        toy.pieces.push_back(piece_of({6, 12}, "Fin"));
        return toy;
    });
    set_count(2, 20);
    session.set_current_piece(1);
    session.undo_stack().undo();
    EXPECT_EQ(session.current_piece(), 0);
    EXPECT_EQ(session.selection(), (std::vector{2}));
}

TEST_F(SessionTest, SelectionIsKeptValid) {
    session.select_rounds({3, 1, 1, 9, -2});
    EXPECT_EQ(session.selection(), (std::vector{1, 3}));
    session.edit_piece(QStringLiteral("Shorten"), [](Piece& piece) { piece.rounds.resize(2); });
    EXPECT_EQ(session.selection(), (std::vector{1}));
}

TEST_F(SessionTest, WhoFollowsThePieceFindsNoRoundsOfThePieceBefore) {
    session.edit(QStringLiteral("Add"), [](Toy toy) {
        toy.pieces.push_back(piece_of({}, "Fin"));
        return toy;
    });
    session.select_rounds({2, 3});
    std::vector<std::size_t> rounds_chosen;
    QObject::connect(&session, &DocumentSession::current_piece_changed, &session,
                     [&] { rounds_chosen.push_back(session.selection().size()); });
    QSignalSpy said(&session, &DocumentSession::selection_changed);
    session.set_current_piece(1);
    EXPECT_EQ(rounds_chosen, std::vector<std::size_t>{0});
    EXPECT_EQ(said.count(), 1);
}

TEST_F(SessionTest, StudiesArriveForTheLatestToyOnly) {
    QSignalSpy ready(&session, &DocumentSession::study_ready);
    for (int stitches = 12; stitches <= 24; ++stitches) set_count(2, stitches);
    ASSERT_TRUE(wait_for_shape(session));
    ASSERT_TRUE(session.study(0));
    EXPECT_EQ(session.study(0)->graph().graph.rounds[2].loops_left, 24);
    EXPECT_LT(ready.count(), 14);
    ASSERT_TRUE(session.surface(0));
    EXPECT_GT(session.surface(0)->mesh.triangle_count(), 100u);
}

TEST_F(SessionTest, TheSurfaceComesBeforeTheChecks) {
    ASSERT_TRUE(wait_for_shape(session));
    std::vector<QString> order;
    QObject::connect(&session, &DocumentSession::surface_ready, &session,
                     [&](int, const auto&, const auto& shown) {
                         EXPECT_EQ(shown->graph().graph.rounds[2].loops_left, 40);
                         EXPECT_FALSE(session.is_up_to_date(0));
                         order.push_back(QStringLiteral("surface"));
                     });
    QObject::connect(&session, &DocumentSession::study_ready, &session, [&](int, const auto& study) {
        EXPECT_FALSE(study->checks().empty()) << "40 stitches after 12 ruffle";
        EXPECT_TRUE(session.is_up_to_date(0));
        order.push_back(QStringLiteral("study"));
    });
    set_count(2, 40);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(order, (std::vector{QStringLiteral("surface"), QStringLiteral("study")}));
    EXPECT_EQ(session.shown_study(0), session.study(0));
}

TEST_F(SessionTest, AnEditBetweenTheSurfaceAndItsChecksLeavesNothingStale) {
    ASSERT_TRUE(wait_for_shape(session));
    int counts = 13;
    QObject::connect(&session, &DocumentSession::surface_ready, &session, [&] {
        if (counts < 24) set_count(2, ++counts);
    });
    set_count(2, counts);
    ASSERT_TRUE(wait_until([&] { return counts == 24 && session.is_up_to_date(0) && !session.solving(); }));
    EXPECT_EQ(session.study(0)->graph().graph.rounds[2].loops_left, 24);
    EXPECT_EQ(session.shown_study(0), session.study(0));
}

TEST_F(SessionTest, EveryPieceIsStudiedButOnlyTheOneOnShowGetsASurface) {
    session.edit(QStringLiteral("Add"), [](Toy toy) {
        toy.pieces.push_back(piece_of({6, 12, 12}, "Fin"));
        return toy;
    });
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(session.study(1));
    EXPECT_FALSE(session.surface(1));
    session.set_current_piece(1);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(session.surface(1));
}

TEST_F(SessionTest, ResultsStayWithTheirPiece) {
    ASSERT_TRUE(wait_for_shape(session));
    const auto head = session.study(0);
    session.edit(QStringLiteral("Add"), [](Toy toy) {
        toy.pieces.insert(toy.pieces.begin(), piece_of({6, 12, 12}, "Fin"));
        return toy;
    });
    EXPECT_EQ(session.study(1), head);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(session.study(1), head) << "the head did not change";
    EXPECT_EQ(session.study(0)->graph().graph.rounds.size(), 3u);
}

TEST_F(SessionTest, UnstuffedIsShownButNotStudied) {
    session.start(toy_of({6, 12, 18, 18, 18, 12, 6}));
    ASSERT_TRUE(wait_for_shape(session));
    session.set_shows_unstuffed(true);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NEAR(session.shown_study(0)->problem().area_stretch, 0, 1e-12);
    EXPECT_GT(session.study(0)->problem().area_stretch, 0.01);
    EXPECT_LT(session.shown_study(0)->measures().surface_mm2, session.study(0)->measures().surface_mm2);
}

TEST_F(SessionTest, WhatDoesNotTouchTheFabricKeepsItsShapeAndSurface) {
    session.start(toy_of({6, 12, 18, 18, 18, 12, 6}));
    ASSERT_TRUE(wait_for_shape(session));
    const auto shape = session.study(0)->shape;
    const auto surface = session.surface(0);
    session.edit_piece(QStringLiteral("Add"), [](Piece& piece) { piece.features.resize(1); });
    session.edit_piece(QStringLiteral("Rename"), [](Piece& piece) { piece.name = "Body"; });
    session.edit_piece(QStringLiteral("Tick"), [](Piece& piece) { piece.worked.rounds = 2; });
    session.edit(QStringLiteral("Price"), [](Toy toy) {
        toy.making.hourly_rate = 12;
        return toy;
    });
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(session.study(0)->shape, shape);
    EXPECT_EQ(session.surface(0), surface);
    session.edit_piece(QStringLiteral("Stuff"), [](Piece& piece) { piece.area_stretch = 0.08; });
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NE(session.study(0)->shape, shape);
    EXPECT_NE(session.surface(0), surface);
}

TEST_F(SessionTest, ANewerFileIsOpenToLookAtOnly) {
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("newer.roundwright"));
    std::string json = write_document(session.toy());
    const auto at = json.find("\"version\": 2");
    ASSERT_NE(at, std::string::npos) << json.substr(0, 200);
    json.replace(at, 12, "\"version\": 9");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(json.data(), static_cast<qint64>(json.size()));
    file.close();
    ASSERT_FALSE(session.open(path));
    EXPECT_TRUE(session.read_only());
    QSignalSpy refused(&session, &DocumentSession::edit_refused);
    EXPECT_FALSE(set_count(1, 10));
    EXPECT_EQ(refused.count(), 1);
    EXPECT_EQ(session.begin_preview(), 0u);
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 24}));
}

TEST_F(SessionTest, AToyWithoutPiecesIsFine) {
    session.edit(QStringLiteral("Clear"), [](Toy toy) {
        toy.pieces.clear();
        return toy;
    });
    EXPECT_EQ(session.current_piece(), -1);
    EXPECT_EQ(session.piece(), nullptr);
    EXPECT_FALSE(set_count(0, 7));
    session.undo_stack().undo();
    EXPECT_EQ(session.current_piece(), 0);
}

}  // namespace
}  // namespace roundwright::app
