#include "app/work_along/work_along_view.h"

#include <gtest/gtest.h>
#include <memory>

#include <QCheckBox>
#include <QDir>
#include <QPushButton>

#include "app/kit/action_keys.h"
#include "tests/app/app_testing.h"
#include "tests/app/listener.h"

namespace roundwright::app {
namespace {

class WorkingViewTest : public ::testing::Test {
  protected:
    void SetUp() override {
        session.preferences().set_terms(Terms::us);
        session.start(toy_of({6, 12, 18, 18, 12, 6}));
        ASSERT_TRUE(wait_for_shape(session));
        view = std::make_unique<WorkAlongView>(session, RoundClock([this] { return now; }));
        view->set_lock_ms(0);
        view->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(view.get()));
    }

    void press(Qt::Key key) {
        QTest::keyClick(view->focusWidget() ? view->focusWidget() : view.get(), key);
        QCoreApplication::processEvents();
    }
    [[nodiscard]] const WorkedSoFar& worked() const { return session.piece()->worked; }
    [[nodiscard]] std::string words() const { return view->words().toStdString(); }

    double now = 1'000;
    DocumentSession session;
    std::unique_ptr<WorkAlongView> view;
};

TEST_F(WorkingViewTest, TheSpaceBarTicksOffRounds) {
    EXPECT_EQ(words(), "Round 1\n6 sc in magic ring\n6 stitches");
    press(Qt::Key_Space);
    EXPECT_EQ(worked().rounds, 1);
    press(Qt::Key_Space);
    EXPECT_EQ(words(), "Round 3\n[sc, inc] x 6\n18 stitches · 3 stitches in each of 6 repeats");
    QDir().mkpath(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS));
    EXPECT_TRUE(view->grab().save(QStringLiteral(ROUNDWRIGHT_SCREENSHOTS "/work-along.png")));
    for (int i = 0; i < 4; ++i) press(Qt::Key_Space);
    EXPECT_EQ(worked().rounds, 6);
    EXPECT_TRUE(view->words().startsWith(QStringLiteral("All 6 rounds are done")));
    press(Qt::Key_Space);
    EXPECT_EQ(worked().rounds, 6);
}

TEST_F(WorkingViewTest, ButtonsNameTheKeysThatTheMakerChose) {
    const auto words = [this](const char* begin) {
        for (const auto* button : view->findChildren<QPushButton*>())
            if (button->text().startsWith(QLatin1String(begin))) return button->text().toStdString();
        return std::string();
    };
    EXPECT_EQ(words("Round done"), "Round done (Page Down)");
    EXPECT_EQ(words("Where am I?"), "Where am I? (Home)");
    ActionKeys::instance().choose(QStringLiteral("work.done"), {QKeySequence(Qt::Key_F3)});
    EXPECT_EQ(words("Round done"), "Round done (F3)");
    ActionKeys::instance().choose(QStringLiteral("work.done"), {});
    EXPECT_EQ(words("Round done"), "Round done");
    ActionKeys::instance().take_usual_for_all();
}

TEST_F(WorkingViewTest, EveryTickCanBeUndone) {
    press(Qt::Key_Space);
    press(Qt::Key_Space);
    session.undo_stack().undo();
    EXPECT_EQ(worked().rounds, 1);
    EXPECT_TRUE(view->words().startsWith(QStringLiteral("Round 2\n")));
    QTest::keyClick(view.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(worked().rounds, 0);
}

TEST_F(WorkingViewTest, BackspaceTakesOneStitchBack) {
    press(Qt::Key_Space);
    press(Qt::Key_Space);
    for (int i = 0; i < 3; ++i) press(Qt::Key_Right);
    press(Qt::Key_Backspace);
    EXPECT_EQ(worked(), (WorkedSoFar{2, 2, {}}));
    press(Qt::Key_Backspace);
    press(Qt::Key_Backspace);
    EXPECT_EQ(worked(), (WorkedSoFar{2, 0, {}}));
    press(Qt::Key_Backspace);  // the last stitch of the round before
    EXPECT_EQ(worked(), (WorkedSoFar{1, 11, {}}));
    press(Qt::Key_Right);
    EXPECT_EQ(worked(), (WorkedSoFar{2, 0, {}}));
    for (int i = 0; i < 4; ++i) press(Qt::Key_PageUp);
    press(Qt::Key_Backspace);
    EXPECT_EQ(worked(), WorkedSoFar{});
}

TEST_F(WorkingViewTest, BackspaceReopensAPieceThatIsDone) {
    for (int i = 0; i < 6; ++i) press(Qt::Key_Space);
    press(Qt::Key_Backspace);
    EXPECT_EQ(worked(), (WorkedSoFar{5, 5, {}}));
    EXPECT_TRUE(view->words().startsWith(QStringLiteral("Round 6\n")));
}

TEST_F(WorkingViewTest, PageUpGoesBackARound) {
    press(Qt::Key_Space);
    press(Qt::Key_Space);
    press(Qt::Key_Right);
    press(Qt::Key_PageUp);  // the round begun is begun again
    EXPECT_EQ(worked(), (WorkedSoFar{2, 0, {}}));
    press(Qt::Key_PageUp);
    EXPECT_EQ(worked().rounds, 1);
}

TEST_F(WorkingViewTest, StitchesAreCountedUpToTheRoundsEnd) {
    press(Qt::Key_Space);
    press(Qt::Key_Space);
    for (int i = 0; i < 4; ++i) press(Qt::Key_Right);
    EXPECT_EQ(worked().stitches, 4);
    EXPECT_EQ(words(), "Round 3\n[sc, inc] x 6\n4 of 18 stitches · repeat 2 of 6");
    press(Qt::Key_Left);
    EXPECT_EQ(worked().stitches, 3);
    const int steps = session.undo_stack().count();
    for (int i = 0; i < 15; ++i) press(Qt::Key_Right);
    EXPECT_EQ(worked(), (WorkedSoFar{3, 0, {}}));
    EXPECT_EQ(session.undo_stack().count(), steps + 1);  // the counting is one step, the round another
}

TEST_F(WorkingViewTest, TimesAreMeasuredIfWished) {
    press(Qt::Key_Space);
    EXPECT_TRUE(worked().seconds_of_round.empty());
    view->findChild<QCheckBox*>()->click();
    now += 60;
    press(Qt::Key_Space);
    now += 90;
    press(Qt::Key_Space);
    EXPECT_EQ(worked().seconds_of_round, (std::vector<double>{0, 60, 90}));
    EXPECT_TRUE(view->times().contains(QStringLiteral("round 3 took 1:30"))) << view->times().toStdString();
    EXPECT_TRUE(view->times().contains(QStringLiteral("to go")));
}

TEST_F(WorkingViewTest, ProgressIsInTheFile) {
    press(Qt::Key_Space);
    press(Qt::Key_Right);
    const Toy read = read_document(write_document(session.toy())).toy;
    EXPECT_EQ(read.pieces[0].worked, worked());
}

TEST_F(WorkingViewTest, EnterPressesTheButtonWithTheFocus) {
    for (auto* button : view->findChildren<QPushButton*>())
        if (button->text().startsWith(QStringLiteral("Count"))) button->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(worked(), (WorkedSoFar{0, 1, {}}));
    press(Qt::Key_Space);
    EXPECT_EQ(worked(), (WorkedSoFar{0, 2, {}}));
    press(Qt::Key_PageDown);
    EXPECT_EQ(worked(), (WorkedSoFar{1, 0, {}}));
}

TEST_F(WorkingViewTest, EveryStepHasAKeyAndIsSpoken) {
    const Listener listener;
    press(Qt::Key_PageDown);
    EXPECT_EQ(view->said().toStdString(), "Round 1 done. Next, round 2: inc around, 12 stitches.");
    press(Qt::Key_Right);
    press(Qt::Key_Right);
    EXPECT_TRUE(view->said().startsWith(QStringLiteral("2 of 12 stitches"))) << view->said().toStdString();
    press(Qt::Key_Home);
    EXPECT_TRUE(view->said().startsWith(QStringLiteral("Head: round 2:"))) << view->said().toStdString();
    EXPECT_TRUE(view->said().contains(QStringLiteral("8 of 72 stitches done"))) << view->said().toStdString();
    press(Qt::Key_PageUp);
    EXPECT_TRUE(view->said().startsWith(QStringLiteral("Back to round 2:"))) << view->said().toStdString();
    QTest::keyClick(view.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(view->said().startsWith(QStringLiteral("Undone: "))) << view->said().toStdString();
    EXPECT_EQ(listener.phantoms(), QStringList());
}

TEST_F(WorkingViewTest, SaysTheLastAgainByAKey) {
    Listener listener;
    if (!Listener::can_listen()) GTEST_SKIP() << "qt6-base-private-dev is not installed";
    press(Qt::Key_PageDown);
    const QStringList first = listener.take_said();
    ASSERT_EQ(first.size(), 1);
    press(Qt::Key_End);
    EXPECT_EQ(listener.take_said(), first);
    press(Qt::Key_F7);
    EXPECT_EQ(listener.take_said(), first);
}

TEST_F(WorkingViewTest, AKeyHeldDownOrPressedTwiceFinishesOneRound) {
    QKeyEvent held(QEvent::KeyPress, Qt::Key_PageDown, Qt::NoModifier, QString(), true);
    view->set_lock_ms(60'000);
    press(Qt::Key_PageDown);
    QCoreApplication::sendEvent(view->focusWidget(), &held);
    press(Qt::Key_PageDown);
    press(Qt::Key_Space);
    EXPECT_EQ(worked().rounds, 1);
    view->set_lock_ms(0);
    press(Qt::Key_PageDown);
    EXPECT_EQ(worked().rounds, 2);
}

TEST_F(WorkingViewTest, SpeaksTheTermsOfTheMaker) {
    session.preferences().set_terms(Terms::uk);
    EXPECT_EQ(words(), "Round 1\n6 dc in magic ring\n6 stitches");
}

TEST_F(WorkingViewTest, TellsWhatComesUp) {
    session.edit_piece(QStringLiteral("stripe"), [](Piece& piece) { piece.rounds[2].yarn = 1; });
    EXPECT_TRUE(view->coming_up().contains(QStringLiteral("After round 2: Change to Tide blue.")))
        << view->coming_up().toStdString();
    press(Qt::Key_Space);
    press(Qt::Key_Space);
    EXPECT_TRUE(view->coming_up().contains(QStringLiteral("Now: Change to Tide blue.")));
}

}  // namespace
}  // namespace roundwright::app
