#include "app/rounds/rounds_model.h"

#include <gtest/gtest.h>
#include <random>

#include <QAbstractItemModelTester>

#include "tests/app/app_testing.h"

namespace roundwright::app {
namespace {

QString shown(const RoundsModel& model, int row, RoundColumn column) {
    return model.index(row, static_cast<int>(column)).data().toString();
}

TEST(RoundsModel, ShowsARoundInEveryColumn) {
    DocumentSession session;
    session.start(toy_of({6, 12, 12}));
    RoundsModel model(session);
    ASSERT_TRUE(wait_for_shape(session));
    ASSERT_EQ(model.rowCount(), 4) << "three rounds and the next one";
    EXPECT_EQ(shown(model, 1, RoundColumn::number), QStringLiteral("2"));
    EXPECT_EQ(shown(model, 1, RoundColumn::stitches), QStringLiteral("12"));
    EXPECT_EQ(shown(model, 0, RoundColumn::change), QString());
    EXPECT_EQ(shown(model, 1, RoundColumn::change), QStringLiteral("+6"));
    EXPECT_EQ(shown(model, 2, RoundColumn::change), QStringLiteral("="));
    EXPECT_EQ(shown(model, 1, RoundColumn::words), QStringLiteral("inc around"));
    EXPECT_EQ(shown(model, 1, RoundColumn::yarn), QStringLiteral("A"));
    EXPECT_FALSE(shown(model, 1, RoundColumn::lie).isEmpty());
    EXPECT_GT(shown(model, 1, RoundColumn::width).toInt(), 10);
    EXPECT_EQ(shown(model, 3, RoundColumn::number), QStringLiteral("4"));
    const auto lie = model.index(1, static_cast<int>(RoundColumn::lie));
    EXPECT_FALSE(lie.data(Qt::DecorationRole).value<QIcon>().isNull()) << "a glyph beside the word";
}

TEST(RoundsModel, MarksWhatIsWorkedAndWhatIsInHand) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18, 18}));
    RoundsModel model(session);
    const auto numbers = [&] {
        QStringList shown_numbers;
        for (int row = 0; row < 4; ++row) shown_numbers << shown(model, row, RoundColumn::number);
        return shown_numbers.join(u'|').toStdString();
    };
    EXPECT_EQ(numbers(), "1|2|3|4");
    session.edit_piece(QStringLiteral("Work"), [](Piece& piece) { piece.worked = {2, 7, {}}; });
    EXPECT_EQ(numbers(), "✓ 1|✓ 2|▸ 3|4");
    const auto about = [&](int row) {
        return model.index(row, 0).data(Qt::AccessibleDescriptionRole).toString().toStdString();
    };
    EXPECT_EQ(about(0), "Worked");
    EXPECT_EQ(about(2), "On the hook: 7 of 18 stitches worked");
    EXPECT_EQ(about(3), "");
    session.undo_stack().undo();
    EXPECT_EQ(numbers(), "1|2|3|4");
}

TEST(RoundsModel, FollowsTermsAndUnits) {
    DocumentSession session;
    session.preferences().set_terms(Terms::us);
    session.preferences().set_units(LengthUnit::millimetres);
    session.start(toy_of({6, 12, 12}));
    RoundsModel model(session);
    ASSERT_TRUE(wait_for_shape(session));
    EXPECT_EQ(shown(model, 2, RoundColumn::words), QStringLiteral("sc in each st around"));
    session.preferences().set_terms(Terms::uk);
    EXPECT_EQ(shown(model, 2, RoundColumn::words), QStringLiteral("dc in each st around"));
    const auto mm = shown(model, 2, RoundColumn::width);
    session.preferences().set_units(LengthUnit::inches);
    EXPECT_NE(shown(model, 2, RoundColumn::width), mm);
    session.preferences().set_terms(Terms::us);
    session.preferences().set_units(LengthUnit::millimetres);
}

TEST(RoundsModel, SaysWhyAnEntryIsNotTaken) {
    DocumentSession session;
    session.start(toy_of({6, 12}));
    RoundsModel model(session);
    QString why;
    QObject::connect(&model, &RoundsModel::entry_refused, [&](const QString& text) { why = text; });
    EXPECT_FALSE(model.setData(model.index(1, 1), QStringLiteral("twelve"), Qt::EditRole));
    EXPECT_TRUE(why.contains(QStringLiteral("twelve")));
    EXPECT_EQ(session.undo_stack().count(), 0);
}

TEST(RoundsModel, KeepsTheRulesOfModelsThroughAnyEdits) {
    DocumentSession session;
    session.start(toy_of({6, 12, 18}));
    RoundsModel model(session);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    std::mt19937 random(7);
    for (int step = 0; step < 400; ++step) {
        const auto piece_count = session.toy().pieces.size();
        const int rounds = session.piece() ? static_cast<int>(session.piece()->rounds.size()) : 0;
        const int at = rounds == 0 ? 0 : static_cast<int>(random() % static_cast<unsigned>(rounds));
        switch (random() % 8) {
            case 0:
                if (session.piece()) model.edits().insert_even(at);
                break;
            case 1:
                if (rounds > 0) model.edits().remove({at});
                break;
            case 2:
                if (rounds > 0) model.edits().set_count({at}, {CountEntry::Kind::change, 3});
                break;
            case 3:
                if (rounds > 1) model.edits().move({at}, random() % 2 == 0 ? 1 : -1);
                break;
            case 4:
                session.undo_stack().undo();
                break;
            case 5:
                session.undo_stack().redo();
                break;
            case 6:
                session.edit(QStringLiteral("Pieces"), [&](Toy toy) {
                    if (piece_count > 3) toy.pieces.clear();
                    toy.pieces.push_back(piece_of({6, 12}, "Fin"));
                    return toy;
                });
                break;
            default:
                session.set_current_piece(static_cast<int>(random() % (piece_count + 1)));
                break;
        }
        QCoreApplication::processEvents();
        const int now = session.piece() ? static_cast<int>(session.piece()->rounds.size()) + 1 : 0;
        ASSERT_EQ(model.rowCount(), now);
    }
}

TEST(RoundsModel, MarksTheRoundsAfterWhichEyesAndStuffingGoIn) {
    DocumentSession session;
    Toy toy = toy_of({6, 12, 18, 24, 30, 36, 36, 36, 36, 36, 30, 24, 18, 12, 6});
    Feature eyes;
    eyes.kind = FeatureKind::safety_eye;
    eyes.round = 7;
    toy.pieces[0].features = {eyes};
    session.start(toy);
    const RoundsModel model(session);
    ASSERT_TRUE(wait_for_shape(session));
    const auto about = [&](int round) {
        return model.index(round, 0).data(Qt::ToolTipRole).toString().toStdString();
    };
    EXPECT_NE(about(9).find("After this round: Insert the "), std::string::npos) << about(9);
    EXPECT_NE(about(11).find("Start stuffing."), std::string::npos) << about(11);
    EXPECT_FALSE(model.index(9, 0).data(Qt::DecorationRole).value<QIcon>().isNull());
    EXPECT_TRUE(about(8).empty()) << about(8);
    EXPECT_EQ(model.index(9, 0).data(Qt::AccessibleDescriptionRole).toString().toStdString(), about(9));
}

}  // namespace
}  // namespace roundwright::app
