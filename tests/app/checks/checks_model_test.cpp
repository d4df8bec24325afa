#include "app/checks/checks_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

TEST(ChecksModel, ListsChecksOfAllPiecesTheWorstFirst) {
    DocumentSession session;
    ChecksModel model(session);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    Toy toy = toy_of({6, 12, 18, 24, 60});
    toy.pieces.push_back(piece_of({6, 13}, "Fin"));
    session.start(toy);
    ASSERT_TRUE(wait_until([&] { return session.study(0) && session.study(1) && !session.solving(); }));
    ASSERT_GE(model.rowCount(), 2);
    for (int row = 1; row < model.rowCount(); ++row) {
        EXPECT_GE(model.check(row - 1).severity, model.check(row).severity);
    }
    bool fin = false;
    for (int row = 0; row < model.rowCount(); ++row) {
        EXPECT_FALSE(model.index(row).data().toString().isEmpty());
        fin = fin || model.check(row).piece == 1;
        if (model.check(row).piece == 1) {
            model.show_place(row);
            EXPECT_EQ(session.current_piece(), 1);
            EXPECT_EQ(session.selection(), (std::vector{1}));
        }
    }
    EXPECT_TRUE(fin);
}

TEST(ChecksModel, WordsThatNameLostRoundsAreSaidAndBroughtUpToDateInOneStep) {
    DocumentSession session;
    ChecksModel model(session);
    Toy toy = toy_of({6, 12, 18, 18, 18, 18, 18, 12, 6});
    toy.text.assembly = "Sew the ears on at round 6.";
    toy.pieces.push_back(piece_of({6, 12}, "Ear"));
    session.start(toy);
    ASSERT_TRUE(wait_until([&] { return session.study(0) && session.study(1) && !session.solving(); }));
    const auto said = [&] {
        for (int row = 0; row < model.rowCount(); ++row)
            if (model.check(row).said) return row;
        return -1;
    };
    EXPECT_EQ(said(), -1);
    session.set_current_piece(0);
    session.edit_piece(QStringLiteral("Shorten"), [](Piece& piece) {
        piece.rounds.erase(piece.rounds.begin() + 1, piece.rounds.begin() + 4);
    });
    ASSERT_TRUE(wait_until([&] { return said() >= 0; }));
    EXPECT_TRUE(model.index(said()).data().toString().contains(QStringLiteral("Make it “round 4”?")))
        << model.index(said()).data().toString().toStdString();
    const int steps = session.undo_stack().count();
    ASSERT_TRUE(model.cure(said()));
    EXPECT_EQ(session.undo_stack().count(), steps + 1);
    EXPECT_EQ(session.toy().text.assembly, "Sew the ears on at round 4.");
    EXPECT_EQ(said(), -1);
    session.undo_stack().undo();
    session.undo_stack().undo();
    EXPECT_EQ(session.toy(), toy);
}

TEST(ChecksModel, ACureIsOneStepAndTakesTheCheckAway) {
    DocumentSession session;
    ChecksModel model(session);
    session.start(toy_of({6, 13, 18}));
    ASSERT_TRUE(wait_for_shape(session));
    ASSERT_GE(model.rowCount(), 1);
    const auto code = model.check(0).code;
    ASSERT_TRUE(model.cure(0));
    EXPECT_EQ(session.undo_stack().count(), 1);
    ASSERT_TRUE(wait_for_shape(session));
    for (int row = 0; row < model.rowCount(); ++row) EXPECT_NE(model.check(row).code, code);
}

}  // namespace
}  // namespace roundwright::app
