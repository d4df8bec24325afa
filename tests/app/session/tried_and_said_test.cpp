#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

/// What a change of the toy asks the solver for, and what it tells the views.
class TriedAndSaid : public ::testing::Test {
  protected:
    void SetUp() override {
        Toy toy = toy_of({6, 12, 18, 24});
        toy.pieces.push_back(piece_of({6, 9, 12}, "Fin"));
        toy.pieces.push_back(piece_of({5, 10, 10}, "Ear"));
        session.start(toy);
        ASSERT_TRUE(wait_for_shape(session));
        QObject::connect(&session, &DocumentSession::toy_changed, &session,
                         [this](const ChangeSet& changes) { told.push_back(changes); });
        asked_before = session.requests_made();
    }

    [[nodiscard]] std::uint64_t asked() const { return session.requests_made() - asked_before; }
    [[nodiscard]] Toy with_count(int round, int stitches) const {
        Toy toy = session.said_toy();
        auto& changed = toy.pieces[static_cast<std::size_t>(session.current_piece())]
                            .rounds[static_cast<std::size_t>(round)];
        std::get<WorkedEvenly>(changed.working).stitches = stitches;
        return toy;
    }
    [[nodiscard]] Toy with_one_more(int stitches) const {
        Toy toy = session.said_toy();
        toy.pieces[static_cast<std::size_t>(session.current_piece())].rounds.push_back(
            {WorkedEvenly{stitches}, 0, false, ""});
        return toy;
    }
    bool say(const Toy& toy) { return session.edit(QStringLiteral("Say"), toy); }
    [[nodiscard]] std::string name(int piece) const {
        return session.toy().pieces[static_cast<std::size_t>(piece)].name;
    }

    DocumentSession session;
    std::vector<ChangeSet> told;
    std::uint64_t asked_before = 0;
};

TEST_F(TriedAndSaid, CommittingAPreviewComputesNothing) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    ASSERT_TRUE(wait_for_shape(session));
    const auto study = session.study(0);
    const auto surface = session.surface(0);
    EXPECT_EQ(asked(), 1u);
    const auto graphs = graphs_derived();
    preview.commit();
    EXPECT_EQ(graphs_derived(), graphs);
    EXPECT_TRUE(session.is_up_to_date(0));
    EXPECT_FALSE(session.solving());
    EXPECT_EQ(asked(), 1u);
    EXPECT_EQ(session.study(0), study);
    EXPECT_EQ(session.surface(0), surface);
    EXPECT_EQ(session.undo_stack().count(), 1);
}

TEST_F(TriedAndSaid, APreviewCommittedWhileItIsWorkedOutIsWorkedOutOnce) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    preview.commit();
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(asked(), 1u);
    EXPECT_EQ(session.study(0)->graph().graph.rounds[3].loops_left, 20);
}

TEST_F(TriedAndSaid, EachPreviewReplacesTheLastWithOneChange) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    preview.show(with_count(2, 17));
    ASSERT_EQ(told.size(), 2u);
    EXPECT_EQ(told[1].rounds, (Splice{2, 2, 2}));
    LivePreview other(session, QStringLiteral("Other"));
    EXPECT_EQ(told.size(), 2u) << "what was shown stays until something else is";
    other.show(with_count(2, 15));
    ASSERT_EQ(told.size(), 3u);
    EXPECT_EQ(told[2].rounds, (Splice{2, 1, 1}));
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 15, 24}));
    preview.commit();
    EXPECT_EQ(session.undo_stack().count(), 0) << "its turn is over";
    other.commit();
    EXPECT_EQ(told.size(), 4u);
    EXPECT_TRUE(told[3].empty()) << "it was shown already";
}

TEST_F(TriedAndSaid, AnEditTakesThePlaceOfAPreviewWithOneChange) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    EXPECT_TRUE(say(with_count(3, 22)));
    ASSERT_EQ(told.size(), 2u);
    EXPECT_EQ(told[1].rounds, (Splice{3, 1, 1}));
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 22}));
    session.undo_stack().undo();
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 24}));
}

TEST_F(TriedAndSaid, AnEditThatChangesNothingEndsThePreview) {
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    EXPECT_FALSE(say(session.said_toy()));
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 24}));
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST_F(TriedAndSaid, UndoDuringAPreviewIsOneChange) {
    say(with_count(3, 20));
    told.clear();
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(2, 17));
    session.undo_stack().undo();
    ASSERT_EQ(told.size(), 2u);
    EXPECT_EQ(told[1].rounds, (Splice{2, 2, 2}));
    EXPECT_EQ(counts_of(*session.piece()), (std::vector{6, 12, 18, 24}));
    preview.commit();
    EXPECT_EQ(session.undo_stack().index(), 0);
}

TEST_F(TriedAndSaid, APreviewGivenUpBringsBackWhatWasKnown) {
    const auto study = session.study(0);
    const auto surface = session.surface(0);
    {
        LivePreview preview(session, QStringLiteral("Drag"));
        preview.show(with_count(3, 20));
        ASSERT_TRUE(wait_for_shape(session));
        EXPECT_NE(session.surface(0), surface);
        QSignalSpy ready(&session, &DocumentSession::surface_ready);
        preview.roll_back();
        EXPECT_EQ(ready.count(), 1);
    }
    EXPECT_EQ(session.study(0), study);
    EXPECT_EQ(session.surface(0), surface);
    EXPECT_TRUE(session.is_up_to_date(0));
    EXPECT_EQ(asked(), 1u);
}

TEST_F(TriedAndSaid, SayingWhatWasTriedOutComputesNothing) {
    session.try_out(with_one_more(30));
    ASSERT_TRUE(wait_until([&] { return session.shows_trial() && !session.solving(); }));
    EXPECT_EQ(asked(), 1u);
    const auto tried = session.surface(0);
    QSignalSpy studied(&session, &DocumentSession::study_ready);
    EXPECT_TRUE(say(with_one_more(30)));
    EXPECT_EQ(asked(), 1u);
    EXPECT_EQ(studied.count(), 1);
    EXPECT_FALSE(session.shows_trial());
    EXPECT_TRUE(session.is_up_to_date(0));
    EXPECT_EQ(session.surface(0), tried);
    EXPECT_EQ(session.study(0)->graph().graph.rounds.size(), 5u);
}

TEST_F(TriedAndSaid, SaidWhileItIsWorkedOutItIsWorkedOutOnce) {
    session.try_out(with_one_more(30));
    EXPECT_TRUE(say(with_one_more(30)));
    EXPECT_FALSE(session.is_up_to_date(0));
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(asked(), 1u);
    EXPECT_EQ(session.study(0)->graph().graph.rounds.size(), 5u);
    EXPECT_EQ(session.shown_study(0), session.study(0));
}

TEST_F(TriedAndSaid, TryingTheSameAgainAsksNothing) {
    session.try_out(with_one_more(30));
    session.try_out(with_one_more(30));
    EXPECT_EQ(asked(), 1u);
}

TEST_F(TriedAndSaid, SayingSomethingElseAsksForThat) {
    session.try_out(with_one_more(30));
    ASSERT_TRUE(wait_until([&] { return session.shows_trial() && !session.solving(); }));
    const auto tried = session.surface(0);
    EXPECT_TRUE(say(with_one_more(36)));
    EXPECT_EQ(session.surface(0), tried) << "until its own is there";
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_NE(session.surface(0), tried);
    EXPECT_EQ(asked(), 2u);
}

TEST_F(TriedAndSaid, WordsAndCostsAskForNothing) {
    Toy toy = session.said_toy();
    toy.notes = "For the harbour fair.";
    toy.making.hourly_rate = 12;
    toy.making.stuffing_price_per_kg = 9;
    EXPECT_TRUE(say(toy));
    EXPECT_TRUE(session.is_up_to_date(0));
    EXPECT_EQ(asked(), 0u);
}

TEST_F(TriedAndSaid, OnlyTheChangedPieceIsAskedFor) {
    EXPECT_TRUE(say(with_count(3, 20)));
    EXPECT_TRUE(session.is_up_to_date(1));
    EXPECT_EQ(asked(), 1u);
}

TEST_F(TriedAndSaid, PiecesThatMoveKeepWhatIsKnownAndAskForNothing) {
    const auto head = session.study(0);
    const auto fin = session.study(1);
    Toy toy = session.said_toy();
    toy.pieces.move(0, 2);
    EXPECT_TRUE(say(toy));
    EXPECT_EQ(session.study(2), head);
    EXPECT_EQ(session.study(0), fin);
    EXPECT_EQ(asked(), 0u);
}

TEST_F(TriedAndSaid, TheCurrentPieceIsFollowedThroughMovesUndoneAndRedone) {
    QSignalSpy changed(&session, &DocumentSession::current_piece_changed);
    Toy toy = session.said_toy();
    toy.pieces.move(0, 2);
    EXPECT_TRUE(say(toy));
    EXPECT_EQ(session.current_piece(), 2);
    EXPECT_EQ(session.piece()->name, "Head");
    EXPECT_EQ(changed.count(), 1);
    session.undo_stack().undo();
    EXPECT_EQ(session.current_piece(), 0);
    EXPECT_EQ(session.piece()->name, "Head");
    session.undo_stack().redo();
    EXPECT_EQ(session.current_piece(), 2);
    EXPECT_EQ(session.piece()->name, "Head");
}

TEST_F(TriedAndSaid, APieceThatComesBackIsShownWithItsOldId) {
    const PieceId fin = session.toy().pieces.id(1);
    Toy toy = session.said_toy();
    toy.pieces.erase(toy.pieces.cbegin() + 1);
    EXPECT_TRUE(say(toy));
    EXPECT_EQ(session.current_piece(), 0);
    session.undo_stack().undo();
    EXPECT_EQ(session.current_piece(), 1);
    EXPECT_EQ(session.current_id(), fin);
    EXPECT_EQ(name(1), "Fin");
}

TEST_F(TriedAndSaid, WhereTheCurrentPieceGoesTheNextTakesItsPlaceWithNothingSelected) {
    session.select_rounds({1});
    Toy toy = session.said_toy();
    toy.pieces.erase(toy.pieces.cbegin());
    EXPECT_TRUE(say(toy));
    EXPECT_EQ(session.current_piece(), 0);
    EXPECT_EQ(session.piece()->name, "Fin");
    EXPECT_TRUE(session.selection().empty());
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_TRUE(session.surface(0));
}

TEST_F(TriedAndSaid, AnotherPieceInTheSamePlaceIsTold) {
    Toy toy = session.said_toy();
    toy.pieces.erase(toy.pieces.cbegin() + 2);
    toy.pieces.push_back(piece_of({5, 10, 10}, "Ear"));
    EXPECT_TRUE(say(toy));
    ASSERT_EQ(told.size(), 1u);
    EXPECT_TRUE(told[0].piece_list());
}

TEST_F(TriedAndSaid, StepsShareTheirPieces) {
    const auto fin = session.toy().pieces.shared(1);
    EXPECT_TRUE(say(with_count(3, 20)));
    const auto head = session.toy().pieces.shared(0);
    EXPECT_EQ(session.toy().pieces.shared(1), fin);
    session.undo_stack().undo();
    EXPECT_EQ(session.toy().pieces.shared(1), fin);
    session.undo_stack().redo();
    EXPECT_EQ(session.toy().pieces.shared(0), head);
}

TEST_F(TriedAndSaid, NoFileHoldsAPreview) {
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("pup.roundwright"));
    const Toy said = session.said_toy();
    LivePreview preview(session, QStringLiteral("Drag"));
    preview.show(with_count(3, 20));
    EXPECT_FALSE(session.save(path));
    EXPECT_EQ(load_document_file(path).document.toy, said);
}

}  // namespace
}  // namespace roundwright::app
