#include "app/gauge/finished_piece_notice.h"

#include <gtest/gtest.h>

#include <QPushButton>
#include <QSignalSpy>
#include <QVBoxLayout>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

const auto cause = QStringLiteral("finished-piece");

class FinishedPieceNoticeTest : public ::testing::Test {
  protected:
    void SetUp() override {
        Toy toy = toy_of({6, 12, 18, 12, 6});
        toy.gauge = EstimatedGauge{YarnWeight::light};
        toy.pieces.push_back(piece_of({6, 12, 12}, "Fin"));
        session.start(toy);
        auto* layout = new QVBoxLayout(&window);
        layout->addWidget(&notices);
        window.resize(900, 200);
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    }
    void work(std::size_t piece, int rounds) {
        session.edit(QStringLiteral("Work"), [&](Toy toy) {
            Piece worked = toy.pieces[piece];
            worked.worked.rounds = rounds;
            toy.pieces[piece] = worked;
            return toy;
        });
    }
    void press(const QString& words) {
        QCoreApplication::processEvents();
        QTest::mouseClick(notices.button(cause, words), Qt::LeftButton);
        QCoreApplication::processEvents();  // an answer may take its own notice down
    }
    [[nodiscard]] bool asks() const { return notices.causes().contains(cause); }

    DocumentSession session;
    QWidget window;
    NoticeBar notices{&window};
    FinishedPieceNotice notice{session, notices, nullptr};
};

TEST_F(FinishedPieceNoticeTest, AsksWhenTheLastRoundIsWorked) {
    work(0, 4);
    EXPECT_FALSE(asks());
    work(0, 5);
    ASSERT_TRUE(asks());
    EXPECT_TRUE(notices.words(cause).startsWith(QStringLiteral("Head is worked to its last round.")));
    session.undo_stack().undo();
    EXPECT_FALSE(asks());
}

TEST_F(FinishedPieceNoticeTest, MeasuringBringsThePieceAndItsDialog) {
    QSignalSpy wanted(&notice, &FinishedPieceNotice::wanted);
    work(1, 3);
    ASSERT_TRUE(asks());
    press(QStringLiteral("Measure it…"));
    EXPECT_EQ(wanted.count(), 1);
    EXPECT_EQ(session.current_piece(), 1);
    EXPECT_FALSE(asks());
}

TEST_F(FinishedPieceNoticeTest, NotNowHoldsForThePieceAlone) {
    work(0, 5);
    press(QStringLiteral("Not now"));
    EXPECT_FALSE(asks());
    work(0, 3);
    work(0, 5);
    EXPECT_FALSE(asks());
    work(1, 3);
    EXPECT_TRUE(asks());
}

TEST_F(FinishedPieceNoticeTest, NothingIsAskedOfWhatWasFinishedBefore) {
    Toy toy = session.toy();
    Piece worked = toy.pieces[0];
    worked.worked.rounds = 5;
    toy.pieces[0] = worked;
    session.start(toy);
    EXPECT_FALSE(asks());
    work(1, 1);
    EXPECT_FALSE(asks());
}

TEST_F(FinishedPieceNoticeTest, OnceAPieceWasMeasuredNoOtherIsAskedFor) {
    work(0, 5);
    ASSERT_TRUE(asks());
    session.edit(QStringLiteral("Found"), [](Toy toy) {
        toy.gauge = GivenGauge{{5, 5, 0.1, 0.1}, "Head"};
        return toy;
    });
    EXPECT_FALSE(asks());
    work(1, 3);
    EXPECT_FALSE(asks());
}

}  // namespace
}  // namespace roundwright::app
