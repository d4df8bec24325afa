#include <gtest/gtest.h>

#include <QSignalSpy>

#include "app/session/document_session.h"
#include "app/session/live_preview.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

Toy ball_of(int rounds) {
    Toy toy = toy_of({});
    auto& piece = toy.pieces[0];
    piece = piece_of({});
    std::vector<int> counts;
    for (int i = 1; i <= rounds; ++i) counts.push_back(6 * i);
    for (int i = 0; i < rounds; ++i) counts.push_back(6 * rounds);
    for (int i = rounds; i >= 1; --i) counts.push_back(6 * i);
    for (const int count : counts) piece.rounds.push_back({WorkedEvenly{count}, 0, false, ""});
    return toy;
}

Toy oval_of(std::initializer_list<int> counts) {
    Toy toy = toy_of(counts);
    toy.pieces[0].start = OvalChain{10};
    return toy;
}

class EveryStitchInTheSession : public ::testing::Test {
  protected:
    explicit EveryStitchInTheSession() {
        QSettings().clear();
        session.preferences().set_every_stitch(true);
        QObject::connect(&session, &DocumentSession::surface_ready, &session,
                         [this](int piece, const auto&, const auto& study) {
                             if (study) shown.push_back(study->measures().fidelity);
                             if (study) expect_of_the_toy(piece, *study);
                         });
    }
    ~EveryStitchInTheSession() override { QSettings().clear(); }

    /// A shape of every stitch on show is of the stitches that the toy has now.
    void expect_of_the_toy(int piece, const PieceStudy& study) {
        if (!study.shape->stitched) return;
        const auto& said = session.toy().pieces[static_cast<std::size_t>(piece)];
        ASSERT_EQ(study.stitches->inputs.rounds.size(), said.rounds.size());
        for (std::size_t i = 0; i < said.rounds.size(); ++i)
            EXPECT_EQ(study.stitches->inputs.rounds[i].working, said.rounds[i].working) << "round " << i + 1;
    }

    bool wait_for_stitches(int piece = 0) {
        return wait_until([this, piece] {
            const EveryStitchState state = session.every_stitch(piece);
            return session.is_up_to_date(piece) && (state.found || state.refusal != EveryStitchRefusal::none);
        });
    }
    bool set_count(std::size_t round, int stitches) {
        return session.edit_piece(QStringLiteral("Set"), [=](Piece& piece) {
            std::get<WorkedEvenly>(piece.rounds[round].working).stitches = stitches;
        });
    }
    [[nodiscard]] Fidelity now(int piece = 0) const {
        return session.shown_study(piece)->measures().fidelity;
    }

    std::vector<Fidelity> shown;
    DocumentSession session;
};

TEST_F(EveryStitchInTheSession, TheRoundShapeIsThereAtOnceAndEveryStitchFollows) {
    session.start(ball_of(5));
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_EQ(shown, (std::vector{Fidelity::round, Fidelity::every_stitch}));
    EXPECT_TRUE(session.every_stitch(0).found);
    EXPECT_EQ(session.study(0), session.shown_study(0));
    const auto& size = session.study(0)->size();
    EXPECT_LT(size.width_mm.low, session.study(0)->measures().width_mm) << "it has its range";
}

TEST_F(EveryStitchInTheSession, AnOvalIsNeverShownAsARoundPiece) {
    session.start(oval_of({26, 32, 38, 44}));
    ASSERT_TRUE(wait_for_stitches());
    set_count(3, 45);
    ASSERT_TRUE(wait_for_stitches());
    ASSERT_FALSE(shown.empty());
    for (const Fidelity fidelity : shown) EXPECT_EQ(fidelity, Fidelity::every_stitch);
}

TEST_F(EveryStitchInTheSession, TypingFastShowsNoShapeOfAnOldEdit) {
    session.start(ball_of(6));
    ASSERT_TRUE(wait_for_stitches());
    for (int i = 0; i < 60; ++i) {
        set_count(8, 30 + i % 7);
        for (int turn = 0; turn < i % 9; ++turn) {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 3);
            QTest::qSleep(2);
        }
    }
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_EQ(now(), Fidelity::every_stitch);
}

TEST_F(EveryStitchInTheSession, UndoBringsItBack) {
    session.start(ball_of(5));
    ASSERT_TRUE(wait_for_stitches());
    const double width = session.study(0)->measures().width_mm;
    set_count(6, 36);
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_GT(session.study(0)->measures().width_mm, width + 0.5);
    session.undo_stack().undo();
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_NEAR(session.study(0)->measures().width_mm, width, 0.1);
}

TEST_F(EveryStitchInTheSession, AnEyeThatMovesKeepsItOnShow) {
    session.start(ball_of(5));
    ASSERT_TRUE(wait_for_stitches());
    shown.clear();
    session.edit_piece(QStringLiteral("Add"), [](Piece& piece) {
        Feature eyes;
        eyes.round = 7;
        piece.features = {eyes};
    });
    ASSERT_TRUE(wait_until([&] { return session.is_up_to_date(0); }));
    EXPECT_TRUE(session.every_stitch(0).found);
    for (const Fidelity fidelity : shown) EXPECT_EQ(fidelity, Fidelity::every_stitch);
}

TEST_F(EveryStitchInTheSession, APreviewGivenUpComesBackToIt) {
    session.start(ball_of(5));
    ASSERT_TRUE(wait_for_stitches());
    const auto before = session.shown_study(0);
    {
        LivePreview preview(session, QStringLiteral("Try"));
        preview.show(ball_of(6));
        ASSERT_TRUE(wait_until([&] { return session.shown_study(0) != before; }));
    }
    EXPECT_EQ(session.shown_study(0), before);
    EXPECT_TRUE(session.every_stitch(0).found);
}

TEST_F(EveryStitchInTheSession, OneThatIsRefusedSaysWhyAndIsAskedOnce) {
    Toy toy = toy_of({6, 12, 18, 24, 24, 24, 24, 24});
    toy.pieces[0].end = End::sewn_straight;
    toy.pieces[0].area_stretch = unstuffed_stretch;
    session.start(toy);
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_EQ(session.every_stitch(0).refusal, EveryStitchRefusal::lies_limp);
    EXPECT_TRUE(is_of_revolution(now()));
    QSignalSpy told(&session, &DocumentSession::every_stitch_changed);
    session.edit(QStringLiteral("Name"), [](Toy changed) {
        changed.title = "Otter";
        return changed;
    });
    EXPECT_EQ(session.every_stitch(0).refusal, EveryStitchRefusal::lies_limp);
    EXPECT_TRUE(told.isEmpty());
}

TEST_F(EveryStitchInTheSession, ThePieceOnShowGoesFirstWhileOthersAreSolved) {
    Toy toy = ball_of(9);
    toy.pieces.push_back(ball_of(4).pieces[0]);
    session.start(toy);
    ASSERT_TRUE(wait_until([&] { return session.shown_study(0) != nullptr; }));
    session.set_current_piece(1);
    ASSERT_TRUE(wait_for_stitches(1));
    EXPECT_EQ(now(1), Fidelity::every_stitch);
    ASSERT_NE(session.surface(1), nullptr);
    ASSERT_TRUE(wait_for_stitches(0));
    session.set_current_piece(0);
    ASSERT_TRUE(wait_until([&] { return session.surface(0) != nullptr; }));
    EXPECT_EQ(now(0), Fidelity::every_stitch);
}

TEST_F(EveryStitchInTheSession, TheMakerMayKeepToTheRoundShape) {
    session.start(ball_of(5));
    ASSERT_TRUE(wait_for_stitches());
    session.preferences().set_every_stitch(false);
    ASSERT_TRUE(wait_until([&] { return session.is_up_to_date(0); }));
    EXPECT_EQ(now(), Fidelity::round);
    EXPECT_FALSE(session.every_stitch(0).coming);
    shown.clear();
    set_count(6, 36);
    ASSERT_TRUE(wait_for_shape(session));
    QTest::qWait(200);
    EXPECT_EQ(shown, std::vector{Fidelity::round});
    session.preferences().set_every_stitch(true);
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_EQ(now(), Fidelity::every_stitch);
    DocumentSession other;
    EXPECT_TRUE(other.preferences().every_stitch()) << "kept in the settings";
}

TEST_F(EveryStitchInTheSession, SessionsComeAndGoWhileTheySolve) {
    session.start(ball_of(12));
    for (int i = 0; i < 6; ++i) {
        DocumentSession other;
        other.start(ball_of(12 + i));
        const int turns = 10 * i;
        for (int turn = 0; turn < turns; ++turn) {
            QCoreApplication::processEvents(QEventLoop::AllEvents, 3);
            QTest::qSleep(1);
        }
    }
    ASSERT_TRUE(wait_for_stitches());
    EXPECT_EQ(now(), Fidelity::every_stitch);
}

}  // namespace
}  // namespace roundwright::app
