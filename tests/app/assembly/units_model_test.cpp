#include "app/assembly/units_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QSignalSpy>

#include "app/assembly/join_edits.h"
#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

struct UnitsModelTest : ::testing::Test {
    UnitsModelTest() {
        Toy toy = toy_of({6, 12, 18, 18, 12, 6});
        toy.pieces.push_back(piece_of({6, 9, 9}, "Fin"));
        toy.pieces[1].make = 2;
        session.start(toy);
    }
    [[nodiscard]] QString text(int row, int role = Qt::DisplayRole) const {
        return model.data(model.index(row), role).toString();
    }

    DocumentSession session;
    ToyState state{session};
    UnitsModel model{session, state};
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(UnitsModelTest, SaysWhatIsSewnToWhat) {
    ASSERT_EQ(model.rowCount(), 3);
    EXPECT_EQ(text(1), QStringLiteral("Fin 1"));
    JoinEdits(session).sew(model.units()[1], PieceCopy{session.toy().pieces.id(0), 0});
    JoinEdits(session).set_pair(0, true);
    ASSERT_EQ(model.rowCount(), 2);
    EXPECT_EQ(text(1), QStringLiteral("Fin ×2 on Head"));
    const QString heard = text(1, Qt::AccessibleTextRole);
    EXPECT_TRUE(heard.contains(QStringLiteral("a mirrored pair"))) << heard.toStdString();
    EXPECT_TRUE(heard.contains(QStringLiteral("between rounds"))) << heard.toStdString();
    session.undo_stack().undo();
    session.undo_stack().undo();
    EXPECT_EQ(model.rowCount(), 3);
}

TEST_F(UnitsModelTest, ATickHidesEveryCopyOfARow) {
    JoinEdits(session).sew(model.units()[1], PieceCopy{session.toy().pieces.id(0), 0});
    JoinEdits(session).set_pair(0, true);
    EXPECT_EQ(model.data(model.index(1), Qt::CheckStateRole).toInt(), Qt::Checked);
    const QSignalSpy told(&state, &ToyState::hidden_changed);
    EXPECT_TRUE(model.setData(model.index(1), Qt::Unchecked, Qt::CheckStateRole));
    EXPECT_EQ(told.count(), 1);
    EXPECT_TRUE(state.is_hidden({session.toy().pieces.id(1), 1}));
    EXPECT_EQ(model.data(model.index(1), Qt::CheckStateRole).toInt(), Qt::Unchecked);
    state.show_all();
    EXPECT_EQ(model.data(model.index(1), Qt::CheckStateRole).toInt(), Qt::Checked);
}

TEST_F(UnitsModelTest, NamesWhatIsWrongWithAJoin) {
    Toy toy = session.toy();
    Join join;
    join.piece = {toy.pieces.id(1), 0};
    join.onto = {toy.pieces.id(0), 0};
    join.at.round = 40;
    toy.joins = {join};
    session.edit(QStringLiteral("Join"), toy);
    session.show_whole_toy(true);
    ASSERT_TRUE(wait_until([&] { return session.assembled_is_up_to_date(); }));
    EXPECT_EQ(model.fault(1), QStringLiteral("the round it is sewn to is gone"));
    EXPECT_TRUE(text(1).endsWith(QStringLiteral("(!)")));
    EXPECT_TRUE(model.fault(0).isEmpty());
}

}  // namespace
}  // namespace roundwright::app
